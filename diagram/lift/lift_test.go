package lift_test

import (
	"errors"
	"math"
	"math/rand"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/lift"
)

// bench is a record of a thermostat that opens and is full at those
// temperatures, read every step.
func bench(opens, full diagram.Celsius, mm float64, from, to, step diagram.Celsius) []lift.Point {
	var out []lift.Point
	for c := from; c <= to; c += step {
		out = append(out, lift.Point{WaterC: c, MM: mm * min(max(float64((c-opens)/(full-opens)), 0), 1)})
	}
	return out
}

func fit(t *testing.T, p []lift.Point) lift.Curve {
	t.Helper()
	c, err := lift.Fit(p)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func near(a, b diagram.Celsius, within float64) bool { return math.Abs(float64(a-b)) <= within }

// The published rows of the workshop manuals (M2 to M7, M16, V1 to V4 of
// testdata/trade/sources.md): where their thermostats start and are fully open.
// Where a start is a band its middle stands here; lifts that aren't printed
// are 8 mm (TH3).
func published() [][3]float64 {
	return [][3]float64{
		{82, 94, 8}, {83.5, 93.5, 8}, {76.5, 88.5, 8}, {72.2, 81.1, 8}, {81, 96, 8}, {77, 85, 8}, {82, 88, 8},
		{78, 90, 8}, {82, 95, 10}, {76, 90, 10}, {50, 63, 6},
	}
}

func TestPublishedThermostatsAreFoundAgain(t *testing.T) {
	for _, row := range published() {
		opens, full, mm := diagram.Celsius(row[0]), diagram.Celsius(row[1]), row[2]
		c := fit(t, bench(opens, full, mm, opens-11, full+5, 2))
		if !near(c.OpensC, opens, 0.5) || !near(c.FullC, full, 1) || !c.Levelled || math.Abs(c.FullMM-mm) > 0.1 || c.BaseMM != 0 {
			t.Errorf("%v: %+v", row, c)
		}
		if opens < c.EarliestC-0.5 || opens > c.LatestC+0.5 {
			t.Errorf("%v: the opening lies outside %g to %g °C", row, c.EarliestC, c.LatestC)
		}
	}
}

// Readings of a ruler and a thermometer: 0.2 mm and 0.5 K either way, and one
// slip of 4 mm. A line by least squares would move by kelvins.
func TestNoiseAndOneSlipMoveLittle(t *testing.T) {
	d := rand.New(rand.NewSource(1))
	for run := 0; run < 50; run++ {
		for _, row := range published() {
			opens, full := diagram.Celsius(row[0]), diagram.Celsius(row[1])
			p := bench(opens, full, row[2], opens-12, full+6, 2)
			for i := range p {
				p[i].MM = max(0, p[i].MM+0.1*d.NormFloat64())
				p[i].WaterC += diagram.Celsius(0.25 * d.NormFloat64())
			}
			p[2].MM = 4
			if c := fit(t, p); !near(c.OpensC, opens, 1.5) || math.Abs(c.FullMM-row[2]) > 0.5 {
				t.Fatalf("%v, run %d: %+v of %v", row, run, c, p)
			}
		}
	}
}

func TestWideStepsSayHowSureTheOpeningIs(t *testing.T) {
	c := fit(t, []lift.Point{{70, 0}, {80, 0}, {90, 8}, {95, 8}})
	if c.EarliestC > 81 || c.LatestC < 87 || !near(c.OpensC, (c.EarliestC+c.LatestC)/2, 1) {
		t.Errorf("shut at 80 and open at 90 °C gives %+v", c)
	}
}

func TestWhatDoesNotMove(t *testing.T) {
	if c := fit(t, bench(200, 210, 8, 70, 100, 5)); c.Moves || c.FullMM != 0 {
		t.Errorf("shut: %+v", c)
	}
	if c := fit(t, []lift.Point{{70, 5}, {80, 5.1}, {95, 5}}); c.Moves || c.BaseMM != 5 {
		t.Errorf("stands open: %+v", c)
	}
	if c := fit(t, []lift.Point{{70, 0}, {80, 8}}); !c.Moves || c.EarliestC > 70.5 || c.LatestC < 79 {
		t.Errorf("two points: %+v", c)
	}
	for _, p := range [][]lift.Point{nil, {{80, math.NaN()}}, {{diagram.Celsius(math.Inf(1)), 4}}} {
		if _, err := lift.Fit(p); !errors.Is(err, lift.ErrPoints) {
			t.Errorf("%v: %v", p, err)
		}
	}
}

// One point at the top tells as little of where the lift ended as a table that was cut short.
func TestCutShortItIsNotFullyOpen(t *testing.T) {
	for _, p := range [][]lift.Point{{{20, 4}, {60, 5}}, {{20, 0}, {60, 0}, {95, 9}}} {
		if c := fit(t, p); c.Levelled || !c.Moves {
			t.Errorf("%v: %+v", p, c)
		}
	}
	c := fit(t, bench(82, 95, 10, 70, 90, 2))
	if c.Levelled || !near(c.OpensC, 82, 0.5) || math.Abs(c.FullMM-10*8/13.0) > 0.2 {
		t.Errorf("%+v", c)
	}
}

// On the way down the same thermostat lags by 6 K: that is the hysteresis.
func TestHysteresis(t *testing.T) {
	up, down := fit(t, bench(82, 95, 8, 70, 100, 2)), fit(t, bench(76, 89, 8, 60, 100, 2))
	if k, ok := lift.HysteresisK(up, down); !ok || math.Abs(float64(k)-6) > 0.7 {
		t.Errorf("%g K, want 6", k)
	}
	standing := func(p []lift.Point) []lift.Point { // a stone in its seat holds it 1 mm open cold
		for i := range p {
			p[i].MM++
		}
		return p
	}
	up, down = fit(t, standing(bench(82, 95, 8, 70, 100, 2))), fit(t, standing(bench(76, 89, 8, 60, 100, 2)))
	if k, ok := lift.HysteresisK(up, down); !ok || math.Abs(float64(k)-6) > 0.7 || up.BaseMM != 1 {
		t.Errorf("standing %g mm open: %g K, want 6", up.BaseMM, k)
	}
	if _, ok := lift.HysteresisK(up, lift.Curve{FullMM: 5}); ok {
		t.Error("what doesn't move has a hysteresis")
	}
}

func BenchmarkFit(b *testing.B) {
	p := bench(82, 95, 8, 70, 100, 3)
	for i := 0; i < b.N; i++ {
		if _, err := lift.Fit(p); err != nil {
			b.Fatal(err)
		}
	}
}
