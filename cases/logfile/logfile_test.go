package logfile_test

import (
	"context"
	"errors"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"loopbook/cases/logfile"
)

const logs = "../../testdata/logs/"

func readFile(t testing.TB, path string, o logfile.Options) logfile.Read {
	t.Helper()
	got, err := logfile.FromFile(context.Background(), path, o)
	if err != nil {
		t.Fatal(err)
	}
	return got
}

func from(text string, o logfile.Options) (logfile.Read, error) {
	return logfile.From(context.Background(), "text", strings.NewReader(text), o)
}

// TestRealLogs holds recorded drives to what was read from them apart from the
// program (testdata/logs/README.md).
func TestRealLogs(t *testing.T) {
	for _, tt := range []struct {
		file         string
		rows         int
		seconds      float64
		startC, maxC float64
		t60, t70     float64 // first second at or above
	}{
		{"cold_drive_full.csv", 28040, 2374, 17, 94, 403, 491},
		{"cold_drive_ends_early.csv", 15372, 1309, 11, 74, 685, 1043},
		{"summer_town_drive.csv", 13917, 1185, 24, 95, 336, 389},
	} {
		t.Run(tt.file, func(t *testing.T) {
			got := readFile(t, logs+tt.file, logfile.Options{})
			l := got.Log
			if got.Rows != tt.rows || len(l.TimeS) > logfile.DefaultSamples || l.Name != tt.file {
				t.Errorf("%d rows, %d samples of %q; want %d rows", got.Rows, len(l.TimeS), l.Name, tt.rows)
			}
			if end := l.TimeS[len(l.TimeS)-1]; math.Abs(end-tt.seconds) > 1 {
				t.Errorf("ends at %g s, want %g", end, tt.seconds)
			}
			if l.EctC[0] != tt.startC || slices.Max(l.EctC) != tt.maxC {
				t.Errorf("coolant from %g to %g °C, want %g to %g", l.EctC[0], slices.Max(l.EctC), tt.startC, tt.maxC)
			}
			for level, want := range map[float64]float64{60: tt.t60, 70: tt.t70} {
				i := slices.IndexFunc(l.EctC, func(c float64) bool { return c >= level })
				if at := l.TimeS[i]; math.Abs(at-want) > 5 {
					t.Errorf("%g °C at %g s, want %g ± 5", level, at, want)
				}
			}
			if keys := keysOf(got); keys != "time ect rpm speed intake" {
				t.Errorf("columns = %s", keys)
			}
		})
	}
}

func keysOf(r logfile.Read) string {
	var keys []string
	for _, c := range r.Columns {
		keys = append(keys, c.Key)
	}
	return strings.Join(keys, " ")
}

// What is to be set by hand begins with what was found: only the coolant is to be looked for.
func TestWhatWasFoundIsToldWhereSomethingIsMissing(t *testing.T) {
	r, err := logfile.From(context.Background(), "x", strings.NewReader("Time,Engine RPM,X\n0,900,a\n1,901,b\n2,902,c\n3,903,d\n"), logfile.Options{})
	if err == nil || len(r.Columns) != 2 || r.Columns[0].Header != "Time" || r.Columns[1].Header != "Engine RPM" {
		t.Errorf("found %+v, %v", r.Columns, err)
	}
}

func TestColumnsSetByHand(t *testing.T) {
	const text = "time,ect,port a,port b\n0,20,50,800\n1,21,51,810\n2,22,52,820\n"
	got, err := from(text, logfile.Options{Map: map[string]string{"ect": " PORT A ", "rpm": "port b"}})
	if err != nil || got.Log.EctC[2] != 52 || got.Log.EngineRPM[2] != 820 {
		t.Errorf("From = %v, %v; want the columns that were set", got.Log, err)
	}
	got, err = from("time,ect,rpm\n0,20,800\n1,21,810\n", logfile.Options{Map: map[string]string{"rpm": ""}})
	if err != nil || got.Log.EngineRPM != nil {
		t.Errorf("From = %v, %v; want no engine speed", got.Log, err)
	}
	for _, tt := range []struct {
		set  map[string]string
		want string
	}{
		{map[string]string{"ect": "port c"}, `line 1: no column "port c"`},
		{map[string]string{"oil": "port a"}, `"oil" is none of time, ect`},
		{map[string]string{"ect": ""}, `a log needs the coolant temperature`},
	} {
		got, err := from(text, logfile.Options{Map: tt.set})
		if err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("with %v: %v, want %q", tt.set, err, tt.want)
		}
		if len(got.Header) != 4 || len(got.Preview) != 3 {
			t.Errorf("with %v: heading %q and %d rows to show, want them in spite of the error", tt.set, got.Header, len(got.Preview))
		}
	}
}

func TestColumnSetByHandHoldsNothing(t *testing.T) {
	const text = "time,ect,note,blank\n0,20,cold,\n1,21,warm,\n2,22,hot,-\n"
	for column, want := range map[string]string{
		"note":  `line 2, column "note": "cold" is no number`,
		"blank": `line 2, column "blank": is blank`,
	} {
		if _, err := from(text, logfile.Options{Map: map[string]string{"ect": column}}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("ect=%s: %v, want %q", column, err, want)
		}
	}
}

func TestPreviewAndHeader(t *testing.T) {
	got := readFile(t, logs+"cold_drive_full.csv", logfile.Options{})
	if len(got.Header) != 11 || got.Header[1] != "Engine Coolant Temperature [°C]" {
		t.Errorf("Header = %q", got.Header)
	}
	if len(got.Preview) != 8 || len(got.Preview[7]) != 11 || got.Preview[2][3] != "905.0" {
		t.Errorf("Preview = %q", got.Preview)
	}
}

func TestFingerprint(t *testing.T) {
	a := logfile.Fingerprint([]string{"Time", "ECT "})
	if b := logfile.Fingerprint([]string{"ect", "time"}); a != b || a == "" {
		t.Errorf("Fingerprint = %q and %q, want the same", a, b)
	}
	for _, other := range [][]string{{"Time"}, {"TimeECT"}, {"Time", "ECT", "ECT"}} {
		if logfile.Fingerprint(other) == a {
			t.Errorf("Fingerprint(%q) is that of another heading", other)
		}
	}
}

func TestProgressAndCancel(t *testing.T) {
	var told []int64
	o := logfile.Options{Progress: func(n int64) { told = append(told, n) }}
	readFile(t, logs+"cold_drive_full.csv", o)
	if len(told) < 10 || !slices.IsSorted(told) || told[len(told)-1] != 1787513 { // the file's size, testdata/logs/README.md
		t.Errorf("told %d times, up to %d bytes", len(told), told[len(told)-1])
	}
	ctx, cancel := context.WithCancel(context.Background())
	o.Progress = func(n int64) {
		if n > 1e6 {
			cancel()
		}
	}
	got, err := logfile.FromFile(ctx, logs+"cold_drive_full.csv", o)
	if !errors.Is(err, context.Canceled) || got.Log.TimeS != nil {
		t.Errorf("FromFile, cancelled = %d samples, %v", len(got.Log.TimeS), err)
	}
}

func TestNoSuchFile(t *testing.T) {
	if _, err := logfile.FromFile(context.Background(), filepath.Join(t.TempDir(), "none.csv"), logfile.Options{}); err == nil {
		t.Error("a file that isn't there was read")
	}
}
