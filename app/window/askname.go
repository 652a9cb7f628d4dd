package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// askName asks where a file is kept, under the name that is proposed.
func askName(over fyne.Window, d *dialog.FileDialog, name string) {
	d.SetFileName(name)
	d.Resize(fyne.NewSize(900, 600)) // a name is long, and cut in the toolkit's own size
	ask(over, d, func() {})
	canvas := over.Canvas()
	if theirs, ok := canvas.Focused().(*widget.Entry); ok {
		canvas.Focus(ourName(canvas.Overlays().Top(), theirs, name))
	}
}

// ourName puts a field of the kit where the toolkit has its entry for the name, which keeps Escape
// to itself. What is done in one is done in the other: the toolkit reads its own.
func ourName(in fyne.CanvasObject, theirs *widget.Entry, name string) fyne.Focusable {
	at := scrollOf(in, theirs)
	if at == nil {
		return theirs
	}
	f := kit.NewField("", nil)
	f.Put(name)
	f.OnSubmitted = theirs.OnSubmitted
	f.OnChanged = theirs.SetText
	checked := theirs.OnChanged
	theirs.OnChanged = func(text string) {
		checked(text)
		f.SetText(text)
	}
	at.Content = f
	at.Refresh()
	return f
}

// scrollOf is what scrolls the object itself; nil: nothing in there does.
func scrollOf(in, o fyne.CanvasObject) *container.Scroll {
	var parts []fyne.CanvasObject
	switch in := in.(type) {
	case *container.Scroll:
		if in.Content == o {
			return in
		}
	case *widget.PopUp:
		parts = []fyne.CanvasObject{in.Content}
	case *fyne.Container:
		parts = in.Objects
	}
	for _, part := range parts {
		if s := scrollOf(part, o); s != nil {
			return s
		}
	}
	return nil
}
