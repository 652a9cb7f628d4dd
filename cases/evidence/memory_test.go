package evidence_test

import (
	"math"
	"reflect"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

func caseWithLog(n int) cases.Case {
	l := cases.Log{Name: "drive", TimeS: make([]float64, n), EctC: make([]float64, n), EngineRPM: make([]float64, n)}
	for i := range l.TimeS {
		s := float64(i) * 1500 / float64(n)
		l.TimeS[i], l.EctC[i], l.EngineRPM[i] = s, min(12+0.12*s, 88)+math.Sin(s/30)/3, 900
	}
	return cases.Case{ID: "a", Logs: []cases.Log{l}, Loop: cases.Loop{ThermostatOpensC: casetest.P(diagram.Celsius(88))}}
}

// What an analyst remembers of a log is what it would find anew, and a change of
// the log, of the rating or of the weather is seen.
func TestLogsAreRememberedByTheirContent(t *testing.T) {
	once, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	changes := []func(*cases.Case){
		func(*cases.Case) {},
		func(c *cases.Case) { c.Title = "another title" },
		func(c *cases.Case) { c.Logs[0].EctC[700] = 20 },
		func(c *cases.Case) { c.Loop.ThermostatOpensC = casetest.P(diagram.Celsius(105)) },
		func(c *cases.Case) { c.Site.AmbientC = casetest.P(diagram.Celsius(-20)) },
		func(c *cases.Case) { c.Logs[0].EngineRPM = nil },
	}
	c := caseWithLog(1500)
	for i, change := range changes {
		change(&c)
		fresh, err := evidence.Default()
		if err != nil {
			t.Fatal(err)
		}
		if got, want := once.Analyse(&c).WarmUps, fresh.Analyse(&c).WarmUps; !reflect.DeepEqual(got, want) {
			t.Errorf("change %d: %+v, want %+v", i, got[0].Result, want[0].Result)
		}
	}
}

// A case with three logs of 3000 samples, judged again after an edit elsewhere.
func BenchmarkAnalyseWithLogs(b *testing.B) {
	a, err := evidence.Default()
	if err != nil {
		b.Fatal(err)
	}
	c := caseWithLog(3000)
	c.Logs = append(c.Logs, c.Logs[0], c.Logs[0])
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		a.Analyse(&c)
	}
}
