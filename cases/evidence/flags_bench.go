package evidence

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/facescan"
	lifts "loopbook/diagram/lift"
	"loopbook/diagram/say"
	"loopbook/diagram/thermistor"
)

const (
	benchLift = 8 // TH3, published (V1 to V4): minimum lift when fully open

	shutByC diagram.Celsius = 40 // TH4, published (V2, V3): shut again, ratings of 76 to 84 °C
)

// benchTest judges a thermostat in heated water: where it opens, how far, and
// whether it shuts again (TH1 to TH4). It is early or late only where the curve
// says so and somebody saw it open, or shut, at the tolerance's end or beyond.
// One that already stands open in the coldest water had opened before, and is
// early, where it lifts on at once; one that waits for its mark doesn't shut.
func benchTest(c *cases.Case, t *cases.Test) judgement {
	rated, up := benchRating(c, t), benchPoints(t, true)
	curve, err := lifts.Fit(up)
	if rated == nil || err != nil {
		return judgement{}
	}
	bad := func(outcome string, text say.Text, because ...say.Text) judgement {
		return found(outcome, ofCase("thermostat-bench", Act, text, append(because, say.Of("because.bench-limits"))...))
	}
	coldest, hottest := ends(up)
	low, high := *rated-opensEarlyK, *rated+opensEarlyK
	rule := say.Of("because.bench-rule", *rated, diagram.DeltaK(opensEarlyK)) // TH1
	stands := curve.BaseMM >= lifts.MovesMM
	saw := func(it func(lifts.Point) bool) bool { return !stands && slices.ContainsFunc(up, it) }
	switch {
	case stands && coldest > shutByC && curve.Moves && curve.EarliestC <= coldest && curve.LatestC < low:
		return bad("early", say.Of("flag.bench-early-before", coldest), rule)
	case stands && coldest < low:
		return bad("open", say.Of("flag.bench-open", coldest), rule)
	case !stands && !curve.Moves && hottest > high:
		return bad("shut", say.Of("flag.bench-shut", hottest), rule)
	case !stands && !curve.Moves:
		return judgement{}
	case curve.LatestC < low && saw(func(p lifts.Point) bool { return p.WaterC <= low && p.MM >= lifts.MovesMM }):
		return bad("early", say.Of("flag.bench-early", curve.OpensC), rule)
	case curve.EarliestC > high && saw(func(p lifts.Point) bool { return p.WaterC >= high && p.MM < lifts.MovesMM }):
		return bad("late", say.Of("flag.bench-late", curve.OpensC), rule)
	}
	want, fullC := fullyOpen(t, *rated)
	small := curve.FullMM < want*0.9
	if small && hottest >= fullC {
		return bad("small-lift", say.Of("flag.bench-small-lift", curve.FullMM), say.Of("because.bench-lift", want, fullC))
	}
	if at, mm, ok := stillOpen(t); ok {
		return bad("open", say.Of("flag.bench-still-open", at, mm), say.Of("because.bench-shut-by", shutByC))
	}
	j := passIf(!stands) // else it was never seen shut
	j.but(small, "small-lift")
	j.inPart(small)
	return j
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
	for i, p := range down {
		if p.WaterC < down[0].WaterC {
			down[0] = down[i]
		}
	}
	if len(down) == 0 || down[0].WaterC > shutByC || down[0].MM < lifts.MovesMM {
		return 0, 0, false
	}
	return down[0].WaterC, down[0].MM, true
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

func ends(points []lifts.Point) (coldest, hottest diagram.Celsius) {
	coldest, hottest = points[0].WaterC, points[0].WaterC
	for _, p := range points {
		coldest, hottest = min(coldest, p.WaterC), max(hottest, p.WaterC)
	}
	return coldest, hottest
}

// sensorPassK is what a sensor may be off: DT15, common practice.
const sensorPassK diagram.DeltaK = 5

// sensorTest reads each resistance off the reference curve and compares: 5 K
// passes, 10 K fails (DT15, DT16, common practice). One beyond the curve, as a cut
// wire's, is off at least as far as the curve's end.
func sensorTest(t *cases.Test) judgement {
	curve, err := thermistor.Fit(reference(t))
	if err != nil {
		return judgement{}
	}
	var worst diagram.DeltaK
	var because []say.Text
	compared, atLeast := false, false // the second is of the worst
	for _, p := range ohms(t) {
		says, err := curve.Read(p.Ohm)
		off, why := says.Minus(p.C), say.Of("because.ohm", p.Ohm, p.C, says)
		compared = compared || err == nil
		if err != nil {
			var ok bool
			if off, ok = curve.Beyond(p); !ok {
				continue
			}
			why = say.Of("because.ohm-beyond", p.Ohm, p.C, p.C+diagram.Celsius(off))
		}
		if math.Abs(float64(off)) <= float64(sensorPassK) {
			continue
		}
		because = append(because, why)
		if math.Abs(float64(off)) > math.Abs(float64(worst)) {
			worst, atLeast = off, err != nil
		}
	}
	if because == nil {
		return passIf(compared)
	}
	severity, way := Look, "high"
	if math.Abs(float64(worst)) > float64(sensorFailK) {
		severity = Act
	}
	if worst < 0 {
		way = "low"
	}
	text := say.Of("flag.sensor-"+way, max(worst, -worst))
	if atLeast {
		text = say.Of("flag.sensor-beyond-"+way, max(worst, -worst))
	}
	return found(way, ofCase("sensor-resistance", severity, text, append(because, say.Of("because.sensor-limits", sensorPassK, sensorFailK))...))
}

// ohms are the measured points that hold both numbers.
func ohms(t *cases.Test) []thermistor.Point {
	var out []thermistor.Point
	for _, p := range t.Points {
		if p.TempC != nil && p.Ohm != nil {
			out = append(out, thermistor.Point{C: *p.TempC, Ohm: *p.Ohm})
		}
	}
	return out
}

// reference is the sensor's curve as far as it is known.
func reference(t *cases.Test) []thermistor.Point {
	var out []thermistor.Point
	for _, p := range t.Reference {
		if p.TempC != nil && p.Ohm != nil && *p.Ohm > 0 {
			out = append(out, thermistor.Point{C: *p.TempC, Ohm: *p.Ohm})
		}
	}
	return out
}

// What two places of the core's face that lie equally far from its inlet may
// differ by, to be suspected and to fail: DT14, common practice.
const (
	suspectK diagram.DeltaK = facescan.SuspectK
	patchK   diagram.DeltaK = 10
)

// coreScan looks for cold tubes, cold patches and hot ones. A hot patch has no
// outcome of its own: it is told, and weighs nothing.
func coreScan(c *cases.Case, t *cases.Test) judgement {
	f := facescan.Judge(t.ShownC)
	severity := Look
	if f.MostK > patchK {
		severity = Act
	}
	rule := say.Of("because.face", suspectK, patchK)
	share := say.Of("because.face-cold", 100*f.ColdShare)
	switch f.Pattern {
	case facescan.Tubes:
		return found("patch", ofCase("core-patch", severity, say.Of("flag.core-tubes", f.MostK), rule, share))
	case facescan.Cold:
		return found("patch", ofCase("core-patch", severity, say.Of("flag.core-cold", f.MostK), rule, share))
	case facescan.Hot:
		return found("hot-patch", ofCase("core-fins", Look, say.Of("flag.core-fins", f.MostK), rule))
	}
	return wholeFace(airOfSide(c, t.Stage), f)
}
