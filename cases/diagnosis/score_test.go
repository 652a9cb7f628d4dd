package diagnosis_test

import (
	"fmt"
	"math"
	"sort"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// score is how well rankings did on cases whose truth is known.
type score struct {
	n, first, three int
	logLoss         float64 // mean, nats
	calibration     float64 // expected calibration error of the first cause, in bins of equal number
	chance          float64 // the calibration error that a program which is right as often as it says has on as few cases
	healthy, alarms int     // healthy loops, and those called faulty (none under 0.5)
	faulted         int     // healthy loops with a fault named first
}

func (s score) String() string {
	return fmt.Sprintf("%d cases: first %.0f %%, among three %.0f %%, log loss %.2f, calibration error %.3f (by chance %.3f), healthy called faulty %d of %d, a fault first in %d",
		s.n, s.part(s.first), s.part(s.three), s.logLoss, s.calibration, s.chance, s.alarms, s.healthy, s.faulted)
}

func (s score) part(n int) float64 { return 100 * float64(n) / float64(s.n) }

// answered is what was said of a case.
type answered struct {
	truth cases.Cause
	rank  diagnosis.Ranking
}

// judgeAll ranks every case by its own crowd; the truth is the verdict, which
// is taken out first.
func judgeAll(t testing.TB, all []cases.Case) []answered {
	t.Helper()
	b := newBench(t)
	b.crowds.Draws = *splitDraws
	out := make([]answered, len(all))
	for i, c := range all {
		truth := c.Verdict.Cause
		c.Verdict = cases.Verdict{}
		out[i] = answered{truth, b.rank(t, c, diagnosis.Prior{})}
	}
	return out
}

func scored(all []answered) score {
	s := score{n: len(all)}
	type call struct {
		sure  float64
		right bool
	}
	var calls []call
	for _, a := range all {
		place, p := placeOf(a)
		if place == 0 {
			s.first++
		}
		if place < 3 {
			s.three++
		}
		s.logLoss -= math.Log(max(p, 1e-9)) / float64(len(all))
		calls = append(calls, call{a.rank.Causes[0].Probability, place == 0})
		if a.truth == cases.Healthy {
			s.healthy++
			if p < 0.5 {
				s.alarms++
			}
			if place > 0 {
				s.faulted++
			}
		}
	}
	sort.Slice(calls, func(i, j int) bool { return calls[i].sure < calls[j].sure })
	bins := max(1, min(10, len(calls)/40)) // fewer cases in a bin err by chance
	for b := 0; b < bins; b++ {
		part := calls[b*len(calls)/bins : (b+1)*len(calls)/bins]
		off, variance := 0.0, 0.0
		for _, c := range part {
			variance += c.sure * (1 - c.sure)
			off += c.sure
			if c.right {
				off--
			}
		}
		s.calibration += math.Abs(off) / float64(len(calls))
		s.chance += math.Sqrt(2/math.Pi*variance) / float64(len(calls)) // the mean of a normal error's size
	}
	return s
}

func placeOf(a answered) (place int, p float64) {
	for i, r := range a.rank.Causes {
		if r.Cause == a.truth {
			return i, r.Probability
		}
	}
	return len(a.rank.Causes), 0
}

// confusion lists each cause with how often it came first, and what came in its
// place.
func confusion(all []answered) string {
	wrong := map[cases.Cause]map[cases.Cause]int{}
	right, n := map[cases.Cause]int{}, map[cases.Cause]int{}
	for _, a := range all {
		n[a.truth]++
		first := a.rank.Causes[0].Cause
		if first == a.truth {
			right[a.truth]++
			continue
		}
		if wrong[a.truth] == nil {
			wrong[a.truth] = map[cases.Cause]int{}
		}
		wrong[a.truth][first]++
	}
	out := ""
	for _, c := range cases.Words[cases.Cause]() {
		if n[c] > 0 {
			out += fmt.Sprintf("%-26s %2d of %2d  %v\n", c, right[c], n[c], wrong[c])
		}
	}
	return out
}
