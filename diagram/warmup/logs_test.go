package warmup_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"loopbook/diagram/warmup"
)

// The three real logs of testdata/logs (M. Weber 2023, CC BY 4.0; the README
// there). What they should give was read by eye from lists of the coolant's
// temperature, engine speed and road speed, one line every 4 s around the break
// and every 20 s elsewhere, made apart from this package:
//
//   - first row at 40, 60, 70, 80 °C: exact to a row; held to 5 s. In the log
//     that ends early the engine stands until 9.1 s, so its times are 9.1 s less
//     than by the log's clock.
//   - cold_drive_full: at 95 to 125 km/h it climbs a kelvin each 4 s from 88 °C at
//     668 s to 94 °C at 697 s, falls from 701 s, rests at 90 °C from 737 s. The
//     break is at 92.5 °C, give or take 2.5 K, at 690 s, give or take 20 s.
//   - summer_town_drive: slow town driving carries it from 87 °C at 641 s to 94 °C
//     at 857 s. It halts, engine off, at 869 s, shows 94 to 95 °C all the while,
//     starts at 922 s and falls from 946 s to 90 °C at 975 s. The break is at
//     94 °C, give or take 2 K, between 830 s and 945 s.
//   - cold_drive_ends_early: no break that lasts; 74 °C as the log ends.
//
// The plateaus are those of a second reading by another hand: 89.7 ± 0.6 and
// 90.1 ± 0.3 °C, held to 0.5 K, the ripple to 0.3 K.
func TestRealLogsAgreeWithTheEye(t *testing.T) {
	for _, tt := range []struct {
		file                    string
		startC                  float64
		seconds                 map[int]float64
		kneeC, withinK          float64
		kneeFromS, kneeToS      float64
		plateauC, ripple, peakC float64
		reaches                 string
	}{
		{"cold_drive_full.csv", 17, map[int]float64{40: 195, 60: 403, 70: 491, 80: 590}, 92.5, 2.5, 670, 710, 89.7, 0.6, 93.6, "yes"},
		{"summer_town_drive.csv", 24, map[int]float64{40: 157, 60: 336, 70: 389, 80: 469}, 94, 2, 830, 945, 90.1, 0.3, 94.5, "yes"},
		{"cold_drive_ends_early.csv", 11, map[int]float64{40: 331.5, 60: 676, 70: 1034.5}, 0, 0, 0, 0, 0, 0, 0, "can't be said"},
	} {
		r := warmup.Analyse(realLog(t, tt.file), warmup.Options{OpensC: celsius(88), AmbientC: celsius(5)})
		if !r.ColdStart || r.StartC == nil || !near(float64(*r.StartC), tt.startC, 1) {
			t.Errorf("%s: cold start %v at %s, want %g °C", tt.file, r.ColdStart, show(r.StartC), tt.startC)
		}
		for _, level := range warmup.Levels() {
			got, ok := r.SecondsTo[level]
			if want, is := tt.seconds[level]; ok != is || ok && !near(got, want, 5) {
				t.Errorf("%s: %g s to %d °C (%v), want %g", tt.file, got, level, ok, want)
			}
		}
		if answer(r) != tt.reaches || len(r.Jumps) > 0 || r.Stuck != nil {
			t.Errorf("%s: reaches %s, want %s; %v %v", tt.file, answer(r), tt.reaches, r.Jumps, r.Stuck)
		}
		if tt.kneeC == 0 {
			if r.Knee != nil || r.Plateau != nil {
				t.Errorf("%s: knee %+v, plateau %+v, want none", tt.file, r.Knee, r.Plateau)
			}
			continue
		}
		if k := r.Knee; k == nil || !near(float64(k.C), tt.kneeC, tt.withinK) || k.S < tt.kneeFromS || k.S > tt.kneeToS || !(k.Confidence >= 0.5) {
			t.Errorf("%s: knee %+v, want %g ± %g °C from %g to %g s", tt.file, k, tt.kneeC, tt.withinK, tt.kneeFromS, tt.kneeToS)
		}
		if p := r.Plateau; p == nil || !near(float64(p.C), tt.plateauC, 0.5) || !near(float64(p.SdK), tt.ripple, 0.3) {
			t.Errorf("%s: plateau %+v, want %g ± %g °C", tt.file, p, tt.plateauC, tt.ripple)
		}
		if r.PeakC == nil || !near(float64(*r.PeakC), tt.peakC, 1) {
			t.Errorf("%s: peak %s, want %g", tt.file, show(r.PeakC), tt.peakC)
		}
	}
}

