package notebook

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/cases"
)

var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.Local)

func TestDay(t *testing.T) {
	for _, tt := range []struct {
		at   time.Time
		want string
	}{
		{noon, "today"}, {noon.AddDate(0, 0, -1), "24 Nov"}, {noon.AddDate(-1, 0, 0), "Nov 2025"}, {time.Time{}, ""},
	} {
		if got := day(tt.at, noon); got != tt.want {
			t.Errorf("day(%v) = %q, want %q", tt.at, got, tt.want)
		}
	}
}

// Without words nothing matches better than another, and the list says that the newest come first.
func TestTheOrderIsNamedForWhatItIs(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	var asked string
	v.OnSearch = func(text string) { asked = text }
	if v.sort.Selected != "Newest" {
		t.Errorf("the list begins with %q", v.sort.Selected)
	}
	v.SetText("cold")
	if v.sort.Selected != "Best first" || len(v.sort.Options) != 4 {
		t.Errorf("with words the order is %q of %v", v.sort.Selected, v.sort.Options)
	}
	v.SetText(`tag:"two words"`)
	if v.sort.Selected != "Newest" || slices.Contains(v.sort.Options, "Best first") {
		t.Errorf("without words the order is %q of %v", v.sort.Selected, v.sort.Options)
	}
	v.sort.SetSelectedIndex(1)
	if v.sort.SetSelectedIndex(0); asked != `tag:"two words"` {
		t.Errorf("the newest first is asked for by %q", asked)
	}
}

func TestSearchAndFiltersAsk(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	var asked string
	counts := 0
	v.OnSearch = func(text string) { asked = text }
	v.OnFilters = func() { counts++ }
	test.Type(v.search, "cold f")
	v.toggleFilters()
	v.ShowFacets(cases.Facets{cases.ByCause: {{Word: "pump-weak", N: 7}}, cases.ByTag: {{Word: "two words", N: 2}}, cases.ByStage: {{Word: "open", N: 1}}})
	if counts != 1 || len(v.facets.lines) != 6 || v.facets.lines[0].name.Text != "open" || v.facets.lines[4].name.Text != "coolant pump weak" || v.facets.lines[4].count.Text != "7" {
		t.Fatalf("filters %+v", v.facets.lines)
	}
	test.Tap(v.facets.lines[4])
	test.Tap(v.facets.lines[5])
	if want := `cold f cause:pump-weak tag:"two words"`; asked != want || v.search.Text != want {
		t.Errorf("asked %q, the search holds %q, want %q", asked, v.search.Text, want)
	}
	if !v.facets.lines[4].used {
		t.Error("a filter that is used isn't marked")
	}
	v.sort.SetSelectedIndex(2)
	test.Tap(v.facets.lines[4])
	if want := `cold f tag:"two words" sort:oldest`; asked != want || v.sort.SelectedIndex() != 2 {
		t.Errorf("asked %q, want %q", asked, want)
	}
	test.Type(v.search, " cause:gremlins")
	v.Show(0, -1, "")
	if !v.problem.Visible() || v.problem.Text == "" {
		t.Error("a filter that can't be used isn't told")
	}
}

// A high window has room for more filters: they stayed as high as in a small one.
func TestFiltersTakeTheRoomThatThereIs(t *testing.T) {
	test.NewTempApp(t)
	v := New(time.Now)
	w := test.NewTempWindow(t, v.Content())
	v.toggleFilters()
	for high, want := range map[float32]float32{700: facetHeight, 1052: 400} {
		w.Resize(fyne.NewSize(320, high))
		v.frame.Resize(fyne.NewSize(320, high))
		if got := v.facets.content.Size().Height; got != want {
			t.Errorf("in %g they are %g high, want %g", high, got, want)
		}
	}
}

// A filter that leaves no case can be clicked away where it was clicked, and the stages keep their places.
func TestAFilterThatFindsNothingStaysToBeClicked(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	v.SetText(`cause:pump-weak stage:open tag:"two words" -code:P0128`)
	v.ShowFacets(cases.Facets{})
	var words []string
	for _, l := range v.facets.lines {
		words = append(words, l.word+" "+l.count.Text)
		if others := []string{"closed", "before-repair", "after-repair"}; l.used == slices.Contains(others, l.word) {
			t.Errorf("%s is marked as used: %v", l.word, l.used)
		}
	}
	if !slices.Equal(words, []string{"open 0", "closed 0", "before-repair 0", "after-repair 0", "pump-weak 0", "two words 0"}) {
		t.Fatalf("to click are %q", words)
	}
	test.Tap(v.facets.lines[4])
	if v.Text() != `stage:open tag:"two words" -code:P0128` {
		t.Errorf("clicked away, the search is %q", v.Text())
	}
	v.SetText("")
	v.ShowFacets(cases.Facets{cases.ByStage: {{Word: "after-repair", N: 9}, {Word: "before-repair", N: 9}, {Word: "closed", N: 8}, {Word: "open", N: 1}}})
	at := v.facets.lines[1]
	test.Tap(at) // the open ones are gone from the counts, and their line would be from over it
	v.ShowFacets(cases.Facets{cases.ByStage: {{Word: "after-repair", N: 8}, {Word: "closed", N: 8}}})
	if l := v.facets.lines; l[0].word != "open" || l[1].word != "closed" || l[2].word != "before-repair" || l[3].word != "after-repair" {
		t.Errorf("the stages stand as %s, %s, %s, %s", l[0].word, l[1].word, l[2].word, l[3].word)
	}
}

