// Package notebook is the list of cases at the window's left: search as you
// type, filters, and a line for each case.
package notebook

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// View is the list. It shows what it is given and tells what is asked for.
type View struct {
	// OnQuery is called when the search or a filter has changed.
	OnQuery func(cases.Query)
	// OnOpen is called with the row of the case to open.
	OnOpen func(row int)
	// OnNew is called to begin a case.
	OnNew func()
	// Row gives a line of the answer. While it isn't there yet it reports
	// false, and the view waits for a Refresh.
	Row func(row int) (cases.Summary, bool)

	query   cases.Query
	filter  filter
	total   int
	open    int // the row that is marked; -1: none
	quiet   bool
	name    *widget.Label
	search  *kit.Field
	list    *widget.List
	count   *widget.Label
	nothing *widget.RichText
	states  *widget.Select
	cause   *kit.Choice[cases.Cause]
	layout  *kit.Choice[string]
	stage   *kit.Choice[cases.Stage]
	years   *kit.Field
	filters fyne.CanvasObject
	more    *widget.Button
	content fyne.CanvasObject
	now     func() time.Time
}

// New makes the list; now gives the time that dates are written against.
func New(now func() time.Time) *View {
	v := &View{now: now, open: -1}
	v.search = kit.NewField("Search cases", nil)
	v.search.OnChanged = func(text string) { v.ask(func(q *cases.Query) { q.Text = text }) }
	v.count = kit.Small("")
	v.nothing = kit.Paragraphs()
	v.nothing.Hide()
	v.list = widget.NewList(
		func() int { return v.total },
		func() fyne.CanvasObject { return newRow() },
		v.showRow,
	)
	v.list.HideSeparators = false
	v.list.OnSelected = func(id widget.ListItemID) {
		v.open = id
		if !v.quiet && v.OnOpen != nil {
			v.OnOpen(id)
		}
	}
	v.makeFilters()
	start := widget.NewButtonWithIcon("New case", theme.ContentAddIcon(), func() {
		if v.OnNew != nil {
			v.OnNew()
		}
	})
	start.Importance = widget.HighImportance
	v.more = widget.NewButtonWithIcon("Filters", theme.MenuDropDownIcon(), v.toggleFilters)
	v.more.Importance = widget.LowImportance
	v.name = kit.Heading("Loopbook")
	head := container.NewVBox(
		container.NewHBox(container.NewCenter(mark()), v.name),
		v.search,
		container.New(kit.Shares{84, 92}, v.states, v.more),
		v.filters,
		v.count,
	)
	body := container.NewStack(v.list, container.NewVBox(v.nothing))
	v.content = kit.On(kit.NewGround(drawing.Rail, "", 0), container.NewBorder(head, start, nil, nil, body))
	return v
}

// SetName says which notebook is open.
func (v *View) SetName(name string) { v.name.SetText(name) }

// Content is the view's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Show sets how many cases the answer has, and which row is open (-1: none).
func (v *View) Show(total, open int) {
	v.total = total
	v.count.SetText(counted(total))
	v.count.Hidden = total == 0
	v.nothing.Hide()
	if total == 0 {
		v.nothing.Show()
		kit.SetParagraphs(v.nothing, v.why()...)
	}
	if open != v.open {
		v.quiet = true
		v.list.UnselectAll()
		if open >= 0 {
			v.list.Select(open)
		}
		v.quiet, v.open = false, open
	}
	v.list.Refresh()
}

// FocusSearch puts the caret into the search.
func (v *View) FocusSearch() {
	if c := fyne.CurrentApp().Driver().CanvasForObject(v.search); c != nil {
		c.Focus(v.search)
	}
}

// Refresh shows rows that have come in since.
func (v *View) Refresh() { v.list.Refresh() }

func (v *View) showRow(id widget.ListItemID, o fyne.CanvasObject) {
	if v.Row == nil {
		return
	}
	if s, ok := v.Row(id); ok {
		o.(*row).show(s, v.now())
	}
}

func (v *View) why() []kit.Span {
	if v.query.IsZero() {
		return []kit.Span{{Text: "No cases yet.", Bold: true}, {Text: "They will stand here, newest on top.", Small: true, Color: theme.ColorNamePlaceHolder}}
	}
	return []kit.Span{{Text: "Nothing found.", Bold: true}, {Text: "Fewer words or fewer filters find more.", Small: true, Color: theme.ColorNamePlaceHolder}}
}

