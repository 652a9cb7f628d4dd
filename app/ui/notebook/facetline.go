package notebook

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/drawing"
)

// facetLine is a word of a field with its number; a tap filters by it.
type facetLine struct {
	widget.BaseWidget
	field  cases.Field
	word   string
	tapped func()
	used   bool
	ground *kit.Ground
	name   *widget.Label
	count  *widget.Label
}

var (
	_ fyne.Tappable      = (*facetLine)(nil)
	_ desktop.Cursorable = (*facetLine)(nil)
)

func newFacetLine(f cases.Field, c cases.Count, tapped func()) *facetLine {
	l := &facetLine{field: f, word: c.Word, tapped: tapped, ground: kit.NewGround(drawing.Rail, "", 4)}
	l.name, l.count = kit.Small(wordName(f, c.Word)), kit.Caption(strconv.Itoa(c.N))
	l.name.Importance = widget.MediumImportance
	l.ExtendBaseWidget(l)
	return l
}

// CreateRenderer puts the number behind the name, on a ground that tells whether the
// filter is used.
func (l *facetLine) CreateRenderer() fyne.WidgetRenderer {
	return widget.NewSimpleRenderer(container.NewStack(l.ground, container.NewBorder(nil, nil, nil, l.count, l.name)))
}

// Tapped filters by the word, or no longer.
func (l *facetLine) Tapped(*fyne.PointEvent) { l.tapped() }

// Cursor is a hand: it can be clicked.
func (l *facetLine) Cursor() desktop.Cursor { return desktop.PointerCursor }

// use marks whether the search holds the filter.
func (l *facetLine) use(on bool) {
	if l.used == on {
		return
	}
	l.used = on
	fill := drawing.Rail
	if on {
		fill = drawing.Chosen
	}
	l.ground.Ink(fill, "", 0)
	l.name.TextStyle.Bold = on
	l.name.Refresh()
}
