package kit

import (
	"strings"
	"unicode"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"loopbook/cases/diagnosis"
	"loopbook/diagram/say"
)

// Likely is a cause in words with its probability.
type Likely struct {
	Name   string
	Chance float64
}

// LikelyLine shows a cause with its probability, in words and as a bar.
type LikelyLine struct {
	widget.BaseWidget
	name, chance *widget.Label
	bar          *fyne.Container
	meter        *Meter
}

// NewLikelyLine makes an empty line.
func NewLikelyLine() *LikelyLine {
	l := &LikelyLine{name: widget.NewLabel(""), chance: widget.NewLabel(""), meter: NewMeter()}
	l.name.Truncation, l.chance.TextStyle.Bold = fyne.TextTruncateEllipsis, true
	l.bar = container.NewPadded(l.meter)
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer puts the bar under the words.
func (l *LikelyLine) CreateRenderer() fyne.WidgetRenderer {
	words := container.NewBorder(nil, nil, nil, l.chance, l.name)
	return widget.NewSimpleRenderer(container.New(Tight{More: 2}, words, l.bar))
}

// Put shows a cause.
func (l *LikelyLine) Put(c Likely) {
	l.PutRest(Capital(c.Name), c.Chance)
	l.bar.Show()
	l.meter.Put(c.Chance)
}

// PutRest shows several together, without a bar.
func (l *LikelyLine) PutRest(name string, chance float64) {
	l.name.SetText(name)
	l.chance.SetText(Chance(chance))
	l.bar.Hide()
}

// Text is what the line says.
func (l *LikelyLine) Text() string { return l.name.Text + " " + l.chance.Text }

// Chance is a probability in words.
func Chance(p float64) string { return say.English().Say(diagnosis.Chance(p)) }

// Capital begins a text with a capital letter, unless its first word is written
// pH or km/h is.
func Capital(s string) string {
	first, _, _ := strings.Cut(s, " ")
	if s == "" || (len(s) > 1 && unicode.IsUpper(rune(s[1]))) || strings.Contains(first, "/") {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}
