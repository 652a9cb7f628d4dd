package verdict

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// words stand beside a button and do what it does: who is in a hurry presses them.
type words struct {
	widget.BaseWidget
	text *kit.Prose
	do   func()
}

func newWords(text kit.Span, do func()) *words {
	w := &words{text: kit.Paragraphs(text), do: do}
	w.ExtendBaseWidget(w)
	return w
}

// CreateRenderer shows the words.
func (w *words) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(w.text) }

// Tapped does what the button does.
func (w *words) Tapped(*fyne.PointEvent) { w.do() }
