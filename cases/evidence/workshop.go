package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/facescan"
	lifts "loopbook/diagram/lift"
	"loopbook/diagram/thermistor"
)

// Check is what one workshop check comes to.
type Check struct {
	Outcome string // as Outcome
	Flags   []Flag
	Sums    []Sum
}

// Sum is a number that was worked out of a check, in °C, K and kPa:
// units.Set.Sentence says it in others.
type Sum struct{ Name, Value string }

// Workshop works one check out.
func Workshop(c *cases.Case, t *cases.Test) Check {
	j := judgeTest(c, t)
	return Check{j.outcome, j.flags, sums(c, t)}
}

func sums(c *cases.Case, t *cases.Test) []Sum {
	switch t.Kind {
	case "pressure-hold":
		return pressureSums(t)
	case "cap":
		return capSums(c, t)
	case "coolant":
		return coolantSums(c, t)
	case "thermostat-bench":
		return benchSums(c, t)
	case "sensor-resistance":
		return sensorSums(c, t)
	case "core-scan":
		return faceSums(t)
	}
	return nil
}

// pressureSums takes the cooling of the air off, by the ideal gas.
func pressureSums(t *cases.Test) []Sum {
	if t.StartKPa == nil || t.EndKPa == nil {
		return nil
	}
	fell, cooling := *t.StartKPa-*t.EndKPa, coolingKPa(t)
	leaks := max(fell-cooling, 0)
	out := []Sum{{"Fell by", fmt.Sprintf("%.1f kPa", float64(fell))}}
	switch {
	case cooling > 0:
		out = append(out, Sum{"Of it by cooling of the air", fmt.Sprintf("%.1f kPa", float64(cooling))})
	case cooling < 0:
		out = append(out, Sum{"Hidden by warming of the air", fmt.Sprintf("%.1f kPa", float64(-cooling))})
	}
	out = append(out, Sum{"Lost by leaking", fmt.Sprintf("%.1f kPa", float64(leaks))})
	if t.Minutes != nil && *t.Minutes > 0 {
		out = append(out, Sum{"Leak rate", fmt.Sprintf("%.2f kPa/min", float64(leaks) / *t.Minutes)})
	}
	return out
}

func capSums(c *cases.Case, t *cases.Test) []Sum {
	rated := t.RatedKPa
	if rated == nil {
		rated = c.Loop.CapKPa
	}
	if rated == nil || t.OpensKPa == nil || *rated <= 0 {
		return nil
	}
	return []Sum{{"Opens at", fmt.Sprintf("%.0f %% of its rating", 100*float64(*t.OpensKPa / *rated))}}
}

// Sample is the mixture that a coolant check measured; the base is the loop's,
// or the usual one. It is false where no strength can be told.
func Sample(c *cases.Case, t *cases.Test) (coolant.Mixture, bool) {
	base := coolant.Base(c.Loop.Coolant.Base)
	if base == "" || base == coolant.Water {
		base = coolant.EthyleneGlycol
	}
	switch {
	case t.VolumePercent != nil:
		return coolant.Mixture{Base: base, Strength: coolant.VolumePercent(*t.VolumePercent)}, true
	case t.FreezeC != nil && *t.FreezeC >= 0:
		return coolant.Mixture{Base: base}, true
	case t.FreezeC != nil:
		mix, err := coolant.FromFreeze(base, *t.FreezeC)
		return mix, err == nil
	}
	return coolant.Mixture{}, false
}

func coolantSums(c *cases.Case, t *cases.Test) []Sum {
	mix, ok := Sample(c, t)
	if !ok {
		return nil
	}
	out := []Sum{{"Strength", fmt.Sprintf("%.0f %% by volume of %s", float64(mix.Strength), cases.Base(mix.Base).Name())}}
	if freezes, err := mix.FreezeC(); err == nil {
		out = append(out, Sum{"Freezes at", inC(freezes)})
	}
	altitude := diagram.Metre(0)
	if c.Site.AltitudeM != nil {
		altitude = *c.Site.AltitudeM
	}
	if boils, err := mix.BoilUnderCapC(0, altitude); err == nil {
		out = append(out, Sum{"Boils at, cap off", inC(boils)})
	}
	if c.Loop.CapKPa != nil {
		if boils, err := mix.BoilUnderCapC(*c.Loop.CapKPa, altitude); err == nil {
			out = append(out, Sum{"Boils at, under this cap", inC(boils)})
		}
	}
	return out
}

