package warmup_test

import (
	"math"
	"testing"

	"loopbook/diagram/published"
	"loopbook/diagram/warmup"
)

// A mass that is heated steadily and loses heat in proportion: the closed form
// of textbooks, T = Ta + (Q/UA)(1 − exp(−UA t/C)), whose rows in
// testdata/reference/warmup_lumped.csv hold the curve that is analysed.
func TestLumpedWarmUpHasTheClosedFormsTimes(t *testing.T) {
	const airC, riseC, tauS = 20, 200, 1500 // Q/UA = 8 kW / 40 W/K, C/UA = 60 kJ/K / 40 W/K
	curve := func(s float64) float64 { return airC + riseC*(1-math.Exp(-s/tauS)) }
	rows := 0
	for _, row := range published.Rows(t, "reference/warmup_lumped.csv") {
		s, ok := secondsOf(row["quantity"])
		if row["case"] != "heated_mass C=60 kJ/K Q=8 kW UA=40 W/K Ta=20 degC" || !ok {
			continue
		}
		rows++
		if want := row.Number(t, "value"); !near(curve(s), want, 1e-5) {
			t.Errorf("the curve has %g °C at %g s, the table %g", curve(s), s, want)
		}
	}
	if rows < 5 {
		t.Fatalf("the table has %d rows of the curve", rows)
	}
	r := warmup.Analyse(drive(1200, curve), warmup.Options{})
	for _, level := range warmup.Levels() {
		want := -tauS * math.Log(1-(float64(level)-airC)/riseC)
		if got := r.SecondsTo[level]; !near(got, want, 1.5) {
			t.Errorf("%g s to %d °C, want %g", got, level, want)
		}
	}
	if r.Knee != nil || r.Plateau != nil {
		t.Errorf("knee %+v, plateau %+v of a curve without", r.Knee, r.Plateau)
	}
}

// secondsOf reads the time out of "T at t=60 s".
func secondsOf(quantity string) (float64, bool) {
	const head, tail = "T at t=", " s"
	if len(quantity) <= len(head)+len(tail) || quantity[:len(head)] != head {
		return 0, false
	}
	v := cell(quantity[len(head) : len(quantity)-len(tail)])
	return v, !math.IsNaN(v)
}

// An engine that never shuts its radiator off comes smoothly to a level: it has
// a plateau and no knee, whatever its pace.
func TestSmoothApproachHasNoKnee(t *testing.T) {
	for _, tauS := range []float64{150, 250, 400, 600} {
		for _, levelC := range []float64{55, 65, 75, 90} {
			s := drive(2400, func(s float64) float64 { return levelC - (levelC-8)*math.Exp(-s/tauS) })
			for name, s := range map[string]warmup.Series{"exact": s, "noisy": noisy(s, 1), "in steps": inSteps(s, 1)} {
				r := warmup.Analyse(s, warmup.Options{})
				if r.Knee != nil || r.Plateau == nil || !near(float64(r.Plateau.C), levelC, 2.5) {
					t.Errorf("%g °C with %g s, %s: knee %+v, plateau %+v", levelC, tauS, name, r.Knee, r.Plateau)
				}
			}
		}
	}
}

// The knee of an invented opening is found where it was put, through steps,
// noise, gaps and any sampling from 1 s to 1 min.
func TestKneeIsFoundWhereItIs(t *testing.T) {
	for _, kneeC := range []float64{70, 83, 91, 102} {
		s := drive(2000, opening(10, kneeC, kneeC-1.5))
		wantS := (kneeC - 10) / 0.12
		for name, tt := range map[string]struct {
			s       warmup.Series
			k, late float64
		}{
			"exact": {s, 1, 10}, "steps of 1 K": {inSteps(s, 1), 1, 10}, "noise of 1 K": {noisy(s, 1), 1, 10},
			"noise in steps": {inSteps(noisy(s, 1), 1), 1, 10}, "gaps": {withGaps(s, 50, 20), 1, 15},
			"each 5 s": {every(s, 5), 1, 10}, "each 20 s": {every(s, 20), 1.5, 20}, "each minute": {every(s, 60), 2.5, 45},
		} {
			r := warmup.Analyse(tt.s, warmup.Options{})
			if k := r.Knee; k == nil || !near(float64(k.C), kneeC, tt.k) || !near(k.S, wantS, tt.late) || !(k.Confidence >= 0.4 && k.Confidence <= 1) {
				t.Errorf("%s: knee %+v, want %g °C at %.0f s", name, k, kneeC, wantS)
			}
			if p := r.Plateau; p == nil || !near(float64(p.C), kneeC-1.5, 0.5) {
				t.Errorf("%s: plateau %+v, want %g °C", name, p, kneeC-1.5)
			}
		}
	}
}

