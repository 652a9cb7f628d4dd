package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"
)

// Watch is a window's content that tells when a field in it refuses something, or no longer does:
// the window mustn't say that all is kept beside it.
type Watch struct {
	widget.BaseWidget
	content fyne.CanvasObject
	changed func()
}

// NewWatch watches over content.
func NewWatch(content fyne.CanvasObject, changed func()) *Watch {
	w := &Watch{content: content, changed: changed}
	w.ExtendBaseWidget(w)
	return w
}

// CreateRenderer shows the content.
func (w *Watch) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(w.content) }

// Refresh lays the content out anew: a part of it may have come or gone.
func (w *Watch) Refresh() {
	w.content.Refresh()
	w.BaseWidget.Refresh()
}

// Inside is the content.
func (w *Watch) Inside() []fyne.CanvasObject { return []fyne.CanvasObject{w.content} }

// Refusing reports whether a field that is seen in o holds what was refused.
func Refusing(o fyne.CanvasObject) bool {
	return o.Visible() && len(Refused(o)) > 0
}

// Refused are the fields in o that hold what was refused, whether o itself is seen or lies behind
// another page.
func Refused(o fyne.CanvasObject) (out []*Field) {
	if f, ok := o.(*Field); ok && f.refused {
		return []*Field{f}
	}
	for _, inner := range parts(o) {
		if inner.Visible() {
			out = append(out, Refused(inner)...)
		}
	}
	return out
}

// Told is a field's name with what is typed in it.
func (f *Field) Told() string {
	if f.title == "" {
		return f.Text
	}
	return L("window.kit.refused", Capital(f.title), f.Text)
}

// announce tells who watches over the field's window.
func (f *Field) announce() {
	if c := canvasOf(f.self); c != nil {
		if w, ok := c.Content().(*Watch); ok {
			w.changed()
		}
	}
}
