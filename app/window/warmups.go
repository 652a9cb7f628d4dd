package window

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/warmup"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/cases/logfile"
	"loopbook/cases/sqlite"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

// warmups reads logs for the warm-up screen and turns them into curves.
type warmups struct {
	shown   int    // of the case's logs
	of      string // the case that shown belongs to
	reading string
	cancel  context.CancelFunc
	path    string // of the file that was read last
	read    logfile.Read

	key  string          // of the crowd that the band is of, or will be
	band *diagnosis.Band // nil: not known, or not yet
}

// expectLog finds out, apart from the window, how healthy cars would have
// warmed up as the log's car was run. The air outside is what the log began in
// where the case doesn't say.
func (w *window) expectLog(l *cases.Log, startS float64) {
	c := w.at.Desk.Case
	p, ok := diagnosis.PlanForLog(&c, l, startS)
	key := ""
	if ok {
		key = p.Setting.Key()
	}
	if key == w.logs.key {
		return
	}
	w.logs.key, w.logs.band = key, nil
	if !ok {
		return
	}
	w.at.Start(func() {
		e, err := w.at.Desk.Mind.Crowds.Get(w.at.Ctx, p.Healthy(), nil)
		fyne.Do(func() {
			if err == nil && w.logs.key == key {
				band := diagnosis.BandOf(e, startS)
				w.logs.band = &band
				w.showWarmUp()
			}
		})
	})
}

func (w *window) makeWarmUp() {
	w.logs = &warmups{cancel: func() {}}
	w.warmup = view.New(w.at.Desk.Edit, time.Now)
	w.warmup.OnFile = w.chooseLog
	w.warmup.OnLog = func(i int) { w.logs.shown = i; w.showWarmUp() }
	w.warmup.OnSave = w.saveShown
	w.warmup.OnColumns = func() { w.askColumns(w.logs.path, w.logs.read, nil) }
}

// showWarmUp paints the log that is looked at.
func (w *window) showWarmUp() {
	d := w.at.Desk
	w.logs.follow(&d.Case)
	i := min(w.logs.shown, len(d.Case.Logs)-1)
	if i < 0 && len(d.Case.Logs) > 0 {
		i = len(d.Case.Logs) - 1
	}
	data := view.Data{Case: d.Case, Log: i, Reading: w.logs.reading, Units: d.Units, Overheated: diagnosis.Overheated(&d.Case, d.Found)}
	if i >= 0 {
		r := d.Found.WarmUps[i].Result
		data.Flags = d.Found.WarmUps[i].Flags
		w.expectLog(&d.Case.Logs[i], r.StartS)
		data.Lines, data.Facts, data.Remarks = picture.WarmUp(&d.Case, &d.Case.Logs[i], r, w.logs.band, d.By()), facts(r, d.Units), remarks(r, d.Units)
	}
	if i >= 0 && d.Case.Loop.ThermostatOpensC == nil {
		data.Remarks = append(data.Remarks, d.By().Say(evidence.RatingText(&d.Case)))
	}
	if w.logs.path != "" {
		data.Remarks = append(append([]string{columnsTold(w.logs.read)}, say.English().All(w.logs.read.Remarks)...), data.Remarks...)
		data.Columns = true
	}
	w.warmup.Show(data)
}

// follow drops what belongs to another case.
func (l *warmups) follow(c *cases.Case) {
	if l.of == c.ID {
		return
	}
	l.cancel()
	l.of, l.shown, l.reading, l.path, l.read = c.ID, len(c.Logs)-1, "", "", logfile.Read{}
}

func facts(r warmup.Result, u units.Set) []view.Fact {
	var out []view.Fact
	for _, f := range picture.WarmUpFacts(r, say.English().With(u)) {
		out = append(out, view.Fact{What: f[0], Value: f[1]})
	}
	return out
}

func remarks(r warmup.Result, u units.Set) []string {
	return say.English().With(u).All(r.Remarks)
}

func (w *window) chooseLog() {
	w.at.Ask.OpenFile(logEndings(), func(file fyne.URI) { w.readLog(file.Path()) })
}

func logEndings() []string { return []string{".csv", ".txt", ".tsv", ".log"} }

// isLog reports whether a dropped file is taken for a log rather than a case.
func isLog(path string) bool {
	return slices.Contains(logEndings(), strings.ToLower(filepath.Ext(path)))
}

// readLog takes a file into the open case, apart from the window. Another
// case, or another file, drops it.
func (w *window) readLog(path string) { w.readLogAs(path, nil) }

// keptSamples is how many samples of a log go into the case: two a second of an
// ordinary warm-up.
const keptSamples = 3000

