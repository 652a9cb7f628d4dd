package coolant_test

import (
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/published"
)

// A refractometer measures the refractive index and shows the freezing point of
// plain glycol with that index (CRC Handbook, concentrative properties). The
// strength that is read out of such a freezing point lies within 3 % by mass of the
// table's: inhibited coolant, which ours is, freezes 2 to 3 K above plain glycol.
func TestRefractometersFreezingPointGivesTheStrength(t *testing.T) {
	n, last := 0, 0.0
	for _, r := range published.Rows(t, "reference/glycol_refractive.csv") {
		if r["fluid"] != "EG" || r["T_freeze_degC"] == "" || r.Number(t, "mass_percent") < 10 {
			continue
		}
		n++
		index, want := r.Number(t, "n_D"), r.Number(t, "mass_percent")
		m, err := coolant.FromFreeze(coolant.EthyleneGlycol, diagram.Celsius(r.Number(t, "T_freeze_degC")))
		if err != nil {
			t.Errorf("%g %%: %v (%s)", want, err, r["source"])
			continue
		}
		got, err := m.Mass()
		if off := math.Abs(float64(got) - want); err != nil || !(off <= 3) {
			t.Errorf("index %g, %s °C: %.1f %% by mass, %v, want %g (%s)", index, r["T_freeze_degC"], float64(got), err, want, r["source"])
		}
		if float64(got) <= last {
			t.Errorf("index %g: %.1f %% after %.1f %%: a higher index must be a stronger mixture", index, float64(got), last)
		}
		last = float64(got)
	}
	if n < 10 {
		t.Errorf("%d rows held, want the table's", n)
	}
}
