package main

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// takeAll takes files into the notebook with progress, tells what became of them, and
// asks about conflicts one after the other.
func (w *window) takeAll(paths []string) {
	files, err := importable(paths)
	if err != nil {
		w.tell(err)
		return
	}
	w.leave()
	store := w.desk.store
	ctx, done := w.busy(kit.L("window.share.reading", 0, len(files)))
	w.start(func() {
		t, err := takeFiles(ctx, store, files, nil, func(n, _ int) {
			if n%10 == 0 || n == len(files) {
				fyne.Do(func() { w.working.SetText(kit.L("window.share.reading", n, len(files))) })
			}
		})
		fyne.Do(func() {
			done()
			if err != nil && ctx.Err() == nil {
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

// took shows what was taken, opens the last, and turns to the conflicts.
func (w *window) took(t takings) {
	for i := len(t.met) - 1; i >= 0; i-- {
		if t.met[i].Meeting != cases.MeetsOther {
			w.desk.load(t.met[i].ID)
			break
		}
	}
	w.enter(caseRoom)
	w.desk.kept()
	if len(t.refused) > 0 || len(t.met) > 1 {
		w.tellTaken(t)
	}
	w.settleConflicts(t.conflicts)
}

// mostTold of what was refused is told at once.
const mostTold = 5

func (w *window) tellTaken(t takings) {
	lines := []string{kit.L("window.share.taken", t.count(cases.MeetsNone), t.count(cases.MeetsSame)+t.count(cases.MeetsOlder), len(t.conflicts))}
	for i, err := range t.refused {
		if i == mostTold {
			lines = append(lines, kit.L("window.share.more-refused", len(t.refused)-mostTold))
			break
		}
		lines = append(lines, kit.L("window.share.refused", err.Error()))
	}
	message := widget.NewLabel(strings.Join(lines, "\n"))
	message.Wrapping = fyne.TextWrapWord
	w.ask(dialog.NewCustom(kit.L("window.share.taken-title"), kit.L("window.frame.close"), kit.Wide(520, message), w.window))
}

// settleConflicts shows the first conflict side by side; the choice leads to the next.
func (w *window) settleConflicts(list []cases.Met) {
	if len(list) == 0 {
		return
	}
	m := list[0]
	differ, same, err := differences(m.Mine, m.Theirs.Case)
	if err != nil {
		w.tell(err)
		return
	}
	table := compare.New(kit.L("window.share.mine"), kit.L("window.share.theirs"), differ, same)
	d := dialog.NewCustomWithoutButtons(fmt.Sprintf("%s (%d)", kit.L("window.share.conflict", titleOf(m.Mine)), len(list)), table, w.window)
	choice := func(words string, c cases.Choice) fyne.CanvasObject {
		return widget.NewButton(words, func() {
			d.Hide()
			w.resolve(m, c)
			w.settleConflicts(list[1:])
		})
	}
	d.SetButtons([]fyne.CanvasObject{
		choice(kit.L("window.share.keep-mine"), cases.KeepMine), choice(kit.L("window.share.take-theirs"), cases.TakeTheirs), choice(kit.L("window.share.keep-both"), cases.KeepBoth),
	})
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	d.Show()
}

func (w *window) resolve(m cases.Met, c cases.Choice) {
	id, err := w.desk.store.Resolve(w.desk.ctx, m.Theirs, c, "imported")
	if err != nil {
		w.tell(err)
		return
	}
	w.desk.load(id)
	w.desk.kept()
}
