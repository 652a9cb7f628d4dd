package kit

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
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
		box.round = true
		r.boxes = append(r.boxes, box)
		list.Add(box)
	}
	r.shown = list
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

// round shows a tick as one of those that exclude each other. A theme of its own would do it too, but the toolkit reads
// the fonts anew for each part that is themed apart, and keeps them.
type round struct {
	fyne.WidgetRenderer
	box          *widget.Check
	ground, icon *canvas.Image
}

// newRound takes the toolkit's picture of a tick: its ground comes before its sign.
func newRound(of fyne.WidgetRenderer, box *widget.Check) *round {
	r := &round{WidgetRenderer: of, box: box}
	for _, o := range of.Objects() {
		image, ok := o.(*canvas.Image)
		switch {
		case !ok:
		case r.ground == nil:
			r.ground = image
		default:
			r.icon = image
		}
	}
	r.paint()
	return r
}

// Refresh paints the box as it is.
func (r *round) Refresh() {
	r.WidgetRenderer.Refresh()
	r.paint()
}

func (r *round) paint() {
	icon, edge, ground := theme.IconNameRadioButton, theme.ColorNameInputBorder, theme.ColorNameInputBackground
	if r.box.Checked {
		icon, edge, ground = theme.IconNameRadioButtonChecked, theme.ColorNamePrimary, theme.ColorNameBackground
	}
	for _, part := range []struct {
		image  *canvas.Image
		icon   fyne.ThemeIconName
		colour fyne.ThemeColorName
	}{{r.ground, theme.IconNameRadioButtonFill, ground}, {r.icon, icon, edge}} {
		res := theme.NewThemedResource(theme.Icon(part.icon))
		res.ColorName = part.colour
		part.image.Resource = res
		part.image.Refresh()
	}
}
