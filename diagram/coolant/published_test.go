package coolant_test

import (
	"testing"

	"loopbook/diagram/coolant"
	"loopbook/diagram/published"
)

func base(r published.Row) coolant.Base {
	return map[string]coolant.Base{"EG": coolant.EthyleneGlycol, "PG": coolant.PropyleneGlycol}[r["fluid"]]
}

// mixture is the row's, by its mass column where that is filled.
func mixture(t *testing.T, r published.Row) coolant.Mixture {
	t.Helper()
	if r["mass_percent"] == "" {
		return coolant.Mixture{Base: base(r), Strength: coolant.VolumePercent(r.Number(t, "volume_percent"))}
	}
	m, err := coolant.FromMass(base(r), coolant.MassPercent(r.Number(t, "mass_percent")))
	if err != nil {
		t.Fatal(err)
	}
	return m
}
