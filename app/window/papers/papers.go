// Package papers opens a window with the papers of a case: it makes them as chosen, shows their pages,
// and saves them.
package papers

import (
	"slices"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/window/bench"
	"loopbook/cases/sqlite"
)

// Papers opens windows with papers.
type Papers struct {
	Lost func() []string // what is typed in the open case and could not be kept: no paper has it

	at      bench.Bench
	app     fyne.App
	kept    remembered
	smaller *library.Smaller // copies of pictures
	quit    func()           // ends the program
	shown   []*window
	left    []*sqlite.Store // notebooks that others took the place of, with papers of them still open
}

// New opens no window yet.
func New(at bench.Bench, app fyne.App, smaller *library.Smaller, quit func()) *Papers {
	return &Papers{at: at, app: app, kept: remembered{app.Preferences()}, smaller: smaller, quit: quit, Lost: func() []string { return nil }}
}

// Print opens the papers of the open case.
func (p *Papers) Print() {
	p.at.Leave()
	if _, err := p.open(); err != nil {
		p.at.Ask.Tell(err)
	}
}

// open shows the papers of the open case as the notebook has it.
func (p *Papers) open() (*window, error) {
	s, err := p.subject()
	if err != nil {
		return nil, err
	}
	w := newWindow(p, s)
	p.shown = append(p.shown, w)
	w.window.Show()
	w.make()
	return w, nil
}

// Close closes a notebook that another took the place of, once no papers of it are open: they read their photos from it.
func (p *Papers) Close(store *sqlite.Store) {
	if !slices.ContainsFunc(p.shown, func(w *window) bool { return w.about.store == store }) {
		store.Close()
		return
	}
	p.left = append(p.left, store)
}

// closed is told of a window that is, and closes the notebook that was left to it.
func (p *Papers) closed(w *window) {
	p.shown = slices.DeleteFunc(p.shown, func(one *window) bool { return one == w })
	left := p.left
	p.left = nil
	for _, store := range left {
		p.Close(store)
	}
}
