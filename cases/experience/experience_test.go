package experience_test

import (
	"fmt"
	"math"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/experience"
)

// Newcombe 1998 (Statistics in Medicine 17:857–872), table I, method 3: Wilson's
// score interval without continuity correction.
func TestShare(t *testing.T) {
	for _, tt := range []struct {
		k, n      int
		low, high float64
	}{
		{81, 263, 0.2553, 0.3662}, {15, 148, 0.0624, 0.1605}, {0, 20, 0.0000, 0.1611}, {1, 29, 0.0061, 0.1718},
	} {
		low, high := experience.Share(tt.k, tt.n)
		if !(math.Abs(low-tt.low) < 5e-5 && math.Abs(high-tt.high) < 5e-5) {
			t.Errorf("Share(%d, %d) = %.4f to %.4f, want %.4f to %.4f", tt.k, tt.n, low, high, tt.low, tt.high)
		}
	}
	if low, high := experience.Share(0, 0); low != 0 || high != 1 {
		t.Errorf("of no cases %g to %g, want anything", low, high)
	}
}

func at(month, day int) time.Time {
	return time.Date(2025, time.Month(month), day, 9, 0, 0, 0, time.UTC)
}

// shop is a few cases with everything that is counted.
func shop() []cases.Digest {
	nan := math.NaN()
	return []cases.Digest{
		{Key: 1, Cause: "pump-weak", Codes: []string{"P0217", "P0217"}, Engine: "1.2", OdometerKm: 100_000, Opened: at(1, 5), Minutes: 10, Car: 7,
			Guess: cases.Guess{First: "pump-weak", FirstP: 0.9, TruthP: 0.9}},
		{Key: 2, Cause: "pump-weak", Codes: []string{"P0217"}, Engine: "1.2", OdometerKm: 99_999, Opened: at(1, 6), Minutes: 20, Car: 7,
			Guess: cases.Guess{First: "cap-weak", FirstP: 0.5, TruthP: 0.1}},
		{Key: 3, Cause: "cap-weak", Codes: []string{"P0217"}, Engine: "0.9", OdometerKm: nan, Opened: at(7, 1), Minutes: 40, Car: 8},
		{Key: 4, OdometerKm: 5, Opened: at(8, 1), Minutes: 30, Car: 8, Codes: []string{"P0128"}}, // open
		{Key: 5, Cause: "none", OdometerKm: nan, Minutes: nan, Opened: at(7, 1).AddDate(-3, 0, 0), Car: 9},
		{Key: 6, Cause: "cap-weak", OdometerKm: nan, Minutes: nan, Opened: at(7, 2).AddDate(-3, 0, 0), Car: 9}, // nothing had been repaired
		{Key: 7, Cause: "cap-weak", OdometerKm: nan, Minutes: nan, Opened: at(9, 2), Car: 9},                   // years later
	}
}

func tally(list []cases.Digest) experience.History {
	tl := experience.NewTally(experience.BandKm)
	for i := range list {
		tl.Look(&list[i])
	}
	return tl.History()
}

func TestHistory(t *testing.T) {
	h := tally(shop())
	if h.Cases != 7 || h.Closed != 6 {
		t.Errorf("%d cases, %d closed; want 7 and 6", h.Cases, h.Closed)
	}
	if got := fmt.Sprint(h.Causes); got != "[{cap-weak 3} {pump-weak 2} {none 1}]" {
		t.Errorf("causes %s", got)
	}
	if len(h.Codes) != 1 || h.Codes[0].Word != "P0217" || h.Codes[0].N != 3 || h.Codes[0].Causes[0] != (experience.CauseCount{Cause: "pump-weak", N: 2}) {
		t.Errorf("codes %+v: a code that stands twice counts once, an open case not at all", h.Codes)
	}
	if len(h.Engines) != 2 || h.Engines[0].Word != "1.2" || h.Engines[1].Word != "0.9" {
		t.Errorf("engines %+v, want the most frequent first", h.Engines)
	}
	if len(h.Odometer) != 2 || h.Odometer[0].Word != "50000" || h.Odometer[1].Word != "100000" {
		t.Errorf("odometer %+v", h.Odometer)
	}
	if len(h.Months) != 3 || h.Months[0].Word != "1" || h.Months[0].N != 2 || h.Months[1].Word != "7" || h.Months[1].N != 3 {
		t.Errorf("months %+v", h.Months)
	}
	// Hyndman and Fan 1996, definition 7: of 10, 20, 40 a quarter is 15, half 20, three
	// quarters 30.
	if m := h.Minutes[0]; m.Cause != "" || m.N != 3 || m.Quarter != 15 || m.Half != 20 || m.Three != 30 {
		t.Errorf("minutes %+v", m)
	}
	if len(h.Returned) != 2 || h.Returned[0].First != 3 || h.Returned[0].Second != 4 || h.Returned[0].Days != 31 || h.Returned[1].Days != 1 {
		t.Errorf("returned %+v; want 3 as 4 after 31 days, and 1 as 2", h.Returned)
	}
}

func TestGuesses(t *testing.T) {
	g := tally(shop()).Guesses
	want := -(math.Log(0.9) + math.Log(0.1)) / 2 // the logarithmic score (Good 1952)
	if g.N != 2 || g.Right != 1 || math.Abs(g.LogLoss-want) > 1e-6 {
		t.Errorf("guesses %+v, want a log loss of %g", g, want)
	}
	if len(g.Wrong) != 1 || g.Wrong[0].First != "cap-weak" || g.Wrong[0].Truth != "pump-weak" {
		t.Errorf("wrong %+v", g.Wrong)
	}
	sure := g.Bins[len(g.Bins)-1]
	if sure.N != 1 || sure.Right != 1 || sure.MeanP != 0.9 || !sure.Fits() {
		t.Errorf("the surest %+v", sure)
	}
	two := shop()
	two[1].Guess.FirstP, two[0].Guess.FirstP = 0.96, 0.92
	if sure := tally(two).Guesses.Bins[len(g.Bins)-1]; sure.N != 2 || math.Abs(sure.MeanP-0.94) > 1e-9 {
		t.Errorf("said with 96 %% and with 92 %%: %+v, want 94 %% on average", sure)
	}
	if over := (experience.Bin{N: 50, Right: 20, MeanP: 0.9}); over.Fits() {
		t.Error("20 of 50 fits a claim of 90 %")
	}
}

// Each number leads to its cases: the conditions find as many as were counted.
func TestNumbersLeadToTheirCases(t *testing.T) {
	list := shop()
	h := tally(list)
	check := func(what string, n int, where []cases.Condition) {
		t.Helper()
		found := 0
		for i := range list {
			meets := list[i].Cause != ""
			for _, c := range where {
				meets = meets && c.Meets(&list[i])
			}
			if meets {
				found++
			}
		}
		if found != n {
			t.Errorf("%s: %+v finds %d, counted %d", what, where, found, n)
		}
	}
	for _, groups := range [][]experience.Group{h.Codes, h.Engines, h.Odometer, h.Months} {
		for _, g := range groups {
			check(g.Word, g.N, g.Where)
		}
	}
	for _, b := range h.Guesses.Bins {
		check("bin", b.N, b.Where)
	}
	for _, w := range h.Guesses.Wrong {
		check("wrong", w.N, w.Where)
	}
}

func BenchmarkTally100000(b *testing.B) {
	list := make([]cases.Digest, 0, 100_000)
	for len(list) < cap(list) {
		for _, d := range shop() {
			d.Key, d.Car = int64(len(list)), uint64(len(list))
			list = append(list, d)
		}
	}
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		tally(list)
	}
}
