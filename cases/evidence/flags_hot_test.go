package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// The cap stays shut above 50 °C (SF1, published, T18): a round that doesn't tell is
// as hot as the one before it, and only the engine's own hot side shows it cold
// (judgement, on the safe side).
func TestCapStaysShutUntilTheCaseShowsItCold(t *testing.T) {
	read := func(p diagram.Point, c diagram.Celsius) cases.Round {
		return cases.Round{Readings: []cases.Reading{{Point: p, ShownC: &c, Surface: cases.Surface{Word: "tape"}}}}
	}
	among := func(one cases.Reading) cases.Round { // among many cold ones, the sensor's too
		r := cases.Round{EctC: casetest.P(diagram.Celsius(30)), Readings: []cases.Reading{one}}
		for _, p := range []diagram.Point{diagram.RadIn, diagram.RadOut, diagram.PumpIn, diagram.HeaterIn, diagram.HeaterOut, diagram.EngineOut} {
			r.Readings = append(r.Readings, read(p, 30).Readings...)
		}
		return r
	}
	for name, tt := range map[string]struct {
		next cases.Round
		want string // "": no caution
	}{
		"one doubtful":   {among(cases.Reading{Point: diagram.Housing, ShownC: casetest.P(diagram.Celsius(94)), Surface: cases.Surface{Word: "cast-iron"}}), "Coolant at 1"}, // over 100 °C by its correction
		"warm air":       {among(cases.Reading{Point: diagram.AirOff, ShownC: casetest.P(diagram.Celsius(70))}), ""},
		"minutes only":   {cases.Round{MinutesSinceStart: casetest.P(20.0)}, "was at 101 °C in round 1"},
		"gauge up":       {cases.Round{MinutesSinceStart: casetest.P(20.0), Gauge: cases.GaugeAboveMiddle}, "hot by its gauge"},
		"gauge red":      {cases.Round{Gauge: cases.GaugeRed}, "hot by its gauge"},
		"gauge cold":     {cases.Round{Gauge: "cold"}, "was at 101 °C in round 1"},
		"lower hose":     {read(diagram.RadOut, 30), "was at 101 °C in round 1"},
		"heater's valve": {read(diagram.HeaterIn, 30), "was at 101 °C in round 1"},
		"warm still":     {read(diagram.HeaterIn, 62), "at 62 °C"},
		"shown cold":     {read(diagram.Housing, 41), ""},
		"bare, perhaps":  {cases.Round{Readings: []cases.Reading{{Point: diagram.Housing, ShownC: casetest.P(diagram.Celsius(30))}}}, "was at 101 °C in round 1"},
		"scanned cold":   {cases.Round{EctC: casetest.P(diagram.Celsius(38))}, ""},
		"cold but red":   {cases.Round{EctC: casetest.P(diagram.Celsius(38)), Gauge: cases.GaugeRed}, "hot by its gauge"},
	} {
		c := &cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{EctC: casetest.P(diagram.Celsius(101))}, tt.next}}
		f := analyst(t).Analyse(c)
		flag := find(f, "hot-caution")
		switch {
		case f.Rounds[1].CapShut != (tt.want != ""):
			t.Errorf("%s: the cap shut: %v", name, f.Rounds[1].CapShut)
		case tt.want == "" && flag != nil, tt.want != "" && (flag == nil || !strings.Contains(flag.Text.String(), tt.want)):
			t.Errorf("%s: %+v, want %q", name, flag, tt.want)
		}
	}
}

// A round that has a name is told by it: the hose map numbers none that has.
func TestTheHotRoundIsToldByItsName(t *testing.T) {
	hot := cases.Round{Label: "after the climb", EctC: casetest.P(diagram.Celsius(112))}
	c := &cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{hot, {Label: "Warm idle"}}}
	flag := find(analyst(t).Analyse(c), "hot-caution")
	if want := "at 112 °C in the round “after the climb”"; flag == nil || !strings.Contains(flag.Text.String(), want) {
		t.Errorf("%+v, want %q", flag, want)
	}
}

// A figure that is too uncertain to judge by keeps the cap shut, but isn't told as the coolant's
// (cast iron emits 0.60 to 0.95 of what a black body does: testdata/reference/emissivity.csv).
func TestADoubtfulReadingIsNoFigure(t *testing.T) {
	housing := cases.Reading{Point: diagram.Housing, ShownC: casetest.P(diagram.Celsius(94)), Surface: cases.Surface{Word: "cast-iron"}}
	for ect, want := range map[diagram.Celsius]string{97: "Coolant at 97 °C", 0: "keep the cap shut"} {
		c := &cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{Readings: []cases.Reading{housing}}}}
		if ect > 0 {
			c.Rounds[0].EctC = casetest.P(ect)
		}
		f := analyst(t).Analyse(c)
		if flag := find(f, "hot-caution"); !f.Rounds[0].CapShut || !f.Rounds[0].Readings[diagram.Housing].Doubtful || flag == nil || !strings.Contains(flag.Text.String(), want) {
			t.Errorf("scanned at %g °C: %+v, want %q", float64(ect), flag, want)
		}
	}
}

// What can hurt stands before what only asks for something: the hazards come first in
// any report (testdata/trade has the limits; the order is common practice).
func TestCautionsComeFirst(t *testing.T) {
	s := healthy("outlet-thermostat", warm2500).open(118, 15)
	f := analyst(t).Analyse(toCase(s))
	if len(f.Flags) < 3 || f.Flags[0].ID != "stop-hot" || f.Flags[1].ID != "hot-caution" {
		t.Errorf("118 °C: %+v", f.Flags)
	}
}

