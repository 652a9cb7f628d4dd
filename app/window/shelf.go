package window

import (
	"errors"
	"fmt"
	"os"

	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/app/window/notebook"
	"loopbook/cases"
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

// again writes what couldn't be written before; a drive that was taken out and put back needs opening anew.
func (s *shelf) again() {
	err := s.at.Desk.Keep()
	switch {
	case errors.Is(err, cases.ErrGone) && s.isThere():
		s.rejoin()
	case err != nil:
		s.tell(err)
	}
}

// tell says what did not work, or what another program did to the case. Of a notebook whose file is gone it asks what to do: nothing can be kept until then.
func (s *shelf) tell(err error) {
	var beside desk.Beside
	if errors.As(err, &beside) {
		s.at.Ask.Show(s.at.Ask.Notice(kit.L("window.frame.changed-too"), err.Error()))
		return
	}
	if !errors.Is(err, cases.ErrGone) {
		s.at.Ask.Tell(err)
		return
	}
	choices := []asking.Choice{{Words: kit.L("window.frame.close"), Take: func() {}}, {Words: kit.L("window.frame.gone-look"), Take: s.look}}
	if !s.isThere() {
		choices = append(choices, asking.Choice{Words: kit.L("window.frame.gone-write"), Take: s.write})
	}
	s.at.Ask.Show(s.at.Ask.Choose(kit.L("window.frame.failed"), asking.Words(kit.L("window.frame.gone-text", err.Error())), choices...))
}

func (s *shelf) isThere() bool {
	_, err := os.Stat(s.at.Desk.Store.Path())
	return err == nil
}

// look opens the notebook's file anew, if it lies where it was.
func (s *shelf) look() {
	if !s.isThere() {
		s.tell(fmt.Errorf("%w (%s)", cases.ErrGone, s.at.Desk.Store.Path()))
		return
	}
	if s.at.Desk.Store.Here() == nil {
		s.again() // it was put back
		return
	}
	s.rejoin()
}

// write writes the notebook where it was, from what is still at hand of it.
func (s *shelf) write() {
	if err := s.at.Desk.Store.Anew(s.at.Ctx); err != nil {
		s.at.Ask.Tell(err)
		return
	}
	s.rejoin()
}

// rejoin opens the file that lies by now where the notebook was, and keeps in it the case as it stands on the screen.
func (s *shelf) rejoin() {
	d := s.at.Desk
	d.Store.Close() // before another is opened beside what it holds; of what is gone, it stays to be read
	store, err := library.Open(s.at.Ctx, d.Store.Path())
	if err == nil {
		d.Store = store
		s.list.Rejoin()
		err = d.Keep()
	}
	if err != nil {
		s.at.Ask.Tell(err)
	}
}
