// Package warmup fills the screen of a case's warm-ups, and reads logs into the case.
package warmup

import (
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/warmup"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// Screen shows the open case's warm-ups.
type Screen struct {
	at      bench.Bench
	tab     bench.Tab
	view    *view.View
	save    kit.Saver // writes a chart and says where
	kept    remembered
	of      string // the case that is shown
	shown   int    // of its logs
	file    file
	waiting []string // files that are read next
	healthy healthy
}

// New shows no log yet; save writes a chart and says where.
func New(at bench.Bench, tab bench.Tab, kept fyne.Preferences, save kit.Saver) *Screen {
	s := &Screen{at: at, tab: tab, view: view.New(at.Desk.Edit, time.Now), save: save, kept: remembered{kept}, file: file{cancel: func() {}}}
	s.view.OnFile = s.choose
	s.view.OnLog = func(i int) { s.shown = i; s.Show() }
	s.view.OnSave = s.saveShown
	s.view.OnColumns = func() { s.askColumns(s.file.path, s.file.read, nil) }
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// First is where a warm-up is written down.
func (s *Screen) First() fyne.Focusable { return s.view.First() }

// Back leaves a row that is being mended, and reports whether one was.
func (s *Screen) Back() bool { return s.view.Back() }

// Leave keeps what is being typed, where the screen is looked at: elsewhere it may show the case before.
func (s *Screen) Leave() {
	if s.tab.InSight() {
		s.view.Leave()
	}
}

// Show paints the log that is looked at.
func (s *Screen) Show() {
	d := s.at.Desk
	s.follow(&d.Case)
	i := s.looked()
	data := view.Data{Case: d.Case, Log: i, Reading: s.file.says, Units: d.Units, Overheated: diagnosis.Overheated(&d.Case, d.Found)}
	if i >= 0 {
		r := d.Found.WarmUps[i].Result
		data.Flags = d.Found.WarmUps[i].Flags
		s.healthy.expect(s.at, &d.Case.Logs[i], r.StartS, s.Show)
		data.Lines, data.Facts, data.Remarks = picture.WarmUp(&d.Case, &d.Case.Logs[i], r, s.healthy.band, d.By()), facts(r, d.Units), remarks(r, d.Units)
		if d.Case.Loop.ThermostatOpensC == nil {
			data.Remarks = append(data.Remarks, d.By().Say(evidence.RatingText(&d.Case)))
		}
	}
	if s.file.path != "" && i == s.file.at && i >= 0 && d.Case.Logs[i].Name == nameOf(s.file.path) {
		data.Remarks = append(append([]string{columnsTold(s.file.read)}, say.English().All(s.file.read.Remarks)...), data.Remarks...)
		data.Columns = true
	}
	s.view.Show(data)
}

// looked is the log that is looked at, the last one unless another was chosen; -1: there is none.
func (s *Screen) looked() int {
	last := len(s.at.Desk.Case.Logs) - 1
	if s.shown < 0 {
		return last
	}
	return min(s.shown, last)
}

// follow drops what belongs to another case.
func (s *Screen) follow(c *cases.Case) {
	if s.of == c.ID {
		return
	}
	s.file.cancel()
	s.of, s.waiting, s.shown, s.file = c.ID, nil, len(c.Logs)-1, file{cancel: func() {}}
}

// saveShown writes the shown log's curve.
func (s *Screen) saveShown(kind string) {
	d, i := s.at.Desk, s.looked()
	if i < 0 {
		return
	}
	lines := picture.WarmUp(&d.Case, &d.Case.Logs[i], d.Found.WarmUps[i].Result, s.healthy.band, d.By())
	s.save(lines, kit.L("window.warmup.file", i+1), kind)
}
