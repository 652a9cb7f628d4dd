package kit

import (
	"strings"
	"unicode"
	"unicode/utf8"

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

// LikelyLine shows a cause, and under it its probability, as a bar and in words: beside each other
// they would cut the longest names of causes.
type LikelyLine struct {
	widget.BaseWidget
	name, chance *widget.Label
	under        *fyne.Container
	meter        *Meter
}

// NewLikelyLine makes an empty line.
func NewLikelyLine() *LikelyLine {
	l := &LikelyLine{name: widget.NewLabel(""), chance: widget.NewLabel(""), meter: NewMeter()}
	l.name.Truncation = fyne.TextTruncateEllipsis
	l.chance.TextStyle.Bold, l.chance.Alignment = true, fyne.TextAlignTrailing
	widest := widget.NewLabelWithStyle(Chance(0), fyne.TextAlignTrailing, l.chance.TextStyle)
	l.under = container.NewBorder(nil, nil, nil, Wide(widest.MinSize().Width, l.chance), InLine(l.meter)) // so that bars are alike
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer puts the probability under the name.
func (l *LikelyLine) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.New(Tight{More: 8}, l.name, l.under))
}

// Put shows a cause.
func (l *LikelyLine) Put(c Likely) {
	l.name.SetText(Capital(c.Name))
	l.chance.SetText(Chance(c.Chance))
	l.under.Show()
	l.meter.Put(c.Chance)
}

// PutRest shows several together, without a bar.
func (l *LikelyLine) PutRest(name string, chance float64) {
	l.name.SetText(name + " " + Chance(chance))
	l.chance.SetText("")
	l.under.Hide()
}

// Text is what the line says.
func (l *LikelyLine) Text() string { return strings.TrimSpace(l.name.Text + " " + l.chance.Text) }

// Chance is a probability in words.
func Chance(p float64) string { return say.English().Say(diagnosis.Chance(p)) }

// Capital begins a text with a capital letter, unless its first word is written
// as pH or km/h is, or is a file's name.
func Capital(s string) string {
	word, _, _ := strings.Cut(s, " ")
	first, size := utf8.DecodeRuneInString(s)
	second, _ := utf8.DecodeRuneInString(s[size:])
	if s == "" || unicode.IsUpper(second) || strings.ContainsAny(strings.TrimRight(word, ".:"), "./") {
		return s
	}
	return string(unicode.ToUpper(first)) + s[size:]
}