// A log is worth as much read more seldom, by worse sensors, or in part: what
// was read from the whole log is still there.
func TestRealLogSurvivesIllTreatment(t *testing.T) {
	whole := realLog(t, "cold_drive_full.csv")
	at1Hz := every(whole, 1)
	for name, s := range map[string]warmup.Series{
		"1 Hz": at1Hz, "0.1 Hz": every(whole, 10), "1/30 Hz": every(whole, 30), "1/60 Hz": every(whole, 60),
		"noise of 1 K": noisy(at1Hz, 1), "steps of 2 K": inSteps(at1Hz, 2), "no speeds": {TimeS: at1Hz.TimeS, EctC: at1Hz.EctC},
		"gaps": withGaps(at1Hz, 40, 15), "another clock": shifted(at1Hz, 1.7e9),
		"ends at 1000 s": between(at1Hz, 0, 1000), "twice": joined(at1Hz, shifted(at1Hz, 9000)),
	} {
		r := warmup.Analyse(s, warmup.Options{OpensC: celsius(88)})
		slack := 20.0
		if name == "1/60 Hz" {
			slack = 60
		}
		if k := r.Knee; k == nil || !near(float64(k.C), 92, 2.5) || !near(k.S, 690, 20+slack) {
			t.Errorf("%s: knee %+v, want 92 °C at 690 s", name, k)
		}
		if p := r.Plateau; p == nil || !near(float64(p.C), 89.7, 0.6) {
			t.Errorf("%s: plateau %+v, want 89.7 °C", name, p)
		}
		if got := r.SecondsTo[70]; !near(got, 491, slack) {
			t.Errorf("%s: %g s to 70 °C, want 491", name, got)
		}
		if answer(r) != "yes" {
			t.Errorf("%s: reaches %s, want yes", name, answer(r))
		}
	}
}

// A log that begins warm has no cold start and no times, but may show the rest.
func TestRealLogThatBeginsWarm(t *testing.T) {
	s := realLog(t, "cold_drive_full.csv")
	s = between(s, s.TimeS[0]+500, s.TimeS[0]+2000)
	r := warmup.Analyse(s, warmup.Options{})
	if r.ColdStart || len(r.SecondsTo) > 0 || r.ReachesRegulating != nil || !said(r, "no cold start") {
		t.Errorf("cold start %v, %v, reaches %s, %q", r.ColdStart, r.SecondsTo, answer(r), r.Remarks)
	}
	if r.Knee == nil || !near(float64(r.Knee.C), 92.5, 2.5) || r.Plateau == nil || !near(float64(r.Plateau.C), 89.7, 0.5) {
		t.Errorf("knee %+v, plateau %+v", r.Knee, r.Plateau)
	}
}

// realLog reads a log's clock as seconds of the day.
func realLog(t testing.TB, name string) warmup.Series {
	t.Helper()
	text, err := os.ReadFile("../../testdata/logs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(rows), err)
	}
	var s warmup.Series
	for _, row := range rows[1:] {
		s.TimeS = append(s.TimeS, clock(t, row[0]))
		for i, column := range []*[]float64{1: &s.EctC, 3: &s.RPM, 4: &s.SpeedKmh, 5: &s.IntakeC} {
			if column != nil {
				*column = append(*column, cell(row[i]))
			}
		}
	}
	return s
}

func clock(t testing.TB, text string) float64 {
	t.Helper()
	seconds := 0.0
	for _, part := range strings.Split(text, ":") {
		v, err := strconv.ParseFloat(part, 64)
		if err != nil {
			t.Fatal(err)
		}
		seconds = 60*seconds + v
	}
	return seconds
}

func cell(text string) float64 {
	if v, err := strconv.ParseFloat(text, 64); err == nil {
		return v
	}
	return math.NaN()
}

func BenchmarkRealLog(b *testing.B) {
	s := realLog(b, "cold_drive_full.csv")
	b.ReportAllocs()
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		if r := warmup.Analyse(s, warmup.Options{}); r.Knee == nil {
			b.Fatal("no knee")
		}
	}
}
