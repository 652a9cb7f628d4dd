package warmup_test

import (
	"fmt"
	"math"
	"math/rand"
	"strings"

	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
)

// drive is an invented record: a temperature for each second, at steady speeds.
func drive(seconds int, ectC func(s float64) float64) warmup.Series {
	var s warmup.Series
	for i := 0; i <= seconds; i++ {
		s.TimeS = append(s.TimeS, float64(i))
		s.EctC = append(s.EctC, ectC(float64(i)))
		s.RPM = append(s.RPM, 1600)
		s.SpeedKmh = append(s.SpeedKmh, 50)
	}
	return s
}

// opening is an invented warm-up: it rises by 0.12 K/s to the knee, swings over
// by 1.5 K and rests at the level.
func opening(fromC, kneeC, levelC float64) func(float64) float64 {
	const rate = 0.12
	kneeS := (kneeC - fromC) / rate
	return func(s float64) float64 {
		switch {
		case s < kneeS:
			return fromC + rate*s
		case s < kneeS+60:
			return kneeC + (levelC-kneeC)*(s-kneeS)/60
		}
		return levelC + 0.4*math.Sin(s/25)
	}
}

func mapped(s warmup.Series, ectC func(i int, c float64) float64) warmup.Series {
	out := s
	out.EctC = make([]float64, len(s.EctC))
	for i, c := range s.EctC {
		out.EctC[i] = ectC(i, c)
	}
	return out
}

func noisy(s warmup.Series, k float64) warmup.Series {
	dice := rand.New(rand.NewSource(7))
	return mapped(s, func(_ int, c float64) float64 { return c + k*(2*dice.Float64()-1) })
}

func inSteps(s warmup.Series, k float64) warmup.Series {
	return mapped(s, func(_ int, c float64) float64 { return k * math.Round(c/k) })
}

// withGaps leaves out the first so many rows of each period.
func withGaps(s warmup.Series, period, gap int) warmup.Series {
	return mapped(s, func(i int, c float64) float64 {
		if i > 0 && i%period < gap {
			return math.NaN()
		}
		return c
	})
}

// picked holds the rows that keep wants.
func picked(s warmup.Series, keep func(i int) bool) warmup.Series {
	var out warmup.Series
	for i := range s.TimeS {
		if !keep(i) {
			continue
		}
		for _, c := range []struct {
			to   *[]float64
			from []float64
		}{{&out.TimeS, s.TimeS}, {&out.EctC, s.EctC}, {&out.RPM, s.RPM}, {&out.SpeedKmh, s.SpeedKmh}, {&out.IntakeC, s.IntakeC}} {
			if c.from != nil {
				*c.to = append(*c.to, c.from[i])
			}
		}
	}
	return out
}

func every(s warmup.Series, seconds float64) warmup.Series {
	next := s.TimeS[0]
	return picked(s, func(i int) bool {
		if s.TimeS[i] < next {
			return false
		}
		next += seconds
		return true
	})
}

func between(s warmup.Series, from, to float64) warmup.Series {
	first := s.TimeS[0]
	if from < first {
		from, to = from+first, to+first
	}
	return picked(s, func(i int) bool { return s.TimeS[i] >= from && s.TimeS[i] <= to })
}

func shifted(s warmup.Series, by float64) warmup.Series {
	out := s
	out.TimeS = make([]float64, len(s.TimeS))
	for i, at := range s.TimeS {
		out.TimeS[i] = at + by
	}
	return out
}

func joined(a, b warmup.Series) warmup.Series {
	cat := func(x, y []float64) []float64 { return append(append([]float64(nil), x...), y...) }
	return warmup.Series{TimeS: cat(a.TimeS, b.TimeS), EctC: cat(a.EctC, b.EctC), RPM: cat(a.RPM, b.RPM), SpeedKmh: cat(a.SpeedKmh, b.SpeedKmh)}
}

func celsius(c float64) *diagram.Celsius {
	d := diagram.Celsius(c)
	return &d
}

func near(got, want, within float64) bool { return math.Abs(got-want) <= within } // NaN isn't

func show(c *diagram.Celsius) string {
	if c == nil {
		return "none"
	}
	return fmt.Sprintf("%.1f °C", float64(*c))
}

func answer(r warmup.Result) string {
	switch {
	case r.ReachesRegulating == nil:
		return "can't be said"
	case *r.ReachesRegulating:
		return "yes"
	}
	return "no"
}

func said(r warmup.Result, words string) bool {
	return strings.Contains(strings.Join(say.English().All(r.Remarks), "\n"), words)
}
