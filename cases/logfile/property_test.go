package logfile_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand"
	"os"
	"slices"
	"strings"
	"testing"

	"loopbook/cases/logfile"
)

// TestOrderAndDelimiterDontMatter writes real and invented logs anew, with
// their columns shuffled and between other delimiters, quoted where needed.
func TestOrderAndDelimiterDontMatter(t *testing.T) {
	for _, file := range []string{"summer_town_drive.csv", "cold_drive_ends_early.csv", "ugly/text_in_cells.csv", "ugly/past_midnight.csv", "ugly/commas_in_quotes.csv"} {
		want := readFile(t, logs+file, logfile.Options{})
		rows := rowsOf(t, logs+file)
		for i, delim := range []rune{',', ';', '\t', '|', ';', ','} {
			t.Run(fmt.Sprintf("%s/%d%c", file, i, delim), func(t *testing.T) {
				order := rand.New(rand.NewSource(int64(i))).Perm(len(rows[0]))
				got, err := from(written(t, rows, order, delim), logfile.Options{})
				if err != nil {
					t.Fatal(err)
				}
				if problem := differs(got.Log, want.Log); problem != "" {
					t.Errorf("order %v: %s", order, problem)
				}
				if !slices.Equal(got.Columns, want.Columns) {
					t.Errorf("order %v: columns = %v, want %v", order, got.Columns, want.Columns)
				}
				if logfile.Fingerprint(got.Header) != logfile.Fingerprint(want.Header) {
					t.Errorf("order %v: another fingerprint", order)
				}
			})
		}
	}
}

func rowsOf(t *testing.T, path string) [][]string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	r := csv.NewReader(bytes.NewReader(text))
	if strings.Contains(path, "past_midnight") { // so that a comma need not be quoted
		r.FieldsPerRecord = 3
	}
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func written(t *testing.T, rows [][]string, order []int, delim rune) string {
	t.Helper()
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Comma = delim
	for _, row := range rows {
		shuffled := make([]string, len(order))
		for i, at := range order {
			shuffled[i] = row[at]
		}
		if err := w.Write(shuffled); err != nil {
			t.Fatal(err)
		}
	}
	w.Flush()
	return b.String()
}

// TestThinningKeepsTheShape thins a ramp to few samples: times stay in order,
// no sample leaves the ramp, and both ends are near.
func TestThinningKeepsTheShape(t *testing.T) {
	const rows = 5000
	var b strings.Builder
	b.WriteString("time [ms];ect [°C];rpm\n")
	for i := range rows {
		fmt.Fprintf(&b, "%d;%.3f;%d\n", 100*i, 20+0.01*float64(i), 800+i%2*100)
	}
	for _, most := range []int{2, 3, 7, 100, 4999, 5000, 0} {
		got, err := from(b.String(), logfile.Options{MaxSamples: most})
		if err != nil {
			t.Fatal(err)
		}
		l := got.Log
		n := len(l.TimeS)
		if got.Rows != rows || most > 0 && (n > most || 2*n < most-1) {
			t.Errorf("MaxSamples %d: %d samples of %d rows", most, n, got.Rows)
		}
		for i, at := range l.TimeS {
			if i > 0 && at <= l.TimeS[i-1] {
				t.Fatalf("MaxSamples %d: %g s after %g s", most, at, l.TimeS[i-1])
			}
			if onRamp := 20 + 0.1*at; l.EctC[i] < onRamp-1e-5 || l.EctC[i] > onRamp+1e-5 {
				t.Fatalf("MaxSamples %d: %g °C at %g s, want %g", most, l.EctC[i], at, onRamp)
			}
		}
		if most == 100 && l.EngineRPM[n/2] != 850 {
			t.Errorf("mean of 800 and 900 = %g", l.EngineRPM[n/2])
		}
	}
}

// TestJumpStaysVisible has one row at which the sensor jumps, far from any
// sample's end: thinned or not, it must be seen.
func TestJumpStaysVisible(t *testing.T) {
	for _, jump := range []float64{-40, 140} {
		var b strings.Builder
		b.WriteString("time,ect,intake temp\n")
		for i := range 4000 {
			c := 80.0
			if i == 2345 {
				c = jump
			}
			fmt.Fprintf(&b, "%d,%g,20\n", i, c)
		}
		got, err := from(b.String(), logfile.Options{MaxSamples: 60})
		if err != nil || !slices.Contains(got.Log.EctC, jump) || slices.Contains(got.Log.IntakeC, jump) {
			t.Errorf("a jump to %g °C is gone from %v, %v", jump, got.Log.EctC, err)
		}
	}
}