func benchSums(c *cases.Case, t *cases.Test) []Sum {
	up, err := lifts.Fit(benchPoints(t, true))
	if err != nil || !up.Moves {
		return nil
	}
	out := []Sum{{"Opens at", fmt.Sprintf("%.1f °C (%.1f to %.1f °C)", float64(up.OpensC), float64(up.EarliestC), float64(up.LatestC))}}
	if up.BaseMM >= lifts.MovesMM {
		out = []Sum{{"Stands open by", fmt.Sprintf("%.1f mm at the coldest", up.BaseMM)}}
	}
	if rated := benchRating(c, t); rated != nil && up.BaseMM < lifts.MovesMM {
		out = append(out, Sum{"Off its rating by", fmt.Sprintf("%+.1f K", float64(up.OpensC-*rated))})
	}
	if up.Levelled {
		out = append(out, Sum{"Fully open at", fmt.Sprintf("%.1f °C", float64(up.FullC))})
	}
	out = append(out, Sum{"Lift at the hottest", fmt.Sprintf("%.1f mm", up.FullMM)})
	down, err := lifts.Fit(benchPoints(t, false))
	if err != nil || !down.Moves {
		return out
	}
	if down.BaseMM < lifts.MovesMM {
		out = append(out, Sum{"Shut again at", fmt.Sprintf("%.1f °C", float64(down.OpensC))})
	}
	if k, ok := lifts.HysteresisK(up, down); ok {
		out = append(out, Sum{"Hysteresis at half lift", fmt.Sprintf("%.1f K", float64(k))})
	}
	return out
}

// usualOpensC is where an engine works whose thermostat isn't known: TH5,
// common practice.
const usualOpensC diagram.Celsius = 88

func sensorSums(c *cases.Case, t *cases.Test) []Sum {
	curve, err := thermistor.Fit(reference(t))
	if err != nil {
		return nil
	}
	out := []Sum{{"Reference curve", fmt.Sprintf("within %.1f K of its points", max(float64(curve.OffK), -float64(curve.OffK)))}}
	if !curve.Smooth() {
		out[0].Value = fmt.Sprintf("not smooth, %.0f K off at its worst: look for a slip in it", float64(curve.OffK))
	}
	for _, p := range ohms(t) {
		if says, err := curve.Read(p.Ohm); err == nil {
			out = append(out, Sum{"At " + inC(p.C), fmt.Sprintf("%+.1f K", float64(says-p.C))})
		} else {
			out = append(out, Sum{"At " + inC(p.C), "outside the reference"})
		}
	}
	working := usualOpensC
	if c.Loop.ThermostatOpensC != nil {
		working = *c.Loop.ThermostatOpensC
	}
	if off, ok := curve.OffAt(working, ohms(t)); ok {
		out = append(out, Sum{"Error at working temperature, " + inC(working), fmt.Sprintf("%+.1f K", float64(off))})
	}
	return out
}

func faceSums(t *cases.Test) []Sum {
	f := facescan.Judge(t.ShownC)
	if f.Pattern == facescan.TooFew {
		return nil
	}
	looks := map[facescan.Pattern]string{
		facescan.Even: "even, no patch", facescan.Tubes: "cold along whole tubes: plugged",
		facescan.Cold: "a cold patch: part of the tubes", facescan.Hot: "a hot patch: fins without air",
	}
	return []Sum{
		{"Face", looks[f.Pattern]},
		{"Cold area", fmt.Sprintf("%.0f %% of %d places", 100*f.ColdShare, f.PlacesKnown)},
		{"Equally far from the inlet", fmt.Sprintf("up to %.1f K apart", float64(f.MostK))},
		{"Coolant runs", fmt.Sprintf("%s, over %.1f K", f.Way, float64(f.LostK))},
	}
}
