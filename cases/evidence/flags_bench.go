package evidence

import (
	"fmt"
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/facescan"
	lifts "loopbook/diagram/lift"
	"loopbook/diagram/thermistor"
)

const (
	benchLift = 8 // TH3, published (V1 to V4): minimum lift when fully open
	seenNotes = "still water, no load: a pass doesn't clear the part, a clear fail condemns it (common practice)"

	shutByC diagram.Celsius = 40 // TH4, published (V2, V3): shut again, ratings of 76 to 84 °C
)

// benchTest judges a thermostat in heated water: where it opens, how far, and
// whether it shuts again (TH1 to TH4). It is early or late only where the curve
// says so and somebody saw it open, or shut, outside the tolerance.
func benchTest(c *cases.Case, t *cases.Test) judgement {
	rated, up := benchRating(c, t), benchPoints(t, true)
	curve, err := lifts.Fit(up)
	if rated == nil || err != nil {
		return judgement{}
	}
	bad := func(outcome, text string, because ...string) judgement {
		return found(outcome, ofCase("thermostat-bench", Act, text, append(because, seenNotes)...))
	}
	coldest, hottest := ends(up)
	low, high := *rated-opensEarlyK, *rated+opensEarlyK
	rule := fmt.Sprintf("rated to open at %s, ±3 K (TH1, published, M2)", inC(*rated))
	stands := curve.BaseMM >= lifts.MovesMM
	saw := func(it func(lifts.Point) bool) bool { return !stands && slices.ContainsFunc(up, it) }
	switch {
	case stands && coldest < low:
		return bad("open", fmt.Sprintf("The thermostat stands open in water of %s.", inC(coldest)), rule)
	case !stands && !curve.Moves && hottest > high:
		return bad("shut", fmt.Sprintf("In water of %s the thermostat doesn't open.", inC(hottest)), rule)
	case !stands && !curve.Moves:
		return judgement{}
	case curve.LatestC < low && saw(func(p lifts.Point) bool { return p.WaterC < low && p.MM >= lifts.MovesMM }):
		return bad("early", fmt.Sprintf("The thermostat opens at %s: too early.", inC(curve.OpensC)), rule)
	case curve.EarliestC > high && saw(func(p lifts.Point) bool { return p.WaterC > high && p.MM < lifts.MovesMM }):
		return bad("late", fmt.Sprintf("The thermostat opens at %s: too late.", inC(curve.OpensC)), rule)
	}
	if text, because := smallLift(t, curve, hottest, *rated); text != "" {
		return bad("small-lift", text, because)
	}
	if at, mm, ok := stillOpen(t); ok {
		return bad("open", fmt.Sprintf("Cooled to %s the thermostat still stands %.1f mm open.", inC(at), mm), "shut again by 40 °C (TH4, published, V2, V3)")
	}
	return passIf(!stands) // else it was never seen shut
}

func benchRating(c *cases.Case, t *cases.Test) *diagram.Celsius {
	if t.RatedOpensC != nil {
		return t.RatedOpensC
	}
	return c.Loop.ThermostatOpensC
}

// smallLift tells of a thermostat that doesn't open far enough, or "".
func smallLift(t *cases.Test, curve lifts.Curve, hottest, rated diagram.Celsius) (text, because string) {
	want, fullC := float64(benchLift), rated+diagram.Celsius(fullK)
	if t.RatedLiftMM != nil {
		want = *t.RatedLiftMM
	}
	if t.RatedFullC != nil {
		fullC = *t.RatedFullC
	}
	if hottest < fullC || curve.FullMM >= want*0.9 {
		return "", ""
	}
	return fmt.Sprintf("Fully hot the thermostat lifts only %.1f mm.", curve.FullMM),
		fmt.Sprintf("%.0f mm expected from %s on (TH2, TH3, published)", want, inC(fullC))
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
	for _, p := range t.Points {
		if p.WaterC != nil && p.LiftMM != nil && is(p.Heating, false) != heating {
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

// sensorTest reads each resistance off the reference curve and compares: 5 K
// passes, 10 K fails (DT15, DT16, common practice).
func sensorTest(t *cases.Test) judgement {
	curve, err := thermistor.Fit(reference(t))
	if err != nil {
		return judgement{}
	}
	var worst diagram.DeltaK
	var because []string
	compared := false
	for _, p := range ohms(t) {
		says, err := curve.Read(p.Ohm)
		off := says.Minus(p.C)
		compared = compared || err == nil
		if err != nil || math.Abs(float64(off)) <= 5 {
			continue
		}
		because = append(because, fmt.Sprintf("%.0f Ω at %s, which the reference has at %s", p.Ohm, inC(p.C), inC(says)))
		if math.Abs(float64(off)) > math.Abs(float64(worst)) {
			worst = off
		}
	}
	if because == nil {
		return passIf(compared)
	}
	severity, way := Look, "high"
	if math.Abs(float64(worst)) > float64(SensorFailK) {
		severity = Act
	}
	if worst < 0 {
		way = "low"
	}
	return found(way, ofCase("sensor-resistance", severity, fmt.Sprintf("The sensor reads up to %s too %s.", inK(max(worst, -worst)), way),
		append(because, "5 K off passes, 10 K fails (DT15, DT16, common practice)")...))
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

// patchK is what two places of the core's face that lie equally far from its
// inlet may differ by: DT14, common practice.
const patchK = 10

// coreScan looks for cold tubes, cold patches and hot ones. A hot patch has no
// outcome of its own: it is told, and weighs nothing.
func coreScan(c *cases.Case, t *cases.Test) judgement {
	f := facescan.Judge(t.ShownC)
	severity := Look
	if f.MostK > patchK {
		severity = Act
	}
	because := []string{"8 to 10 K at the same distance from the inlet is suspect (DT14, common practice); an even change is well (published, M17, V22)"}
	share := fmt.Sprintf("%.0f %% of the face is cold", 100*f.ColdShare)
	switch f.Pattern {
	case facescan.Tubes:
		return found("patch", ofCase("core-patch", severity, fmt.Sprintf("Whole tubes of the core are up to %.0f K colder than others: they are plugged.", float64(f.MostK)), append(because, share)...))
	case facescan.Cold:
		return found("patch", ofCase("core-patch", severity, fmt.Sprintf("The core's face has a patch %.0f K off its neighbours: tubes are blocked there.", float64(f.MostK)), append(because, share)...))
	case facescan.Hot:
		return found("hot-patch", ofCase("core-fins", Look, fmt.Sprintf("The core's face has a patch %.0f K hotter than its neighbours: no air takes its heat there. Look at the fins.", float64(f.MostK)), because...))
	}
	return wholeFace(c, f)
}
