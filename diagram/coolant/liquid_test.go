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

// TestProperties: ASHRAE's rows at their own strength are the table itself and
// show only that no digit slipped; the Melinder and CRC rows are another
// family and judge what lies between the rows too.
func TestProperties(t *testing.T) {
	for _, r := range published.Rows(t, "reference/glycol_properties.csv") {
		m := mixture(t, r)
		limits := properties{0.012, 0.03}
		if r.Number(t, "T_degC") < 0 { // the families part
			limits = properties{0.012, 0.05}
		}
		if strings.Contains(r["source"], "ASHRAE") {
			m.Strength = coolant.VolumePercent(r.Number(t, "volume_percent"))
			limits = properties{1e-6, 1e-6}
		}
		checkProperties(t, r, m, limits)
	}
}

// TestWaterProperties: IAPWS, every 10 K, to the digits that ours are written with.
func TestWaterProperties(t *testing.T) {
	for _, r := range published.Rows(t, "reference/water_liquid.csv") {
		if r.FromMemory() { // at other pressures
			continue
		}
		checkProperties(t, r, coolant.Mixture{Base: coolant.Water}, properties{1e-5, 2e-5})
	}
}

// properties in the order of the tables' columns.
type properties [2]float64

func checkProperties(t *testing.T, r published.Row, m coolant.Mixture, limits properties) {
	t.Helper()
	at := diagram.Celsius(r.Number(t, "T_degC"))
	p, err := m.At(at)
	if err != nil {
		t.Errorf("%+v.At(%v): %v", m, at, err)
	}
	got := properties{p.DensityKgM3, p.HeatJKgK}
	for i, column := range []string{"density_kg_m3", "cp_J_kgK"} {
		if r[column] == "" {
			continue
		}
		want := r.Number(t, column)
		if rel := got[i]/want - 1; !(math.Abs(rel) <= limits[i]) {
			t.Errorf("%+v.At(%v): %s = %v, want %v, off by %.1f %% (%s)", m, at, column, got[i], want, 100*rel, r["source"])
		}
	}
}

// TestPropertiesBeyond: to run on must keep the direction and the sign.
func TestPropertiesBeyond(t *testing.T) {
	for _, base := range []coolant.Base{coolant.EthyleneGlycol, coolant.PropyleneGlycol} {
		for s := coolant.VolumePercent(0); s <= 70; s += 5 {
			m := coolant.Mixture{Base: base, Strength: s}
			hot, err := m.At(150)
			cool, err2 := m.At(100)
			if err != nil || err2 != nil || !(hot.DensityKgM3 < cool.DensityKgM3 && hot.HeatJKgK > cool.HeatJKgK) {
				t.Errorf("%+v: at 150 °C %+v (%v), at 100 °C %+v (%v)", m, hot, err, cool, err2)
			}
		}
	}
}

func TestPropertiesRange(t *testing.T) {
	for _, tt := range []struct {
		strength coolant.VolumePercent
		at       diagram.Celsius
	}{{50, 151}, {50, -41}, {71, 20}, {50, diagram.Celsius(math.NaN())}} {
		m := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: tt.strength}
		if got, err := m.At(tt.at); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("%+v.At(%v) = %v, %v, want ErrRange", m, tt.at, got, err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	m := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 47}
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		p, _ := m.At(87)
		sink = diagram.Celsius(p.HeatJKgK)
	}
}
