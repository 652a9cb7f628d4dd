package asking

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// SaveFile asks where a file is kept, under the name that is proposed, and with one of the endings
// where some are named. The file that is taken isn't touched yet.
func (a *Asker) SaveFile(name string, endings []string, take func(path string)) {
	touchLate()
	d := dialog.NewFileSave(func(f fyne.URIWriteCloser, err error) {
		switch {
		case err != nil:
			a.Tell(err)
		case f != nil:
			take(f.URI().Path())
		}
	}, a.over)
	if len(endings) > 0 {
		d.SetFilter(storage.NewExtensionFileFilter(endings))
	}
	d.SetFileName(name)
	d.Resize(filesSize())
	a.Show(d)
	canvas := a.over.Canvas()
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
