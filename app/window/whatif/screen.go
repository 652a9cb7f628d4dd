// Package whatif fills the screen of What if: it drives a simulated car of the open case's loop, as it is
// asked to there.
package whatif

import (
	"math/rand"

	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/whatif"
	"loopbook/cases"
)

// Screen lets a car of the open case's loop, ratings and weather run while it is looked at.
type Screen struct {
	desk  *desk.Desk
	view  *view.View
	live  *live
	tried string // the case whose loop was begun with
}

// New drives no car yet; it tells what fails, and gives away a case that was made of a car.
func New(d *desk.Desk, start func(func()), told func(error), add func(cases.Case, string)) *Screen {
	v := view.New()
	s := &Screen{desk: d, view: v, live: newLive(start, v.Show, told)}
	v.OnChange = func(set view.Settings) { s.live.want(func(x *wish) { x.set = set }) }
	v.OnPause = func(on bool) { s.live.want(func(x *wish) { x.paused = on }) }
	v.OnCold = func() { s.live.want(func(x *wish) { x.again = fromCold }) }
	v.OnWarm = func() { s.live.want(func(x *wish) { x.again = fromWarm }) }
	v.OnCase = func() {
		c, err := caseOf(&s.desk.Case, s.live.wished(), 1+rand.Int63n(9999))
		if err != nil {
			told(err)
			return
		}
		add(c, kit.L("window.whatif.case-edit"))
	}
	return s
}

// Content is the screen.
func (s *Screen) Content() fyne.CanvasObject { return s.view.Content() }

// First is where a cause is chosen.
func (s *Screen) First() fyne.Focusable { return s.view.First() }

// Show lets the car run; another case, or other units, begin another.
func (s *Screen) Show() {
	d := s.desk
	if name := d.Case.ID + d.Case.Loop.Layout + string(d.Units.Temperature) + string(d.Units.Distance); name != s.tried {
		s.tried = name
		s.begin()
	}
}

// End stops the car.
func (s *Screen) End() {
	s.live.end()
	s.tried = ""
}

func (s *Screen) begin() {
	build, set, ok := buildOf(&s.desk.Case)
	s.view.Put(set, s.desk.Case.Loop.Causes(), s.desk.Units)
	s.view.SetPaused(false)
	if !ok {
		s.live.end()
		s.view.Show(view.Shown{Facts: []view.Fact{{Name: kit.L("window.whatif.loop"), Value: kit.L("window.whatif.no-loop")}}})
		return
	}
	s.live.begin(build, set, s.desk.Units)
}
