package evidence

import (
	"fmt"
	"math"
	"sort"

	"loopbook/cases"
	"loopbook/diagram"
)

const (
	movedMM   = 0.1 // the first movement that the eye sees
	benchLift = 8   // TH3, published (V1 to V4): minimum lift when fully open
	seenNotes = "still water, no load: a pass doesn't clear the part, a clear fail condemns it (common practice)"
)

// benchTest judges a thermostat in heated water: where it first moves, and how
// far it opens (TH1 to TH3).
func benchTest(c *cases.Case, t *cases.Test) judgement {
	rated := t.RatedOpensC
	if rated == nil {
		rated = c.Loop.ThermostatOpensC
	}
	hot := heatedPoints(t)
	if rated == nil || len(hot) == 0 {
		return judgement{}
	}
	bad := func(outcome, text string, because ...string) judgement {
		return found(outcome, ofCase("thermostat-bench", Act, text, append(because, seenNotes)...))
	}
	moved := firstMove(hot)
	rule := fmt.Sprintf("rated to open at %s, ±3 K (TH1, published, M2)", inC(*rated))
	switch hottest := *hot[len(hot)-1].WaterC; {
	case moved < 0 && hottest > *rated+opensEarlyK:
		return bad("shut", fmt.Sprintf("In water of %s the thermostat doesn't open.", inC(hottest)), rule)
	case moved < 0:
		return judgement{}
	case moved == 0 && *hot[0].WaterC < *rated-opensEarlyK:
		return bad("open", fmt.Sprintf("The thermostat stands open in water of %s.", inC(*hot[0].WaterC)), rule)
	case moved > 0 && *hot[moved].WaterC < *rated-opensEarlyK:
		return bad("early", fmt.Sprintf("The thermostat opens by %s: too early.", inC(*hot[moved].WaterC)), rule)
	case moved > 0 && *hot[moved-1].WaterC > *rated+opensEarlyK:
		return bad("late", fmt.Sprintf("The thermostat is shut up to %s: it opens late.", inC(*hot[moved-1].WaterC)), rule)
	}
	if text, because := smallLift(t, hot, *rated); text != "" {
		return bad("small-lift", text, because)
	}
	return passIf(moved > 0) // else it was never seen shut
}

// smallLift tells of a thermostat that doesn't open far enough, or "".
func smallLift(t *cases.Test, hot []cases.BenchPoint, rated diagram.Celsius) (text, because string) {
	want, fullC := float64(benchLift), rated+diagram.Celsius(fullK)
	if t.RatedLiftMM != nil {
		want = *t.RatedLiftMM
	}
	if t.RatedFullC != nil {
		fullC = *t.RatedFullC
	}
	last := hot[len(hot)-1]
	if *last.WaterC < fullC || *last.LiftMM >= want*0.9 {
		return "", ""
	}
	return fmt.Sprintf("Fully hot the thermostat lifts only %.1f mm.", *last.LiftMM),
		fmt.Sprintf("%.0f mm expected from %s on (TH2, TH3, published)", want, inC(fullC))
}

// heatedPoints are the usable points of the way up, coldest first.
func heatedPoints(t *cases.Test) []cases.BenchPoint {
	var out []cases.BenchPoint
	for _, p := range t.Points {
		if p.WaterC != nil && p.LiftMM != nil && !is(p.Heating, false) {
			out = append(out, p)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return *out[i].WaterC < *out[j].WaterC })
	return out
}

func firstMove(points []cases.BenchPoint) int {
	for i, p := range points {
		if *p.LiftMM >= movedMM {
			return i
		}
	}
	return -1
}

// sensorTest reads each resistance off the reference curve and compares: 5 K
// passes, 10 K fails (DT15, DT16, common practice).
func sensorTest(t *cases.Test) judgement {
	curve := referenceCurve(t)
	var worst diagram.DeltaK
	var because []string
	compared := false
	for _, p := range t.Points {
		if p.TempC == nil || p.Ohm == nil {
			continue
		}
		says, ok := readOff(curve, *p.Ohm)
		off := says.Minus(*p.TempC)
		compared = compared || ok
		if !ok || math.Abs(float64(off)) <= 5 {
			continue
		}
		because = append(because, fmt.Sprintf("%.0f Ω at %s, which the reference has at %s", *p.Ohm, inC(*p.TempC), inC(says)))
		if math.Abs(float64(off)) > math.Abs(float64(worst)) {
			worst = off
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
	return found(way, ofCase("sensor-resistance", severity, fmt.Sprintf("The sensor reads up to %s too %s.", inK(max(worst, -worst)), way),
		append(because, "5 K off passes, 10 K fails (DT15, DT16, common practice)")...))
}

// referenceCurve is the reference by falling resistance, so rising temperature
// on the usual kind of sensor.
func referenceCurve(t *cases.Test) []cases.OhmPoint {
	var out []cases.OhmPoint
	for _, p := range t.Reference {
		if p.TempC != nil && p.Ohm != nil && *p.Ohm > 0 {
			out = append(out, p)
		}
	}
	sort.SliceStable(out, func(i, j int) bool { return *out[i].Ohm > *out[j].Ohm })
	return out
}

// readOff interpolates the temperature over the logarithm of the resistance;
// outside the curve it doesn't guess.
func readOff(curve []cases.OhmPoint, ohm float64) (diagram.Celsius, bool) {
	for i := 1; i < len(curve); i++ {
		a, b := curve[i-1], curve[i]
		if ohm <= *a.Ohm && ohm >= *b.Ohm && *a.Ohm > *b.Ohm {
			share := math.Log(*a.Ohm/ohm) / math.Log(*a.Ohm / *b.Ohm)
			return *a.TempC + (*b.TempC-*a.TempC)*diagram.Celsius(share), true
		}
	}
	return 0, false
}

// patchK is what two places of the core's face that lie equally far from its
// inlet may differ by: DT14, common practice.
const patchK = 10

// coreScan looks for a cold patch. Coolant cools on its way, so the direction
// in which the face differs more is taken for the way, and places beside each
// other across it are compared.
func coreScan(c *cases.Case, t *cases.Test) judgement {
	along, across := spread(t.ShownC), spread(turned(t.ShownC))
	patch := min(along, across)
	if !(patch >= 8) {
		return wholeFace(c, t, max(along, across))
	}
	severity := Look
	if patch > patchK {
		severity = Act
	}
	return found("patch", ofCase("core-patch", severity, fmt.Sprintf("The core's face has a patch %.0f K off its neighbours: tubes are blocked there.", patch),
		"8 to 10 K at the same distance from the inlet is suspect (DT14, common practice); an even change is well (published, M17, V22)"))
}

// spread is the largest difference within a row; NaN cells are gaps.
func spread(rows [][]float64) float64 {
	most := 0.0
	for _, row := range rows {
		low, high := math.Inf(1), math.Inf(-1)
		for _, v := range row {
			if !math.IsNaN(v) {
				low, high = min(low, v), max(high, v)
			}
		}
		most = max(most, high-low)
	}
	return most
}

func turned(rows [][]float64) [][]float64 {
	if len(rows) == 0 {
		return nil
	}
	out := make([][]float64, len(rows[0]))
	for _, row := range rows {
		for j, v := range row {
			if j < len(out) {
				out[j] = append(out[j], v)
			}
		}
	}
	return out
}
