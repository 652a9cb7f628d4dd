package coolant

import (
	"fmt"

	"loopbook/diagram"
)

// Properties of the liquid at one temperature.
type Properties struct {
	DensityKgM3 float64 // kg/m³
	HeatJKgK    float64 // heat capacity, J/(kg K)
}

// At gives the properties at t, from −40 to 150 °C and up to 70 % by volume.
//
// They are ASHRAE's rows for 0 to 60 % and, without glycol, IAPWS's for
// water, between rows in straight lines. No source was found beyond the rows:
// below −20 °C (0 °C in weak mixtures), above 100 °C (water 130 °C) and above
// 60 % the end segment runs on. Families of tables differ by 1 % in density and
// 3 % in heat capacity, below 0 °C by 5 % in this.
func (m Mixture) At(t diagram.Celsius) (Properties, error) {
	g, err := m.glycol()
	if err != nil {
		return Properties{}, err
	}
	if !(t >= -40 && t <= 150) || m.Strength > 70 {
		return Properties{}, fmt.Errorf("properties of %s at %g %% and %g °C: %w",
			m.Base, float64(m.Strength), float64(t), ErrRange)
	}
	i := 1
	for i < len(g.liquid)-1 && g.liquid[i].strength < m.Strength {
		i++
	}
	a, b := g.liquid[i-1], g.liquid[i]
	return a.at(float64(t)).towards(b.at(float64(t)),
		float64((m.Strength-a.strength)/(b.strength-a.strength))), nil
}

// liquidRow is one strength at rising temperatures.
type liquidRow struct {
	strength VolumePercent
	celsius  []float64
	values   []Properties
}

func (r liquidRow) at(t float64) Properties {
	i := 1
	for i < len(r.celsius)-1 && r.celsius[i] < t {
		i++
	}
	part := (t - r.celsius[i-1]) / (r.celsius[i] - r.celsius[i-1])
	return r.values[i-1].towards(r.values[i], part)
}

// towards goes that part of the way from p to q, which may be more than all.
func (p Properties) towards(q Properties, part float64) Properties {
	mix := func(a, b float64) float64 { return a + (b-a)*part }
	return Properties{mix(p.DensityKgM3, q.DensityKgM3), mix(p.HeatJKgK, q.HeatJKgK)}
}
