// Package notebook is the list of cases at the window's left: one line to search in,
// with words and filters, and a line for each case.
package notebook

import (
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/query"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// View is the list. It shows what it is given and tells what is asked for. The text in
// the search is all that is asked: a filter that is clicked is written there.
type View struct {
	// OnSearch is called with the text when it has changed.
	OnSearch func(text string)
	// OnOpen is called with the row of the case to open.
	OnOpen func(row int)
	// OnNew is called to begin a case.
	OnNew func()
	// OnFilters is called when the filters come into sight: their counts are wanted.
	OnFilters func()
	// OnSave keeps the search; OnRename and OnForget are of a kept one.
	OnSave   func(text string)
	OnRename func(name string)
	OnForget func(name string)
	// Row gives a line of the answer. While it isn't there yet it reports
	// false, and the view waits for a Refresh.
	Row func(row int) (cases.Summary, bool)
	// Snippet tells where the words stand in a case; false where nowhere worth telling.
	Snippet func(id string) (cases.Snippet, bool)

	total   int
	open    int // the row that is marked; -1: none
	quiet   bool
	name    *widget.Label
	search  *kit.Field
	problem *widget.Label // what in the text can't be used, or how it was read
	list    *kit.List
	count   *widget.Label
	nothing *kit.Prose
	sort    *kit.Select
	saved   *saved
	facets  *facets
	more    *kit.Button
	frame   *fyne.Container
	content fyne.CanvasObject
	now     func() time.Time
}

// New makes the list; now gives the time that dates are written against.
func New(now func() time.Time) *View {
	v := &View{now: now, open: -1}
	v.search = kit.NewField(kit.L("window.notebook.search"), nil)
	v.search.OnChanged = func(string) { v.ask() }
	v.problem = widget.NewLabel("")
	v.problem.SizeName, v.problem.Wrapping, v.problem.Importance = theme.SizeNameCaptionText, fyne.TextWrapWord, widget.WarningImportance
	v.problem.Hide()
	v.count = kit.Small("")
	v.nothing = kit.Paragraphs()
	v.nothing.Hide()
	v.list = kit.NewList(
		func() int { return v.total },
		func() fyne.CanvasObject { return newRow() },
		v.showRow,
	)
	v.list.OnSelected = func(id widget.ListItemID) {
		v.open = id
		if !v.quiet && v.OnOpen != nil {
			v.OnOpen(id)
		}
	}
	v.search.After = v.firstHit
	v.makeSort()
	v.facets = newFacets(v.toggle, func() float32 { return v.frame.Size().Height })
	v.saved = newSaved(v)
	v.more = kit.NewQuiet(kit.L("window.notebook.filters"), theme.MenuDropDownIcon(), v.toggleFilters)
	start := kit.NewButtonWithIcon(kit.L("window.notebook.new"), theme.ContentAddIcon(), func() { call(v.OnNew) })
	start.Importance = widget.HighImportance
	v.name = kit.Heading("Loopbook")
	head := container.NewVBox(
		container.NewHBox(container.NewCenter(mark()), v.name),
		container.NewBorder(nil, nil, nil, v.saved.button, v.search),
		v.problem,
		container.New(kit.Shares{100, 92}, v.sort, v.more),
		v.facets.content,
		v.count,
	)
	body := container.NewStack(v.list, container.NewVBox(v.nothing))
	v.frame = kit.Framed(head, start, nil, nil, body)
	v.content = kit.On(kit.NewGround(drawing.Rail, "", 0), v.frame)
	return v
}

func call(do func()) {
	if do != nil {
		do()
	}
}

// SetName says which notebook is open.
func (v *View) SetName(name string) { v.name.SetText(name) }

// Content is the view's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Text is what stands in the search.
func (v *View) Text() string { return v.search.Text }

// SetText searches for something, as if it had been typed.
func (v *View) SetText(text string) { v.search.SetText(text) }

// Show sets how many cases the answer has, which row is open (-1: none), and the
// words that were looked for in place of those typed.
func (v *View) Show(total, open int, readAs string) {
	v.total = total
	v.showCount()
	v.count.Hidden = total == 0
	v.nothing.Hide()
	if total == 0 {
		v.nothing.Show()
		kit.SetParagraphs(v.nothing, v.why()...)
	}
	v.tell(readAs)
	v.frame.Refresh() // the head is higher or lower by its lines
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

// showCount says how many cases there are, and of which kept search.
func (v *View) showCount() {
	text := kit.L("window.notebook.count", v.total)
	if name := v.saved.named(v.search.Text); name != "" {
		text = kit.L("window.notebook.count-kept", name, v.total)
	}
	v.count.SetText(text)
}

// tell says what in the text can't be used, or else how it was read.
func (v *View) tell(readAs string) {
	text := ""
	for _, p := range query.Parse(v.search.Text, time.Local).Problems {
		text = problemWords(p)
	}
	if text == "" && readAs != "" {
		text = kit.L("window.notebook.read-as", readAs)
	}
	v.problem.SetText(text)
	kit.Reveal(v.problem, text != "", v.frame.Size().Width)
}

// ToTop shows the first of the lines, wherever the open case stands.
func (v *View) ToTop() { v.list.ScrollToTop() }

// firstHit is what Enter in the search goes on to: the list, where it has a line.
func (v *View) firstHit() fyne.Focusable {
	if v.total == 0 {
		return nil
	}
	return v.list
}

// FocusSearch puts the caret into the search.
func (v *View) FocusSearch() { kit.Focus(v.search) }

// Refresh shows rows that have come in since.
func (v *View) Refresh() { v.list.Refresh() }

func (v *View) showRow(id widget.ListItemID, o fyne.CanvasObject) {
	if v.Row == nil {
		return
	}
	s, ok := v.Row(id)
	if !ok {
		return
	}
	var found cases.Snippet
	if v.Snippet != nil {
		found, _ = v.Snippet(s.ID)
	}
	o.(*row).show(s, found, v.now())
}

func (v *View) why() []kit.Span {
	title, text := kit.L("window.notebook.none"), kit.L("window.notebook.none-text")
	if v.search.Text != "" {
		title, text = kit.L("window.notebook.nothing"), kit.L("window.notebook.nothing-text")
	}
	return []kit.Span{{Text: title, Bold: true}, {Text: text, Small: true, Color: theme.ColorNamePlaceHolder}}
}

func (v *View) ask() {
	v.showSort()
	v.facets.mark(v.search.Text)
	if v.OnSearch != nil {
		v.OnSearch(v.search.Text)
	}
}

func (v *View) makeSort() {
	v.sort = kit.NewSelect(nil, func(string) {
		by := v.sorts()[v.sort.SelectedIndex()]
		if by == v.sorts()[0] {
			by = cases.Best // without words that is the newest first, and needs no word
		}
		v.SetText(query.SortBy(v.search.Text, by))
	})
	v.showSort()
}

// sorts are the orders that a person can choose from: only words can be matched better or worse.
func (v *View) sorts() []cases.Sort {
	if query.Parse(v.search.Text, time.Local).Query.Text == "" {
		return query.Sorts()
	}
	return append([]cases.Sort{cases.Best}, query.Sorts()...)
}

// showSort shows the order that the text names.
func (v *View) showSort() {
	sorts := v.sorts()
	words := make([]string, len(sorts))
	for i, by := range sorts {
		words[i] = sortName(by)
	}
	do := v.sort.OnChanged
	v.sort.OnChanged = nil
	v.sort.Options = words
	v.sort.SetSelectedIndex(max(0, slices.Index(sorts, query.Parse(v.search.Text, time.Local).Query.Sort)))
	v.sort.OnChanged = do
}

func sortName(by cases.Sort) string {
	switch by {
	case cases.Newest:
		return kit.L("window.notebook.sort-newest")
	case cases.Oldest:
		return kit.L("window.notebook.sort-oldest")
	case cases.Recently:
		return kit.L("window.notebook.sort-changed")
	}
	return kit.L("window.notebook.sort-best")
}

// toggle writes a filter into the search, or takes it out.
func (v *View) toggle(f cases.Field, word string) { v.SetText(query.Toggle(v.search.Text, f, word)) }

// Filtering reports whether the filters are in sight.
func (v *View) Filtering() bool { return v.facets.content.Visible() }

// ShowFacets shows the counts beside the filters.
func (v *View) ShowFacets(f cases.Facets) { v.facets.show(f, v.search.Text) }

func (v *View) toggleFilters() {
	if v.Filtering() {
		v.facets.content.Hide()
		v.more.SetIcon(theme.MenuDropDownIcon())
		return
	}
	v.facets.content.Show()
	v.more.SetIcon(theme.MenuDropUpIcon())
	call(v.OnFilters)
}

// mark is the program's own sign: two loops that share a side.
func mark() fyne.CanvasObject {
	loop := func(x float64, stroke drawing.Role) drawing.Shape {
		return drawing.Rect{Box: diagram.Box{x, 2, 11, 18}, Corner: 5, Stroke: drawing.In(stroke), StrokeWidth: 3}
	}
	return kit.NewPicture(26, 22, loop(2, drawing.Accent), loop(13, drawing.Accent),
		drawing.Disc{Center: diagram.XY{13, 11}, Radius: 3, Fill: drawing.In(drawing.LookSign)})
}
