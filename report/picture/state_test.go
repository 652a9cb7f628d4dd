package picture_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report/picture"
)

func hot() cases.Case {
	at := func(p diagram.Point, c diagram.Celsius) cases.Reading { return cases.Reading{Point: p, ShownC: &c} }
	return cases.Case{
		Loop: cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))},
		Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(22))},
		Rounds: []cases.Round{{
			Stage: cases.BeforeRepair, MinutesSinceStart: casetest.P(15.0), EngineRPM: casetest.P(820.0), Fan: cases.FanOn,
			EctC: casetest.P(diagram.Celsius(113)),
			Readings: []cases.Reading{
				at(diagram.Housing, 110), at(diagram.EngineOut, 45), at(diagram.RadIn, 42), at(diagram.RadOut, 27), {Point: diagram.PumpIn},
			},
		}},
	}
}

func state(t *testing.T, c cases.Case, round int, u units.Set) drawing.State {
	t.Helper()
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	l, err := diagram.LoopByID(c.Loop.Layout)
	if err != nil {
		t.Fatal(err)
	}
	return picture.State(l, &c, a.Analyse(&c), round, say.English().With(u))
}

func TestHotEngineWithAShutThermostat(t *testing.T) {
	s := state(t, hot(), 0, units.Metric())
	if s.Thermostat != drawing.Shut || !s.Doubt || s.Caution == "" || !s.FanOn || s.Sensor != "sensor 113 °C" {
		t.Errorf("state = thermostat %v, doubt %v, caution %q, fan %v, sensor %q", s.Thermostat, s.Doubt, s.Caution, s.FanOn, s.Sensor)
	}
	if got := s.Points[diagram.PumpIn].Mark; got != drawing.CantReach {
		t.Errorf("the lower hose that can't be reached has mark %v", got)
	}
	out := s.Points[diagram.RadOut]
	if out.Mark != drawing.OutOfRange || out.Range == "" || out.Note == "" {
		t.Errorf("a lower hose of 27 °C on a hot engine is shown as %+v", out)
	}
	if got := s.Points[diagram.HeaterIn]; got.Text != "" || got.Range == "" {
		t.Errorf("an empty entry shows %+v, want its range and no number", got)
	}
	if d, ok := s.Deltas[evidence.ThermostatStep]; !ok || d.Mark != drawing.OutOfRange || d.Text != "65 K" {
		t.Errorf("the thermostat step = %+v", d)
	}
}

func TestFahrenheit(t *testing.T) {
	s := state(t, hot(), 0, units.US())
	if s.Points[diagram.Housing].Text != "230" || s.Unit != "°F" || s.Deltas[evidence.ThermostatStep].Text != "117 F°" {
		t.Errorf("housing %q %s, step %q; want 230 °F and 117 F°", s.Points[diagram.Housing].Text, s.Unit, s.Deltas[evidence.ThermostatStep].Text)
	}
}

func TestColdLoopNeedsNoCaution(t *testing.T) {
	c := hot()
	c.Rounds[0].EctC = nil
	for i := range c.Rounds[0].Readings {
		if c.Rounds[0].Readings[i].ShownC != nil {
			c.Rounds[0].Readings[i].ShownC = casetest.P(diagram.Celsius(21))
		}
	}
	if s := state(t, c, 0, units.Metric()); s.Caution != "" {
		t.Errorf("caution at 21 °C: %q", s.Caution)
	}
}

func TestNoRoundShowsTheBareLoop(t *testing.T) {
	c := hot()
	c.Rounds = nil
	if s := state(t, c, -1, units.Metric()); len(s.Points) != 0 || s.ScaleText[2] != "120 °C" {
		t.Errorf("state without a round = %+v", s)
	}
}

// What no coolant can have (204 °C: an older program kept it, or it was imported) is shown as it was read, to be
// repeated; a surface that was noted without a number shows none.
func TestWhatCannotBeCoolantIsShownToBeRepeated(t *testing.T) {
	c := hot()
	c.Rounds[0].Readings = []cases.Reading{
		{Point: diagram.RadIn, ShownC: casetest.P(diagram.Celsius(204))}, {Point: diagram.HeaterIn, Surface: cases.Surface{Word: "rubber"}},
	}
	s := state(t, c, 0, units.Metric())
	if got := s.Points[diagram.RadIn]; got.Text != "204" || got.Mark != drawing.Repeat || got.Note == "" || got.TrueC != nil {
		t.Errorf("204 °C is shown as %+v", got)
	}
	if got := s.Points[diagram.HeaterIn]; got.Text != "" || got.Mark != drawing.Empty {
		t.Errorf("no number is shown as %+v", got)
	}
}

