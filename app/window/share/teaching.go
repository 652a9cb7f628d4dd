package share

import (
	"context"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/share"
	"loopbook/cases"
)

// ChooseTaught asks what a taught copy of the open case is to hide, and shows what goes and what stays.
func (s *Sharing) ChooseTaught() {
	s.at.Leave()
	s.ask(view.NewTaught(), kit.L("window.share.taught-title"), kit.L("window.share.taught-make"), s.teach)
}

// teach makes the copy apart from the window, turns to it, and says where it is.
func (s *Sharing) teach(wish view.Wish) {
	if err := s.at.Desk.Keep(); err != nil { // it would be made without the last edits
		s.at.Ask.Tell(err)
		return
	}
	store, id := s.at.Desk.Store, s.at.Desk.Case.ID
	var met library.Taught
	s.apart(func(ctx context.Context) (err error) {
		met, err = library.Teach(ctx, store, id, givingOf(wish).Hide)
		return err
	}, func() {
		s.at.Desk.Kept()
		s.open(met.ID, func() { s.at.Ask.Show(s.at.Ask.Notice(kit.L("window.share.taught-title"), taughtWords(met))) })
	})
}

// taughtWords say whether a copy was made, and what is to be done with it.
func taughtWords(met library.Taught) string {
	if met.Meeting != cases.MeetsNone {
		return kit.L("window.share.taught-there")
	}
	text := kit.L("window.share.taught-made", cases.TaughtTag)
	if met.Plain != "" {
		text += "\n\n" + kit.L("window.share.taught-plain", met.Plain)
	}
	return text
}
