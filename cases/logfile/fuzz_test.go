package logfile_test

import (
	"bytes"
	"context"
	"math"
	"os"
	"path/filepath"
	"testing"

	"loopbook/cases"
	"loopbook/cases/logfile"
)

// FuzzFrom holds whatever is read to what the log promises, and reads it twice.
func FuzzFrom(f *testing.F) {
	files, err := filepath.Glob(logs + "ugly/*.csv")
	if err != nil || len(files) < 10 {
		f.Fatalf("%d seeds, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text, uint8(0))
		f.Add(text, uint8(5))
	}
	f.Add([]byte("time;name;value;unit\n0;\"ect\";20;°C\n0;rpm;800;\n1;ect;ERR;°C\n1;rpm\n1.5;rpm;900;\n2;iat;\"5\n0\";\n2;ect;21;°C\n"), uint8(0))
	f.Fuzz(func(t *testing.T, in []byte, most uint8) {
		o := logfile.Options{MaxSamples: int(most)}
		got, err := logfile.From(context.Background(), "fuzz", bytes.NewReader(in), o)
		if err != nil {
			return // refused
		}
		if problem := broken(got, o.MaxSamples); problem != "" {
			t.Fatal(problem)
		}
		again, err := logfile.From(context.Background(), "fuzz", onebyone{bytes.NewReader(in)}, o)
		if err != nil {
			t.Fatalf("read in small parts: %v", err)
		}
		if problem := differs(again.Log, got.Log); problem != "" {
			t.Fatalf("read in small parts: %s", problem)
		}
	})
}

// broken says which promise a read doesn't keep.
func broken(r logfile.Read, most int) string {
	l := r.Log
	if len(l.TimeS) < 2 || len(l.TimeS) > r.Rows || most > 1 && len(l.TimeS) > most {
		return "wrong number of samples"
	}
	for i, at := range l.TimeS {
		if !(at >= 0) || math.IsInf(at, 0) || i > 0 && !(at > l.TimeS[i-1]) {
			return "times don't go on"
		}
	}
	for _, c := range []struct {
		values    []float64
		low, high float64
	}{
		{l.EctC, -60, 400}, {l.IntakeC, -60, 400}, {l.EngineRPM, 0, 2e4}, {l.SpeedKmh, -5, 500}, {l.LoadPercent, -1, 1000},
	} {
		if c.values != nil && len(c.values) != len(l.TimeS) {
			return "a column isn't as long as the times"
		}
		for _, v := range c.values {
			if !math.IsNaN(v) && !(v >= c.low && v <= c.high) {
				return "a value out of bounds"
			}
		}
	}
	return brokenCase(l)
}

// brokenCase says why a case can't hold the log.
func brokenCase(l cases.Log) string {
	text, err := cases.Encode(cases.Case{Format: cases.Format, Version: cases.Version, Logs: []cases.Log{l}})
	if err != nil {
		return err.Error()
	}
	if _, err := cases.Decode(text); err != nil {
		return err.Error()
	}
	return ""
}

// onebyone gives few bytes at a time, so that parts end anywhere.
type onebyone struct{ r *bytes.Reader }

func (o onebyone) Read(p []byte) (int, error) { return o.r.Read(p[:min(len(p), 7)]) }
