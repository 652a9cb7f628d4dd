package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// numberField is the field of a drawing's entry: bold, as big as the drawing is scaled, and with no ground or edge of its
// own, since the drawn box has both.
//
// At rest it shows the temperature as it counts; with the caret in it, what
// the gun showed, so that a correction is never made twice.
type numberField struct {
	Field
	rest, edit string
	size       float32 // of the text; 0 as of any
}

func newNumberField() *numberField {
	f := &numberField{}
	f.TextStyle.Bold = true
	f.ExtendBaseWidget(f)
	f.setUp(f)
	f.Scroll = fyne.ScrollNone // a number is short; a scroller would cast its shade
	return f
}

func (f *numberField) put(rest, edit string) {
	f.rest, f.edit = rest, edit
	if f.focused {
		f.Put(edit)
		return
	}
	f.Put(rest)
}

// scale gives the text its size.
func (f *numberField) scale(text float32) {
	if f.size != text {
		f.size = text
		f.Refresh()
	}
}

// padOf is what lies between a field's edge and its text of that size: less than in one that paints its edge.
func padOf(size float32) float32 { return 0.22 * size }

// FocusGained turns to what the gun showed.
func (f *numberField) FocusGained() {
	f.Put(f.edit)
	f.Field.FocusGained()
}

// FocusLost keeps what was typed and turns to the temperature as it counts.
func (f *numberField) FocusLost() {
	f.Field.FocusLost()
	f.Put(f.rest)
}

// MouseDown sets the caret where it is pressed.
func (f *numberField) MouseDown(e *desktop.MouseEvent) {
	as := *e
	as.Position = f.asOfAny(e.Position)
	f.Field.MouseDown(&as)
	f.Refresh()
}

// Dragged marks what is drawn over.
func (f *numberField) Dragged(e *fyne.DragEvent) {
	as := *e
	as.Position = f.asOfAny(e.Position)
	from := f.asOfAny(e.Position.Subtract(e.Dragged))
	as.Dragged = fyne.NewDelta(as.Position.X-from.X, as.Position.Y-from.Y)
	f.Field.Dragged(&as)
	f.Refresh()
}

// asOfAny is where the same letter would lie in another field: the toolkit finds letters by the size of those.
func (f *numberField) asOfAny(at fyne.Position) fyne.Position {
	if f.size == 0 {
		return at
	}
	from, to, by := padOf(f.size), theme.InnerPadding(), theme.TextSize()/f.size
	return fyne.NewPos(to+(at.X-from)*by, to+(at.Y-from)*by)
}

// CreateRenderer shows the number.
func (f *numberField) CreateRenderer() fyne.WidgetRenderer {
	drawn := &drawnOver{field: f}
	drawn.ExtendBaseWidget(drawn)
	r := &numberRenderer{laidOver{f.Field.CreateRenderer(), []fyne.CanvasObject{drawn}}, f}
	r.Refresh()
	return r
}

// numberRenderer shows an entry's text in another size. A theme of its own would do it too, but the toolkit reads the
// fonts anew for each part that is themed apart, and keeps them.
type numberRenderer struct {
	laidOver
	field *numberField
}

// text is that of the toolkit's entry: behind it lie its ground and its edge.
func (r *numberRenderer) text() fyne.CanvasObject { return r.WidgetRenderer.Objects()[2] }

// Layout gives the number its room.
func (r *numberRenderer) Layout(room fyne.Size) {
	typedAs(r.field.size, func() { r.laidOver.Layout(room) })
	if r.field.size > 0 {
		closer := theme.InnerPadding() - padOf(r.field.size)
		r.text().Move(fyne.NewPos(-closer, theme.Size(theme.SizeNameInputBorder)-closer))
	}
}

// Refresh shows the text, the caret and the mark in their size, and neither ground nor edge.
func (r *numberRenderer) Refresh() {
	typedAs(r.field.size, func() {
		r.WidgetRenderer.Refresh()
		r.text().MinSize() // the toolkit makes its letters only when they are asked for something
	})
	objects := r.WidgetRenderer.Objects()
	ground, edge := objects[0].(*canvas.Rectangle), objects[1].(*canvas.Rectangle)
	ground.FillColor, edge.StrokeColor = color.Transparent, color.Transparent
	ground.Refresh()
	edge.Refresh()
	r.Layout(r.field.Size())
}

// drawnOver hears the pointer drawn over a number, before the entry's own part does that knows one size of text alone.
type drawnOver struct {
	widget.BaseWidget
	field *numberField
}

// CreateRenderer paints nothing.
func (d *drawnOver) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(canvas.NewRectangle(color.Transparent))
}

// Dragged is the field's.
func (d *drawnOver) Dragged(e *fyne.DragEvent) { d.field.Dragged(e) }

// DragEnd is the field's.
func (d *drawnOver) DragEnd() { d.field.DragEnd() }