func (v *View) ask(change func(*cases.Query)) {
	if v.quiet {
		return
	}
	change(&v.query)
	v.query.Where = v.filter.conditions()
	if v.OnQuery != nil {
		v.OnQuery(v.query)
	}
}

func counted(n int) string {
	if n == 1 {
		return "1 case"
	}
	return fmt.Sprintf("%d cases", n)
}

func (v *View) toggleFilters() {
	if v.filters.Visible() {
		v.filters.Hide()
		v.more.SetIcon(theme.MenuDropDownIcon())
		return
	}
	v.filters.Show()
	v.more.SetIcon(theme.MenuDropUpIcon())
}

func (v *View) makeFilters() {
	v.states = widget.NewSelect([]string{"All", "Open", "Settled"}, func(s string) {
		v.filter.state = map[string]string{"Open": cases.StageOpen, "Settled": cases.StageClosed}[s]
		v.ask(func(*cases.Query) {})
	})
	v.quiet = true
	v.states.SetSelectedIndex(0)
	v.quiet = false
	v.cause = kit.NewChoice(cases.Words[cases.Cause](), cases.Cause.Name, func(c cases.Cause) {
		v.filter.cause = string(c)
		v.ask(func(*cases.Query) {})
	})
	v.layout = kit.NewChoice(kit.LayoutIDs(), kit.LayoutTitle, func(id string) {
		v.filter.layout = id
		v.ask(func(*cases.Query) {})
	})
	v.stage = kit.NewChoice(cases.Words[cases.Stage](), cases.Stage.Name, func(s cases.Stage) {
		v.filter.stage = string(s)
		v.ask(func(*cases.Query) {})
	})
	v.cause.PlaceHolder, v.layout.PlaceHolder, v.stage.PlaceHolder = "any cause", "any layout", "any stage"
	for _, s := range []*widget.Select{v.cause.Select, v.layout.Select, v.stage.Select} {
		s.Options[0] = s.PlaceHolder
	}
	v.years = kit.NewField("year, or 2010-2015", nil)
	v.years.OnChanged = func(text string) {
		from, to, err := period(text)
		v.years.SetValidationError(err)
		v.filter.from, v.filter.to = from, to
		v.ask(func(*cases.Query) {})
	}
	clear := widget.NewButton("Clear filters", v.clear)
	clear.Importance = widget.LowImportance
	v.filters = container.NewVBox(v.cause.Select, v.layout.Select, v.stage.Select, v.years, clear)
	v.filters.Hide()
}

func (v *View) clear() {
	v.quiet = true
	v.cause.Put("")
	v.layout.Put("")
	v.stage.Put("")
	v.years.SetText("")
	v.states.SetSelectedIndex(0)
	v.quiet = false
	v.filter = filter{}
	v.ask(func(*cases.Query) {})
}

// mark is the program's own sign: two loops that share a side.
func mark() fyne.CanvasObject {
	loop := func(x float64, stroke drawing.Role) drawing.Shape {
		return drawing.Rect{Box: diagram.Box{x, 2, 11, 18}, Corner: 5, Stroke: drawing.In(stroke), StrokeWidth: 3}
	}
	return kit.NewPicture(26, 22, loop(2, drawing.Accent), loop(13, drawing.Accent),
		drawing.Disc{Center: diagram.XY{13, 11}, Radius: 3, Fill: drawing.In(drawing.LookSign)})
}

// filter is what the choices under the search ask for.
type filter struct {
	state, cause, layout, stage string
	from, to                    time.Time
}

func (f filter) conditions() []cases.Condition {
	var out []cases.Condition
	for _, c := range []struct {
		field cases.Field
		word  string
	}{{cases.ByStage, f.state}, {cases.ByCause, f.cause}, {cases.ByLayout, f.layout}, {cases.ByStage, f.stage}} {
		if c.word != "" {
			out = append(out, cases.Condition{Field: c.field, Words: []string{c.word}})
		}
	}
	if !f.from.IsZero() || !f.to.IsZero() {
		out = append(out, cases.Between(f.from, f.to))
	}
	return out
}
