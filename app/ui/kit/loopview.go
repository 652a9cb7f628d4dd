package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

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
}

// Typed is what stands in a point's field: the temperature as it counts, and
// what the gun showed, which is what a person edits.
type Typed struct{ Rest, Edit string }

// NewLoopView makes an empty view.
func NewLoopView() *LoopView {
	v := &LoopView{made: map[diagram.Point]*numberField{}}
	v.self, v.overlay, v.least = v, v.place, smallest
	v.ExtendBaseWidget(v)
	return v
}

// Draw paints a picture, with what stands in each field. A field that has the
// focus keeps what is being typed. Call it on the Fyne goroutine.
func (v *LoopView) Draw(p drawing.Picture, texts map[diagram.Point]Typed) {
	same := func(a, b drawing.Entry) bool { return a.Point == b.Point }
	if !slices.EqualFunc(v.picture.Entries, p.Entries, same) {
		v.makeFields(p.Entries)
	}
	v.picture = p
	for _, e := range p.Entries {
		text := texts[e.Point]
		v.fields[e.Point].put(beforeUnit(text.Rest, e), text.Edit)
	}
	v.Refresh()
}

// numberSize is that of a number in a drawing, in the drawing's units.
const numberSize = 18

// beforeUnit shortens what would run over the unit beside it: what was refused may be anything. With the caret in the field
// all of it is there.
func beforeUnit(text string, e drawing.Entry) string {
	room := float32(e.Field[2]) - padOf(numberSize)
	return Cut(text, room*theme.TextSize()/numberSize)
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

// Caret is the point whose field has the focus, or "".
func (v *LoopView) Caret() diagram.Point { return v.caret }

// Inside are the fields, along the flow.
func (v *LoopView) Inside() []fyne.CanvasObject {
	var list []fyne.CanvasObject
	for _, e := range v.picture.Entries {
		list = append(list, v.fields[e.Point])
	}
	return list
}

// Leave keeps what is being typed, as if the field had been left.
func (v *LoopView) Leave() {
	for _, f := range v.fields {
		f.Leave()
	}
}

// makeFields makes the fields that no layout had before.
func (v *LoopView) makeFields(entries []drawing.Entry) {
	v.fields = make(map[diagram.Point]*numberField, len(entries))
	for _, e := range entries {
		f := v.made[e.Point]
		if f == nil {
			f = v.newField(e.Point)
			v.made[e.Point] = f
		}
		v.fields[e.Point] = f
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

// place lays the fields over the picture, in its scale, and an edge around the one that has the caret.
func (v *LoopView) place(p painter) []fyne.CanvasObject {
	var edge, fields []fyne.CanvasObject
	for _, e := range v.picture.Entries {
		f := v.fields[e.Point]
		p.place(f, e.Field)
		f.scale(numberSize * p.scale)
		if e.Point == v.caret {
			edge = append(edge, p.object(drawing.Rect{Box: e.Box, Corner: 6, Stroke: drawing.In(drawing.Accent), StrokeWidth: 3}))
		}
		fields = append(fields, f)
	}
	return append(edge, fields...)
}