// readLogAs reads the file with columns that were said by hand (nil: found out).
func (w *window) readLogAs(path string, by map[string]string) {
	d := w.at.Desk
	if !d.Open {
		w.at.Ask.Tell(errors.New("a log belongs to a case: open one, or begin one, and drop the file again"))
		return
	}
	w.logs.follow(&d.Case)
	w.logs.cancel()
	ctx, cancel := context.WithCancel(w.at.Ctx)
	w.logs.cancel = cancel
	id, name, size := d.Case.ID, filepath.Base(path), int64(1)
	if info, err := os.Stat(path); err == nil {
		size = max(info.Size(), 1)
	}
	progress := func(bytes int64) {
		fyne.Do(func() { w.logReads(ctx, kit.L("window.frame.reading-log-part", name, 100*bytes/size)) })
	}
	w.logs.reading = kit.L("window.frame.reading-log", name)
	w.tabs.SelectIndex(warmUpTab)
	w.showWarmUp()
	remembered := w.prefs.columns
	w.at.Start(func() {
		o := logfile.Options{Map: by, Progress: progress, MaxSamples: keptSamples}
		read, err := logfile.FromFile(ctx, path, o)
		if by == nil && len(read.Header) > 0 {
			if o.Map = remembered(logfile.Fingerprint(read.Header)); o.Map != nil {
				read, err = logfile.FromFile(ctx, path, o)
			}
		}
		if err == nil {
			err = keepOriginal(ctx, d.Store, id, path, size)
		}
		fyne.Do(func() {
			if ctx.Err() == nil && d.Case.ID == id {
				w.logReads(ctx, "")
				w.logRead(path, read, by != nil, err)
			}
		})
	})
}

// keptBytes is how large a file may be that is kept as it came beside the
// samples that are drawn; a case with all of its files travels as one bundle.
const keptBytes = 64 << 20

// keepOriginal keeps the file with the case, once for the same content.
func keepOriginal(ctx context.Context, store *sqlite.Store, id, path string, size int64) error {
	if size > keptBytes {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	name := "logs/" + filename.Of(strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))) + strings.ToLower(filepath.Ext(path))
	return store.Attach(ctx, id, name, data)
}

// logRead takes what was read, or asks which column is what. It may be the shown
// log, read again with other columns.
func (w *window) logRead(path string, read logfile.Read, again bool, err error) {
	switch {
	case err != nil && len(read.Header) > 0:
		w.askColumns(path, read, err)
	case err != nil:
		w.at.Ask.Tell(fmt.Errorf("%w\nThe case is as it was", err))
	default:
		w.logs.path, w.logs.read = path, read
		w.takeLog(filepath.Base(path), read, again)
	}
}

func (w *window) logReads(ctx context.Context, text string) {
	if ctx.Err() == nil {
		w.logs.reading = text
		w.showWarmUp()
	}
}

// takeLog puts a log into the case; read again it replaces itself.
func (w *window) takeLog(name string, read logfile.Read, again bool) {
	l := read.Log
	l.Name, l.Stage = strings.TrimSuffix(name, filepath.Ext(name)), kit.StageNow(&w.at.Desk.Case)
	at := w.logs.placeOf(w.at.Desk.Case.Logs, l, again)
	w.logs.shown = at
	w.at.Desk.Edit(kit.L("window.frame.log-edit", l.Name), func(c *cases.Case) {
		if at < len(c.Logs) {
			l.Stage = c.Logs[at].Stage
			c.Logs[at] = l
			return
		}
		c.Logs = append(c.Logs, l)
	})
}

// placeOf is where a log goes: over the one with its name, which a scan tool may
// give to every log that it saves, so only on the same side of the repair.
func (l *warmups) placeOf(logs []cases.Log, read cases.Log, again bool) int {
	if again && l.shown >= 0 && l.shown < len(logs) && logs[l.shown].Name == read.Name {
		return l.shown
	}
	after := func(log cases.Log) bool { return log.Stage == cases.AfterRepair }
	at := slices.IndexFunc(logs, func(had cases.Log) bool { return had.Name == read.Name && after(had) == after(read) })
	if at < 0 {
		return len(logs)
	}
	return at
}

// saveShown writes the shown log's curve.
func (w *window) saveShown(kind string) {
	d, i := w.at.Desk, w.logs.shown
	if i < 0 || i >= len(d.Case.Logs) {
		return
	}
	lines := picture.WarmUp(&d.Case, &d.Case.Logs[i], d.Found.WarmUps[i].Result, w.logs.band, d.By())
	w.logs.reading = w.saveChart(lines, kit.L("window.warmup.file", i+1), kind)
	w.showWarmUp()
}
