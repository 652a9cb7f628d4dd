package whatif

import (
	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/whatif"
)

// Screen lets a car of the open case's loop, ratings and weather run while it is looked at.
type Screen struct {
	desk  *desk.Desk
	view  *view.View
	live  *Live
	tried string // the case whose loop was begun with
}

// New drives no car yet; it tells what fails.
func New(d *desk.Desk, start func(func()), told func(error)) *Screen {
	v := view.New()
	s := &Screen{desk: d, view: v, live: newLive(start, v.Show, told)}
	v.OnChange = func(set view.Settings) { s.live.Want(func(x *Wish) { x.Set = set }) }
	v.OnPause = func(on bool) { s.live.Want(func(x *Wish) { x.Paused = on }) }
	v.OnCold = func() { s.live.Want(func(x *Wish) { x.Again = FromCold }) }
	v.OnWarm = func() { s.live.Want(func(x *Wish) { x.Again = FromWarm }) }
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
	s.live.End()
	s.tried = ""
}

func (s *Screen) begin() {
	build, set, ok := Of(&s.desk.Case)
	s.view.Put(set, s.desk.Units)
	s.view.SetPaused(false)
	if !ok {
		s.live.End()
		s.view.Show(view.Shown{Facts: []view.Fact{{Name: kit.L("window.whatif.loop"), Value: kit.L("window.whatif.no-loop")}}})
		return
	}
	s.live.Begin(build, set, s.desk.Units)
}
