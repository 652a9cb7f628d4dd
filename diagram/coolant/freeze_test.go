package coolant_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/published"
)

// TestFreeze: ASHRAE's own rows to the digit, those that another hand laid
// between them to 0.3 K, and the families for plain glycol (CRC, Lange,
// Melinder) to 3 K. Rows of dilute cryoscopy are no data.
func TestFreeze(t *testing.T) {
	for _, r := range published.Rows(t, "reference/glycol_freeze.csv") {
		if strings.Contains(r["source"], "cryoscopy") {
			continue
		}
		m, limit := mixture(t, r), 3.0
		if strings.Contains(r["source"], "ASHRAE") {
			m.Strength, limit = coolant.VolumePercent(r.Number(t, "volume_percent")), 1e-9
			if strings.HasPrefix(r["status"], "computed") {
				limit = 0.3
			}
		}
		want := r.Number(t, "T_freeze_degC")
		got, err := m.FreezeC()
		if off := math.Abs(float64(got) - want); err != nil || !(off <= limit) {
			t.Errorf("%+v.FreezeC() = %v, %v, want %v (%s)", m, got, err, want, r["source"])
		}
	}
}

// TestMass: ASHRAE's own rows to the digit. The rows between them were
// interpolated by another hand, from the columns of another table.
func TestMass(t *testing.T) {
	for _, r := range published.Rows(t, "reference/glycol_freeze.csv") {
		if r["mass_percent"] == "" || r["volume_percent"] == "" {
			continue
		}
		want := r.Number(t, "mass_percent")
		m := coolant.Mixture{Base: base(r), Strength: coolant.VolumePercent(r.Number(t, "volume_percent"))}
		limit := 1e-9
		if strings.HasPrefix(r["status"], "computed") {
			limit = 0.1
		}
		got, err := m.Mass()
		if err != nil || math.Abs(float64(got)-want) > limit {
			t.Errorf("%+v.Mass() = %v, %v, want %v (%s)", m, got, err, want, r["source"])
		}
	}
}

// TestMassAbove60: ASHRAE's rows from 65 % by mass are remembered, not seen:
// they are shown and fail nothing.
func TestMassAbove60(t *testing.T) {
	for _, r := range published.Rows(t, "reference/glycol_boil.csv") {
		if r["volume_percent"] == "" || r.Number(t, "mass_percent") <= 60 {
			continue
		}
		t.Logf("%s%%: volume %.1f, remembered %s", r["mass_percent"], float64(mixture(t, r).Strength), r["volume_percent"])
	}
}

// TestFreezeTrade: the tables of a US army manual, by volume (M20 in
// testdata/trade/sources.md). Its propylene column reads 1.5 to 3.5 K lower
// than ASHRAE's.
func TestFreezeTrade(t *testing.T) {
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		m, ok := tradeMixture(t, r["id"], "F")
		if !ok {
			continue
		}
		low, high := r.Number(t, "typical")-3.5, r.Number(t, "typical")+3.5
		if r["low"] != "" { // the page contradicts itself: its own span
			low, high = r.Number(t, "low"), r.Number(t, "high")
		}
		if got, err := m.FreezeC(); err != nil || !(float64(got) >= low && float64(got) <= high) {
			t.Errorf("%s: %+v.FreezeC() = %v, %v, want %v to %v (%s)", r["id"], m, got, err, low, high, r["source"])
		}
	}
}

func TestFreezeFallsAndReturns(t *testing.T) {
	for _, base := range []coolant.Base{coolant.EthyleneGlycol, coolant.PropyleneGlycol} {
		last := diagram.Celsius(1)
		for s := coolant.VolumePercent(0); s <= 60; s += 0.25 {
			at, err := coolant.Mixture{Base: base, Strength: s}.FreezeC()
			if err != nil || !(at < last) {
				t.Fatalf("%s at %v %% freezes at %v (%v), not below %v", base, s, at, err, last)
			}
			last = at
			back, err := coolant.FromFreeze(base, at)
			if err != nil || math.Abs(float64(back.Strength-s)) > 1e-9 {
				t.Errorf("FromFreeze(%s, %v) = %v, %v, want %v", base, at, back, err, s)
			}
		}
	}
}

func TestMassReturns(t *testing.T) {
	for s := coolant.VolumePercent(0); s <= 100; s += 0.5 {
		m := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: s}
		byMass, err := m.Mass()
		if err != nil {
			t.Fatal(err)
		}
		back, err := coolant.FromMass(m.Base, byMass)
		if err != nil || math.Abs(float64(back.Strength-s)) > 1e-9 {
			t.Errorf("FromMass(Mass(%v)) = %v, %v", s, back.Strength, err)
		}
	}
}

func TestWaterFreezes(t *testing.T) {
	if got, err := (coolant.Mixture{Base: coolant.Water}).FreezeC(); got != 0 || err != nil {
		t.Errorf("water freezes at %v, %v", got, err)
	}
	if got, err := coolant.FromFreeze(coolant.Water, 0); got != (coolant.Mixture{Base: coolant.Water}) || err != nil {
		t.Errorf("FromFreeze(water, 0) = %v, %v", got, err)
	}
	if got, err := coolant.FromFreeze(coolant.Water, -5); !errors.Is(err, coolant.ErrRange) {
		t.Errorf("FromFreeze(water, −5) = %v, %v, want ErrRange", got, err)
	}
}

func TestUnknownMixtures(t *testing.T) {
	for _, m := range []coolant.Mixture{
		{coolant.EthyleneGlycol, 60.5}, {coolant.PropyleneGlycol, 61}, {coolant.EthyleneGlycol, -1},
		{coolant.EthyleneGlycol, coolant.VolumePercent(math.NaN())}, {coolant.Water, 10},
	} {
		if got, err := m.FreezeC(); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("%+v.FreezeC() = %v, %v, want ErrRange", m, got, err)
		}
	}
	for _, c := range []diagram.Celsius{0.1, -52, diagram.Celsius(math.NaN())} {
		if got, err := coolant.FromFreeze(coolant.EthyleneGlycol, c); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("FromFreeze(%v) = %v, %v, want ErrRange", c, got, err)
		}
	}
	if got, err := (coolant.Mixture{Base: "oil", Strength: 50}).FreezeC(); err == nil || !strings.Contains(err.Error(), `"oil"`) {
		t.Errorf("oil freezes at %v, %v, want an error that names it", got, err)
	}
}
