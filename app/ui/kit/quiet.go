package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// NewQuiet is a button that doesn't ask for a look; icon may be nil.
func NewQuiet(words string, icon fyne.Resource, do func()) *Button {
	b := NewButtonWithIcon(words, icon, do)
	b.Importance = widget.LowImportance
	return b
}

// Aside is a text that explains what stands beside it.
func Aside(text string) *Prose {
	return Paragraphs(Soft(text))
}

// Soft is the paragraph of an aside.
func Soft(text string) Span { return Span{Text: text, Small: true, Color: theme.ColorNamePlaceHolder} }

// SetEnabled lets some be used, or none of them.
func SetEnabled(on bool, all ...fyne.Disableable) {
	for _, one := range all {
		if on {
			one.Enable()
		} else {
			one.Disable()
		}
	}
}
