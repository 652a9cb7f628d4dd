// Package intake takes cases into the notebook: it tells what became of them, and asks about those that
// the notebook has in another form.
package intake

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/cases"
)

// Intake takes files into the notebook.
type Intake struct {
	at   bench.Bench
	ways Ways
}

// Ways tell the window what came in.
type Ways struct {
	Part   func(do func()) // leaves the open case first, which another one may take the place of
	Opened func()          // a case that came in is open
	Home   func()          // turns to it
}

// New takes nothing in yet.
func New(at bench.Bench, ways Ways) *Intake { return &Intake{at: at, ways: ways} }

// Take takes files into the notebook with progress, tells what became of them, and
// asks about conflicts one after the other. Left is how many files beside them belong into a case, and aren't
// taken.
func (i *Intake) Take(paths []string, left int) {
	files, err := library.Importable(paths)
	if err != nil {
		i.at.Ask.Tell(err)
		return
	}
	i.ways.Part(func() { i.takeIn(files, left) })
}

func (i *Intake) takeIn(files []string, left int) {
	store := i.at.Desk.Store
	busy := i.at.Ask.Busy(i.at.Ctx, kit.L("window.share.reading", 0, len(files), 0))
	i.at.Start(func() {
		t, _ := library.Take(busy.Ctx, store, files, nil, func(n, taken int) { // that it was stopped, its takings tell
			fyne.Do(func() { busy.Say(kit.L("window.share.reading", n, len(files), taken)) })
		})
		fyne.Do(func() {
			busy.Done()
			i.took(t, left)
		})
	})
}

// ChooseFolder takes every case and bundle of a folder.
func (i *Intake) ChooseFolder() {
	i.at.Ask.OpenFolder(func(path string) { i.Take([]string{path}, 0) })
}

// took shows what was taken, opens the last that is new, and then turns to the conflicts.
func (i *Intake) took(t library.Takings, left int) {
	if id := toOpen(t.Met); id != "" {
		i.at.Desk.Load(id)
		i.ways.Opened()
	}
	i.ways.Home()
	i.at.Desk.Kept()
	conflicts := func() { i.ask(t.Conflicts, len(t.Conflicts)) }
	if len(t.Refused) > 0 || len(t.Met) > 1 || len(t.Classes) > 0 || t.Files < t.Of || t.Known() > 0 || left > 0 {
		i.tellTaken(t, left, conflicts)
		return
	}
	conflicts()
}

// toOpen is the last case that came in, or the only one that was to, though the notebook has it; "": the open one stays.
func toOpen(met []cases.Met) string {
	id := ""
	for _, m := range met {
		if m.Meeting == cases.MeetsNone || len(met) == 1 && m.Meeting != cases.MeetsOther {
			id = m.ID
		}
	}
	return id
}

// mostTold of what was refused is told at once.
const mostTold = 5

func (i *Intake) tellTaken(t library.Takings, left int, then func()) {
	var lines []string
	if len(t.Met) > 0 || t.Sealed == 0 {
		lines = append(lines, kit.L("window.share.taken", t.Count(cases.MeetsNone), t.Known(), len(t.Conflicts)))
	}
	if t.Files < t.Of {
		lines = append([]string{kit.L("window.share.stopped", t.Files, t.Of)}, lines...)
	}
	for _, c := range t.Classes {
		lines = append(lines, kit.L("window.share.class", c.Name, len(c.Cases)))
	}
	if t.Sealed > 0 {
		lines = append(lines, kit.L("window.share.sealed", t.Sealed))
	}
	for n, err := range t.Refused {
		if n == mostTold {
			lines = append(lines, kit.L("window.share.more-refused", len(t.Refused)-mostTold))
			break
		}
		lines = append(lines, kit.L("window.share.refused", err.Error()))
	}
	if left > 0 {
		lines = append(lines, kit.L("window.share.left", left))
	}
	message := widget.NewLabel(strings.Join(lines, "\n"))
	message.Wrapping = fyne.TextWrapWord
	i.at.Ask.ShowThen(i.at.Ask.Look(kit.L("window.share.taken-title"), kit.L("window.frame.close"), kit.Wide(520, message)), then)
}