// When the clock began changes nothing but when the seconds begin.
func TestShiftedTimeChangesNothingElse(t *testing.T) {
	s := noisy(drive(1500, opening(10, 91, 89.5)), 1)
	a, b := warmup.Analyse(s, warmup.Options{}), warmup.Analyse(shifted(s, 5e4), warmup.Options{})
	if b.StartS-a.StartS != 5e4 || *a.Knee != *b.Knee || *a.Plateau != *b.Plateau || a.SecondsTo[70] != b.SecondsTo[70] {
		t.Errorf("%+v\n%+v", a, b)
	}
}

// Halts with the engine off hold the warm-up up and make no knee; its time
// comes later by their length.
func TestHaltsMakeNoKnee(t *testing.T) {
	const haltS = 120
	running := opening(10, 91, 89.5)
	halts := func(s float64) (ran float64, stands bool) {
		for i, at := range []float64{200, 500} { // in time that is run
			begin := at + float64(i)*haltS
			if s >= begin && s < begin+haltS {
				return at, true
			}
			if s >= begin+haltS {
				ran = float64(i+1) * haltS
			}
		}
		return s - ran, false
	}
	s := drive(2000, func(s float64) float64 { ran, _ := halts(s); return running(ran) })
	for i, at := range s.TimeS {
		if _, stands := halts(at); stands {
			s.RPM[i], s.SpeedKmh[i] = 0, 0
		}
	}
	r := warmup.Analyse(s, warmup.Options{})
	if k := r.Knee; k == nil || !near(float64(k.C), 91, 1) || !near(k.S, 675+2*haltS, 15) {
		t.Errorf("knee %+v, want 91 °C at %d s", k, 675+2*haltS)
	}
}

// A halt in traffic, engine idling, and slower driving hold the rise up for a
// while only.
func TestSlowDrivingMakesNoKnee(t *testing.T) {
	c := 10.0
	s := drive(1300, func(s float64) float64 {
		switch {
		case s < 400:
			c += 0.12 // road
		case s < 520: // idling
		default:
			c += 0.025 // town
		}
		return c
	})
	for i, at := range s.TimeS {
		switch {
		case at < 400:
			s.RPM[i], s.SpeedKmh[i] = 2000, 90
		case at < 520:
			s.RPM[i], s.SpeedKmh[i] = 850, 0
		default:
			s.RPM[i], s.SpeedKmh[i] = 1400, 40
		}
	}
	if r := warmup.Analyse(s, warmup.Options{}); r.Knee != nil || r.Plateau != nil || r.ReachesRegulating != nil && !*r.ReachesRegulating {
		t.Errorf("knee %+v, plateau %+v, reaches %s", r.Knee, r.Plateau, answer(r))
	}
}

// An engine that its thermostat has held gets hotter at a stand on a hot day until the fan starts, or the road cools
// it: neither is the thermostat's opening.
func TestWhatTheFanEndsIsNoKnee(t *testing.T) {
	const opensS, climbsS, coolsS = 1100, 2000, 2240
	for name, after := range map[string]func(s float64) float64{
		"the road": func(s float64) float64 { return 85 + 12*math.Exp(-s/40) },
		"a fan":    func(s float64) float64 { return 94.5 + 2.5*math.Cos(s/40) },
	} {
		s := inSteps(drive(3000, func(s float64) float64 {
			switch {
			case s < opensS:
				return 20 + 66*s/opensS
			case s < climbsS:
				return 86
			case s < coolsS:
				return 86 + 11*(s-climbsS)/(coolsS-climbsS)
			}
			return after(s - coolsS)
		}), 1)
		if k := warmup.Analyse(s, warmup.Options{}).Knee; k == nil || !near(float64(k.C), 86, 2) {
			t.Errorf("%s: knee %+v, want 86 °C", name, k)
		}
	}
}
