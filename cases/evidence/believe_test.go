package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A case may hold up to 400 °C by its format; what no coolant can have isn't judged by, but
// named, and the case keeps it. 150 °C is judgement: far over any boiling under a cap.
func TestImpossibleCoolantIsNamedAndNotUsed(t *testing.T) {
	at := func(c diagram.Celsius) *diagram.Celsius { return &c }
	c := toCase(healthy("outlet-thermostat", warm2500).open(95, 15))
	c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, casetest.P(diagram.KPa(110))
	if f := analyst(t).Analyse(c); find(f, "not-coolant") != nil {
		t.Fatalf("an honest case: %+v", find(f, "not-coolant"))
	}
	c.Loop.ThermostatOpensC, c.Rounds[0].EctC = at(190), at(390)
	c.Codes = []cases.Code{{Code: "P0217", FreezeFrame: cases.FreezeFrame{EctC: at(-58)}}}
	c.Rounds[0].Readings = append(c.Rounds[0].Readings, cases.Reading{Point: diagram.HeaterIn, ShownC: at(300)})
	f := analyst(t).Analyse(c)
	var told []string
	for _, flag := range f.Flags {
		if flag.ID == "not-coolant" {
			told = append(told, flag.Text.String())
		}
	}
	all := strings.Join(told, "\n")
	for _, want := range []string{"190 °C", "thermostat, opens", "390 °C", "scan tool, round 1", "-58 °C", "freeze frame of P0217", "300 °C", "heater supply, round 1"} {
		if !strings.Contains(all, want) {
			t.Errorf("nothing of %q in:\n%s", want, all)
		}
	}
	if b := f.Hottest(); b == nil || b.HottestC > 100 {
		t.Errorf("the hottest: %+v", b)
	}
	if find(f, "stop-hot") != nil || !strings.Contains(evidence.RatingText(c).String(), "88") {
		t.Errorf("judged by what can't be: %v", pressing(f))
	}
	if *c.Rounds[0].EctC != 390 || *c.Loop.ThermostatOpensC != 190 || c.Codes[0].FreezeFrame.EctC == nil {
		t.Error("the case itself was changed")
	}
}

// The air outside was never hotter than 56.7 °C (published, the World Meteorological Organization's archive of extremes):
// 90 °C is a day of 90 °F, by which the hoses of a sound engine would be as cold as the air.
func TestAirHotterThanAnyIsNamedAndNotUsed(t *testing.T) {
	for outside, want := range map[diagram.Celsius]bool{90: true, 48: false} {
		c := toCase(healthy("outlet-thermostat", hotFan).open(103, 10))
		c.Site.AmbientC, c.Rounds[0].AmbientC = &outside, nil
		f := analyst(t).Analyse(c)
		if flag := find(f, "not-air"); (flag != nil) != want || want && !strings.Contains(flag.Text.String(), "90 °C") {
			t.Errorf("outside %g °C: %+v", float64(outside), flag)
		}
		if flag := find(f, "thermostat-not-opening"); flag != nil {
			t.Errorf("outside %g °C: %s", float64(outside), flag.Text)
		}
		if *c.Site.AmbientC != outside {
			t.Error("the case itself was changed")
		}
	}
}
