package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// The range at warm idle is DT2's, 8 to 40 K, and two readings differ by up to
// 4.2 K (IR9), both common practice.
func TestDifferenceOutOfRangeThatNothingExplainsIsReadAgain(t *testing.T) {
	for _, tt := range []struct {
		name   string
		radOut float64
		want   bool
	}{
		{"as warm as its inlet", 90, true},
		{"within the error of two readings", 83, false},
		{"in range", 70, false},
		{"a throttling thermostat's drop", 35, false},
	} {
		s := healthy("outlet-thermostat", warmIdle)
		s.ectC = 92
		s.t = map[diagram.Point]float64{diagram.EngineOut: 90, diagram.RadIn: 88, diagram.RadOut: tt.radOut}
		f := analyst(t).Analyse(toCase(s))
		flag := find(f, "delta-out-of-range")
		if (flag != nil) != tt.want {
			t.Errorf("%s: %+v of %v", tt.name, flag, pressing(f))
		}
		if flag == nil {
			continue
		}
		for _, word := range []string{"-2 K", "8 to 40 K", "both ends again"} {
			if !strings.Contains(flag.Text.String(), word) {
				t.Errorf("%s: no %q in %q", tt.name, word, flag.Text)
			}
		}
		if flag.Severity != evidence.Look || len(flag.Points) != 2 || flag.Round != 0 {
			t.Errorf("%s: %+v", tt.name, flag)
		}
	}
}

// A round that something else asks to look at is left to that.
func TestDifferenceOutOfRangeGivesWayToOtherFlags(t *testing.T) {
	s := healthy("outlet-thermostat", warmIdle).set("rad_out", 86.5).set("pump_in", 86)
	if got := pressing(analyst(t).Analyse(toCase(s))); len(got) != 1 || got[0] != "delta-out-of-range" {
		t.Fatalf("a radiator that is hot all through, alone: %v", got)
	}
	s.heat(84, 50)
	if f := analyst(t).Analyse(toCase(s)); find(f, "heater-restricted") == nil || find(f, "delta-out-of-range") != nil {
		t.Errorf("with a restricted heater: %v", pressing(f))
	}
}

// Behind a shut thermostat the upper hose is cold on any engine (F00 at COLD5, published pattern): it is no
// measure of the sensor.
func TestStillCoolantIsNoMeasureOfTheSensor(t *testing.T) {
	for engineOut, want := range map[float64]bool{14: false, 86: true} {
		s := healthy("outlet-thermostat", warmIdle)
		s.ectC = 90
		s.t = map[diagram.Point]float64{diagram.EngineOut: engineOut}
		told := false
		for _, d := range analyst(t).Analyse(toCase(s)).Deltas {
			told = told || d.Name == evidence.SensorAgainstGun
		}
		if told != want {
			t.Errorf("hose at %g °C: the sensor is held against it: %v", engineOut, told)
		}
	}
}

// A radiator that is as warm at its outlet as at its inlet in one round isn't called inexplicable, and its hoses aren't
// asked for again, where another round of the stage shows a thermostat that stands open (F01, common practice). What
// the heater shows doesn't explain it, nor what was found before the repair.
func TestDifferenceThatAnotherRoundsFaultExplainsIsNoSlip(t *testing.T) {
	for _, tt := range []struct {
		name  string
		other *scene
		want  bool
	}{
		{"a thermostat that stands open", healthy("outlet-thermostat", cold5).set("engine_out", 53).set("rad_in", 52).set("rad_out", 48), false},
		{"a heater without flow", healthy("outlet-thermostat", warmIdle).heat(84, 22), true},
	} {
		odd := healthy("outlet-thermostat", warmIdle).set("rad_out", 86.5).set("pump_in", 86)
		c := toCase(tt.other, odd)
		if f := analyst(t).Analyse(c); (find(f, "delta-out-of-range") != nil) != tt.want {
			t.Errorf("beside %s: %v", tt.name, pressing(f))
		}
		c.Rounds[1].Stage = cases.AfterRepair
		if f := analyst(t).Analyse(c); find(f, "delta-out-of-range") == nil {
			t.Errorf("after the repair, beside %s: %v", tt.name, pressing(f))
		}
	}
}

// expected is a stage's range for one difference, besides which nothing is known.
type expected struct {
	name string
	span evidence.Span
}

func (x expected) Expect(*cases.Case, int) evidence.Expectation {
	return evidence.Expectation{Deltas: map[string]evidence.Span{x.name: x.span}}
}

// A heater that is turned off may be shut by a valve (T8, T22): its return is cold on a sound car.
func TestAHeaterThatIsOffIsNotAskedForAgain(t *testing.T) {
	a, err := evidence.New(expected{evidence.HeaterDrop, evidence.Span{LowK: casetest.P(diagram.DeltaK(-8)), HighK: casetest.P(diagram.DeltaK(32))}})
	if err != nil {
		t.Fatal(err)
	}
	s := healthy("outlet-thermostat", warmIdle).heat(80, 21)
	s.round.Heater = cases.HeaterOff
	if f := a.Analyse(toCase(s)); find(f, "delta-out-of-range") != nil {
		t.Errorf("heater off: %v", pressing(f))
	}
}

// Two readings differ by up to 4.2 K (IR9, common practice): a heater's drop that is over DT11's 20 K by less is looked
// at again and no reason to take a heater apart.
func TestAHeaterOutByLessThanTheGunsErrorIsLookedAt(t *testing.T) {
	for drop, want := range map[float64]evidence.Severity{22: evidence.Look, 28: evidence.Act} {
		flag := find(analyst(t).Analyse(toCase(healthy("outlet-thermostat", warmIdle).heat(84, 84-drop))), "heater-restricted")
		if flag == nil || flag.Severity != want {
			t.Errorf("a drop of %g K: %+v, want %s", drop, flag, want)
		}
	}
}

// Air that stands behind a hot radiator gets as hot as its coolant (physics): in cold weather that is far over the air
// before it, on every sound car.
func TestStillAirBehindTheRadiatorIsInRange(t *testing.T) {
	s := healthy("outlet-thermostat", warmIdle).set("air_on", 5).set("air_off", 86)
	s.round.AmbientC = casetest.P(diagram.Celsius(5))
	for _, d := range analyst(t).Analyse(toCase(s)).Deltas {
		if d.Name == evidence.AirThroughRadiator && d.State != evidence.InRange {
			t.Errorf("air of 86 °C behind a radiator at 85 °C, 5 °C before it: %+v", d)
		}
	}
}
