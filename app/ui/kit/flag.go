package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/cases/evidence"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// FlagCard is a finding with its reasons.
func FlagCard(f evidence.Flag, u units.Set) fyne.CanvasObject {
	by := say.English().With(u)
	if f.Caution() {
		return cautionCard(by.Say(f.Text))
	}
	body := []Span{{Text: by.Say(f.Text), Bold: f.Severity == evidence.Act}}
	for _, b := range by.All(f.Because) {
		body = append(body, Span{Text: b, Small: true, Color: theme.ColorNamePlaceHolder})
	}
	return Card(string(f.Severity), SeverityWord(f.Severity), body...)
}

// cautionCard says what can hurt in so few lines that it can stand before every finding: with its reasons, which
// are the same in each case and stand on paper, it was higher than what it stood before.
func cautionCard(text string) fyne.CanvasObject {
	look := lookOf(string(evidence.Act))
	body := Paragraphs(Span{Text: text}, Span{Text: L("window.flag.caution-hands"), Small: true})
	sign := container.NewVBox(container.NewStack(widget.NewLabel(""), container.NewCenter(Sign(string(evidence.Act)))))
	return On(NewGround(look.fill, look.edge, 6), container.NewBorder(nil, nil, sign, nil, body))
}

// SeverityWord says what a finding asks for.
func SeverityWord(s evidence.Severity) string {
	switch s {
	case evidence.Act:
		return L("window.flag.act")
	case evidence.Look:
		return L("window.flag.look")
	}
	return L("window.flag.note")
}
