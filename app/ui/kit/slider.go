package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Slider is a bar to set a number by.
type Slider struct{ widget.Slider }

// NewSlider makes a bar of whole numbers.
func NewSlider(low, high float64) *Slider {
	s := &Slider{}
	s.ExtendBaseWidget(s)
	s.Min, s.Max, s.Step = low, high, 1
	return s
}

// CreateRenderer paints the bar.
func (s *Slider) CreateRenderer() fyne.WidgetRenderer {
	r := &tracked{s.Slider.CreateRenderer()}
	r.paint()
	return r
}

// tracked shows a bar with a track that can be seen on any ground: the toolkit paints it as it paints a
// field's ground.
type tracked struct{ fyne.WidgetRenderer }

// Refresh paints the bar as it is.
func (r *tracked) Refresh() {
	r.WidgetRenderer.Refresh()
	r.paint()
}

func (r *tracked) paint() {
	track := r.Objects()[0].(*canvas.Rectangle) // of the toolkit's bar
	track.FillColor = theme.Color(theme.ColorNameInputBorder)
	track.Refresh()
}

// FocusGained brings the bar into sight.
func (s *Slider) FocusGained() {
	s.Slider.FocusGained()
	InSight(s)
}

// TypedKey leaves Escape to the window.
func (s *Slider) TypedKey(e *fyne.KeyEvent) {
	if !passed(s, e) {
		s.Slider.TypedKey(e)
	}
}
