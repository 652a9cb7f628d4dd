package window

import (
	"encoding/csv"
	"fmt"
	"os"
	"sort"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/exchange"
)

// mostInClass is how many cases a class set may have: more than an evening holds.
const mostInClass = 40

func (w *window) makeTrainer() {
	v := w.practice
	v.OnMake = w.makeClass
	v.OnForget = func(name string) { w.saveClass(cases.Class{Name: name}) }
	v.OnChoose = func(name string) {
		w.trains.chosen = name
		w.showPractice()
	}
	v.OnMove = w.moveInClass
	v.OnRetire = func(retired bool) {
		if err := w.at.Desk.Store.Retire(w.at.Ctx, w.at.Desk.Case.ID, retired); err != nil {
			w.at.Ask.Tell(err)
		}
	}
	v.OnExport = w.exportResults
}

// makeClass keeps the cases that the list shows as a class, those that can be practised.
func (w *window) makeClass(name string) {
	ids, err := w.practisable()
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.trains.chosen = name
	w.saveClass(cases.Class{Name: name, Cases: ids})
}

// practisable are the settled cases that the list shows, retired ones left out.
func (w *window) practisable() ([]string, error) {
	retired, err := w.at.Desk.Store.Retired(w.at.Ctx)
	if err != nil {
		return nil, err
	}
	q := w.pages.query
	q.Where = append(q.Where[:len(q.Where):len(q.Where)], cases.Condition{Field: cases.ByStage, Words: []string{cases.StageClosed}})
	q.Limit, q.Offset = mostInClass, 0
	page, err := w.at.Desk.Store.Search(w.at.Ctx, q)
	var ids []string
	for _, s := range page.Items {
		if !retired[s.ID] {
			ids = append(ids, s.ID)
		}
	}
	return ids, err
}

func (w *window) saveClass(c cases.Class) {
	if err := w.at.Desk.Store.SaveClass(w.at.Ctx, c); err != nil {
		w.at.Ask.Tell(err)
	}
	w.showPractice()
}

// moveInClass moves a case up, or takes it out where by is 0.
func (w *window) moveInClass(at, by int) {
	list, err := w.at.Desk.Store.Classes(w.at.Ctx)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	for _, c := range list {
		if c.Name != w.trains.chosen || at >= len(c.Cases) {
			continue
		}
		if by == 0 {
			c.Cases = append(c.Cases[:at], c.Cases[at+1:]...)
		} else if to := at + by; to >= 0 && to < len(c.Cases) {
			c.Cases[at], c.Cases[to] = c.Cases[to], c.Cases[at]
		}
		w.saveClass(c)
	}
}

// showPractice shows what can be practised; a session that is under way stays.
func (w *window) showPractice() {
	if w.trains.session != nil {
		return
	}
	d, err := w.startData()
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.practice.ShowStart(d)
}

func (w *window) startData() (view.Start, error) {
	store, ctx := w.at.Desk.Store, w.at.Ctx
	d := view.Start{Chosen: w.trains.chosen, Why: w.canPractise()}
	if w.at.Desk.Open {
		d.Open, d.Lesson = titleOf(w.at.Desk.Case), w.at.Desk.Case.Lesson
	}
	retired, err := store.Retired(ctx)
	if err != nil {
		return d, err
	}
	d.Retired = retired[w.at.Desk.Case.ID]
	list, err := store.Classes(ctx)
	if err != nil {
		return d, err
	}
	for _, c := range list {
		one := view.Class{Name: c.Name}
		for _, id := range c.Cases {
			one.Cases = append(one.Cases, w.titleByID(id))
		}
		d.Classes = append(d.Classes, one)
	}
	results, err := store.Results(ctx, d.Chosen)
	if err != nil {
		return d, err
	}
	d.Results = resultRows(results)
	ids, err := w.practisable()
	d.Found = len(ids)
	return d, err
}

func (w *window) titleByID(id string) string {
	c, err := w.at.Desk.Store.Get(w.at.Ctx, id)
	if err != nil {
		return kit.L("window.practice.gone", id)
	}
	return titleOf(c)
}

// resultRows are a line for each trainee, the best first.
func resultRows(results []cases.Result) []view.Row {
	type sum struct {
		n, right            int
		bits, minutes, best float64
	}
	sums := map[string]*sum{}
	for _, r := range results {
		s, ok := sums[r.Trainee]
		if !ok {
			s = &sum{}
			sums[r.Trainee] = s
		}
		s.n++
		s.bits += r.Bits
		s.minutes += r.Minutes
		s.best += r.BestMinutes
		if r.Named == r.Truth {
			s.right++
		}
	}
	names := make([]string, 0, len(sums))
	for name := range sums {
		names = append(names, name)
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := sums[names[i]], sums[names[j]]
		x, y := a.bits/float64(a.n), b.bits/float64(b.n)
		return x > y || x == y && names[i] < names[j]
	})
	var out []view.Row
	for _, name := range names {
		s := sums[name]
		out = append(out, view.Row{
			Trainee: name, Cases: fmt.Sprint(s.n), Right: fmt.Sprint(s.right), Score: signed(s.bits / float64(s.n)),
			Minutes: kit.L("window.practice.against", fmt.Sprintf("%.0f", s.minutes/float64(s.n)), fmt.Sprintf("%.0f", s.best/float64(s.n))),
		})
	}
	return out
}

// exportResults writes the results of the chosen class as CSV beside the papers.
func (w *window) exportResults() {
	results, err := w.at.Desk.Store.Results(w.at.Ctx, w.trains.chosen)
	path := ""
	if err == nil {
		path, err = filename.InDocuments(filename.Of(kit.L("window.practice.file", w.trains.chosen)) + ".csv")
	}
	if err == nil {
		err = library.WriteFile(path, func(f *os.File) error { return writeResults(f, results) })
	}
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	w.practice.Tell(kit.L("window.practice.written", path))
}

func writeResults(f *os.File, results []cases.Result) error {
	out := csv.NewWriter(f)
	lines := [][]string{{"finished", "trainee", "class", "case", "title", "named", "truth", "confidence", "score_bits", "minutes", "program_minutes"}}
	for _, r := range results {
		lines = append(lines, []string{
			r.Finished.Format("2006-01-02 15:04"), exchange.Cell(r.Trainee), exchange.Cell(r.Class), exchange.Cell(r.CaseID), exchange.Cell(r.Title), string(r.Named), string(r.Truth),
			fmt.Sprintf("%.2f", r.Confidence), exchange.Cell(fmt.Sprintf("%.2f", r.Bits)), fmt.Sprintf("%.1f", r.Minutes), fmt.Sprintf("%.1f", r.BestMinutes),
		})
	}
	return out.WriteAll(lines)
}
