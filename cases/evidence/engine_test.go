package evidence_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// onlyRead is a round of 88 min without a scan tool and with one point read.
func onlyRead(layout string, p diagram.Point, shownC float64) *cases.Case {
	c := toCase(healthy(layout, warmIdle))
	r := &c.Rounds[0]
	r.EctC, r.MinutesSinceStart = nil, casetest.P(88.0)
	r.Readings = []cases.Reading{{Point: p, ShownC: degC(shownC), Surface: cases.Surface{Word: "rubber"}}}
	return c
}

// Behind a shut thermostat the upper hose is cold whatever the engine is (DT7,
// common practice), so alone it gives no verdict on the engine.
func TestColdUpperHoseAloneIsNoWitnessOfTheEngine(t *testing.T) {
	for _, tt := range []struct {
		point  diagram.Point
		shownC float64
		want   bool // the engine is known by it
	}{
		{diagram.EngineOut, 21.7, false},
		{diagram.RadIn, 21.7, false},
		{diagram.EngineOut, 86, true},
		{diagram.RadIn, 75, true},
		{diagram.Housing, 60, true},
		{diagram.HeaterIn, 60, true},
		{diagram.Bypass, 60, true},
	} {
		for _, layout := range []string{"outlet-thermostat", ""} {
			f := analyst(t).Analyse(onlyRead(layout, tt.point, tt.shownC))
			if got := f.Rounds[0].EngineC != nil; got != tt.want {
				t.Errorf("layout %q, %s at %.0f °C alone: engine known %v, want %v", layout, tt.point, tt.shownC, got, tt.want)
			}
			if flag := find(f, "engine-below-target"); !tt.want && (flag != nil || f.Rounds[0].Regime != evidence.NoRegime) {
				t.Errorf("layout %q, %s at %.0f °C alone: regime %q, %+v", layout, tt.point, tt.shownC, f.Rounds[0].Regime, flag)
			}
		}
	}
}

func TestColdHousingStillTellsAnEngineBelowTarget(t *testing.T) {
	c := onlyRead("outlet-thermostat", diagram.Housing, 60)
	if find(analyst(t).Analyse(c), "engine-below-target") == nil {
		t.Error("a housing at 60 °C after 88 min: no engine-below-target")
	}
}

// One hot reading against the sensor and two other witnesses is repeated; where
// they don't side with the sensor, no hose is hotter than its coolant and the
// sensor fails (DT16, common practice).
func TestOneHotReadingDoesNotOverruleTheRest(t *testing.T) {
	for _, tt := range []struct {
		name              string
		bypass, heater    float64
		wantAlone, wantBy bool // the flag; the engine by the scan tool
	}{
		{"both agree with the sensor", 61, 58, true, true},
		{"one agrees", 61, 30, false, false},
		{"another is as hot", 61, 84, false, false},
		{"none agrees", 30, 30, false, false},
	} {
		s := healthy("outlet-thermostat", warmIdle)
		s.ectC, s.round.MinutesSinceStart = 66, casetest.P(8.0)
		s.t = map[diagram.Point]float64{
			diagram.Housing: 90, diagram.EngineOut: 63.5, diagram.Bypass: tt.bypass, diagram.HeaterIn: tt.heater,
		}
		f := analyst(t).Analyse(toCase(s))
		flag := find(f, "reading-alone")
		if (flag != nil) != tt.wantAlone || (f.Rounds[0].EngineBy.Key() == "by.scan-tool") != tt.wantBy {
			t.Errorf("%s: reading-alone %+v, engine by %s", tt.name, flag, f.Rounds[0].EngineBy)
		}
		if !tt.wantAlone {
			continue
		}
		if got := pressing(f); len(got) != 1 || flag.Severity != evidence.Look || len(flag.Points) != 1 || !strings.Contains(flag.Text.String(), "Repeat") {
			t.Errorf("%s: %v, %+v", tt.name, got, flag)
		}
		if r := f.Rounds[0].Readings[diagram.Housing]; !r.Impossible || r.Why.Empty() {
			t.Errorf("%s: the hot reading takes part: %+v", tt.name, r)
		}
	}
}

// What isn't noted with a side of the repair is of before it: a check and the rounds beside it tell of one car,
// whichever of them says so (F09, common practice: without coolant the gun meets nothing as hot as the engine).
func TestASideThatIsNotNotedIsBefore(t *testing.T) {
	for _, tt := range []struct {
		check, round cases.Stage
		want         bool // told that the sensor lies
	}{
		{cases.BeforeRepair, "", false}, {"", cases.BeforeRepair, false}, {cases.BeforeRepair, cases.AfterRepair, true}, {"", cases.AfterRepair, true},
	} {
		c := toCase(healthy("outlet-thermostat", warm2500).open(92, 15))
		c.Rounds[0].EctC, c.Rounds[0].Stage = degC(125), tt.round
		c.Tests = []cases.Test{{Kind: "level", State: "empty", Stage: tt.check}}
		if got := find(analyst(t).Analyse(c), "sensor-disagrees") != nil; got != tt.want {
			t.Errorf("empty at stage %q, the round of stage %q: told that the sensor lies %v, want %v", tt.check, tt.round, got, tt.want)
		}
	}
}

// Of several readings of a place the last one counts; the format's word for a place that can't be reached is one without a
// number, as the drawing and the record's table show it.
func TestAPlaceThatCanNoLongerBeReachedIsNotJudgedBy(t *testing.T) {
	c := onlyRead("outlet-thermostat", diagram.RadIn, 85)
	c.Rounds[0].Readings = append(c.Rounds[0].Readings, cases.Reading{Point: diagram.RadIn})
	if r, ok := analyst(t).Analyse(c).Rounds[0].Readings[diagram.RadIn]; ok {
		t.Errorf("judged by %+v", r)
	}
}
