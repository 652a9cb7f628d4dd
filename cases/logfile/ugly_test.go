package logfile_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/logfile"
	"loopbook/diagram/say"
)

// TestUglyFiles reads files of our own invention that hold a coolant
// temperature which every row tells; what comes out is known from their making.
func TestUglyFiles(t *testing.T) {
	for _, tt := range []struct {
		file, why string
		rows      int
		want      cases.Log
		remarks   []string
	}{
		{
			"german_1252.csv", "Windows-1252, CRLF, five lines of preamble, a row of units, decimal comma also in clock times, a delimiter too many", 12,
			cases.Log{TimeS: line(12, 0, 0.5), EctC: line(12, 20, 0.5), EngineRPM: line(12, 800, 10), SpeedKmh: line(12, 0, 2.5), IntakeC: line(12, 4, -0.1), LoadPercent: line(12, 30, 1)},
			[]string{"read as Windows-1252", `2 columns aren't used: "column 8", "Öltemperatur"`},
		},
		{
			"spanish_utf16.csv", "UTF-16 with a mark, tabs, decimal comma, units only at one column", 10,
			cases.Log{TimeS: line(10, 0, 1), EctC: line(10, 15, 1), EngineRPM: line(10, 1000, 1), SpeedKmh: line(10, 0, 1.5), IntakeC: line(10, 9.5, 0)},
			[]string{"read as UTF-16", `column "Hora" has no unit: taken as s`},
		},
		{
			"fahrenheit_pipe.csv", "byte-order mark, pipes, milliseconds since 1970 without saying so, °F and mph", 10,
			cases.Log{TimeS: line(10, 0, 0.25), EctC: line(10, 20, 5), EngineRPM: line(10, 1200, 1), SpeedKmh: line(10, 0, 16.09344), IntakeC: line(10, 5, 0)},
			[]string{`column "IAT" has no unit: taken as °F`},
		},
		{
			"past_midnight.csv", "a clock that passes midnight, one time twice, a row that comes late, one that comes early", 10,
			cases.Log{TimeS: line(7, 0, 1), EctC: []float64{20, 21.5, 23, 24, 26, 28, 29}, EngineRPM: []float64{900, 901.5, 903, 904, 906, 908, 909}},
			[]string{"2 rows whose time goes back: left out (the first in line 7)", "1 row at the time of the row before", "1 time the clock began again"},
		},
		{
			"text_in_cells.csv", "units behind values, words, dashes, NaN, thousands in quotes, an impossible value, a row without a time, load as a part of 1", 9,
			cases.Log{
				TimeS: []float64{0, 1, 2, 3, 4, 5, 6, 8}, EctC: []float64{20, 21, gap, gap, gap, gap, 26, 28},
				EngineRPM: []float64{1250, 1260, 1270, gap, 1290, 1300, gap, 1330}, LoadPercent: []float64{25, 26, gap, 28, 29, gap, 31, 50},
			},
			[]string{
				`column "Coolant Temp": 1 cell with text, the first in line 4 ("ERR")`, `column "Coolant Temp": 1 cell out of any range, the first in line 7 ("999 °C")`,
				`column "Engine RPM": 1 cell with text, the first in line 8 ("no answer")`, `1 row without a time, the first in line 9 ("x")`, `column "Load" has no unit: taken as 0 to 1`,
			},
		},
		{
			"ragged.csv", "rows too short and too long, blank lines, a note between rows, the heading again, an end cut off", 9,
			cases.Log{TimeS: []float64{0, 1, 2, 4, 5}, EctC: []float64{20, 21, 22, 24, 25}, SpeedKmh: []float64{0, gap, 4, 8, 10}},
			[]string{"1 row with more cells than columns: left out (the first in line 6)", "1 row cut off", "2 rows without a time, the first in line 7"},
		},
		{
			"no_heading.csv", "no heading: values have to tell what they are", 30,
			cases.Log{TimeS: line(30, 0, 15), EctC: line(30, 20, 2), EngineRPM: over(30, 0, 900, 1500, 2500, 1800), SpeedKmh: over(30, 0, 30, 110, 5, 60)},
			[]string{"the file has no heading", `column "column 2" is taken for the coolant temperature by its values`},
		},
		{
			"quotes.csv", "line breaks and quotes inside of quotes, a quote that is never closed, an inch mark", 5,
			cases.Log{TimeS: line(5, 0, 0.1), EctC: line(5, 20, 1)},
			[]string{"1 row with a quote that is opened and never closed"},
		},
		{
			"carriage_returns.csv", "old line ends, a heading behind a hash, month before day, am and pm past noon, the unit as a word", 8,
			cases.Log{TimeS: line(8, 0, 60), EctC: line(8, 10, 5), SpeedKmh: line(8, 0, 1)},
			nil,
		},
		{
			"clock_set.csv", "a clock that is set on the way, by 48 years and then an hour back; zero bytes at the end", 22,
			cases.Log{TimeS: line(18, 0, 1), EctC: append(line(12, 20, 1), line(6, 36, 1)...), EngineRPM: append([]float64{900, 900}, append(line(10, 900, 1), line(6, 914, 1)...)...)},
			[]string{"600 zero bytes left out", "1 time the clock leapt by more than 6 hours", "1 time the clock went back for 5 rows on end"},
		},
		{
			"commas_in_quotes.csv", "decimal commas in quotes between commas", 9,
			cases.Log{TimeS: line(9, 0, 0.1), EctC: line(9, 20, 0.5), SpeedKmh: line(9, 0, 1.5)},
			[]string{`1 column isn't used: "KMT [°C]"`},
		},
	} {
		t.Run(tt.file, func(t *testing.T) {
			got := readFile(t, logs+"ugly/"+tt.file, logfile.Options{})
			if got.Rows != tt.rows {
				t.Errorf("%d rows, want %d", got.Rows, tt.rows)
			}
			if problem := differs(got.Log, tt.want); problem != "" {
				t.Errorf("%s: %s", tt.why, problem)
			}
			for _, want := range tt.remarks {
				if !strings.Contains(strings.Join(say.English().All(got.Remarks), "\n"), want) {
					t.Errorf("no remark %q among %q", want, got.Remarks)
				}
			}
		})
	}
}

