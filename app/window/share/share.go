// Package share lets cases leave the notebook, and shows before what goes with them.
package share

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/share"
	"loopbook/app/window/bench"
	"loopbook/app/window/filename"
	"loopbook/cases"
)

// Sharing lets cases leave the notebook.
type Sharing struct {
	at    bench.Bench
	shown func() (q cases.Query, total int) // what the list of cases shows
	open  func(id string, then func())      // turns to a case, which may be asked about first
}

// New shares what a person chooses.
func New(at bench.Bench, shown func() (cases.Query, int), open func(id string, then func())) *Sharing {
	return &Sharing{at, shown, open}
}

// Choose asks what is to leave the notebook, and shows what goes with it.
func (s *Sharing) Choose() {
	s.at.Leave()
	_, total := s.shown()
	scopes := []string{kit.L("window.share.this"), kit.L("window.share.shown", total), kit.L("window.share.all"), kit.L("window.share.table", total)}
	s.ask(view.NewExport(scopes), kit.L("window.share.title"), kit.L("window.share.write"), s.write)
}

// ask shows what goes by a wish, and does it once that is agreed to.
func (s *Sharing) ask(e *view.Export, title, does string, do func(view.Wish)) {
	p := newPreview(s.at, e)
	d := s.at.Ask.Offer(title, does, kit.L("window.frame.close"), e.Content(), func() { do(e.Wish()) })
	fit := func(wish view.Wish) { d.Resize(s.at.Ask.Size().Subtract(fyne.NewSize(200, 120)).Min(roomFor(wish))) }
	e.OnWish = func(wish view.Wish) {
		fit(wish)
		p.show(wish)
	}
	p.show(e.Wish())
	fit(e.Wish())
	s.at.Ask.ShowThen(d, p.drop)
}

// roomFor is how large the question is: with what goes and what stays under it, in lines that an eye can follow, only
// where something is hidden.
func roomFor(wish view.Wish) fyne.Size {
	if !wish.Anonymous || wish.Scope == view.Table {
		return fyne.NewSize(760, 330)
	}
	return fyne.NewSize(960, 640)
}

// write asks for the file and writes it apart from the window.
func (s *Sharing) write(wish view.Wish) {
	if wish.Scope == view.This && !s.at.Desk.Open {
		s.at.Ask.Inform(kit.L("window.frame.none-open"))
		return
	}
	if err := s.at.Desk.Keep(); err != nil && wish.Scope == view.This { // it would leave without its last edits
		s.at.Ask.Tell(err)
		return
	}
	ending := ".zip"
	if wish.Scope == view.Table {
		ending = ".csv"
	}
	name := nameOf(wish, s.at.Desk.Case.Title)
	s.at.Ask.SaveFile(filename.Of(name)+ending, []string{ending}, func(path string) { s.writeTo(wish, path) })
}

// nameOf is a name that tells one file from another: a few cases aren't taken for the whole notebook, nor what still
// holds customers for what doesn't.
func nameOf(wish view.Wish, title string) string {
	switch one := wish.Scope == view.This; {
	case wish.Scope == view.Table:
		return kit.L("window.share.cases-name")
	case wish.Anonymous && one:
		return kit.L("window.share.anonymous-name")
	case wish.Anonymous:
		return kit.L("window.share.anonymous-cases-name")
	case one:
		return title
	case wish.Scope == view.All:
		return kit.L("window.share.notebook-name")
	}
	return kit.L("window.share.cases-name")
}

func (s *Sharing) writeTo(wish view.Wish, path string) {
	store, id := s.at.Desk.Store, s.at.Desk.Case.ID
	q, _ := s.shown()
	if wish.Scope == view.All {
		q = cases.Query{}
	}
	var files []string
	s.apart(func(ctx context.Context) (err error) {
		files, err = giveTo(ctx, store, givingOf(wish), wish.Scope, q, id, path)
		return err
	}, func() { s.at.Ask.Show(s.at.Ask.Notice(kit.L("window.share.kept-title"), keptWords(wish, files))) })
}

// apart writes apart from the window, and goes on there once it is done.
func (s *Sharing) apart(write func(context.Context) error, then func()) {
	busy := s.at.Ask.Busy(s.at.Ctx, kit.L("window.share.writing"))
	s.at.Start(func() {
		err := write(busy.Ctx)
		fyne.Do(func() {
			switch stopped := busy.Done(); {
			case stopped:
			case err != nil:
				s.at.Ask.Tell(err)
			default:
				then()
			}
		})
	})
}

// keptWords says where what left lies, and whether the customer left with it: a table
// holds none in any case.
func keptWords(wish view.Wish, files []string) string {
	word := "window.share.kept"
	if wish.Anonymous && wish.Scope != view.Table {
		word = "window.share.kept-anonymous"
	}
	return kit.L(word, strings.Join(files, "\n"))
}
