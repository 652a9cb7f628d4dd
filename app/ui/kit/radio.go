package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// Radio is a few words of which one is chosen. The toolkit's own keeps its keys to itself.
type Radio struct {
	widget.BaseWidget
	Selected  string
	OnChanged func(string) // may be nil

	boxes []*Check
	quiet bool
	shown fyne.CanvasObject
}

// NewRadio makes the choice of the words; none is chosen yet.
func NewRadio(words []string, changed func(string)) *Radio {
	r := &Radio{OnChanged: changed}
	list := container.New(layout.NewCustomPaddedVBoxLayout(0)) // as close as the toolkit's
	for _, w := range words {
		box := NewCheck(w, func(bool) { r.SetSelected(w) })
		r.boxes = append(r.boxes, box)
		list.Add(box)
	}
	r.shown = container.NewThemeOverride(list, radioTheme{})
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer shows the words under each other.
func (r *Radio) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(r.shown) }

// Inside is what the choice holds.
func (r *Radio) Inside() []fyne.CanvasObject { return []fyne.CanvasObject{r.shown} }

// SetSelected chooses a word and tells, if another was chosen.
func (r *Radio) SetSelected(word string) {
	if r.quiet {
		return
	}
	r.quiet = true
	for _, b := range r.boxes {
		b.SetChecked(b.Text == word)
	}
	r.quiet = false
	if word == r.Selected {
		return
	}
	r.Selected = word
	if r.OnChanged != nil {
		r.OnChanged(word)
	}
}

// radioTheme paints ticks as what excludes each other, in the light now.
type radioTheme struct{}

func themeNow() fyne.Theme { return fyne.CurrentApp().Settings().Theme() }

// Color is the app's.
func (radioTheme) Color(n fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	return themeNow().Color(n, v)
}

// Font is the app's.
func (radioTheme) Font(s fyne.TextStyle) fyne.Resource { return themeNow().Font(s) }

// Size is the app's.
func (radioTheme) Size(n fyne.ThemeSizeName) float32 { return themeNow().Size(n) }

// Icon is round.
func (radioTheme) Icon(n fyne.ThemeIconName) fyne.Resource {
	switch n {
	case theme.IconNameCheckButton:
		n = theme.IconNameRadioButton
	case theme.IconNameCheckButtonChecked:
		n = theme.IconNameRadioButtonChecked
	case theme.IconNameCheckButtonFill:
		n = theme.IconNameRadioButtonFill
	}
	return themeNow().Icon(n)
}
