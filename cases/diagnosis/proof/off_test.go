package proof_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// A point out of its range after a repair is named with why it doesn't matter, or the
// repair isn't shown. A gun repeats to 3 K (IR9) and is off by 2 K (common practice); an engine
// that holds its rating has a thermostat which throttles, and then any drop across the
// radiator is well (DT2, common practice).
func TestPointOutOfRangeIsExplainedOrReadAgain(t *testing.T) {
	const slight, throttles = "no more than the gun may be off", "the thermostat throttles"
	for name, tt := range map[string]struct {
		at     diagram.Point
		overK  diagram.Celsius // over its range; under it where less than 0
		regime evidence.Regime
		want   proof.Verdict
		says   string // in the verdict, or in what is to be repeated
	}{
		"none":                     {"", 0, evidence.AtRating, proof.Fixed, ""},
		"slight":                   {diagram.RadIn, 3, evidence.AtRating, proof.Fixed, slight},
		"throttled":                {diagram.RadOut, 12, evidence.AtRating, proof.Fixed, throttles},
		"throttled, colder":        {diagram.RadOut, -12, evidence.AtRating, proof.Fixed, throttles},
		"at the pump":              {diagram.PumpIn, -12, evidence.AtRating, proof.Fixed, throttles},
		"upper hose":               {diagram.RadIn, -12, evidence.AtRating, proof.NotShown, "Read these again"},
		"engine still hot":         {diagram.RadOut, 12, evidence.Above, proof.NotShown, "Read these again"},
		"heater's return too cold": {diagram.HeaterOut, -15, evidence.AtRating, proof.NotShown, "Read these again"},
	} {
		c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, sound()))
		a, err := evidence.Default()
		if err != nil {
			t.Fatal(err)
		}
		f := a.Analyse(&c)
		f.Flags, f.Rounds[1].Regime = nil, tt.regime
		for p, r := range f.Rounds[1].Readings {
			r.Expected, r.State = &evidence.Range{LowC: r.TrueC - 5, HighC: r.TrueC + 5}, evidence.InRange
			if p == tt.at && tt.overK > 0 {
				r.Expected.HighC, r.Expected.LowC, r.State = r.TrueC-tt.overK, r.TrueC-tt.overK-10, evidence.High
			} else if p == tt.at {
				r.Expected.LowC, r.Expected.HighC, r.State = r.TrueC-tt.overK, r.TrueC-tt.overK+10, evidence.Low
			}
			f.Rounds[1].Readings[p] = r
		}
		p := proof.Judge(&c, f, diagnosis.Ranking{Causes: []diagnosis.Ranked{{Cause: cases.Healthy, Probability: 0.99}, {Cause: "thermostat-stuck-open", Probability: 0.01}}})
		told := p.Sentence.String()
		if tt.want == proof.NotShown {
			told = say.English().Say(say.Sentences(p.Repeat...))
		}
		named := tt.at == "" || strings.Contains(told, say.English().Say(say.Place(tt.at)))
		if p.Verdict != tt.want || !strings.Contains(told, tt.says) || !named {
			t.Errorf("%s: %s (healthy %.2f): %q, off %v", name, p.Verdict, p.Healthy, told, p.Off)
		}
	}
}

// What a finding of the round speaks of isn't said to be explained by nothing: it stands out already.
func TestWhatAFindingSpeaksOfIsNotInexplicable(t *testing.T) {
	after := sound()
	after[diagram.HeaterIn], after[diagram.HeaterOut] = 85, 30
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, after))
	c.Rounds[1].Heater = cases.HeaterFull
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	f := a.Analyse(&c)
	back := f.Rounds[1].Readings[diagram.HeaterOut]
	back.Expected, back.State = &evidence.Range{LowC: 65, HighC: 85}, evidence.Low
	f.Rounds[1].Readings[diagram.HeaterOut] = back
	p := proof.Judge(&c, f, diagnosis.Ranking{Causes: []diagnosis.Ranked{{Cause: cases.Healthy, Probability: 0.1}, {Cause: "heater-core-restricted", Probability: 0.9}}})
	if told := say.English().Say(say.Sentences(p.Repeat...)); p.Verdict != proof.NotFixed || len(p.Unexplained) == 0 || strings.Contains(told, "nothing explains") {
		t.Errorf("%s, %v: %q", p.Verdict, p.Unexplained, told)
	}
}

// A loop that isn't fixed is why its points are out of their range: beside the fault that it is held for none of them is
// to be read again since nothing explained it.
func TestWhatIsStillWrongExplainsWhatIsOut(t *testing.T) {
	c := theCase(round(cases.BeforeRepair, 800, 20, stuckOpen()), round(cases.AfterRepair, 800, 20, stuckOpen()))
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	f := a.Analyse(&c)
	f.Flags = nil
	upper := f.Rounds[1].Readings[diagram.RadIn]
	upper.Expected, upper.State = &evidence.Range{LowC: upper.TrueC + 20, HighC: upper.TrueC + 40}, evidence.Low
	f.Rounds[1].Readings[diagram.RadIn] = upper
	for healthy, want := range map[float64]bool{0.1: false, 0.5: true} {
		p := proof.Judge(&c, f, diagnosis.Ranking{Causes: []diagnosis.Ranked{{Cause: cases.Healthy, Probability: healthy}, {Cause: "thermostat-stuck-open", Probability: 1 - healthy}}})
		if told := say.English().Say(say.Sentences(p.Repeat...)); strings.Contains(told, "nothing explains") != want {
			t.Errorf("%s, healthy %.2f: %q", p.Verdict, p.Healthy, told)
		}
	}
}
