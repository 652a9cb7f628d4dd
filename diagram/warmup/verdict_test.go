package warmup_test

import (
	"math"
	"testing"

	"loopbook/diagram/warmup"
)

// The regulation's criterion: within 11 °C (20 °F) of the rating, and no
// verdict for a start that isn't cold, air under −7 °C (20 °F), more than half
// of the time idling (testdata/trade/numbers.csv REG1, REG2, REG5: R1, R4), or a
// log that ends before the longest that driving takes, 12 min (WU1, common
// practice).
func TestReachesRegulating(t *testing.T) {
	cool := func(levelC float64) warmup.Series {
		return drive(1500, func(s float64) float64 { return levelC - (levelC-10)*math.Exp(-s/250) })
	}
	idles := func(minutesOfTen int) warmup.Series {
		s := cool(60)
		for i := range s.SpeedKmh {
			if i/60%10 < minutesOfTen {
				s.SpeedKmh[i], s.RPM[i] = 0, 800
			}
		}
		return s
	}
	byRevs := func(s warmup.Series) warmup.Series {
		s.SpeedKmh = nil
		return s
	}
	for _, tt := range []struct {
		name    string
		s       warmup.Series
		opensC  float64
		airC    float64
		reaches string
	}{
		{"healthy", drive(1500, opening(10, 91, 89.5)), 88, 10, "yes"},
		{"10 K under its rating", cool(78.5), 88, 10, "yes"},
		{"12 K under its rating", cool(76), 88, 10, "no"},
		{"the same under a lower rating", cool(76), 82, 10, "yes"},
		{"stays at 60 °C", cool(60), 88, 10, "no"},
		{"stays at 60 °C in hard frost", cool(60), 88, -8, "can't be said"},
		{"stays at 60 °C in mild frost", cool(60), 88, -6, "no"},
		{"idles six minutes of ten", idles(6), 88, 10, "can't be said"}, // REG5: half
		{"idles three minutes of ten", idles(3), 88, 10, "no"},
		{"idles six minutes of ten by its revs", byRevs(idles(6)), 88, 10, "can't be said"},
		{"idles three minutes of ten by its revs", byRevs(idles(3)), 88, 10, "no"},
		{"ends after 11 min", between(cool(60), 0, 660), 88, 10, "can't be said"},
		{"begins at 55 °C", drive(1500, opening(55, 91, 89.5)), 88, 10, "can't be said"},
		{"begins at its target", drive(1500, func(float64) float64 { return 80 }), 88, 10, "can't be said"},
		{"still warms as the log ends", drive(900, func(s float64) float64 { return 10 + s/15 }), 88, 10, "can't be said"},
	} {
		r := warmup.Analyse(tt.s, warmup.Options{OpensC: celsius(tt.opensC), AmbientC: celsius(tt.airC)})
		if answer(r) != tt.reaches || float64(r.TargetC) != tt.opensC-11 {
			t.Errorf("%s: reaches %g °C: %s, want %s (%q)", tt.name, float64(r.TargetC), answer(r), tt.reaches, r.Remarks)
		}
	}
}

// The seconds that an engine stands before it is started are counted from the record's own beginning.
func TestHowLongTheEngineStandsIsSaid(t *testing.T) {
	s := drive(900, opening(10, 91, 89.5))
	for i := range 60 {
		s.RPM[i] = 0
	}
	for _, by := range []float64{0, 5000} {
		if r := warmup.Analyse(shifted(s, by), warmup.Options{}); !said(r, "off for the first 60 s") {
			t.Errorf("in a record that begins at %g s: %q", by, r.Remarks)
		}
	}
}

// What an engine holds is the level that it kept for ten minutes, and not the top of the climb on which it got hot
// afterwards and from which it fell at the halt.
func TestATopIsNoLevel(t *testing.T) {
	warm := opening(10, 91, 89.5)
	s := drive(2100, func(s float64) float64 {
		switch {
		case s < 1400:
			return warm(s)
		case s < 1900:
			return 89.5 + (s-1400)*0.05
		}
		return 97 + (114.5-97)*math.Exp((1900-s)/120)
	})
	if r := warmup.Analyse(s, warmup.Options{OpensC: celsius(88)}); r.Plateau == nil || math.Abs(float64(r.Plateau.C)-89.5) > 1 {
		t.Errorf("it holds %+v, want 89.5 °C", r.Plateau)
	}
}

