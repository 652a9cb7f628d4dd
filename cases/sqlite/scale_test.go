//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"flag"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// notebooks are files that the program's generate command has filled, with commas
// between; the benchmarks at scale run on each.
var notebooks = flag.String("notebooks", "", "notebooks to measure, with commas between")

func eachNotebook(b *testing.B, do func(b *testing.B, path string)) {
	if *notebooks == "" {
		b.Skip("name notebooks with -notebooks")
	}
	for _, path := range strings.Split(*notebooks, ",") {
		b.Run(strings.TrimSuffix(filepath.Base(path), ".db"), func(b *testing.B) { do(b, path) })
	}
}

// Wanted: at 100,000 cases no more than 1.5 times what it takes at 100.
func BenchmarkOpen(b *testing.B) {
	eachNotebook(b, func(b *testing.B, path string) {
		for i := 0; i < b.N; i++ {
			s, err := sqlite.Open(context.Background(), path, casetest.Clock())
			if err != nil {
				b.Fatal(err)
			}
			if _, err := s.Search(context.Background(), cases.Query{Limit: 1}); err != nil {
				b.Fatal(err)
			}
			s.Close()
		}
	})
}

// Wanted at 100,000 cases: a selective word in 10 ms, the commonest prefix in 50 ms,
// and none slower than running the sqlite3 program with the same statements on the
// same file (sqlite3-run-ms; sqlite3-ms is what its own clock says of the statements,
// which the driver can at best come close to).
func BenchmarkSearchAsYouType(b *testing.B) {
	eachNotebook(b, func(b *testing.B, path string) {
		s := openAt(b, path)
		for _, bb := range []struct{ name, text string }{
			{"selective", "0000077"}, {"a name", "novotka"}, {"two words", "impeller brambl"}, {"commonest prefix", "t"}, {"the", "the"}, {"heat", "heat"},
			{"mistyped", "thermsotat"},
		} {
			b.Run(bb.name, func(b *testing.B) {
				q := cases.Query{Text: bb.text}
				page, err := s.Search(context.Background(), q)
				if err != nil {
					b.Fatal(err)
				}
				b.ResetTimer()
				for i := 0; i < b.N; i++ {
					if _, err := s.Search(context.Background(), q); err != nil {
						b.Fatal(err)
					}
				}
				b.StopTimer()
				b.ReportMetric(float64(page.Total), "found")
				if page.ReadAs == "" && programReads(path) {
					own, whole := programMS(b, path, bb.text, page.Total)
					b.ReportMetric(own, "sqlite3-ms")
					b.ReportMetric(whole, "sqlite3-run-ms")
				}
			})
		}
	})
}

// programMS is the median that the sqlite3 program says it needs for the statements,
// and that one run of it takes from its start to its end.
func programMS(b *testing.B, path, text string, total int) (own, whole float64) {
	b.Helper()
	count, page, match := sqlite.Statements(text, total)
	const times = 21
	both := ""
	for _, statement := range []string{count, "SELECT id, cases.title, vehicle, layout, cause, opened, changed FROM (" + strings.Replace(page, "LIMIT ? OFFSET ?", "LIMIT 50 OFFSET 0", 1) + ") JOIN cases ON key = found"} {
		both += strings.Replace(statement, "?", "'"+match+"'", 1) + ";\n"
	}
	var runs, sums []float64
	for range times {
		begun := time.Now()
		ask(b, path, both)
		runs = append(runs, float64(time.Since(begun).Microseconds())/1000)
	}
	took := clocked(b, ask(b, path, ".timer on\n"+strings.Repeat(both, times)))
	for i := 0; i+1 < len(took); i += 2 {
		sums = append(sums, took[i]+took[i+1])
	}
	slices.Sort(sums)
	slices.Sort(runs)
	return sums[len(sums)/2], runs[len(runs)/2]
}

// programReads reports whether there is a sqlite3 program that can read the
// notebook: it takes one of 3.43 or newer, for contentless_delete.
func programReads(path string) bool {
	cmd := exec.Command("sqlite3", "-readonly", path, "SELECT rowid FROM search LIMIT 1")
	return cmd.Run() == nil
}

func ask(b *testing.B, path, script string) string {
	cmd := exec.Command("sqlite3", "-readonly", path)
	cmd.Stdin = strings.NewReader(script)
	out, err := cmd.CombinedOutput()
	if err != nil {
		b.Fatalf("%v: %.300s", err, out)
	}
	return string(out)
}

// clocked are the times that the program said, in milliseconds.
func clocked(b *testing.B, out string) (took []float64) {
	for _, line := range strings.Split(out, "\n") {
		if _, after, ok := strings.Cut(line, "Run Time: real "); ok {
			s, err := strconv.ParseFloat(strings.Fields(after)[0], 64)
			if err != nil {
				b.Fatal(err)
			}
			took = append(took, s*1000)
		}
	}
	if len(took) < 2 {
		b.Fatalf("the program said no times: %.300s", out)
	}
	return took
}

// Wanted at 100,000 cases: 50 ms for a filtered page, 100 ms for the counts beside the
// filters, once the digests are read (the first time takes longer).
func BenchmarkFilters(b *testing.B) {
	eachNotebook(b, func(b *testing.B, path string) {
		begun := time.Now()
		s := openAt(b, path)
		closed := []cases.Condition{is(cases.ByStage, "closed"), is(cases.ByCode, "P0128")}
		if _, err := s.Search(context.Background(), cases.Query{Where: closed}); err != nil {
			b.Fatal(err)
		}
		first := time.Since(begun)
		for _, bb := range []struct {
			name string
			q    cases.Query
		}{
			{"code and stage", cases.Query{Where: closed}},
			{"word and stage", cases.Query{Text: "novotka", Where: closed[:1]}},
			{"commonest prefix and stage", cases.Query{Text: "t", Where: closed[:1]}},
		} {
			b.Run(bb.name, func(b *testing.B) {
				for i := 0; i < b.N; i++ {
					if _, err := s.Search(context.Background(), bb.q); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(float64(first.Milliseconds()), "first-ms")
			})
			b.Run("counts of "+bb.name, func(b *testing.B) {
				for i := 0; i < b.N; i++ {
					if _, err := s.Facets(context.Background(), bb.q); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	})
}
