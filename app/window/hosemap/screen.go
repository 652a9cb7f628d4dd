// Package hosemap fills the screen where temperatures are typed into the drawing of the loop.
package hosemap

import (
	"loopbook/app/desk"
	view "loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
)

// Screen shows the open case's rounds, and lets them be measured. Where in it a person is to go on, its view knows.
type Screen struct {
	*view.View
	desk   *desk.Desk
	tables *likelihood.Tables
}

// New shows no round yet; causes leads to what the case is held to be.
func New(d *desk.Desk, tables *likelihood.Tables, causes func()) *Screen {
	s := &Screen{View: view.New(), desk: d, tables: tables}
	s.Edit, s.OnReading, s.OnRound, s.OnCauses = d.Edit, d.Typed, d.ShowRound, causes
	s.OnLayout = func(id string) { d.Edit(kit.L("window.frame.layout-edit"), func(c *cases.Case) { c.Loop.Layout = id }) }
	return s
}

// Show paints the round.
func (s *Screen) Show() {
	d := s.desk
	picture, texts := drawingOf(d)
	s.View.Show(view.Data{
		Case: d.Case, Round: d.Round, Picture: picture, Texts: texts,
		Flags: d.Found.Flags, Out: d.Found.OutOfRange(d.Round), Boiling: words.Boiling(d.Found.Boiling, d.Units), ToDo: s.toDo(), Units: d.Units,
	})
}
