package thermistor_test

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/published"
	"loopbook/diagram/thermistor"
)

// table is a published table of resistances.
func table(t *testing.T, name, ohm string) []thermistor.Point {
	t.Helper()
	var out []thermistor.Point
	for _, r := range published.Rows(t, name) {
		out = append(out, thermistor.Point{C: diagram.Celsius(r.Number(t, "T_degC")), Ohm: r.Number(t, ohm)})
	}
	return out
}

func fit(t *testing.T, points ...thermistor.Point) thermistor.Curve {
	t.Helper()
	c, err := thermistor.Fit(points)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// The constants are of testdata/reference/thermistor_fit.csv, computed by other
// code from the published points.
func TestThreePointsGiveThePublishedConstants(t *testing.T) {
	point := regexp.MustCompile(`(\d+) degC = (\d+\.?\d*) ohm`)
	fits := 0
	for _, r := range published.Rows(t, "reference/thermistor_fit.csv") {
		var points []thermistor.Point
		for _, m := range point.FindAllStringSubmatch(r["calibration_points"], -1) {
			c, _ := strconv.ParseFloat(m[1], 64)
			ohm, _ := strconv.ParseFloat(m[2], 64)
			points = append(points, thermistor.Point{C: diagram.Celsius(c), Ohm: ohm})
		}
		if len(points) != 3 {
			continue
		}
		fits++
		c := fit(t, points...)
		for _, v := range []struct{ got, want float64 }{{c.A, r.Number(t, "A")}, {c.B, r.Number(t, "B")}, {c.C, r.Number(t, "C_or_D_cubic")}} {
			if math.Abs(v.got/v.want-1) > 1e-6 {
				t.Errorf("%s: %g, want %g", r["calibration_points"], v.got, v.want)
			}
		}
	}
	if fits != 4 {
		t.Errorf("%d fits compared, want 4", fits)
	}
}

// The errors are of testdata/reference/thermistor.csv: what a curve through 0,
// 25 and 85 °C misses the published table by, written to 0.001 K.
func TestACurveMissesTheTableAsPublished(t *testing.T) {
	c := fit(t, thermistor.Point{C: 0, Ohm: 32650}, thermistor.Point{C: 25, Ohm: 10000}, thermistor.Point{C: 85, Ohm: 1072})
	for _, r := range published.Rows(t, "reference/thermistor.csv") {
		at := diagram.Celsius(r.Number(t, "T_degC"))
		got, err := c.Read(r.Number(t, "R_ohm_for_R25_10k"))
		if at < 0 || at > 85 {
			if !errors.Is(err, thermistor.ErrRange) {
				t.Errorf("%g °C lies outside the three points and reads %g, %v", at, got, err)
			}
			continue
		}
		if want := r.Number(t, "fit_error_K_SH_0_25_85"); math.Abs(math.Abs(float64(got-at))-math.Abs(want)) > 0.005 {
			t.Errorf("at %g °C the curve is %+.3f K off, want %+.3f", at, got-at, want)
		}
	}
}

// Both published families and the car maker's table V16 (testdata/trade, NTC0
// to NTC140, rounded to three or four figures) follow one curve each.
func TestPublishedTablesFollowTheFormula(t *testing.T) {
	var car []thermistor.Point
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		if m := regexp.MustCompile(`^NTC(-?\d+)$`).FindStringSubmatch(r["id"]); m != nil {
			c, _ := strconv.ParseFloat(m[1], 64)
			car = append(car, thermistor.Point{C: diagram.Celsius(c), Ohm: r.Number(t, "typical")})
		}
	}
	for _, tt := range []struct {
		name   string
		points []thermistor.Point
		withK  float64
	}{
		{"R/T 8016", table(t, "reference/thermistor.csv", "R_ohm_for_R25_10k"), 0.15},
		{"B25/85 3977 K", table(t, "reference/thermistor_3977.csv", "R_ohm"), 0.15},
		{"V16", car, 0.5},
	} {
		c := fit(t, tt.points...)
		if len(tt.points) < 10 || math.Abs(float64(c.OffK)) > tt.withK || !c.Smooth() {
			t.Errorf("%s: %d points, %g K off, want within %g", tt.name, len(tt.points), c.OffK, tt.withK)
		}
		for _, at := range []diagram.Celsius{0, 37, 88, 110} {
			ohm, err := c.Ohm(at)
			if back, err2 := c.Read(ohm); err != nil || err2 != nil || math.Abs(float64(back-at)) > 1e-6 {
				t.Errorf("%s: %g °C and back is %g, %v, %v", tt.name, at, back, err, err2)
			}
		}
	}
}

// Three points of a table give the rest, as a technician has seldom more.
func TestThreePointsGiveTheRest(t *testing.T) {
	points := table(t, "reference/thermistor_3977.csv", "R_ohm")
	var three []thermistor.Point
	for _, p := range points {
		if p.C == 0 || p.C == 50 || p.C == 120 {
			three = append(three, p)
		}
	}
	c := fit(t, three...)
	for _, p := range points {
		if got, err := c.Read(p.Ohm); p.C >= 0 && p.C <= 120 && (err != nil || math.Abs(float64(got-p.C)) > 0.02) {
			t.Errorf("%g ohm reads %g °C, want %g, %v", p.Ohm, got, p.C, err)
		}
	}
}

// Two points are the formula of one constant: B25/100 is 3987.7 K by
// testdata/reference/thermistor_fit.csv, 3988 K by the data sheet.
func TestTwoPointsAreABetaCurve(t *testing.T) {
	c := fit(t, thermistor.Point{C: 25, Ohm: 10000}, thermistor.Point{C: 100, Ohm: 680})
	if c.C != 0 || math.Abs(1/c.B-3987.7) > 0.05 {
		t.Errorf("B = %g K, C = %g, want 3987.7 and 0", 1/c.B, c.C)
	}
}

