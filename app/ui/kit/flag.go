package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"loopbook/cases/evidence"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// FlagCard is a finding with its reasons.
func FlagCard(f evidence.Flag, u units.Set) fyne.CanvasObject {
	by := say.English().With(u)
	body := []Span{{Text: by.Say(f.Text), Bold: f.Severity == evidence.Act}}
	for _, b := range by.All(f.Because) {
		body = append(body, Span{Text: b, Small: true, Color: theme.ColorNamePlaceHolder})
	}
	if f.Caution() {
		return Card(string(evidence.Act), L("window.flag.caution"), body...)
	}
	return Card(string(f.Severity), SeverityWord(f.Severity), body...)
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
