package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// Air may be warmed on its way to the radiator and isn't cooled on it (second law of thermodynamics): the coldest of a
// stage is nearest to the weather that nobody noted.
func TestAirOutsideUntilItIsNoted(t *testing.T) {
	at := func(stage cases.Stage, air ...float64) cases.Round {
		r := cases.Round{Stage: stage}
		for _, c := range air {
			r.Readings = append(r.Readings, cases.Reading{Point: diagram.AirOn, ShownC: casetest.P(diagram.Celsius(c))})
		}
		return r
	}
	noted := at(cases.AfterRepair)
	noted.AmbientC = casetest.P(diagram.Celsius(-3))
	before, after := cases.BeforeRepair, cases.AfterRepair
	for name, tt := range map[string]struct {
		rounds []cases.Round
		want   diagram.Celsius
	}{
		"nothing tells it":        {[]cases.Round{at(before)}, evidence.UsualAmbientC},
		"the coldest of a stage":  {[]cases.Round{at(before), at(before, 9), at(before, 2), at(after, -20)}, 2},
		"no weather of this day":  {[]cases.Round{at(before), at(after, 2)}, evidence.UsualAmbientC},
		"off a hot core":          {[]cases.Round{at(before, 62)}, evidence.UsualAmbientC},
		"noted for another round": {[]cases.Round{at(before, 2), noted}, -3},
	} {
		if got := evidence.AirC(&cases.Case{Rounds: tt.rounds}, 0); got != tt.want {
			t.Errorf("%s: %g °C, want %g", name, float64(got), float64(tt.want))
		}
	}
}

// A radiator that warms with a cold engine (F01; how near the engine means flow is common practice) might be warm from the day alone as long as the
// weather isn't known. Air that comes to it at 2 °C tells.
func TestAirBeforeTheRadiatorStandsForTheWeather(t *testing.T) {
	s := healthy("outlet-thermostat", cold5).set("engine_out", 47).set("rad_in", 46)
	s.ectC, s.round.AmbientC = 50, nil
	if f := find(analyst(t).Analyse(toCase(s)), "thermostat-passing-early"); f != nil {
		t.Errorf("without any weather: %+v", f)
	}
	f := find(analyst(t).Analyse(toCase(s.set("air_on", 2))), "thermostat-passing-early")
	if f == nil || !strings.Contains(f.Because[len(f.Because)-1].String(), "2 °C taken") {
		t.Errorf("with air at 2 °C: %+v", f)
	}
}
