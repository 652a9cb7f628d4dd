// Package causes fills the screen of the causes with what the desk knows of them.
package causes

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	view "loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
)

// Screen shows what the open case is held to be.
type Screen struct {
	desk *desk.Desk
	view *view.View
	kept remembered
}

// Ways lead from the causes to where a person goes on.
type Ways struct {
	Begin func(check string, at diagram.Point) // to where an advised check is done
	Next  func(Step)                           // to what follows the verdict
}

// New judges by the odds that were chosen last.
func New(d *desk.Desk, kept fyne.Preferences, ways Ways) *Screen {
	s := &Screen{desk: d, view: view.New(), kept: remembered{kept}}
	d.Believe(s.kept.odds(d.Odds))
	s.view.OnCause, s.view.OnRound, s.view.OnBegin = d.Choose, d.ShowRound, ways.Begin
	s.view.OnNext = func() {
		_, step := nextStep(&d.Case)
		ways.Next(step)
	}
	s.view.OnTake = func(cause cases.Cause) {
		d.Edit(kit.L("window.verdict.cause"), func(c *cases.Case) { c.Verdict.Find(cause) })
	}
	s.view.OnFlat, s.view.OnLearn = s.flat, s.learn
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// Focus is what the screen's key leads to.
func (s *Screen) Focus() fyne.Focusable { return s.view.Focus() }

// Show paints the causes.
func (s *Screen) Show() { s.view.Show(dataOf(s.desk)) }

// flat makes all causes alike before a case, or no longer.
func (s *Screen) flat(on bool) {
	o := s.desk.Odds
	o.Flat = on
	s.believe(o)
}

// learn lets the notebook's confirmed cases count, or no longer.
func (s *Screen) learn(on bool) {
	o := s.desk.Odds
	o.Learn = desk.LearnNo
	if on {
		o.Learn = desk.LearnYes
	}
	s.believe(o)
}

func (s *Screen) believe(o desk.Odds) {
	s.kept.keep(o)
	s.desk.Believe(o)
}
