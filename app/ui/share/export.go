// Package share is the screens on which cases leave the notebook and come in: what
// goes and what stays of one that is shown to strangers, and conflicts side by side.
package share

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Scope is which cases leave.
type Scope int

// The scopes.
const (
	This  Scope = iota // the open case
	Shown              // those that the list shows
	All                // the whole notebook
	Table              // those that the list shows, as a table
)

// Line is one thing that goes or stays.
type Line struct{ Where, Was, Now string }

// Preview is what goes and what stays of the open case.
type Preview struct{ Goes, Stays []Line }

// Wish is what a person has chosen.
type Wish struct {
	Scope     Scope
	Anonymous bool
	Hide      string // further words, with commas between
}

// Export is the choice of what leaves, and how.
type Export struct {
	// OnWish is called when something else is wanted: the preview is to be made anew.
	OnWish func(Wish)

	wish    Wish
	preview *fyne.Container
	content fyne.CanvasObject
}

// NewExport makes the choice; the scopes are named by the words given, in their order.
func NewExport(scopes []string) *Export {
	e := &Export{preview: container.NewVBox()}
	which := kit.NewRadio(scopes, nil)
	which.SetSelected(scopes[0])
	which.OnChanged = func(word string) {
		for i, w := range scopes {
			if w == word {
				e.wish.Scope = Scope(i)
			}
		}
		e.tell()
	}
	hide := e.hide()
	hide.Hide()
	hidden := kit.NewCheck(kit.L("window.share.anonymous"), func(on bool) {
		e.wish.Anonymous = on
		kit.SetVisible(on, hide)
		e.tell()
	})
	top := container.New(kit.Shares{1, 1}, which, container.NewVBox(hidden, hide))
	e.content = container.NewBorder(top, nil, nil, nil, container.NewVScroll(e.preview))
	return e
}

// NewTaught is the choice of what an anonymous copy of the open case is to hide besides.
func NewTaught() *Export {
	e := &Export{wish: Wish{Anonymous: true}, preview: container.NewVBox()}
	e.content = container.NewBorder(e.hide(), nil, nil, nil, container.NewVScroll(e.preview))
	return e
}

// hide is the field for further words that mustn't be read.
func (e *Export) hide() *kit.Field {
	f := kit.NewField(kit.L("window.share.hide"), nil)
	f.OnChanged = func(text string) {
		e.wish.Hide = text
		e.tell()
	}
	return f
}

// Content is the widget.
func (e *Export) Content() fyne.CanvasObject { return e.content }

// Wish is what is chosen now.
func (e *Export) Wish() Wish { return e.wish }

func (e *Export) tell() {
	if e.OnWish != nil {
		e.OnWish(e.wish)
	}
}

// Show shows a preview; text stands over it, or alone.
func (e *Export) Show(text string, p Preview) {
	e.preview.RemoveAll()
	e.preview.Add(kit.Aside(text))
	e.part(kit.L("window.share.goes", len(p.Goes)), p.Goes)
	e.part(kit.L("window.share.stays", len(p.Stays)), p.Stays)
	e.preview.Refresh()
}

func (e *Export) part(title string, lines []Line) {
	if len(lines) == 0 {
		return
	}
	e.preview.Add(kit.Heading(title))
	for _, l := range lines {
		e.preview.Add(container.New(kit.Shares{190, 300, 240}, kit.Small(l.Where), small(l.Was, widget.MediumImportance), small(l.Now, widget.SuccessImportance)))
	}
}

func small(text string, ink widget.Importance) fyne.CanvasObject {
	l := widget.NewLabel(text)
	l.SizeName, l.Wrapping, l.Importance = theme.SizeNameCaptionText, fyne.TextWrapWord, ink
	return l
}
