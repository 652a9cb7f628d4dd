package words

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// Half and half ethylene glycol: the ASHRAE tables give about -37 °C for
// inhibited glycol at 52 mass %, and under a cap it boils well above 120 °C
// (testdata/reference/glycol_freeze.csv, boiling_cap_altitude.csv).
func TestTheFillingIsToldInWords(t *testing.T) {
	half, holds := 50.0, diagram.KPa(103.421)
	c := cases.Case{Loop: cases.Loop{CapKPa: &holds, Coolant: cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: &half}}}
	if got := Coolant(c, units.Metric()); !strings.Contains(got, "freezes at -3") || !strings.Contains(got, "boils at 1") {
		t.Errorf("half and half: %q", got)
	}
	if got := Coolant(cases.Case{}, units.Metric()); got != "" {
		t.Errorf("nothing known: %q", got)
	}
	mix := cases.Case{Loop: cases.Loop{Coolant: cases.Coolant{Base: cases.EthyleneGlycol}}}
	if got := Coolant(mix, units.Metric()); got != "" {
		t.Errorf("no strength known: %q", got)
	}
}
