package practice_test

import (
	"bytes"
	"errors"
	"math"
	"os"
	"slices"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/practice"
	"loopbook/diagram"
)

func costs() practice.Costs {
	c := practice.Costs{Point: 1, Dash: 2, Log: 30, Tests: map[cases.TestKind]float64{}}
	for i, k := range cases.Words[cases.TestKind]() {
		c.Tests[k] = float64(5 + i)
	}
	return c
}

// demo is a demo case of a thermostat stuck open, closed and proved.
func demo(t *testing.T) cases.Case {
	t.Helper()
	text, err := os.ReadFile("../../assets/demo/02-stuck-open-cold-morning.json")
	if err != nil {
		t.Fatal(err)
	}
	c, err := cases.Decode(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func begin(t *testing.T) *practice.Session {
	t.Helper()
	s, err := practice.Begin(demo(t), costs())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Nothing that gives the answer away may be seen at the beginning, or ever.
func TestTheAnswerIsHidden(t *testing.T) {
	whole := demo(t)
	whole.Logs = append(whole.Logs, cases.Log{Name: "run with a thermostat that is stuck open", TimeS: []float64{0, 60}, EctC: []float64{20, 25}})
	s, err := practice.Begin(whole, costs())
	if err != nil {
		t.Fatal(err)
	}
	for _, i := range s.Items() {
		if err := s.Buy(i); err != nil {
			t.Fatal(err)
		}
	}
	if logs := s.Seen().Logs; len(s.Bought()) != len(s.Items()) || len(logs) == 0 || len(logs[len(logs)-1].EctC) != 2 {
		t.Errorf("%d of %d bought show the logs %+v", len(s.Bought()), len(s.Items()), logs)
	}
	for what, c := range map[string]cases.Case{"nothing": s.Upto(0).Seen(), "everything": s.Seen()} {
		c.Complaint.Text = "" // may say what was replaced before
		text, err := cases.Encode(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, secret := range []string{"stuck open", "thermostat-stuck-open", "after-repair", `"lesson"`, `"verdict"`, `"repair"`, `"title"`, `"tags"`, `"photos"`} {
			if bytes.Contains(text, []byte(secret)) {
				t.Errorf("with %s bought, %q can be read", what, secret)
			}
		}
	}
	if c := s.Upto(0).Seen(); len(c.Rounds) == 0 || len(c.Rounds[0].Readings) != 0 || c.Rounds[0].EctC != nil || len(c.Tests) != 0 || len(c.Codes) == 0 || c.Rounds[0].MinutesSinceStart == nil {
		t.Errorf("at the beginning %+v", c)
	}
}

func TestEachItemCostsItsMinutesAndOpens(t *testing.T) {
	s, whole := begin(t), demo(t)
	want := 0.0
	for n, i := range s.Items() {
		if err := s.Buy(i); err != nil {
			t.Fatal(err)
		}
		if err := s.Buy(i); !errors.Is(err, practice.ErrTwice) {
			t.Errorf("bought twice: %v", err)
		}
		want += i.Minutes
		c := s.Seen()
		if at := s.RoundOf(0); i.Kind == practice.Point && i.At == 0 && c.Rounds[at].Reading(i.Point) == nil {
			t.Errorf("%s isn't open after it was bought", i.Point)
		}
		if s.Minutes() != want || len(s.Left()) != len(s.Items())-n-1 {
			t.Errorf("%g minutes and %d left, want %g and %d", s.Minutes(), len(s.Left()), want, len(s.Items())-n-1)
		}
	}
	readings := 0
	for _, r := range s.Seen().Rounds {
		readings += len(r.Readings)
	}
	before := 0
	for _, r := range whole.Rounds {
		if r.Stage != cases.AfterRepair {
			before += len(r.Readings)
		}
	}
	if readings != before {
		t.Errorf("all bought shows %d readings of %d", readings, before)
	}
	again := begin(t)
	kept := again.Copy()
	if err := again.Buy(again.Items()[0]); err != nil || len(kept.Bought()) != 0 {
		t.Errorf("a copy follows what is bought after it: %v, %v", kept.Bought(), err)
	}
	if err := s.Buy(practice.Item{Kind: practice.Test, At: 99}); !errors.Is(err, practice.ErrNoItem) {
		t.Errorf("something else: %v", err)
	}
}

// What can't be reached isn't sold, a point that was read twice is sold once, and a round is found again
// though those after the repair, wherever they stand, are left out.
func TestOnlyWhatWasReadIsSold(t *testing.T) {
	c := demo(t)
	whole := cases.Case{Loop: c.Loop, Verdict: c.Verdict, Rounds: []cases.Round{
		{Label: "repaired", Stage: cases.AfterRepair, Readings: c.Rounds[0].Readings},
		{Label: "first", EctC: casetest.P[diagram.Celsius](60)},
		{Label: "second", Readings: []cases.Reading{
			{Point: diagram.Housing}, {Point: diagram.RadIn, ShownC: casetest.P[diagram.Celsius](40)}, {Point: diagram.RadIn, ShownC: casetest.P[diagram.Celsius](41)},
		}},
	}}
	s, err := practice.Begin(whole, costs())
	if err != nil {
		t.Fatal(err)
	}
	want := []practice.Item{{Kind: practice.Dash, At: 1, Minutes: 2}, {Kind: practice.Point, At: 2, Point: diagram.RadIn, Minutes: 1}}
	if !slices.Equal(s.Items(), want) {
		t.Fatalf("for sale %+v, want %+v", s.Items(), want)
	}
	for _, i := range s.Items() {
		if err := s.Buy(i); err != nil {
			t.Fatal(err)
		}
	}
	seen := s.Seen()
	for i, r := range whole.Rounds {
		switch at := s.RoundOf(i); {
		case r.Stage == cases.AfterRepair:
			if at != -1 {
				t.Errorf("%s is seen as round %d", r.Label, at)
			}
		case seen.Rounds[at].Label != r.Label:
			t.Errorf("%s is seen as round %d, %s", r.Label, at, seen.Rounds[at].Label)
		}
	}
	if second := seen.Rounds[1]; len(second.Readings) != 1 || *second.Readings[0].ShownC != 41 || *seen.Rounds[0].EctC != 60 {
		t.Errorf("all bought shows %+v", seen.Rounds)
	}
}

func TestOnlyClosedCases(t *testing.T) {
	c := demo(t)
	c.Verdict.Cause = ""
	if _, err := practice.Begin(c, costs()); !errors.Is(err, practice.ErrOpen) {
		t.Errorf("an open case: %v", err)
	}
	if _, err := practice.Begin(cases.Case{Verdict: cases.Verdict{Cause: "none"}}, costs()); !errors.Is(err, practice.ErrBare) {
		t.Errorf("an empty case: %v", err)
	}
}

// The score must be proper (Gneiting and Raftery 2007, section 2): whatever somebody
// truly thinks, they expect most by saying it. And 24 causes at their prior are worth
// nothing: log2(24 · 1/24) = 0.
func TestTheScoreIsProper(t *testing.T) {
	expect := func(belief, said float64) float64 {
		right := practice.ScoreOf("pump-weak", "pump-weak", said).Bits
		wrong := practice.ScoreOf("pump-weak", "cap-weak", said).Bits
		return belief*right + (1-belief)*wrong
	}
	for belief := 0.1; belief < 0.95; belief += 0.1 {
		best := expect(belief, belief)
		for said := 0.06; said < 0.99; said += 0.03 {
			if math.Abs(said-belief) > 1e-9 && expect(belief, said) > best {
				t.Errorf("who thinks %.2f expects more by saying %.2f", belief, said)
			}
		}
	}
	n := float64(len(cases.Words[cases.Cause]()))
	if bits := practice.ScoreOf("pump-weak", "pump-weak", 0.5).Bits; math.Abs(bits-math.Log2(n/2)) > 1e-12 {
		t.Errorf("half sure and right is worth %g, want log2(%g/2)", bits, n)
	}
	if best := practice.ScoreOf("pump-weak", "pump-weak", 1); best.Bits != best.Most || practice.ScoreOf("pump-weak", "cap-weak", 1).Most != best.Most {
		t.Errorf("who is sure and right has %g of %g", best.Bits, best.Most)
	}
	if none := practice.ScoreOf("", "cap-weak", 0.9); none.Right || math.Abs(none.Bits) > 1e-12 {
		t.Errorf("who names nothing scores %+v, want 0", none)
	}
	for _, tt := range []struct {
		named cases.Cause
		sure  float64
		want  practice.Verdict
	}{{"cap-weak", 0.9, practice.Sure}, {"cap-weak", 0.3, practice.Careful}, {"pump-weak", 0.3, practice.Modest}, {"pump-weak", 0.5, practice.Modest}, {"pump-weak", 0.9, practice.Rash}, {"", 0.9, practice.Nothing}} {
		if got := practice.ScoreOf(tt.named, "cap-weak", tt.sure).Verdict(); got != tt.want {
			t.Errorf("%s at %g is %s, want %s", tt.named, tt.sure, got, tt.want)
		}
	}
}

// Nobody pays for what tells nothing: a fan that wasn't looked at, or a hose that was read and then found out of reach, which
// is the round's last word on it.
func TestNothingEmptyIsSold(t *testing.T) {
	c := demo(t)
	shown := diagram.Celsius(60)
	c.Rounds, c.Logs, c.Tests = []cases.Round{
		{Fan: cases.FanUnknown, Readings: []cases.Reading{{Point: diagram.RadIn, ShownC: &shown}, {Point: diagram.RadIn}, {Point: diagram.RadOut, ShownC: &shown}}},
		{Fan: cases.FanOff},
	}, nil, nil
	s, err := practice.Begin(c, costs())
	if err != nil {
		t.Fatal(err)
	}
	want := []practice.Item{{Kind: practice.Point, Point: diagram.RadOut, Minutes: 1}, {Kind: practice.Dash, At: 1, Minutes: 2}}
	if got := s.Items(); !slices.Equal(got, want) {
		t.Errorf("sold are %+v, want %+v", got, want)
	}
}

// A check that was begun and holds nothing costs minutes and tells nothing.
func TestAnEmptyCheckIsNotSold(t *testing.T) {
	whole := demo(t)
	whole.Tests = []cases.Test{{Kind: cases.GasTest}, {Kind: cases.GasTest, Result: "negative"}, {Kind: cases.LevelTest, Stage: cases.BeforeRepair}}
	s, err := practice.Begin(whole, costs())
	if err != nil {
		t.Fatal(err)
	}
	var sold []int
	for _, i := range s.Items() {
		if i.Kind == practice.Test {
			sold = append(sold, i.At)
		}
	}
	if !slices.Equal(sold, []int{1}) {
		t.Errorf("the checks %v are sold, want the one that was done", sold)
	}
}
