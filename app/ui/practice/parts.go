package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// lesson is what a trainer wrote to a case, in Markdown.
func lesson(text string) fyne.CanvasObject {
	told := widget.NewRichTextFromMarkdown(text)
	told.Wrapping = fyne.TextWrapWord
	return kit.Section(kit.L("window.practice.lesson"), told)
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
