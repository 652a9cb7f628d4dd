package share

import (
	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/share"
	"loopbook/cases"
)

// ChooseTaught asks what a taught copy of the open case is to hide, and shows what goes and what stays.
func (s *Sharing) ChooseTaught() {
	s.at.Leave()
	e := view.NewTaught()
	p := newPreview(s.at, e)
	e.OnWish = p.show
	p.show(e.Wish())
	d := s.at.Ask.Offer(kit.L("window.share.taught-title"), kit.L("window.share.taught-make"), kit.L("window.frame.close"), e.Content(), func() { s.teach(e.Wish()) })
	d.Resize(s.at.Ask.Size().Subtract(fyne.NewSize(200, 120)))
	s.at.Ask.ShowThen(d, p.drop)
}

// teach makes the copy apart from the window, turns to it, and says where it is.
func (s *Sharing) teach(wish view.Wish) {
	if err := s.at.Desk.Keep(); err != nil { // it would be made without the last edits
		s.at.Ask.Tell(err)
		return
	}
	store, id := s.at.Desk.Store, s.at.Desk.Case.ID
	busy := s.at.Ask.Busy(s.at.Ctx, kit.L("window.share.writing"))
	s.at.Start(func() {
		met, err := library.Teach(busy.Ctx, store, id, givingOf(wish).Hide)
		fyne.Do(func() {
			switch stopped := busy.Done(); {
			case stopped:
			case err != nil:
				s.at.Ask.Tell(err)
			default:
				s.at.Desk.Kept()
				s.open(met.ID)
				s.at.Ask.Show(s.at.Ask.Notice(kit.L("window.share.taught-title"), taughtWords(met)))
			}
		})
	})
}

// taughtWords say whether a copy was made, and what is to be done with it.
func taughtWords(met cases.Met) string {
	if met.Meeting != cases.MeetsNone {
		return kit.L("window.share.taught-there")
	}
	return kit.L("window.share.taught-made", cases.TaughtTag)
}
