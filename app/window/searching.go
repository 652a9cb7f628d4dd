package window

import (
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/notebook"
	"loopbook/cases"
	"loopbook/cases/query"
)

// makeNotebook joins the list of cases to the notebook.
func (w *window) makeNotebook() {
	v := notebook.New(time.Now)
	w.notebook = v
	v.OnNew = w.newCase
	v.OnSearch = func(text string) { w.pages.ask(query.Parse(text, time.Local).Query) }
	v.OnFilters = w.countFilters
	v.OnOpen = func(row int) {
		if s, ok := w.pages.row(row); ok {
			w.openCase(s.ID)
		}
	}
	v.Snippet = func(id string) (cases.Snippet, bool) {
		s, ok := w.pages.found[id]
		return s, ok
	}
	v.OnSave = func(name, text string) { w.keepSearch(name, text) }
	v.OnForget = func(name string) { w.keepSearch(name, "") }
}

// openCase turns to a case from wherever it was found.
func (w *window) openCase(id string) {
	if id != w.at.Desk.Case.ID || !w.at.Desk.Open {
		w.leave()
		if w.at.Desk.Open {
			w.before = w.at.Desk.Case.ID
		}
		w.at.Desk.Load(id)
	}
	w.enter(caseRoom)
}

// searchFor shows the cases that a text finds in the list.
func (w *window) searchFor(text string) { w.notebook.SetText(text) }

func (w *window) keepSearch(name, text string) {
	if err := w.at.Desk.Store.SaveSearch(w.at.Ctx, name, text); err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.showSearches()
}

func (w *window) showSearches() {
	list, err := w.at.Desk.Store.SavedSearches(w.at.Ctx)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	var names []string
	texts := map[string]string{}
	for _, s := range list {
		names = append(names, s.Name)
		texts[s.Name] = s.Query
	}
	w.notebook.ShowSaved(names, texts)
}

// countFilters counts anew what stands beside the filters, where they are in sight.
func (w *window) countFilters() {
	if w.notebook.Filtering() {
		w.pages.count(w.notebook.ShowFacets)
	}
}

// bringUpToDate makes what an older program's notebook lacks, apart from the window.
func (w *window) bringUpToDate() {
	store, stale := w.at.Desk.Store, false
	w.at.Start(func() {
		err := store.Refresh(w.at.Ctx, func(int) { stale = true })
		if err == nil { // read once now, so that the first question needn't wait for it
			err = store.EachDigest(w.at.Ctx, func(*cases.Digest) {})
		}
		fyne.Do(func() {
			if store != w.at.Desk.Store {
				return // another notebook is open by now
			}
			if err != nil {
				w.at.Ask.Tell(err)
			}
			if stale {
				w.pages.ask(w.pages.query)
			}
		})
	})
}
