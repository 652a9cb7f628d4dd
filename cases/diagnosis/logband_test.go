package diagnosis_test

import (
	"context"
	"math"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/logfile"
	"loopbook/diagram"
)

// Recorded drives of sound cars (open data, testdata/logs/README.md names the
// sources) lie in the band of the model's healthy cars that are run alike, from
// the start on: nine in ten of the cars, so at least eight in ten of the time.
func TestRecordedDrivesLieInTheBand(t *testing.T) {
	for _, tt := range []struct {
		file    string
		ambient diagram.Celsius // as the README has it, or the intake's at the start
	}{
		{"cold_drive_full.csv", 11},
		{"summer_town_drive.csv", 24},
	} {
		read, err := logfile.FromFile(context.Background(), "../../testdata/logs/"+tt.file, logfile.Options{})
		if err != nil {
			t.Fatal(err)
		}
		c := cases.Case{
			Loop: cases.Loop{Layout: "outlet-thermostat", ThermostatOpensC: casetest.P(diagram.Celsius(88))},
			Site: cases.Site{AmbientC: &tt.ambient},
		}
		plan, ok := diagnosis.PlanForLog(&c, &read.Log, 0)
		if !ok {
			t.Fatalf("%s: no plan", tt.file)
		}
		crowds := diagnosis.Crowds{Draws: 100}
		crowd, err := crowds.Get(context.Background(), plan, nil)
		if err != nil {
			t.Fatal(err)
		}
		band, in, all := diagnosis.BandOf(crowd, 0), 0, 0
		for i, s := range read.Log.TimeS {
			if c := read.Log.EctC[i]; !math.IsNaN(c) {
				all++
				if c >= between(band.TimeS, band.LowC, s) && c <= between(band.TimeS, band.HighC, s) {
					in++
				}
			}
		}
		t.Logf("%s: %.0f %% of %d rows in the band", tt.file, 100*float64(in)/float64(all), all)
		if float64(in) < 0.8*float64(all) {
			t.Errorf("%s: only %d of %d rows lie in the band", tt.file, in, all)
		}
	}
}

// between interpolates; beyond the last it stays.
func between(x, y []float64, at float64) float64 {
	for i := 1; i < len(x); i++ {
		if at <= x[i] {
			return y[i-1] + (y[i]-y[i-1])*(at-x[i-1])/(x[i]-x[i-1])
		}
	}
	return y[len(y)-1]
}

// A log's cars are run as the log says: between two of its points by the mean of the
// column, where the column is silent by what it said last, and by nothing before it
// says anything.
func TestALogsCarsAreRunAsItSays(t *testing.T) {
	l := cases.Log{}
	for s := -100.0; s <= 2400; s += 50 {
		l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, 20)
		rpm, kmh := 800.0, math.NaN()
		switch {
		case s < 0:
			rpm = 5000 // before the engine's start
		case s >= 1200:
			rpm, kmh = 2000, 50
			if math.Mod(s, 100) == 0 {
				rpm = 3000
			}
		}
		if s > 1800 {
			kmh = math.NaN()
		}
		l.EngineRPM, l.SpeedKmh = append(l.EngineRPM, rpm), append(l.SpeedKmh, kmh)
	}
	plan, ok := diagnosis.PlanForLog(&cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}}, &l, 0)
	if !ok {
		t.Fatal("no plan")
	}
	stops := plan.Setting.Starts[0].Stops
	for at, want := range map[int][2]float64{0: {800, 0}, 11: {800, 0}, 13: {2500, 50}, 23: {2500, 50}} {
		if got := [2]float64{stops[at].RPM, stops[at].SpeedKmh}; got != want {
			t.Errorf("on the way to point %d: %v rpm and km/h, want %v", at, got, want)
		}
	}
}
