// Package papers opens a window with the papers of a case: it makes them as chosen, shows their pages,
// and saves them.
package papers

import (
	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/window/bench"
)

// Papers opens windows with papers.
type Papers struct {
	at      bench.Bench
	app     fyne.App
	kept    remembered
	smaller *library.Smaller // copies of pictures
	quit    func()           // ends the program
}

// New opens no window yet.
func New(at bench.Bench, app fyne.App, smaller *library.Smaller, quit func()) *Papers {
	return &Papers{at: at, app: app, kept: remembered{app.Preferences()}, smaller: smaller, quit: quit}
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
	w.window.Show()
	w.make()
	return w, nil
}