// 20 K over its rating an engine is past the latest usual start of its fan (FN1, published) and
// runs on towards the red: stop at the red zone (M15).
func TestFarAboveRatingIsSwitchedOff(t *testing.T) {
	for ect, want := range map[float64]bool{103: false, 108: true, 118: false} { // from 115 °C on the first card says to
		flag := find(analyst(t).Analyse(toCase(healthy("outlet-thermostat", warm2500).open(ect, 15))), "engine-above-rating")
		if flag == nil || strings.Contains(flag.Text.String(), "switch it off before the red zone") != want {
			t.Errorf("%g °C with a rating of 88 °C: %+v", ect, flag)
		}
	}
}

// In the red nobody is told to switch off before it: the first card says to.
func TestInTheRedItIsTooLateForBefore(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(112, 15))
	c.Rounds[0].Gauge = cases.GaugeRed
	f := analyst(t).Analyse(c)
	stop, above := find(f, "stop-hot"), find(f, "engine-above-rating")
	if stop == nil || above == nil || strings.Contains(above.Text.String(), "before the red zone") {
		t.Errorf("gauge in the red: %+v and %+v", stop, above)
	}
}

// A thermostat opens within 3 K of what is given (TH1, published, M2), and is no surer at its other
// end: at the very degree of full opening the bypass may be open still.
func TestBypassIsNotJudgedAtTheVeryDegree(t *testing.T) {
	for ect, want := range map[diagram.Celsius]bool{101: false, 103: false, 105: true} {
		c := toCase(healthy("outlet-thermostat", warm2500).open(float64(ect), 15))
		c.Loop.ThermostatFullC = casetest.P(diagram.Celsius(101))
		c.Rounds[0].Readings = []cases.Reading{
			{Point: diagram.Housing, ShownC: casetest.P(ect - 1), Surface: cases.Surface{Word: "tape"}},
			{Point: diagram.EngineOut, ShownC: casetest.P(ect - 3), Surface: cases.Surface{Word: "rubber"}},
			{Point: diagram.Bypass, ShownC: casetest.P(ect - 2), Surface: cases.Surface{Word: "tape"}},
		}
		if got := find(analyst(t).Analyse(c), "bypass-open") != nil; got != want {
			t.Errorf("engine at %g °C, fully open at 101 °C: bypass-open %v", float64(ect), got)
		}
	}
}

// A cool vent is a fault of the air's side only where warm air was asked for: HT1 is of a
// heater on full hot (common practice).
func TestVentIsAFaultOnlyWithTheHeaterOn(t *testing.T) {
	none := evidence.Severity("none")
	for heater, want := range map[cases.Heater]evidence.Severity{
		cases.HeaterFull: evidence.Act, cases.HeaterUnknown: evidence.Look, "": evidence.Look, cases.HeaterHalf: none, cases.HeaterOff: none,
	} {
		c := toCase(healthy("outlet-thermostat", warm2500))
		c.Rounds[0].Heater, c.Rounds[0].AmbientC = heater, casetest.P(diagram.Celsius(20))
		c.Rounds[0].Readings = []cases.Reading{
			{Point: diagram.HeaterIn, ShownC: casetest.P(diagram.Celsius(86)), Surface: cases.Surface{Word: "rubber"}},
			{Point: diagram.HeaterOut, ShownC: casetest.P(diagram.Celsius(80)), Surface: cases.Surface{Word: "rubber"}},
			{Point: diagram.Vent, ShownC: casetest.P(diagram.Celsius(30))},
		}
		flag := find(analyst(t).Analyse(c), "heater-air-side")
		if want == none {
			if flag != nil {
				t.Errorf("heater %q: %+v", heater, flag)
			}
			continue
		}
		if flag == nil || flag.Severity != want || strings.Contains(flag.Text.String(), "set the heater to full hot") != (want == evidence.Look) {
			t.Errorf("heater %q: %+v", heater, flag)
		}
	}
}

// With the gauge in the red and the scan tool at 118 °C both say hot: nothing is to be found out between them, and the
// red is a reason to switch off.
func TestARedGaugeOnAHotSensorIsNoContradiction(t *testing.T) {
	c := dry()
	f := analyst(t).Analyse(c)
	if flag := find(f, "gauge-against-sensor"); flag != nil {
		t.Errorf("gauge red, scan tool at 118 °C: %s", flag.Text)
	}
	if stop := find(f, "stop-hot"); stop == nil || !strings.Contains(stop.Because[0].String(), "gauge stands in the red") {
		t.Errorf("the gauge is no reason to switch off: %+v", stop)
	}
}

// In a loop without coolant the hoses and the housing are cooler than the engine (F09, common practice): the sensor in
// its steam is no liar for that.
func TestAnEmptyLoopMakesNoSensorALiar(t *testing.T) {
	c := dry()
	if f := analyst(t).Analyse(c); find(f, "sensor-disagrees") == nil {
		t.Errorf("filled: %v", pressing(f))
	}
	c.Tests = []cases.Test{{Kind: "level", State: "empty", Stage: cases.BeforeRepair}}
	f := analyst(t).Analyse(c)
	if find(f, "sensor-disagrees") != nil || find(f, "sensor-compare") != nil || *f.Rounds[0].EngineC != 118 {
		t.Errorf("empty, judged at %v: %v", *f.Rounds[0].EngineC, pressing(f))
	}
}

// dry is an engine that has lost its coolant: hot by its sensor and its gauge, its hoses cool.
func dry() *cases.Case {
	s := healthy("outlet-thermostat", warmIdle)
	s.ectC, s.round.Gauge = 118, cases.GaugeRed
	s.t = map[diagram.Point]float64{diagram.Housing: 80, diagram.RadIn: 40, diagram.RadOut: 30, diagram.HeaterIn: 40, diagram.HeaterOut: 30}
	return toCase(s)
}
