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
