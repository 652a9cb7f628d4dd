package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/notebook"
	"loopbook/cases/sqlite"
)

// shelf holds the notebooks that can be turned to.
type shelf struct {
	at      bench.Bench
	list    *notebook.List
	parting *parting
	window  fyne.Window         // that says which one it is
	use     func(*sqlite.Store) // turns to one that is open
}

func (s *shelf) openDemo() { s.open(library.DemoPath, true) }
func (s *shelf) openOwn()  { s.open(library.OwnPath, false) }

func (s *shelf) open(where func() (string, error), demo bool) {
	s.parting.notebook(kit.L("window.parting.anyway"), func() {
		path, err := where()
		if err == nil {
			err = s.turnTo(path, demo)
		}
		if err != nil {
			s.at.Ask.Tell(err)
		}
	})
}

func (s *shelf) turnTo(path string, demo bool) error {
	s.at.Leave()
	store, err := library.Open(s.at.Ctx, path)
	if err != nil {
		return err
	}
	title, name := "Loopbook", "Loopbook"
	if demo {
		title, name = kit.L("window.frame.demo-title"), kit.L("window.frame.demo")
		if err := library.FillDemo(s.at.Ctx, store); err != nil {
			store.Close()
			return err
		}
	}
	s.window.SetTitle(title)
	s.list.SetName(name)
	s.at.Desk.Odds.Invented = demo
	s.use(store)
	return nil
}
