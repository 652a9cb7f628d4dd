package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/facescan"
	lifts "loopbook/diagram/lift"
	"loopbook/diagram/say"
	"loopbook/diagram/thermistor"
)

// Check is what one workshop check comes to.
type Check struct {
	Outcome string // as Outcome
	Flags   []Flag
	Sums    []Sum
}

// Sum is a number that was worked out of a check.
type Sum struct{ Name, Value say.Text }

// sum is one of the catalogue's names with a value to a tenth.
func sum(key string, value any) Sum { return Sum{say.Of(key), tenths(value)} }

func tenths(value any) say.Text { return say.Of("value.tenth", value) }

// Workshop works one check out.
func Workshop(c *cases.Case, t *cases.Test) Check {
	j := judgeTest(c, t)
	out := Check{j.outcome, j.flags, sums(c, t)}
	if len(j.unseen) > 0 {
		out.Sums = append(out.Sums, Sum{say.Of("sum.open"), OutcomeTexts(t.Kind, j.unseen)})
	}
	return out
}

func sums(c *cases.Case, t *cases.Test) []Sum {
	switch t.Kind {
	case cases.PressureTest:
		return pressureSums(t)
	case cases.CapTest:
		return capSums(c, t)
	case cases.CoolantTest:
		return coolantSums(c, t)
	case cases.BenchTest:
		return benchSums(c, t)
	case cases.SensorTest:
		return sensorSums(c, t)
	case cases.CoreTest:
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
	out := []Sum{sum("sum.fell", fell)}
	switch {
	case cooling > 0:
		out = append(out, sum("sum.by-cooling", cooling))
	case cooling < 0:
		out = append(out, sum("sum.by-warming", -cooling))
	}
	out = append(out, sum("sum.leaks", leaks))
	if t.Minutes != nil && *t.Minutes > 0 {
		out = append(out, Sum{say.Of("sum.leak-rate"), say.Of("sum.per-minute", leaks/diagram.KPa(*t.Minutes))})
	}
	return out
}

func capSums(c *cases.Case, t *cases.Test) []Sum {
	rated := capRating(c, t)
	if rated == nil || t.OpensKPa == nil {
		return nil
	}
	return []Sum{{say.Of("sum.opens"), say.Of("sum.of-rating", 100*float64(*t.OpensKPa / *rated))}}
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
	out := []Sum{{say.Of("sum.strength"), say.Of("sum.by-volume", float64(mix.Strength), cases.Base(mix.Base).Text())}}
	if freezes, err := mix.FreezeC(); err == nil {
		out = append(out, Sum{say.Of("sum.freezes"), say.Value(freezes)})
	}
	if boils, err := mix.BoilUnderCapC(0, altitude(c)); err == nil {
		out = append(out, Sum{say.Of("sum.boils-open"), say.Value(boils)})
	}
	if c.Loop.CapKPa != nil {
		if boils, err := mix.BoilUnderCapC(*c.Loop.CapKPa, altitude(c)); err == nil {
			out = append(out, Sum{say.Of("sum.boils-capped"), say.Value(boils)})
		}
	}
	return out
}

func benchSums(c *cases.Case, t *cases.Test) []Sum {
	up, err := lifts.Fit(benchPoints(t, true))
	if err != nil || !up.Moves {
		return nil
	}
	out := []Sum{{say.Of("sum.opens"), say.Of("sum.opens-within", up.OpensC, up.EarliestC, up.LatestC)}}
	if up.BaseMM >= lifts.MovesMM {
		out = []Sum{{say.Of("sum.stands-open"), say.Of("sum.at-coldest", up.BaseMM)}}
	}
	if rated := benchRating(c, t); rated != nil && up.BaseMM < lifts.MovesMM {
		out = append(out, Sum{say.Of("sum.off-rating"), say.Signed(up.OpensC.Minus(*rated))})
	}
	if up.Levelled {
		out = append(out, sum("sum.full", up.FullC))
	}
	out = append(out, Sum{say.Of("sum.lift"), say.Of("sum.mm", up.FullMM)})
	down, err := lifts.Fit(benchPoints(t, false))
	if err != nil || !down.Moves {
		return out
	}
	if down.BaseMM < lifts.MovesMM {
		out = append(out, sum("sum.shut", down.OpensC))
	}
	if k, ok := lifts.HysteresisK(up, down); ok {
		out = append(out, sum("sum.hysteresis", k))
	}
	return out
}

func sensorSums(c *cases.Case, t *cases.Test) []Sum {
	curve, err := thermistor.Fit(reference(t))
	if err != nil {
		return nil
	}
	out := []Sum{{say.Of("sum.reference"), say.Of("sum.smooth", abs(curve.OffK))}}
	if !curve.Smooth() {
		out[0].Value = say.Of("sum.not-smooth", curve.OffK)
	}
	for _, p := range ohms(t) {
		if says, err := curve.Read(p.Ohm); err == nil {
			out = append(out, Sum{say.Of("sum.at", p.C), say.Signed(says.Minus(p.C))})
		} else {
			out = append(out, Sum{say.Of("sum.at", p.C), say.Of("sum.outside")})
		}
	}
	working := ratingOf(c).opensC
	if off, ok := curve.OffAt(working, ohms(t)); ok {
		out = append(out, Sum{say.Of("sum.error", working), say.Signed(off)})
	}
	return out
}

func faceSums(t *cases.Test) []Sum {
	f := facescan.Judge(t.ShownC)
	if f.Pattern == facescan.TooFew {
		return nil
	}
	looks := map[facescan.Pattern]say.Text{
		facescan.Even: say.Of("sum.face-even"), facescan.Tubes: say.Of("sum.face-tubes"),
		facescan.Cold: say.Of("sum.face-cold"), facescan.Hot: say.Of("sum.face-hot"),
	}
	runs := say.Of("sum.runs-down", f.LostK)
	if f.Way == facescan.Across {
		runs = say.Of("sum.runs-across", f.LostK)
	}
	return []Sum{
		{say.Of("sum.face"), looks[f.Pattern]},
		{say.Of("sum.cold-area"), say.Of("sum.of-places", 100*f.ColdShare, f.PlacesKnown)},
		{say.Of("sum.equally-far"), say.Of("sum.apart", f.MostK)},
		{say.Of("sum.runs"), runs},
	}
}
