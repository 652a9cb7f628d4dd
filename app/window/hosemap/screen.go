// Package hosemap fills the screen where temperatures are typed into the drawing of the loop.
package hosemap

import (
	"loopbook/app/desk"
	view "loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
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
	s.Walk = walkNamed
	s.Edit, s.OnReading, s.OnRound, s.OnCauses = d.Edit, d.Typed, d.ShowRound, causes
	s.OnLayout = func(id string) { d.Edit(kit.L("window.frame.layout-edit"), func(c *cases.Case) { c.Loop.Layout = id }) }
	return s
}

// Slipped are the rounds in which something was typed that could not be kept, but for what is typed over the drawing
// in the round that is shown.
func (s *Screen) Slipped() map[int]bool {
	rounds := slipped(s.desk)
	for _, a := range s.Aside() {
		rounds[a.Round] = true
	}
	return rounds
}

// slipped are those with such a number at a hose.
func slipped(d *desk.Desk) map[int]bool {
	rounds := map[int]bool{}
	d.EachSlip(func(round int, _ diagram.Point, _ desk.Slip) { rounds[round] = true })
	return rounds
}

// boiling is how far the side of the repair that the round is of was from boiling.
func boiling(d *desk.Desk) string {
	if d.Round < 0 || d.Round >= len(d.Case.Rounds) {
		return ""
	}
	return words.Boiling(d.Found.BoilingOf(d.Case.Rounds[d.Round].Stage), d.Units)
}

// Show paints the round.
func (s *Screen) Show() {
	d := s.desk
	picture, texts := drawingOf(d)
	s.View.Show(view.Data{
		Case: d.Case, Round: d.Round, Picture: picture, Texts: texts,
		Flags: d.Found.Flags, Out: d.Found.OutOfRange(d.Round), Boiling: boiling(d), ToDo: s.toDo(), Units: d.Units, Slipped: slipped(d),
	})
}
