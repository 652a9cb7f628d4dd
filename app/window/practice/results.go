package practice

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"os"
	"slices"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
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

// export writes the results of the chosen class as CSV beside the papers.
func (t *trainer) export() {
	results, err := t.at.Desk.Store.Results(t.at.Ctx, t.chosen)
	path := ""
	if err == nil {
		path, err = filename.InDocuments(filename.Of(kit.L("window.practice.file", t.chosen)) + ".csv")
	}
	if err == nil {
		err = library.WriteFile(path, func(f *os.File) error { return writeResults(f, results) })
	}
	if err != nil {
		t.at.Ask.Tell(err)
		return
	}
	t.view.Tell(kit.L("window.practice.written", path))
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
