package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// aside is a text that explains what stands beside it.
func aside(text string) fyne.CanvasObject {
	return kit.Paragraphs(kit.Span{Text: text, Small: true, Color: theme.ColorNamePlaceHolder})
}

// lesson is what a trainer wrote to a case, in Markdown.
func lesson(text string) fyne.CanvasObject {
	told := widget.NewRichTextFromMarkdown(text)
	told.Wrapping = fyne.TextWrapWord
	return kit.Section(kit.L("window.practice.lesson"), told)
}

// quiet is a button that doesn't ask for a look; icon may be nil.
func quiet(words string, icon fyne.Resource, do func()) *kit.Button {
	b := kit.NewButtonWithIcon(words, icon, do)
	b.Importance = widget.LowImportance
	return b
}

func call(do func()) {
	if do != nil {
		do()
	}
}

func tell[T any](do func(T), what T) {
	if do != nil {
		do(what)
	}
}
