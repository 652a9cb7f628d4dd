// Package checks fills the screen of the workshop's checks.
package checks

import (
	"slices"

	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	view "loopbook/app/ui/checks"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
)

// Screen shows the open case's checks.
type Screen struct {
	desk *desk.Desk
	view *view.View
}

// New shows no checks yet; save writes a chart and says where.
func New(d *desk.Desk, tables *likelihood.Tables, save kit.Saver) *Screen {
	told := words.Checks(tables)
	told.Stage, told.Save = stageNow, save
	return &Screen{desk: d, view: view.New(d.Edit, told)}
}

// stageNow is the stage of a check that is begun now. A part that is tried by itself is the old one, whenever that is
// done: after a repair that didn't help it would else neither count for a cause nor let go of the proof. Only once that
// was done is another one that of the part put in.
func stageNow(c *cases.Case, kind cases.TestKind) cases.Stage {
	before := func(t cases.Test) bool { return t.Kind == kind && t.Stage != cases.AfterRepair && !t.Bare() }
	if diagnosis.OfOldPart(kind) && !slices.ContainsFunc(c.Tests, before) {
		return cases.BeforeRepair
	}
	return kit.StageNow(c)
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Show paints the checks; an engine that was too hot is minded, and one that lacks coolant.
func (s *Screen) Show() {
	d := s.desk
	s.view.Show(d.Case, view.Found{Hot: diagnosis.Overheated(&d.Case, d.Found), Low: diagnosis.LevelLow(&d.Case)}, d.Units)
}

// Leave keeps what is being typed.
func (s *Screen) Leave() { s.view.Leave() }

// Focus is what the screen's key leads to.
func (s *Screen) Focus() fyne.Focusable { return s.view.Focus() }

// Begin begins a check and is where it is noted first.
func (s *Screen) Begin(kind cases.TestKind) fyne.Focusable { return s.view.Begin(kind) }

// Again begins the check that is shown once more.
func (s *Screen) Again() { s.view.Again() }

// Delete takes the check that is shown out of the case.
func (s *Screen) Delete() { s.view.Delete() }
