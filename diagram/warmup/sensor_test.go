package warmup_test

import (
	"math"
	"testing"

	"loopbook/diagram/warmup"
)

// Spikes are counted and don't change what the record says.
func TestSpikesAreJumpsAndNoMore(t *testing.T) {
	s := drive(1500, opening(10, 91, 89.5))
	clean := warmup.Analyse(s, warmup.Options{})
	for _, at := range []int{100, 400, 401, 900} {
		s.EctC[at] = -40
	}
	s.EctC[1200] = 140
	r := warmup.Analyse(s, warmup.Options{})
	if len(r.Jumps) != 4 || r.Jumps[0].S != 100 || r.Jumps[0].C != -40 || !said(r, "4 jumps") {
		t.Errorf("jumps %+v, %q", r.Jumps, r.Remarks)
	}
	if !near(r.Knee.S, clean.Knee.S, 1) || !near(float64(r.Plateau.C), float64(clean.Plateau.C), 0.05) {
		t.Errorf("knee %+v, plateau %+v; without spikes %+v, %+v", r.Knee, r.Plateau, clean.Knee, clean.Plateau)
	}
}

// What coolant can do is no jump: noise, steps of 2 K, a slug of 8 K at the
// opening, long gaps in a steep rise.
func TestWhatCoolantDoesIsNoJump(t *testing.T) {
	s := drive(1500, opening(10, 91, 89.5))
	slug := mapped(s, func(i int, c float64) float64 {
		if i > 676 && i < 690 {
			return c - 8
		}
		return c
	})
	for name, s := range map[string]warmup.Series{"noise": noisy(s, 1.5), "steps": inSteps(s, 2), "slug": slug, "each minute": every(s, 60), "gaps": withGaps(s, 300, 200)} {
		if r := warmup.Analyse(s, warmup.Options{}); len(r.Jumps) > 0 {
			t.Errorf("%s: %+v", name, r.Jumps)
		}
	}
}

// A sensor that shows the same under 60 °C while the car is driven is stuck
// (REG10, published, R1, for the level); a plateau, a cold town drive's pause
// and a log of no length aren't.
func TestStuckSensor(t *testing.T) {
	freezes := func(s float64) float64 { return 10 + 0.12*min(s, 250) }
	creeps := func(s float64) float64 { return 52 - 62*math.Exp(-s/480) }
	for _, tt := range []struct {
		name  string
		s     warmup.Series
		stuck bool
	}{
		{"never moves", drive(900, func(float64) float64 { return 20 }), true},
		{"never moves, at 70 °C", drive(900, func(float64) float64 { return 70 }), true},
		{"unplugged", drive(900, func(float64) float64 { return -40 }), true},
		{"freezes at 40 °C", drive(900, freezes), true},
		{"freezes at 40 °C as the log ends", drive(450, freezes), false},
		{"holds 89 °C", drive(900, func(float64) float64 { return 89 }), false},
		{"healthy", inSteps(drive(2000, opening(10, 91, 89.5)), 1), false},
		{"creeps to 52 °C, its thermostat open", drive(3000, creeps), false},
		{"creeps to 52 °C, in steps", inSteps(drive(3000, creeps), 1), false},
		{"opens early", inSteps(drive(2000, opening(10, 68, 67)), 1), false},
	} {
		r := warmup.Analyse(tt.s, warmup.Options{})
		if (r.Stuck != nil) != tt.stuck || said(r, "the sensor stays") != tt.stuck {
			t.Errorf("%s: %+v, %q", tt.name, r.Stuck, r.Remarks)
		}
	}
}

// An invented fan: on at 97 °C, off at 89 °C, five times on a standing car.
func TestFanCycles(t *testing.T) {
	warm := opening(10, 90, 89)
	saw := func(s float64) float64 {
		if s < 900 {
			return warm(s)
		}
		phase := math.Mod(s-900, 200) / 200
		return 89 + 8*min(phase/0.7, (1-phase)/0.3)
	}
	s := drive(900+5*200, saw)
	for i, at := range s.TimeS {
		if at >= 900 {
			s.RPM[i], s.SpeedKmh[i] = 800, 0
		}
	}
	for name, s := range map[string]warmup.Series{"exact": s, "noisy": noisy(s, 1), "in steps": inSteps(s, 1), "with gaps of 5 s": withGaps(s, 60, 5)} {
		r := warmup.Analyse(s, warmup.Options{})
		if n := len(r.FanCycles); n != 5 {
			t.Errorf("%s: %d fan cycles, want 5: %+v", name, n, r.FanCycles)
			continue
		}
		if c := r.FanCycles[2]; !near(float64(c.OnC), 97, 1.5) || !near(float64(c.OffC), 89, 1.5) {
			t.Errorf("%s: on at %g, off at %g °C, want 97 and 89", name, float64(c.OnC), float64(c.OffC))
		}
	}
	if r := warmup.Analyse(drive(1900, warm), warmup.Options{}); len(r.FanCycles) > 0 {
		t.Errorf("no fan, yet %+v", r.FanCycles)
	}
}

// A thermostat that stands open is warm in town and cold on the road: the drop
// is what it fell by.
func TestDropOnTheRoad(t *testing.T) {
	for _, tt := range []struct {
		name         string
		townC, roadC float64
		townS, dropK float64
	}{
		{"healthy", 89, 88, 1200, 1}, {"open", 84, 62, 1200, 22}, {"hotter in town than its rating, by the fan", 95, 88, 1200, 0},
		{"held there for most of the time", 97, 88, 1800, 5}, // TH8, common practice: 5 K over the rating at most are the thermostat's
	} {
		s := drive(2400, func(s float64) float64 {
			if s < tt.townS {
				return tt.townC - (tt.townC-10)*math.Exp(-s/200)
			}
			return tt.roadC + (tt.townC-tt.roadC)*math.Exp((tt.townS-s)/60)
		})
		for i, at := range s.TimeS {
			s.SpeedKmh[i] = 25
			if at >= tt.townS {
				s.SpeedKmh[i] = 90
			}
		}
		r := warmup.Analyse(s, warmup.Options{OpensC: celsius(88)})
		if r.DropsOnRoadK == nil || !near(float64(*r.DropsOnRoadK), tt.dropK, 1.5) || !near(float64(*r.RoadC), tt.roadC, 1) {
			t.Errorf("%s: %s on the road, drop %v, want %g °C and %g K", tt.name, show(r.RoadC), r.DropsOnRoadK, tt.roadC, tt.dropK)
		}
	}
	if r := warmup.Analyse(drive(2000, opening(10, 91, 89.5)), warmup.Options{}); r.DropsOnRoadK != nil {
		t.Errorf("never on the road, yet %v", *r.DropsOnRoadK)
	}
}
