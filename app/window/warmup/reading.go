package warmup

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/logfile"
	"loopbook/cases/sqlite"
)

// file is the one that was read last, or is being read.
type file struct {
	path   string // "": none was read
	read   logfile.Read
	at     int    // its place among the case's logs
	says   string // how far it is read, or what became of it
	cancel context.CancelFunc
}

func (s *Screen) choose() {
	s.at.Ask.OpenFile(endings(), func(file fyne.URI) { s.Read(file.Path()) })
}

func endings() []string { return []string{".csv", ".txt", ".tsv", ".log"} }

// IsLog reports whether a dropped file is taken for a log rather than a case.
func IsLog(path string) bool {
	return slices.Contains(endings(), strings.ToLower(filepath.Ext(path)))
}

// Read takes files into the open case, one after the other, apart from the window. Another
// case, or another file, drops what isn't read yet.
func (s *Screen) Read(paths ...string) {
	s.follow(&s.at.Desk.Case)
	s.waiting = paths
	s.next()
}

func (s *Screen) next() {
	if len(s.waiting) > 0 {
		path := s.waiting[0]
		s.waiting = s.waiting[1:]
		s.readAs(path, nil)
	}
}

// keptSamples is how many samples of a log go into the case: two a second of an
// ordinary warm-up.
const keptSamples = 3000

// readAs reads the file with columns that were said by hand (nil: found out).
func (s *Screen) readAs(path string, by map[string]string) {
	d, store := s.at.Desk, s.at.Desk.Store
	if !d.Open {
		s.waiting = nil
		s.at.Ask.Tell(errors.New("a log belongs to a case: open one, or begin one, and drop the file again"))
		return
	}
	s.follow(&d.Case)
	s.file.cancel()
	ctx, cancel := context.WithCancel(s.at.Ctx)
	s.file.cancel = cancel
	id, name, size := d.Case.ID, filepath.Base(path), int64(1)
	if info, err := os.Stat(path); err == nil {
		size = max(info.Size(), 1)
	}
	progress := func(bytes int64) {
		fyne.Do(func() { s.tellReading(ctx, kit.L("window.frame.reading-log-part", name, 100*bytes/size)) })
	}
	s.file.says = kit.L("window.frame.reading-log", name)
	s.tab.Open()
	s.Show()
	remembered := s.kept.columns
	s.at.Start(func() {
		o := logfile.Options{Map: by, Progress: progress, MaxSamples: keptSamples}
		read, err := logfile.FromFile(ctx, path, o)
		if by == nil && len(read.Header) > 0 {
			if o.Map = remembered(logfile.Fingerprint(read.Header)); o.Map != nil {
				read, err = logfile.FromFile(ctx, path, o)
			}
		}
		if err == nil {
			if err = keepOriginal(ctx, store, id, path, size); err != nil {
				read = logfile.Read{} // which column is what doesn't help
			}
		}
		fyne.Do(func() {
			if ctx.Err() == nil && d.Store == store && d.Case.ID == id {
				s.tellReading(ctx, "")
				s.took(path, read, by != nil, err)
			}
		})
	})
}

// took takes what was read, or asks which column is what. It may be the shown
// log, read again with other columns.
func (s *Screen) took(path string, read logfile.Read, again bool, err error) {
	switch {
	case err != nil && len(read.Header) > 0:
		s.askColumns(path, read, err)
	case err != nil:
		s.at.Ask.Tell(fmt.Errorf("%w\nThe case is as it was", err))
		s.next()
	default:
		s.file.path, s.file.read = path, read
		s.file.at = s.put(read, again)
		s.Show()
		s.next()
	}
}

func (s *Screen) tellReading(ctx context.Context, text string) {
	if ctx.Err() == nil {
		s.file.says = text
		s.Show()
	}
}

// keptBytes is how large a file may be that is kept as it came beside the
// samples that are drawn; a case with all of its files travels as one bundle.
const keptBytes = 64 << 20

// keepOriginal keeps the file with the case, once for the same content. A scan tool may give every log the same name: one
// isn't kept in another's place.
func keepOriginal(ctx context.Context, store *sqlite.Store, id, path string, size int64) error {
	if size > keptBytes {
		return nil
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return err
	}
	taken, err := library.HashesOf(ctx, store, id)
	if err != nil {
		return err
	}
	hash, err := store.PutAttachment(ctx, data)
	if err != nil {
		return err
	}
	name := cases.FreeFileName(originalName(path), func(free string) bool { return taken[free] != "" && taken[free] != hash })
	return store.Attach(ctx, id, name, data)
}

// originalName is what a log's file is called among the case's.
func originalName(path string) string {
	return "logs/" + filename.Of(nameOf(path)) + strings.ToLower(filepath.Ext(path))
}
