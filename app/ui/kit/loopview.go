package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// LoopView paints a drawing and holds a number field at each of its entries.
// Tab and Enter go along the flow, in the drawing's order of entries.
type LoopView struct {
	widget.BaseWidget

	// OnLeft is called with what stands in a field when it is left, or when
	// Enter is pressed in it, if it was changed.
	OnLeft func(diagram.Point, string)
	// OnFocus is called when a field gets the focus.
	OnFocus func(diagram.Point)

	picture drawing.Picture
	fields  map[diagram.Point]*numberField
	order   []fyne.CanvasObject
}

// NewLoopView makes an empty view.
func NewLoopView() *LoopView {
	v := &LoopView{fields: map[diagram.Point]*numberField{}}
	v.ExtendBaseWidget(v)
	return v
}

// Draw paints a picture, with what stands in each field. A field that has the
// focus keeps what is being typed. Call it on the Fyne goroutine.
func (v *LoopView) Draw(p drawing.Picture, texts map[diagram.Point]string) {
	if !sameEntries(v.picture.Entries, p.Entries) {
		v.makeFields(p.Entries)
	}
	v.picture = p
	for point, f := range v.fields {
		f.Put(texts[point])
	}
	v.Refresh()
}

// Focus puts the focus on a point's field.
func (v *LoopView) Focus(p diagram.Point) {
	if f, ok := v.fields[p]; ok {
		if c := canvasOf(f); c != nil {
			c.Focus(f)
		}
	}
}

// Leave keeps what is being typed, as if the field had been left.
func (v *LoopView) Leave() {
	for _, f := range v.fields {
		f.leave()
	}
}

func (v *LoopView) makeFields(entries []drawing.Entry) {
	v.fields = make(map[diagram.Point]*numberField, len(entries))
	v.order = v.order[:0]
	for _, e := range entries {
		point := e.Point
		f := newNumberField()
		f.onLeft = func(text string) {
			if v.OnLeft != nil {
				v.OnLeft(point, text)
			}
		}
		f.onFocus = func() {
			if v.OnFocus != nil {
				v.OnFocus(point)
			}
		}
		f.themed = container.NewThemeOverride(f, fieldTheme{fyne.CurrentApp().Settings().Theme(), 18})
		v.fields[point] = f
		v.order = append(v.order, f.themed)
	}
}

func sameEntries(a, b []drawing.Entry) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].Point != b[i].Point {
			return false
		}
	}
	return true
}

// Tapped gives the focus to the box under the finger, or takes it away.
func (v *LoopView) Tapped(e *fyne.PointEvent) {
	p := v.painter(v.Size())
	for _, entry := range v.picture.Entries {
		box := p.place(&fyne.Container{}, entry.Box)
		at := e.Position.Subtract(box.Position())
		if at.X >= 0 && at.Y >= 0 && at.X <= box.Size().Width && at.Y <= box.Size().Height {
			v.Focus(entry.Point)
			return
		}
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(v); c != nil {
		c.Unfocus()
	}
}

// CreateRenderer paints the shapes behind the fields.
func (v *LoopView) CreateRenderer() fyne.WidgetRenderer { return &loopRenderer{view: v} }

// painter fits the picture into the room there is.
func (v *LoopView) painter(room fyne.Size) painter {
	p := painter{palette: CurrentPalette(), scale: 1}
	if v.picture.Width == 0 || room.Width == 0 {
		return p
	}
	w, h := float32(v.picture.Width), float32(v.picture.Height)
	p.scale = fyne.Min(room.Width/w, room.Height/h)
	p.offset = fyne.NewPos((room.Width-w*p.scale)/2, 0)
	return p
}

type loopRenderer struct {
	view    *LoopView
	shapes  []fyne.CanvasObject
	objects []fyne.CanvasObject
	room    fyne.Size
}

// smallest is the least scale at which the words can still be read.
const smallest = 0.82

func (r *loopRenderer) MinSize() fyne.Size {
	p := r.view.picture
	return fyne.NewSize(float32(p.Width)*smallest, float32(p.Height)*smallest)
}

func (r *loopRenderer) Layout(room fyne.Size) {
	if room != r.room {
		r.room = room
		r.update()
	}
}

func (r *loopRenderer) Refresh() {
	r.update()
	canvas.Refresh(r.view)
}

func (r *loopRenderer) update() {
	p := r.view.painter(r.room)
	r.objects = r.objects[:0]
	for _, s := range r.view.picture.Shapes {
		r.objects = append(r.objects, p.object(s))
	}
	base := fyne.CurrentApp().Settings().Theme()
	for _, e := range r.view.picture.Entries {
		f := r.view.fields[e.Point]
		if want := (fieldTheme{base, 18 * p.scale}); f.themed.Theme != fyne.Theme(want) {
			f.themed.Theme = want
			f.themed.Refresh()
		}
		p.place(f.themed, e.Field)
	}
	r.objects = append(r.objects, r.view.order...)
}

func (r *loopRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *loopRenderer) Destroy()                     {}