func TestRefusedFiles(t *testing.T) {
	for file, want := range map[string]string{
		"refused_text.csv":        `refused_text.csv: line 4, column "ECT": "cold" can't be read as the coolant temperature`,
		"refused_kpa.csv":         `line 2, column "coolant temperature": values from 9000 to 9003 can't be the coolant temperature`,
		"refused_no_time.csv":     `line 1: none of the columns "ECT", "RPM" is the time: set it by hand`,
		"refused_time_words.csv":  `line 2, column "Time": "morning" can't be read as the time`,
		"refused_time_stands.csv": `line 2, column "time": the time stands still`,
		"refused_letter.csv":      `line 1: no table`,
		"refused_workbook.csv":    `line 1: this is a packed file or a spreadsheet's own`,
	} {
		_, err := logfile.FromFile(context.Background(), logs+"ugly/"+file, logfile.Options{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("FromFile(%s) = %v, want %q", file, err, want)
		}
	}
}

var gap = math.NaN()

// line is n values from first by step.
func line(n int, first, step float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = first + step*float64(i)
	}
	return out
}

// over repeats values until there are n.
func over(n int, values ...float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = values[i%len(values)]
	}
	return out
}

// differs says where two logs aren't the same to a millionth.
func differs(got, want cases.Log) string {
	for _, c := range []struct {
		name      string
		got, want []float64
	}{
		{"time_s", got.TimeS, want.TimeS},
		{"ect_c", got.EctC, want.EctC},
		{"engine_rpm", got.EngineRPM, want.EngineRPM},
		{"speed_kmh", got.SpeedKmh, want.SpeedKmh},
		{"intake_c", got.IntakeC, want.IntakeC},
		{"load_percent", got.LoadPercent, want.LoadPercent},
	} {
		if len(c.got) != len(c.want) {
			return fmt.Sprintf("%s = %v, want %v", c.name, c.got, c.want)
		}
		for i, w := range c.want {
			if g := c.got[i]; !(math.Abs(g-w) <= 1e-6) && !(math.IsNaN(g) && math.IsNaN(w)) {
				return fmt.Sprintf("%s[%d] = %g, want %g", c.name, i, g, w)
			}
		}
	}
	return ""
}
