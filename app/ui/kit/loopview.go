package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// LoopView paints a drawing and holds a number field at each of its entries.
// Tab and Enter go along the flow, in the drawing's order of entries.
type LoopView struct {
	Picture

	// OnLeft is called with what stands in a field when it is left, or when
	// Enter is pressed in it, if it was changed.
	OnLeft func(diagram.Point, string)
	// OnFocus is called when a field gets the focus.
	OnFocus func(diagram.Point)

	fields map[diagram.Point]*numberField
	made   map[diagram.Point]*numberField // of this layout and of those before it
	caret  diagram.Point                  // the point whose field has the focus, or ""
	order  *fyne.Container                // the fields, along the flow
	theme  *fieldTheme
	themed *container.ThemeOverride // one for all fields: the toolkit reads the fonts anew for each, and keeps them
}

// Typed is what stands in a point's field: the temperature as it counts, and
// what the gun showed, which is what a person edits.
type Typed struct{ Rest, Edit string }

// NewLoopView makes an empty view.
func NewLoopView() *LoopView {
	v := &LoopView{made: map[diagram.Point]*numberField{}, order: container.NewWithoutLayout(), theme: &fieldTheme{themeNow(), 18}}
	v.themed = container.NewThemeOverride(v.order, v.theme)
	v.self, v.overlay, v.least = v, v.place, smallest
	v.ExtendBaseWidget(v)
	return v
}

// Draw paints a picture, with what stands in each field. A field that has the
// focus keeps what is being typed. Call it on the Fyne goroutine.
func (v *LoopView) Draw(p drawing.Picture, texts map[diagram.Point]Typed) {
	if !sameEntries(v.picture.Entries, p.Entries) {
		v.makeFields(p.Entries)
	}
	v.picture = p
	for point, f := range v.fields {
		f.put(texts[point].Rest, texts[point].Edit)
	}
	v.Refresh()
}

// Focus puts the focus on a point's field.
func (v *LoopView) Focus(p diagram.Point) {
	if f, ok := v.fields[p]; ok {
		Focus(f)
	}
}

// Field is a point's field, for what goes on to it; "" is the first along the flow.
// Nil where there is none.
func (v *LoopView) Field(p diagram.Point) fyne.Focusable {
	if p == "" && len(v.picture.Entries) > 0 {
		p = v.picture.Entries[0].Point
	}
	if f, ok := v.fields[p]; ok {
		return f
	}
	return nil
}

// Inside are the fields, in their theme, which must be awake for the focus to find them.
func (v *LoopView) Inside() []fyne.CanvasObject { return []fyne.CanvasObject{v.themed} }

// Leave keeps what is being typed, as if the field had been left.
func (v *LoopView) Leave() {
	for _, f := range v.fields {
		f.leave()
	}
}

// makeFields makes the fields that no layout had before. Their theme goes with the renderer that the toolkit throws away
// after a minute out of sight, as while cases of other loops are looked at.
func (v *LoopView) makeFields(entries []drawing.Entry) {
	v.fields = make(map[diagram.Point]*numberField, len(entries))
	v.order.Objects = nil
	bare := false
	for _, e := range entries {
		f := v.made[e.Point]
		if f == nil {
			f = v.newField(e.Point)
			v.made[e.Point] = f
		}
		v.fields[e.Point] = f
		v.order.Add(f)
		f.Refresh() // what it remembers of its theme may be gone
		bare = bare || f.Theme() == themeNow()
	}
	if bare {
		v.themed.Refresh()
	}
}

func (v *LoopView) newField(p diagram.Point) *numberField {
	f := newNumberField()
	f.onLeft = func(text string) {
		if v.OnLeft != nil {
			v.OnLeft(p, text)
		}
	}
	f.onBlur = func() { v.mark("") }
	f.onFocus = func() {
		v.mark(p)
		if v.OnFocus != nil {
			v.OnFocus(p)
		}
	}
	return f
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
	if c := canvasOf(v); c != nil {
		c.Unfocus()
	}
}

// mark shows which box has the caret.
func (v *LoopView) mark(p diagram.Point) {
	v.caret = p
	v.Refresh()
}

// place lays the fields over the picture, in its scale.
func (v *LoopView) place(p painter) []fyne.CanvasObject {
	scaled := v.scaleTo(18 * p.scale)
	v.themed.Move(fyne.Position{})
	v.themed.Resize(v.Size())
	var over []fyne.CanvasObject
	for _, e := range v.picture.Entries {
		f := v.fields[e.Point]
		if scaled {
			f.Refresh()
		}
		p.place(f, e.Field)
		if e.Point == v.caret {
			over = append(over, p.object(drawing.Rect{Box: e.Box, Corner: 6, Stroke: drawing.In(drawing.Accent), StrokeWidth: 3}))
		}
	}
	return append(over, v.themed)
}

// scaleTo sets the size of what is typed, in the light now, and reports whether that is another.
func (v *LoopView) scaleTo(size float32) bool {
	if v.theme.text == size && v.theme.Theme == themeNow() {
		return false
	}
	v.theme.text, v.theme.Theme = size, themeNow()
	return true
}
