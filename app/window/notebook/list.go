// Package notebook fills the list of the notebook's cases beside the open one: the search, its filters, and
// the cases that it finds.
package notebook

import (
	"time"

	"fyne.io/fyne/v2"

	view "loopbook/app/ui/notebook"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/query"
)

// List shows the cases of the desk's notebook that a search finds.
type List struct {
	at    bench.Bench
	view  *view.View
	pages *pages
	ways  Ways
	kept  map[string]string // searches by their names
	text  string            // of the search that was answered last
}

// Ways lead from the list elsewhere.
type Ways struct {
	New     func()          // to a new case
	Open    func(id string) // to a case
	Changed func()          // the list shows other cases
}

// New shows no cases before Turn.
func New(at bench.Bench, ways Ways) *List {
	l := &List{at: at, view: view.New(time.Now), ways: ways}
	v := l.view
	v.OnNew = ways.New
	v.OnSearch = func(text string) { l.pages.ask(query.Parse(text, time.Local).Query) }
	v.OnFilters = l.countFilters
	v.OnOpen = func(row int) {
		if s, ok := l.pages.row(row); ok {
			ways.Open(s.ID)
		}
	}
	v.Snippet = func(id string) (cases.Snippet, bool) {
		s, ok := l.pages.found[id]
		return s, ok
	}
	v.OnSave = l.keepSearch
	v.OnRename = l.renameSearch
	v.OnForget = func(name string) { l.saveSearch(name, "") }
	return l
}

// Content is the list.
func (l *List) Content() fyne.CanvasObject { return l.view.Content() }

// SetName names the notebook over its list.
func (l *List) SetName(name string) { l.view.SetName(name) }

// Focus leads to the search.
func (l *List) Focus() { l.view.FocusSearch() }

// Search shows the cases that a text finds.
func (l *List) Search(text string) { l.view.SetText(text) }

// Shown is the search that is shown, and how many cases it finds.
func (l *List) Shown() (q cases.Query, total int) { return l.pages.query, l.pages.total }

// Again searches anew: another title may be found now.
func (l *List) Again() { l.pages.ask(l.pages.query) }

// Show shows the rows of the search, and which of them is open.
func (l *List) Show() { l.view.Show(l.pages.total, l.pages.find(l.at.Desk.Case.ID), l.pages.readAs) }

// Turn turns to the desk's notebook: no case of the one before stays open.
func (l *List) Turn() {
	l.read()
	l.at.Desk.Close()
	l.view.SetText("")
	l.begin(cases.Query{})
}

// Rejoin reads the desk's notebook from where its file lies again; the open case and the search stay.
func (l *List) Rejoin() {
	q := l.pages.query
	l.read()
	l.begin(q)
}

// read reads the rows from the desk's notebook.
func (l *List) read() {
	l.pages = newPages(l.at.Desk.Store, l.at.Start)
	l.pages.told, l.pages.filled, l.pages.changed = l.at.Ask.Tell, l.view.Refresh, l.answered
	l.view.Row = l.pages.row
}

func (l *List) begin(q cases.Query) {
	l.showSearches()
	l.bringUpToDate()
	l.pages.ask(q)
}

// answered shows a search's answer; a notebook opens at its newest case. Behind one that was deleted none opens by
// itself: undoing would then be of that case.
func (l *List) answered() {
	if d := l.at.Desk; !d.Open && d.Gone == "" && l.pages.total > 0 && l.pages.query.IsZero() {
		if s, ok := l.pages.row(0); ok {
			l.at.Desk.Load(s.ID)
		}
	}
	l.countFilters()
	l.Show()
	if text := l.view.Text(); text != l.text {
		if l.text = text; text != "" {
			l.view.ToTop() // the best of them, and not where the open case is
		}
	}
	l.ways.Changed()
}

// countFilters counts anew what stands beside the filters, where they are in sight.
func (l *List) countFilters() {
	if l.view.Filtering() {
		l.pages.count(l.view.ShowFacets)
	}
}

// bringUpToDate makes what an older program's notebook lacks, apart from the window.
func (l *List) bringUpToDate() {
	store, stale := l.at.Desk.Store, false
	l.at.Start(func() {
		err := store.Refresh(l.at.Ctx, func(int) { stale = true })
		if err == nil { // read once now, so that the first question needn't wait for it
			err = store.EachDigest(l.at.Ctx, func(*cases.Digest) {})
		}
		fyne.Do(func() {
			if store != l.at.Desk.Store {
				return // another notebook is open by now
			}
			if err != nil {
				l.at.Ask.Tell(err)
			}
			if stale {
				l.pages.ask(l.pages.query)
			}
		})
	})
}