func TestColdStart(t *testing.T) {
	for _, tt := range []struct {
		name         string
		fromC        float64
		airC, intake float64 // NaN: not known
		cold         bool
	}{
		{"a winter's morning", -12, -12, math.NaN(), true},
		{"a spring morning, air not known", 14, math.NaN(), math.NaN(), true},
		{"a hot day's", 41, 39, math.NaN(), true},
		{"a hot day's, by its intake", 41, math.NaN(), 38, true},
		{"an hour's rest", 45, 15, math.NaN(), false},
		{"a short rest: engine and intake both hot", 70, math.NaN(), 68, false},
		{"an intake that isn't there yet", 45, math.NaN(), -40, false},
	} {
		s := drive(600, func(s float64) float64 { return tt.fromC + s/30 })
		if !math.IsNaN(tt.intake) {
			s.IntakeC = make([]float64, len(s.TimeS))
			for i := range s.IntakeC {
				s.IntakeC[i] = tt.intake
			}
		}
		var o warmup.Options
		if !math.IsNaN(tt.airC) {
			o.AmbientC = celsius(tt.airC)
		}
		if r := warmup.Analyse(s, o); r.ColdStart != tt.cold || said(r, "no cold start") == tt.cold {
			t.Errorf("%s: cold start %v, want %v (%q)", tt.name, r.ColdStart, tt.cold, r.Remarks)
		}
	}
}

// Whoever writes by hand may note the engine's speed in the later rows only: what warmed before ran all
// the same. An engine of which nothing is known and that doesn't warm isn't taken to run.
func TestSpeedsThatComeLateTakeNothingAway(t *testing.T) {
	for risesK, startS := range map[float64]float64{0.06: 0, 0: 900} {
		var s warmup.Series
		for m := 0.0; m <= 25; m++ {
			rpm, c := math.NaN(), 8+60*m*risesK
			if m >= 15 {
				rpm, c = 1800, c+(m-15)*1.5
			}
			s.TimeS, s.EctC, s.RPM = append(s.TimeS, 60*m), append(s.EctC, c), append(s.RPM, rpm)
		}
		if r := warmup.Analyse(s, warmup.Options{}); r.StartS != startS {
			t.Errorf("rising %g K/s: starts at %g s, want %g", risesK, r.StartS, startS)
		}
	}
}

// Of several trips the one from cold is judged, whatever its place; the engine
// starts where it begins to turn.
func TestTripFromColdIsJudged(t *testing.T) {
	hot := drive(900, func(float64) float64 { return 90 })
	rest := drive(400, func(float64) float64 { return 30 })
	for i := range rest.RPM {
		rest.RPM[i] = 0
	}
	cold := drive(1500, opening(12, 91, 89.5))
	for name, s := range map[string]warmup.Series{
		"engine off between":    joined(joined(hot, shifted(rest, 901)), shifted(cold, 1302)),
		"logger off between":    joined(hot, shifted(cold, 1302)),
		"the clock starts anew": joined(hot, cold),
	} {
		r := warmup.Analyse(s, warmup.Options{})
		startS := 1302.0
		if name == "the clock starts anew" {
			startS = 0
		}
		if !r.ColdStart || r.StartS != startS || !near(r.SecondsTo[60], 400, 2) || !said(r, "2 trips") {
			t.Errorf("%s: cold %v, start %g s, 60 °C after %g s, %q", name, r.ColdStart, r.StartS, r.SecondsTo[60], r.Remarks)
		}
	}
}

func TestNothingToReadIsSaid(t *testing.T) {
	nan := []float64{math.NaN(), math.NaN()}
	for name, s := range map[string]warmup.Series{
		"empty": {}, "no temperature": {TimeS: []float64{0, 1}}, "gaps only": {TimeS: []float64{0, 1}, EctC: nan},
		"no time": {TimeS: nan, EctC: []float64{20, 21}}, "one row": {TimeS: []float64{5}, EctC: []float64{20}},
		"engine never runs": {TimeS: []float64{0, 1, 2}, EctC: []float64{20, 20, 20}, RPM: []float64{0, 0, 0}},
		"infinite":          {TimeS: []float64{0, 1, math.Inf(1)}, EctC: []float64{20, math.Inf(1), 20}},
	} {
		r := warmup.Analyse(s, warmup.Options{})
		if r.Knee != nil || r.Plateau != nil || r.ReachesRegulating != nil || len(r.SecondsTo) > 0 || len(r.Remarks) == 0 {
			t.Errorf("%s: %+v", name, r)
		}
	}
}
