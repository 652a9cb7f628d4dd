package kit

import (
	"fmt"
	"image"
	"reflect"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"loopbook/diagram/drawing"
	"loopbook/report/chart"
)

// ChartView shows a chart in the theme's colours, as large as its room, and
// says what stands under the pointer.
type ChartView struct {
	widget.BaseWidget
	chart chart.Chart // nil: none
	drawn int         // how often another one was drawn
	frame chart.Frame
	scale float32
	says  string
	at    fyne.Position
}

var _ desktop.Hoverable = (*ChartView)(nil)

// NewChartView is an empty chart.
func NewChartView() *ChartView {
	v := &ChartView{scale: 1}
	v.ExtendBaseWidget(v)
	return v
}

// Draw shows another chart; one with the same content costs nothing. Call it on
// the Fyne goroutine.
func (v *ChartView) Draw(c chart.Chart) {
	if reflect.DeepEqual(c, v.chart) {
		return
	}
	v.chart, v.says = c, ""
	v.drawn++
	v.Refresh()
}

// MouseIn is of desktop.Hoverable.
func (v *ChartView) MouseIn(e *desktop.MouseEvent) { v.MouseMoved(e) }

// MouseMoved says what stands under the pointer.
func (v *ChartView) MouseMoved(e *desktop.MouseEvent) {
	x, y, ok := v.frame.Under(float64(e.Position.X*v.scale), float64(e.Position.Y*v.scale))
	says := ""
	if ok && v.chart != nil {
		says, _ = v.chart.Spot(x, y)
	}
	v.says, v.at = says, e.Position
	v.Refresh()
}

// MouseOut takes the words away.
func (v *ChartView) MouseOut() {
	v.says = ""
	v.Refresh()
}

// windowLook is the window's palette and letters as a chart's look.
func windowLook() chart.Look {
	p := CurrentPalette()
	return chart.Look{
		Ink: p[drawing.Text], Soft: p[drawing.Soft], Grid: p[drawing.Rule], Paper: p[drawing.Card],
		Main: p[drawing.Accent], Second: p[drawing.ActText], Band: p[drawing.Chosen],
		Size: vg.Length(theme.Size(theme.SizeNameCaptionText)), Fonts: windowFonts(),
	}
}

// windowFonts are the window's letters, read once for all charts; nil: they can't be read.
var windowFonts = sync.OnceValue(func() *font.Cache {
	face, err := opentype.Parse(theme.DefaultTextFont().Content())
	if err != nil {
		return nil
	}
	return font.NewCache(font.Collection{{Face: face}})
})

// CreateRenderer paints the chart.
func (v *ChartView) CreateRenderer() fyne.WidgetRenderer {
	r := &chartRenderer{view: v, image: canvas.NewImageFromImage(image.NewNRGBA(image.Rect(0, 0, 1, 1))), words: canvas.NewText("", nil), ground: canvas.NewRectangle(nil)}
	r.image.ScaleMode = canvas.ImageScaleFastest
	r.image.Resize(v.Size()) // as a picture's
	r.Refresh()
	return r
}

type chartRenderer struct {
	view   *ChartView
	image  *canvas.Image
	ground *canvas.Rectangle
	words  *canvas.Text
	drawn  drawn
}

// drawn is what the picture was made of, so that a pointer that moves doesn't
// draw it anew.
type drawn struct {
	nth   int
	size  fyne.Size
	scale float32
	paper string
}

func (r *chartRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.image, r.ground, r.words}
}
func (r *chartRenderer) MinSize() fyne.Size { return fyne.NewSize(260, 190) }
func (r *chartRenderer) Destroy()           {}

func (r *chartRenderer) Layout(size fyne.Size) {
	r.image.Resize(size)
	r.draw()
}

func (r *chartRenderer) Refresh() {
	r.draw()
	r.say()
	canvas.Refresh(r.view)
}

func (r *chartRenderer) draw() {
	v, size := r.view, r.view.Size()
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		v.scale = c.Scale()
	}
	now := drawn{nth: v.drawn, size: size, scale: v.scale, paper: fmt.Sprint(CurrentPalette()[drawing.Card])}
	if now == r.drawn || v.chart == nil || size.Width < 40 || size.Height < 40 {
		return
	}
	r.drawn = now
	img, frame, err := chart.Image(v.chart, windowLook(), int(size.Width*v.scale), int(size.Height*v.scale), float64(v.scale))
	r.image.Hidden = err != nil
	if err == nil {
		r.image.Image, v.frame = img, frame
		r.image.Refresh()
	}
}

// say puts the words beside the pointer, within the chart.
func (r *chartRenderer) say() {
	v, p := r.view, CurrentPalette()
	r.words.Hidden, r.ground.Hidden = v.says == "", v.says == ""
	r.words.Text, r.words.Color, r.words.TextSize = v.says, p[drawing.Text], theme.Size(theme.SizeNameText)
	room := fyne.MeasureText(v.says, r.words.TextSize, r.words.TextStyle)
	at := fyne.NewPos(fyne.Min(v.at.X+12, v.Size().Width-room.Width-8), fyne.Max(v.at.Y-room.Height-8, 4))
	r.words.Move(at)
	r.words.Resize(room)
	r.ground.FillColor, r.ground.StrokeColor, r.ground.StrokeWidth, r.ground.CornerRadius = p[drawing.Paper], p[drawing.Edge], 1, 4
	r.ground.Move(at.SubtractXY(4, 2))
	r.ground.Resize(room.AddWidthHeight(8, 4))
	r.words.Refresh()
	r.ground.Refresh()
}
