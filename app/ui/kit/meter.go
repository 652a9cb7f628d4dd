package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram/drawing"
)

// Meter is a bar that shows a share of a whole: filled, or only outlined for
// what speaks against.
type Meter struct {
	widget.BaseWidget
	share  float32
	hollow bool
	plain  bool // without the ground of the whole
}

// meterHeight of the bar; its room is higher, so that it stands in the middle
// of a line.
const meterHeight = 8

// NewMeter makes an empty bar on the ground of its whole.
func NewMeter() *Meter {
	m := &Meter{}
	m.ExtendBaseWidget(m)
	return m
}

// NewWeight makes a bar without a whole, filled or outlined.
func NewWeight(share float64, hollow bool) *Meter {
	m := &Meter{share: float32(share), hollow: hollow, plain: true}
	m.ExtendBaseWidget(m)
	return m
}

// Put shows a share from 0 to 1.
func (m *Meter) Put(share float64) {
	m.share = float32(share)
	m.Refresh()
}

// CreateRenderer paints the bar.
func (m *Meter) CreateRenderer() fyne.WidgetRenderer {
	r := &meterRenderer{m: m, ground: canvas.NewRectangle(nil), bar: canvas.NewRectangle(nil)}
	r.ground.CornerRadius, r.bar.CornerRadius = meterHeight/2, meterHeight/2
	r.paint()
	r.Layout(m.Size()) // as a picture's
	return r
}

// InLine gives a bar the room around it that a label's words have, so that it begins below them.
func InLine(m *Meter) fyne.CanvasObject {
	pad, side := theme.Padding(), theme.InnerPadding()
	return container.New(layout.NewCustomPaddedLayout(pad, pad, side, pad), m)
}

type meterRenderer struct {
	m           *Meter
	ground, bar *canvas.Rectangle
}

func (r *meterRenderer) MinSize() fyne.Size { return fyne.NewSize(24, meterHeight+4) }

// Layout gives the bar its share; the least can still be seen.
func (r *meterRenderer) Layout(room fyne.Size) {
	y := (room.Height - meterHeight) / 2
	r.ground.Move(fyne.NewPos(0, y))
	r.ground.Resize(fyne.NewSize(room.Width, meterHeight))
	r.bar.Move(fyne.NewPos(0, y))
	r.bar.Resize(fyne.NewSize(max(room.Width*min(r.m.share, 1), meterHeight), meterHeight))
}

func (r *meterRenderer) Refresh() {
	r.paint()
	r.Layout(r.m.Size())
	r.ground.Refresh()
	r.bar.Refresh()
}

func (r *meterRenderer) paint() {
	p := CurrentPalette()
	r.ground.FillColor = p[drawing.Bar]
	r.ground.Hidden = r.m.plain
	r.bar.FillColor, r.bar.StrokeColor, r.bar.StrokeWidth = p[drawing.Accent], p[drawing.Accent], 0
	if r.m.hollow {
		r.bar.FillColor, r.bar.StrokeColor, r.bar.StrokeWidth = p[drawing.Card], p[drawing.LookText], 2
	}
}

func (r *meterRenderer) Objects() []fyne.CanvasObject { return []fyne.CanvasObject{r.ground, r.bar} }
func (r *meterRenderer) Destroy()                     {}
