//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

// Wanted of each search at 20,000 cases, with its page of 50 and its total:
// under 30 ms.
func BenchmarkSearch20000(b *testing.B) {
	s := open(b)
	fill(b, s, 20000)
	for _, bb := range []struct {
		name string
		q    cases.Query
	}{
		{"everything", cases.Query{}},
		{"selective", cases.Query{Text: "CASE-012345"}},
		{"two words", cases.Query{Text: "swollen impeller"}},
		{"word in most", cases.Query{Text: "thermostat"}},
		{"prefix of 3", cases.Query{Text: "the"}},
		{"prefix of 1", cases.Query{Text: "c"}},
		{"two prefixes", cases.Query{Text: "co ra"}},
		{"prefix with filters", cases.Query{Text: "co", Where: []cases.Condition{is(cases.ByLayout, "inlet-thermostat"), is(cases.ByStage, "after-repair"), is(cases.ByStage, "open")}}},
		{"a cause", cases.Query{Where: []cases.Condition{is(cases.ByCause, "cap-weak")}}},
		{"open ones", cases.Query{Where: []cases.Condition{is(cases.ByStage, "open")}}},
		{"a month", cases.Query{Where: []cases.Condition{cases.Between(casetest.Start.AddDate(0, 3, 0), casetest.Start.AddDate(0, 4, 0))}}},
		{"a far page", cases.Query{Offset: 19000}},
	} {
		b.Run(bb.name, func(b *testing.B) {
			var page cases.Page
			for i := 0; i < b.N; i++ {
				var err error
				if page, err = s.Search(context.Background(), bb.q); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(page.Total), "found")
		})
	}
}

// Wanted: under 20 ms, since it runs when a field is left; under 50 ms beside
// an hour of recording.
func BenchmarkPut(b *testing.B) {
	s := open(b)
	fill(b, s, 2000)
	for _, bb := range []struct {
		name    string
		seconds int
	}{{"without log", 0}, {"beside an hour of log", 3600}} {
		c := casetest.Invented(1000)
		if bb.seconds > 0 {
			series := make([]float64, bb.seconds)
			for i := range series {
				series[i] = float64(i) / 100
			}
			c.Logs = []cases.Log{{TimeS: series, EctC: series, EngineRPM: series, SpeedKmh: series, IntakeC: series, LoadPercent: series}}
		}
		b.Run(bb.name, func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				c.Lesson = casetest.Invented(i).Lesson + c.Lesson[:40]
				if _, err := s.Put(context.Background(), c, "lesson"); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// Wanted: 20,000 cases in under 30 s.
func BenchmarkPutAll1000(b *testing.B) {
	bundles := make([]cases.Bundle, 1000)
	for i, c := range casetest.Notebook(len(bundles)) {
		bundles[i].Case = c
	}
	for i := 0; i < b.N; i++ {
		b.StopTimer()
		s := open(b)
		b.StartTimer()
		if _, err := s.PutAll(context.Background(), bundles, "import"); err != nil {
			b.Fatal(err)
		}
	}
}
