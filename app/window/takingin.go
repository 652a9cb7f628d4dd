package window

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// takeAll takes files into the notebook with progress, tells what became of them, and
// asks about conflicts one after the other.
func (w *window) takeAll(paths []string) {
	files, err := library.Importable(paths)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.leave()
	store := w.at.Desk.Store
	busy := w.at.Ask.Busy(w.at.Ctx, kit.L("window.share.reading", 0, len(files), 0))
	w.at.Start(func() {
		t, err := library.Take(busy.Ctx, store, files, nil, func(n, taken int) {
			fyne.Do(func() { busy.Say(kit.L("window.share.reading", n, len(files), taken)) })
		})
		fyne.Do(func() {
			if stopped := busy.Done(); err != nil && !stopped {
				w.at.Ask.Tell(err)
				return
			}
			w.took(t)
		})
	})
}

// chooseFolder takes every case and bundle of a folder.
func (w *window) chooseFolder() {
	w.at.Ask.OpenFolder(func(path string) { w.takeAll([]string{path}) })
}

// took shows what was taken, opens the last, and then turns to the conflicts.
func (w *window) took(t library.Takings) {
	for i := len(t.Met) - 1; i >= 0; i-- {
		if t.Met[i].Meeting != cases.MeetsOther {
			w.at.Desk.Load(t.Met[i].ID)
			w.photos.ReadAhead()
			break
		}
	}
	w.enter(caseRoom)
	w.at.Desk.Kept()
	conflicts := func() { w.settleConflicts(t.Conflicts, len(t.Conflicts)) }
	if len(t.Refused) > 0 || len(t.Met) > 1 || t.Files < t.Of || t.Known() > 0 {
		w.tellTaken(t, conflicts)
		return
	}
	conflicts()
}

// mostTold of what was refused is told at once.
const mostTold = 5

func (w *window) tellTaken(t library.Takings, then func()) {
	lines := []string{kit.L("window.share.taken", t.Count(cases.MeetsNone), t.Known(), len(t.Conflicts))}
	if t.Files < t.Of {
		lines = append([]string{kit.L("window.share.stopped", t.Files, t.Of)}, lines...)
	}
	for i, err := range t.Refused {
		if i == mostTold {
			lines = append(lines, kit.L("window.share.more-refused", len(t.Refused)-mostTold))
			break
		}
		lines = append(lines, kit.L("window.share.refused", err.Error()))
	}
	message := widget.NewLabel(strings.Join(lines, "\n"))
	message.Wrapping = fyne.TextWrapWord
	w.at.Ask.ShowThen(w.at.Ask.Look(kit.L("window.share.taken-title"), kit.L("window.frame.close"), kit.Wide(520, message)), then)
}

// settleConflicts shows the first of the conflicts that are left side by side; the
// choice leads to the next, or is the same for all that are left. Escape leaves the
// notebook as it is.
func (w *window) settleConflicts(left []cases.Met, of int) {
	if len(left) == 0 {
		return
	}
	m := left[0]
	differ, same, err := words.Differences(m.Mine, m.Theirs.Case, w.at.Desk.Units)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	title := kit.L("window.share.conflict", titleOf(m.Mine))
	if of > 1 {
		title = kit.L("window.share.conflict-of", of-len(left)+1, of, titleOf(m.Mine))
	}
	all := kit.NewCheck(kit.L("window.share.conflict-all", len(left)-1), nil)
	if len(left) == 1 {
		all.Hide()
	}
	content := container.NewBorder(container.NewVBox(kit.Paragraphs(kit.Span{Text: kit.L("window.share.conflict-text"), Small: true}), all), nil, nil, nil,
		compare.New(kit.L("window.share.mine"), kit.L("window.share.theirs"), differ, same))
	choice := func(words string, c cases.Choice) asking.Choice {
		return asking.Choice{Words: words, Take: func() {
			n := 1
			if all.Checked {
				n = len(left)
			}
			w.settle(left[:n], c, func() { w.settleConflicts(left[n:], of) })
		}}
	}
	d := w.at.Ask.Choose(title, content,
		choice(kit.L("window.share.keep-mine"), cases.KeepMine), choice(kit.L("window.share.take-theirs"), cases.TakeTheirs), choice(kit.L("window.share.keep-both"), cases.KeepBoth))
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	w.at.Ask.Show(d)
}

// settle ends conflicts by one choice, apart from the window, and opens the last of them.
func (w *window) settle(list []cases.Met, c cases.Choice, then func()) {
	store := w.at.Desk.Store
	busy := w.at.Ask.Busy(w.at.Ctx, kit.L("window.share.settling", len(list)))
	w.at.Start(func() {
		var id string
		var err error
		for i := 0; i < len(list) && err == nil && busy.Ctx.Err() == nil; i++ {
			id, err = store.Resolve(busy.Ctx, list[i].Theirs, c, "imported")
		}
		fyne.Do(func() {
			if stopped := busy.Done(); err != nil && !stopped {
				w.at.Ask.Tell(err)
				return
			}
			if id != "" { // else it was stopped before the first
				w.at.Desk.Load(id)
				w.at.Desk.Kept()
			}
			then()
		})
	})
}