// A bad slip doesn't follow the formula: then nothing bends between the points.
// A metal sensor of IEC 60751 (109.73 ohm at 25 °C, 119.40 at 50; from memory)
// rises and follows it nearly.
func TestAnotherKindOfSensorIsJoinedStraight(t *testing.T) {
	c := fit(t, thermistor.Point{C: 0, Ohm: 5000}, thermistor.Point{C: 40, Ohm: 3000}, thermistor.Point{C: 80, Ohm: 2800}, thermistor.Point{C: 100, Ohm: 200})
	if c.Smooth() {
		t.Fatalf("%g K off passes for smooth", c.OffK)
	}
	for _, tt := range []struct{ ohm, want float64 }{
		{3000, 40},
		{math.Sqrt(5000 * 3000), 20}, {math.Sqrt(3000 * 2800), 60}, {math.Sqrt(2800 * 200), 90}, // half-way in ln R
	} {
		if got, err := c.Read(tt.ohm); err != nil || math.Abs(float64(got)-tt.want) > 1e-9 {
			t.Errorf("%g ohm reads %g °C, want %g, %v", tt.ohm, got, tt.want, err)
		}
	}
	// Through three points a curve always goes, here one that turns back between
	// them: it would read 2950 ohm far outside 50 to 80 °C.
	turns := fit(t, thermistor.Point{C: 0, Ohm: 5000}, thermistor.Point{C: 50, Ohm: 3000}, thermistor.Point{C: 80, Ohm: 2900})
	if got, err := turns.Read(2950); err != nil || turns.Smooth() || !(got > 50 && got < 80) {
		t.Errorf("2950 ohm reads %g °C, want one between 50 and 80, %v", got, err)
	}
	metal := fit(t, thermistor.Point{C: 0, Ohm: 100}, thermistor.Point{C: 50, Ohm: 119.40}, thermistor.Point{C: 100, Ohm: 138.51})
	if got, err := metal.Read(109.73); err != nil || math.Abs(float64(got-25)) > 0.5 {
		t.Errorf("109.73 ohm reads %g °C, want 25, %v", got, err)
	}
}

func TestWhatMakesNoCurve(t *testing.T) {
	for _, points := range [][]thermistor.Point{
		nil, {{C: 20, Ohm: 2500}}, {{C: 20, Ohm: 2500}, {C: 80, Ohm: 2500}}, {{C: 20, Ohm: 2500}, {C: 20, Ohm: 300}},
		{{C: 20, Ohm: 2500}, {C: 80, Ohm: 0}}, {{C: 20, Ohm: 2500}, {C: 80, Ohm: math.NaN()}},
	} {
		if _, err := thermistor.Fit(points); !errors.Is(err, thermistor.ErrPoints) {
			t.Errorf("%v: %v", points, err)
		}
	}
}

// A sensor that is 10 K low everywhere, or whose resistance is off by one ratio.
func TestErrorAtWorkingTemperature(t *testing.T) {
	points := table(t, "reference/thermistor.csv", "R_ohm_for_R25_10k")
	c := fit(t, points...)
	var low []thermistor.Point
	for _, at := range []diagram.Celsius{20, 60, 100} {
		ohm, err := c.Ohm(at - 10)
		if err != nil {
			t.Fatal(err)
		}
		low = append(low, thermistor.Point{C: at, Ohm: ohm})
	}
	for _, at := range []diagram.Celsius{60, 90, 100} {
		if off, ok := c.OffAt(at, low); !ok || math.Abs(float64(off)+10) > 0.5 {
			t.Errorf("at %g °C %+.1f K off, want -10", at, off)
		}
	}
	if off, ok := c.OffAt(90, points); !ok || math.Abs(float64(off)) > 0.2 {
		t.Errorf("the table itself is %+.2f K off", off)
	}
	if _, ok := c.OffAt(90, nil); ok {
		t.Error("nothing measured, and an error is told")
	}
	hotWell, err := c.Ohm(100)
	if err != nil {
		t.Fatal(err)
	}
	mixed := []thermistor.Point{low[1], {C: 100, Ohm: hotWell}} // 10 K low at 60 °C, well at 100 °C
	before, _ := c.OffAt(40, mixed)
	between, _ := c.OffAt(80, mixed)
	after, _ := c.OffAt(105, mixed)
	if !(before < -7 && before > -11) || !(between < -3 && between > -8) || math.Abs(float64(after)) > 0.2 {
		t.Errorf("10 K low at 60 and well at 100 °C: %+.1f K at 40, %+.1f K at 80, %+.1f K at 105 °C", before, between, after)
	}
	for _, at := range []diagram.Celsius{points[0].C - 1, points[len(points)-1].C + 1} {
		if off, ok := c.OffAt(at, low); ok {
			t.Errorf("at %g °C, beyond the reference, the sensor is told to be %+.1f K off", at, off)
		}
	}
}

// The other points that are printed of the same sensor (NTC50 and NTC80 of testdata/trade/numbers.csv, published, V16) lie
// within 2 % of the curve through two of them.
func TestACommonSensorIsThatOfTheTrade(t *testing.T) {
	for c, want := range map[diagram.Celsius]float64{20: 2502, 50: 806.9, 80: 308.6, 100: 175.7} {
		if got := thermistor.CommonOhm(c); !(math.Abs(got/want-1) <= 0.02) {
			t.Errorf("CommonOhm(%v) = %.1f, want %.1f", c, got, want)
		}
	}
}