// Before a thermostat opens the hose behind it stays at the air's temperature however cool the engine still is (F00 at
// COLD5), and follows the engine where it stands open (F01); an engine as cool as the air tells nothing. On the road a
// cold radiator may leave a hose far under the engine that holds its rating: with the hose well over the air something
// comes through (DT7, common practice).
func TestHowFarTheThermostatIsOpenOnACoolEngine(t *testing.T) {
	at := func(p diagram.Point, c diagram.Celsius) cases.Reading { return cases.Reading{Point: p, ShownC: &c} }
	for name, tt := range map[string]struct {
		layout          string
		minutes         float64
		air, out, below diagram.Celsius
		want            drawing.Opening
	}{
		"shut, inlet":       {"inlet-thermostat", 5, 5, 29, 7, drawing.Shut},
		"shut, outlet":      {"outlet-thermostat", 5, 20, 40, 22, drawing.Shut},
		"stands open":       {"outlet-thermostat", 5, 5, 25, 23, drawing.Open},
		"cold through":      {"outlet-thermostat", 0, 20, 20, 20, drawing.NotKnown},
		"regulates, in ice": {"inlet-thermostat", 30, 2, 86, 22, drawing.ALittleOpen},
		"hot and shut":      {"inlet-thermostat", 30, 20, 110, 30, drawing.Shut},
	} {
		before, behind := diagram.Housing, diagram.EngineOut
		if tt.layout == "inlet-thermostat" {
			before, behind = diagram.EngineOut, diagram.PumpIn
		}
		c := hot()
		c.Loop.Layout, c.Site.AmbientC = tt.layout, &tt.air
		c.Rounds[0].EctC, c.Rounds[0].MinutesSinceStart = &tt.out, &tt.minutes
		c.Rounds[0].Readings = []cases.Reading{at(before, tt.out), at(behind, tt.below)}
		if s := state(t, c, 0, units.Metric()); s.Thermostat != tt.want {
			t.Errorf("%s: %v, want %v", name, s.Thermostat, tt.want)
		}
	}
}

// What the gun can't tell opens no thermostat: bare aluminium mirrors its surroundings (published,
// testdata/reference/emissivity.csv), so that the housing seems as cool as the hose behind a shut one.
func TestTheThermostatIsDrawnByWhatCouldBeRead(t *testing.T) {
	c := hot()
	c.Loop.Layout = "outlet-thermostat"
	c.Rounds[0].EctC = casetest.P(diagram.Celsius(108))
	c.Rounds[0].Readings = []cases.Reading{
		{Point: diagram.Housing, ShownC: casetest.P(diagram.Celsius(38)), Surface: cases.Surface{Word: "aluminium-bare"}},
		{Point: diagram.EngineOut, ShownC: casetest.P(diagram.Celsius(60)), Surface: cases.Surface{Word: "rubber"}},
	}
	if s := state(t, c, 0, units.Metric()); s.Thermostat != drawing.Shut {
		t.Errorf("48 K behind an engine of 108 °C it is drawn %v", s.Thermostat)
	}
}

// A difference that is out of its range by less than whole numbers show isn't told as its own bound: "7 F°" beside "≥ 7 F°" was red.
func TestADifferenceThatIsOutNeverReadsAsItsBound(t *testing.T) {
	k := func(v diagram.DeltaK) *diagram.DeltaK { return &v }
	for _, tt := range []struct {
		d          evidence.Delta
		u          units.Set
		text, span string
	}{
		{evidence.Delta{ValueK: 3.9, ExpectedLowK: k(4), State: evidence.Low}, units.Metric(), "3.9 K", "≥ 4 K"},
		{evidence.Delta{ValueK: 3.9, ExpectedLowK: k(4), State: evidence.Low}, units.US(), "7 F°", "≥ 7.2 F°"},
		{evidence.Delta{ValueK: 8.2, ExpectedLowK: k(-4), ExpectedHighK: k(8), State: evidence.High}, units.Metric(), "8.2 K", "≤ 8 K"},
		{evidence.Delta{ValueK: 8.2, ExpectedLowK: k(-4), ExpectedHighK: k(8), State: evidence.High}, units.US(), "15 F°", "-7…14 F°"},
		{evidence.Delta{ValueK: 4, ExpectedLowK: k(4), State: evidence.InRange}, units.US(), "7 F°", "≥ 7 F°"},
	} {
		tt.d.Name = evidence.HeaterDrop
		f := evidence.Findings{Rounds: make([]evidence.Round, 1), Deltas: []evidence.Delta{tt.d}}
		s := picture.State(&diagram.Loop{}, &cases.Case{Rounds: make([]cases.Round, 1)}, f, 0, say.English().With(tt.u))
		if got := s.Deltas[evidence.HeaterDrop]; got.Text != tt.text || got.Range != tt.span {
			t.Errorf("%v of %v: %q in %q, want %q in %q", tt.d.ValueK, tt.u.Temperature, got.Text, got.Range, tt.text, tt.span)
		}
	}
}
