package cases_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
)

// The limits let every coolant through that isn't steam or ice: half glycol boils
// below the upper one under a cap of 200 kPa, more than any in
// testdata/trade/numbers.csv, and the values that a shorted sensor or a slip of
// the pen gives lie beyond (215 °C is the end of a sensor's scale; from memory).
func TestCoolantsLimits(t *testing.T) {
	boils, err := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}.BoilUnderCapC(200, 0)
	if err != nil || !cases.CanBeCoolant(boils) {
		t.Errorf("boiling at %v: %v", boils, err)
	}
	for c, want := range map[diagram.Celsius]bool{-40: true, 130: true, 190: false, 215: false, 390: false, -55: false} {
		if got := cases.CanBeCoolant(c); got != want {
			t.Errorf("CanBeCoolant(%g) = %v", float64(c), got)
		}
	}
}
