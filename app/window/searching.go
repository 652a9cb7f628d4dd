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
	if id != w.desk.Case.ID || !w.desk.Open {
		w.leave()
		if w.desk.Open {
			w.before = w.desk.Case.ID
		}
		w.desk.Load(id)
	}
	w.enter(caseRoom)
}

// searchFor shows the cases that a text finds in the list.
func (w *window) searchFor(text string) { w.notebook.SetText(text) }

func (w *window) keepSearch(name, text string) {
	if err := w.desk.Store.SaveSearch(w.ctx, name, text); err != nil {
		w.tell(err)
		return
	}
	w.showSearches()
}

func (w *window) showSearches() {
	list, err := w.desk.Store.SavedSearches(w.ctx)
	if err != nil {
		w.tell(err)
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
	store, stale := w.desk.Store, false
	w.start(func() {
		err := store.Refresh(w.ctx, func(int) { stale = true })
		if err == nil { // read once now, so that the first question needn't wait for it
			err = store.EachDigest(w.ctx, func(*cases.Digest) {})
		}
		fyne.Do(func() {
			if store != w.desk.Store {
				return // another notebook is open by now
			}
			if err != nil {
				w.tell(err)
			}
			if stale {
				w.pages.ask(w.pages.query)
			}
		})
	})
}
