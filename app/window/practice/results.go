package practice

import (
	"cmp"
	"fmt"
	"os"
	"slices"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/bench"
	"loopbook/app/window/filename"
	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/diagram/units"
)

// firsts are the results without those of a case that its trainee had answered before: they knew it.
func firsts(results []cases.Result) []cases.Result {
	seen := map[[2]string]bool{}
	return slices.DeleteFunc(slices.Clone(results), func(r cases.Result) bool {
		key := [2]string{r.Trainee, r.CaseID}
		known := seen[key]
		seen[key] = true
		return known
	})
}

// doneBy is by whom how many of a class's cases are done, of those that have begun it, or begun it again, and aren't through.
func doneBy(ids []string, results []cases.Result) map[string]int {
	times := map[string]map[string]int{}
	for _, r := range results {
		if times[r.Trainee] == nil {
			times[r.Trainee] = map[string]int{}
		}
		times[r.Trainee][r.CaseID]++
	}
	done := map[string]int{}
	for who, of := range times {
		done[who] = len(ids) - len(toCome(ids, of))
	}
	return done
}

// toldOf says of each of a class's cases how many found it, and what was named most often instead.
func toldOf(ids []string, results []cases.Result) []string {
	out := make([]string, len(ids))
	results = firsts(results)
	for i, id := range ids {
		n, right, instead := 0, 0, map[cases.Cause]int{}
		for _, r := range results {
			switch {
			case r.CaseID != id:
				continue
			case r.Named == r.Truth:
				right++
			case r.Named != "":
				instead[r.Named]++
			}
			n++
		}
		if n == 0 {
			continue
		}
		out[i] = kit.L("window.practice.found-by", right, n)
		if most := mostOf(instead); most != "" {
			out[i] = kit.L("window.practice.found-instead", right, n, most.Name(), instead[most])
		}
	}
	return out
}

// mostOf is what was named most often, the first of its name among several.
func mostOf(counts map[cases.Cause]int) (most cases.Cause) {
	for c, n := range counts {
		if most == "" || n > counts[most] || n == counts[most] && c < most {
			most = c
		}
	}
	return most
}

// resultRows are a line for each trainee, the best first. A case counts once for each, by the first answer.
func resultRows(results []cases.Result) []view.Row {
	type sum struct {
		n, right            int
		bits, minutes, best float64
	}
	sums := map[string]*sum{}
	for _, r := range firsts(results) {
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
	mean := func(name string) float64 { return sums[name].bits / float64(sums[name].n) }
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(mean(b), mean(a)), cmp.Compare(a, b)) })
	var out []view.Row
	for _, name := range names {
		s := sums[name]
		out = append(out, view.Row{
			Trainee: name, Cases: fmt.Sprint(s.n), Right: fmt.Sprint(s.right), Score: signed(s.bits / float64(s.n)),
			Minutes: kit.L("window.practice.against", units.Short(s.minutes/float64(s.n), 1), units.Short(s.best/float64(s.n), 1)),
		})
	}
	return out
}

// writeResults writes a class's results as a table beside the papers: of one trainee, or of all where who is empty. It
// answers where it lies.
func writeResults(at bench.Bench, class, who string) (path string, err error) {
	results, err := at.Desk.Store.Results(at.Ctx, class)
	if err != nil {
		return "", err
	}
	name := kit.L("window.practice.file", class)
	if who != "" {
		name = kit.L("window.practice.file-of", class, who)
		results = slices.DeleteFunc(results, func(r cases.Result) bool { return r.Trainee != who })
	}
	path, err = filename.InDocuments(filename.Of(name) + ".csv")
	if err == nil {
		err = library.WriteFile(path, func(f *os.File) error { return exchange.WriteResults(f, results) })
	}
	return path, err
}

// export writes the results of the chosen class.
func (t *trainer) export() {
	path, err := writeResults(t.at, t.chosen, "")
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	t.view.Tell(kit.L("window.practice.written", path))
}

// takeResults asks for a table that a trainee's notebook wrote.
func (t *trainer) takeResults() {
	t.at.Ask.OpenFile([]string{library.ResultsEnding}, func(file fyne.URI) { t.takeResultsOf(file.Path()) })
}

// takeResultsOf takes in what several trainees handed in, but for what is refused, and tells how much it was.
func (t *trainer) takeResultsOf(paths ...string) {
	read, taken, known := 0, 0, 0
	for _, path := range paths {
		fresh, had, err := library.TakeResults(t.at.Ctx, t.at.Desk.Store, path)
		if err != nil {
			t.at.Ask.Tell(err)
			continue
		}
		read, taken, known = read+1, taken+fresh, known+had
	}
	if read == 0 {
		return
	}
	t.changed()
	t.at.Ask.Show(t.at.Ask.Notice(kit.L("window.practice.take-results"), kit.L("window.practice.results-taken", taken, known)))
}

// handIn writes what who practises did in the class that is through, for their trainer.
func (r *Room) handIn() {
	path, err := writeResults(r.at, r.lesson.in.class, r.view.Trainee())
	if err != nil {
		r.at.Ask.Tell(err)
		return
	}
	r.at.Ask.Show(r.at.Ask.Notice(kit.L("window.practice.hand-in"), kit.L("window.practice.handed-in", path)))
}