func TestSearchesAreKept(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	var kept, renamed, forgotten string
	v.OnSave = func(text string) { kept = text }
	v.OnRename = func(name string) { renamed = name }
	v.OnForget = func(name string) { forgotten = name }
	v.ShowSaved([]string{"Pumps"}, map[string]string{"Pumps": "cause:pump-weak"})
	v.saved.menu().Items[0].Action()
	if v.Text() != "cause:pump-weak" {
		t.Errorf("the kept search gives %q", v.Text())
	}
	v.Show(1, -1, "")
	if v.count.Text != "1 case · Pumps" {
		t.Errorf("over the list stands %q", v.count.Text)
	}
	menu := v.saved.menu() // Pumps, a line, keep, rename, forget, clear
	menu.Items[3].Action()
	menu.Items[4].Action()
	if !menu.Items[2].Disabled || renamed != "Pumps" || forgotten != "Pumps" {
		t.Errorf("a kept search is kept again: %v; renamed %q, forgotten %q", !menu.Items[2].Disabled, renamed, forgotten)
	}
	v.SetText("tag:x")
	if menu = v.saved.menu(); len(menu.Items) != 4 {
		t.Fatalf("the menu has %d lines", len(menu.Items))
	}
	menu.Items[2].Action()
	if kept != "tag:x" {
		t.Errorf("kept %q", kept)
	}
	v.SetText("  ") // it would have no name
	if !v.saved.menu().Items[2].Disabled {
		t.Error("a search for nothing can be kept")
	}
}

func TestHitsAreMarked(t *testing.T) {
	s := cases.Snippet{Text: "the long way to the lower hose and back", Marks: [][2]int{{20, 25}, {26, 30}}}
	segments := marked(around(s))
	text, bold := "", ""
	for _, x := range segments {
		seg := x.(*widget.TextSegment)
		text += seg.Text
		if seg.Style.TextStyle.Bold {
			bold += seg.Text + "|"
		}
	}
	if bold != "lower|hose|" || text != "…way to the lower hose and back" {
		t.Errorf("%q with %q marked", text, bold)
	}
}

// How a mistyped word was read takes two lines; the list begins under all of the head.
func TestListBeginsUnderTheHead(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	v.Row = func(int) (cases.Summary, bool) { return cases.Summary{}, false }
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(232, 700))
	v.Show(16, -1, "")
	v.Show(11, -1, "thermostat and coolant pump")
	bottom := fyne.CurrentApp().Driver().AbsolutePositionForObject(v.count).Y + v.count.Size().Height
	if top := fyne.CurrentApp().Driver().AbsolutePositionForObject(v.list).Y; top < bottom {
		t.Errorf("the list begins at %g, the head ends at %g", top, bottom)
	}
}

func TestTappingARowOpensIt(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(232, 700))
	v.Row = func(i int) (cases.Summary, bool) { return cases.Summary{ID: "x", Title: "Cold feet"}, true }
	opened := -1
	v.OnOpen = func(row int) { opened = row }
	v.Show(20000, -1, "")
	v.list.Select(3)
	if opened != 3 {
		t.Errorf("opened row %d, want 3", opened)
	}
	opened = -1
	v.Show(20000, 3, "") // painting which one is open is no tap
	if opened != -1 {
		t.Errorf("showing opened row %d by itself", opened)
	}
}

// Enter in the search goes to what was found, and Enter there opens it.
func TestEnterOpensWhatWasFound(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(232, 700))
	v.Row = func(i int) (cases.Summary, bool) { return cases.Summary{ID: "x", Title: "Cold feet"}, true }
	opened := -1
	v.OnOpen = func(row int) { opened = row }
	enter := func() { w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) }
	v.Show(2, -1, "")
	v.FocusSearch()
	enter()
	if w.Canvas().Focused() != fyne.Focusable(v.list) {
		t.Fatalf("Enter goes on to %T", w.Canvas().Focused())
	}
	w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	enter()
	if opened != 1 {
		t.Errorf("opened row %d, want 1", opened)
	}
	v.Show(0, -1, "")
	v.FocusSearch()
	enter()
	if w.Canvas().Focused() == fyne.Focusable(v.list) {
		t.Error("Enter goes on to an empty list")
	}
}

func TestAnEmptyAnswerSaysSo(t *testing.T) {
	test.NewTempApp(t)
	v := New(func() time.Time { return noon })
	test.NewTempWindow(t, v.Content())
	v.Show(0, -1, "")
	if !v.nothing.Visible() || v.nothing.String() == "" {
		t.Error("an empty notebook says nothing")
	}
	empty := v.nothing.String()
	test.Type(v.search, "zzz")
	v.Show(0, -1, "")
	if v.nothing.String() == empty {
		t.Error("a search that finds nothing reads like an empty notebook")
	}
}

// A title that one line would cut has two, and what stands under it stays in the row.
func TestALongTitleHasTwoLines(t *testing.T) {
	test.NewTempApp(t)
	r := newRow()
	w := test.NewTempWindow(t, r)
	w.Resize(fyne.NewSize(230, r.MinSize().Height))
	show := func(title string) float32 {
		r.show(cases.Summary{Title: title, Vehicle: "Delvik Lark"}, cases.Snippet{}, time.Time{})
		if foot := r.last.Position().Y + r.last.Size().Height; foot > r.Size().Height+theme.InnerPadding() {
			t.Errorf("%q: the last line ends at %g of %g", title, foot, r.Size().Height)
		}
		return r.title.Size().Height
	}
	short, long := show("Runs hot"), show("Cold cabin on frosty mornings, thermostat")
	if line := fyne.MeasureText("M", theme.TextSize(), r.title.TextStyle).Height; long-short != line {
		t.Errorf("a short title is %g high, a long one %g: not a line of %g more", short, long, line)
	}
	if again := show("Runs hot"); again != short {
		t.Errorf("a row that showed a long title before is %g high at its title, not %g", again, short)
	}
}
