package evidence

import (
	"cmp"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	lifts "loopbook/diagram/lift"
	"loopbook/diagram/say"
)

const (
	benchLift = 8 // TH3, published (V1 to V4): minimum lift when fully open

	shutByC diagram.Celsius = 40 // TH4, published (V2, V3): shut again, ratings of 76 to 84 °C
)

// benchTest judges a thermostat in heated water: where it opens, how far, and
// whether it shuts again (TH1 to TH4).
func benchTest(c *cases.Case, t *cases.Test) judgement {
	rated, up := benchRating(c, t), benchPoints(t, true)
	curve, err := lifts.Fit(up)
	if rated == nil || err != nil {
		return judgement{}
	}
	if j, done := benchOpening(up, curve, *rated); done {
		return j
	}
	want, fullC := fullyOpen(t, *rated)
	small := curve.FullMM < want*0.9
	if small && slices.MaxFunc(up, byWater).WaterC >= fullC {
		return benchFault("small-lift", say.Of("flag.bench-small-lift", curve.FullMM), say.Of("because.bench-lift", want, fullC))
	}
	if at, mm, ok := stillOpen(t); ok {
		return benchFault("open", say.Of("flag.bench-still-open", at, mm), say.Of("because.bench-shut-by", shutByC))
	}
	j := passIf(curve.BaseMM < lifts.MovesMM) // else it was never seen shut
	j.but(small, "small-lift")
	j.inPart(small)
	return j
}

func benchFault(outcome string, text say.Text, because ...say.Text) judgement {
	return found(outcome, ofCase("thermostat-bench", Act, text, append(because, say.Of("because.bench-limits"))...))
}

// benchOpening judges where it opens; done is false where that is well, and the rest tells. It is early or late only where the curve
// says so and somebody saw it open, or shut, at the tolerance's end or beyond. One that already stands open in the
// coldest water had opened before, and is early, where it lifts on at once; one that waits for its mark doesn't shut.
func benchOpening(up []lifts.Point, curve lifts.Curve, rated diagram.Celsius) (_ judgement, done bool) {
	coldest, hottest := slices.MinFunc(up, byWater).WaterC, slices.MaxFunc(up, byWater).WaterC
	low, high := rated-opensEarlyK, rated+opensEarlyK
	rule := say.Of("because.bench-rule", rated, diagram.DeltaK(opensEarlyK)) // TH1
	stands := curve.BaseMM >= lifts.MovesMM
	saw := func(it func(lifts.Point) bool) bool { return !stands && slices.ContainsFunc(up, it) }
	switch {
	case stands && coldest > shutByC && liftsOn(up) && curve.LatestC < low:
		return benchFault("early", say.Of("flag.bench-early-before", coldest), rule), true
	case stands && coldest < low:
		return benchFault("open", say.Of("flag.bench-open", coldest), rule), true
	case !stands && !curve.Moves && hottest > high:
		return benchFault("shut", say.Of("flag.bench-shut", hottest), rule), true
	case !stands && !curve.Moves:
		return judgement{}, true
	case curve.LatestC < low && saw(func(p lifts.Point) bool { return p.WaterC <= low && p.MM >= lifts.MovesMM }):
		return benchFault("early", say.Of("flag.bench-early", curve.OpensC), rule), true
	case curve.EarliestC > high && saw(func(p lifts.Point) bool { return p.WaterC >= high && p.MM < lifts.MovesMM }):
		return benchFault("late", say.Of("flag.bench-late", curve.OpensC), rule), true
	}
	return judgement{}, false
}

// liftsOn reports whether the first warmer water lifts it further.
func liftsOn(up []lifts.Point) bool {
	p := slices.Clone(up)
	slices.SortFunc(p, byWater)
	next := slices.IndexFunc(p, func(x lifts.Point) bool { return x.WaterC > p[0].WaterC })
	return next > 0 && p[next].MM-p[0].MM >= lifts.MovesMM
}

// benchRating is what the bench notes of the thermostat, or else the case; nil: neither tells what one can have.
func benchRating(c *cases.Case, t *cases.Test) *diagram.Celsius {
	if r := t.RatedOpensC; r != nil && canBeMark(*r) {
		return r
	}
	if r := ratingOf(c); !r.assumed {
		return &r.opensC
	}
	return nil
}

// fullyOpen is how far a thermostat has to open, and by which temperature (TH2, TH3).
func fullyOpen(t *cases.Test, rated diagram.Celsius) (mm float64, at diagram.Celsius) {
	mm, at = benchLift, rated+diagram.Celsius(fullK)
	if t.RatedLiftMM != nil {
		mm = *t.RatedLiftMM
	}
	if t.RatedFullC != nil {
		at = *t.RatedFullC
	}
	return mm, at
}

// stillOpen is the coldest point of the way down, where it is cold enough to be
// shut by and isn't.
func stillOpen(t *cases.Test) (diagram.Celsius, float64, bool) {
	down := benchPoints(t, false)
	if len(down) == 0 {
		return 0, 0, false
	}
	last := slices.MinFunc(down, byWater)
	return last.WaterC, last.MM, last.WaterC <= shutByC && last.MM >= lifts.MovesMM
}

// benchPoints are the usable points of the way up, or down. One that doesn't
// say is of the way up.
func benchPoints(t *cases.Test, heating bool) []lifts.Point {
	var out []lifts.Point
	heats := cases.WayUp(t.Points)
	for _, p := range t.Points {
		if p.WaterC != nil && p.LiftMM != nil && heats(p) == heating {
			out = append(out, lifts.Point{WaterC: *p.WaterC, MM: *p.LiftMM})
		}
	}
	return out
}

func byWater(a, b lifts.Point) int { return cmp.Compare(a.WaterC, b.WaterC) }
