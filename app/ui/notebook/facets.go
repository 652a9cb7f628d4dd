package notebook

import (
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/query"
)

// facets are the filters with the number of cases beside each; a click writes one
// into the search.
type facets struct {
	toggle  func(cases.Field, string)
	list    *fyne.Container
	lines   []*facetLine
	content *fyne.Container
}

// shownWords of a field are offered; whoever wants another types it.
const shownWords = 7

// The filters are so high that the list stays in sight, in a window of a small screen; of what a higher one has more
// they take half.
const (
	facetHeight = 260
	smallHeight = 772
)

// newFacets makes them for a list of that height.
func newFacets(toggle func(cases.Field, string), height func() float32) *facets {
	f := &facets{toggle: toggle, list: container.NewVBox()}
	f.content = container.New(tall{func() float32 { return facetHeight + max(0, height()-smallHeight)/2 }}, container.NewVScroll(f.list))
	f.content.Hide()
	return f
}

// show makes the lines anew.
func (f *facets) show(counts cases.Facets, text string) {
	f.list.RemoveAll()
	f.lines = nil
	where := query.Parse(text, time.Local).Query.Where
	for _, field := range []cases.Field{cases.ByStage, cases.ByCause, cases.ByCode, cases.BySymptom, cases.ByLayout, cases.ByTag, cases.ByMake, cases.ByMotive} {
		words := offered(field, counts[field], where, text)
		if len(words) == 0 {
			continue
		}
		f.list.Add(kit.Caption(kit.L("window.notebook.by-" + string(field))))
		lines := container.New(kit.Tight{More: -3})
		for _, c := range words {
			lines.Add(f.line(field, c))
		}
		f.list.Add(lines)
	}
	f.mark(text)
	f.list.Refresh()
}

// offered are a field's words to click: the commonest, and each that the text filters by (where are its filters). Without
// the latter nobody could click away a filter that leaves no case.
func offered(f cases.Field, counts []cases.Count, where []cases.Condition, text string) []cases.Count {
	out := slices.Clone(counts[:min(len(counts), shownWords)])
	for _, c := range where {
		if c.Field != f || len(c.Words) != 1 || !query.Has(text, f, c.Words[0]) {
			continue
		}
		is := func(other cases.Count) bool { return strings.EqualFold(other.Word, c.Words[0]) }
		if slices.ContainsFunc(out, is) {
			continue
		}
		used := cases.Count{Word: c.Words[0]}
		if i := slices.IndexFunc(counts, is); i >= 0 {
			used = counts[i]
		}
		out = append(out, used)
	}
	if f == cases.ByStage { // few, so all of them stand there: each keeps its place under the pointer
		for _, w := range []string{cases.StageOpen, cases.StageClosed, string(cases.BeforeRepair), string(cases.AfterRepair)} {
			if !slices.ContainsFunc(out, func(c cases.Count) bool { return strings.EqualFold(c.Word, w) }) {
				out = append(out, cases.Count{Word: w})
			}
		}
		slices.SortFunc(out, func(a, b cases.Count) int { return strings.Compare(b.Word, a.Word) })
	}
	return out
}

func (f *facets) line(field cases.Field, c cases.Count) fyne.CanvasObject {
	l := newFacetLine(field, c, func() { f.toggle(field, c.Word) })
	f.lines = append(f.lines, l)
	return l
}

// mark shows which filters the text holds.
func (f *facets) mark(text string) {
	for _, l := range f.lines {
		l.use(query.Has(text, l.field, l.word))
	}
}

// wordName is a filter's word as people of the trade say it.
func wordName(f cases.Field, word string) string {
	switch f {
	case cases.ByCause:
		return cases.Cause(word).Name()
	case cases.BySymptom:
		return cases.Symptom(word).Name()
	case cases.ByMotive:
		return cases.Motive(word).Name()
	case cases.ByLayout:
		return kit.LayoutTitle(word)
	case cases.ByStage:
		if word == cases.StageOpen || word == cases.StageClosed {
			return kit.L("window.notebook.stage-" + word)
		}
		return cases.Stage(word).Name()
	}
	return word
}

// problemWords tell what is wrong with a filter.
func problemWords(p query.Problem) string {
	text := kit.L("window.notebook.problem-"+string(p.Why), p.Token)
	if p.Near == nil {
		return text
	}
	return text + " " + kit.L("window.notebook.near", strings.Join(p.Near, ", "))
}
