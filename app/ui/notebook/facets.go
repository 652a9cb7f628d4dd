package notebook

import (
	"strings"

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

// facetHeight is how high the filters are, so that the list stays in sight.
const facetHeight = 260

func newFacets(toggle func(cases.Field, string)) *facets {
	f := &facets{toggle: toggle, list: container.NewVBox()}
	f.content = container.New(tall(facetHeight), container.NewVScroll(f.list))
	f.content.Hide()
	return f
}

// show makes the lines anew.
func (f *facets) show(counts cases.Facets, text string) {
	f.list.RemoveAll()
	f.lines = nil
	for _, field := range []cases.Field{cases.ByStage, cases.ByCause, cases.ByCode, cases.BySymptom, cases.ByLayout, cases.ByTag, cases.ByMake, cases.ByMotive} {
		words := counts[field]
		if len(words) == 0 {
			continue
		}
		f.list.Add(kit.Caption(kit.L("window.notebook.by-" + string(field))))
		lines := container.New(kit.Tight{More: -3})
		for _, c := range words[:min(len(words), shownWords)] {
			lines.Add(f.line(field, c))
		}
		f.list.Add(lines)
	}
	f.mark(text)
	f.list.Refresh()
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
