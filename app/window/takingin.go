package window

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
)

// takeAll takes files into the notebook with progress, tells what became of them, and
// asks about conflicts one after the other.
func (w *window) takeAll(paths []string) {
	files, err := library.Importable(paths)
	if err != nil {
		w.tell(err)
		return
	}
	w.leave()
	store := w.desk.Store
	ctx, done := w.busy(kit.L("window.share.reading", 0, len(files), 0))
	w.start(func() {
		t, err := library.Take(ctx, store, files, nil, func(n, taken int) {
			fyne.Do(func() { w.working.SetText(kit.L("window.share.reading", n, len(files), taken)) })
		})
		fyne.Do(func() {
			if stopped := done(); err != nil && !stopped {
				w.tell(err)
				return
			}
			w.took(t)
		})
	})
}

// chooseFolder takes every case and bundle of a folder.
func (w *window) chooseFolder() {
	d := dialog.NewFolderOpen(func(folder fyne.ListableURI, err error) {
		switch {
		case err != nil:
			w.tell(err)
		case folder != nil:
			w.takeAll([]string{folder.Path()})
		}
	}, w.window)
	d.Resize(fyne.NewSize(900, 600))
	w.ask(d)
}

// took shows what was taken, opens the last, and then turns to the conflicts.
func (w *window) took(t library.Takings) {
	for i := len(t.Met) - 1; i >= 0; i-- {
		if t.Met[i].Meeting != cases.MeetsOther {
			w.desk.Load(t.Met[i].ID)
			w.readAhead()
			break
		}
	}
	w.enter(caseRoom)
	w.desk.Kept()
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
	ask(w.window, w.look(kit.L("window.share.taken-title"), kit.L("window.frame.close"), kit.Wide(520, message)), then)
}

// settleConflicts shows the first of the conflicts that are left side by side; the
// choice leads to the next, or is the same for all that are left. Escape leaves the
// notebook as it is.
func (w *window) settleConflicts(left []cases.Met, of int) {
	if len(left) == 0 {
		return
	}
	m := left[0]
	differ, same, err := words.Differences(m.Mine, m.Theirs.Case, w.desk.Units)
	if err != nil {
		w.tell(err)
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
	d := dialog.NewCustomWithoutButtons(title, content, w.window)
	choice := func(words string, c cases.Choice) fyne.CanvasObject {
		return kit.NewButton(words, func() {
			d.Hide()
			n := 1
			if all.Checked {
				n = len(left)
			}
			w.settle(left[:n], c, func() { w.settleConflicts(left[n:], of) })
		}).ByEnter()
	}
	d.SetButtons([]fyne.CanvasObject{
		choice(kit.L("window.share.keep-mine"), cases.KeepMine), choice(kit.L("window.share.take-theirs"), cases.TakeTheirs), choice(kit.L("window.share.keep-both"), cases.KeepBoth),
	})
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	w.ask(d)
}

// settle ends conflicts by one choice, apart from the window, and opens the last of them.
func (w *window) settle(list []cases.Met, c cases.Choice, then func()) {
	store := w.desk.Store
	ctx, done := w.busy(kit.L("window.share.settling", len(list)))
	w.start(func() {
		var id string
		var err error
		for i := 0; i < len(list) && err == nil && ctx.Err() == nil; i++ {
			id, err = store.Resolve(ctx, list[i].Theirs, c, "imported")
		}
		fyne.Do(func() {
			if stopped := done(); err != nil && !stopped {
				w.tell(err)
				return
			}
			if id != "" { // else it was stopped before the first
				w.desk.Load(id)
				w.desk.Kept()
			}
			then()
		})
	})
}
