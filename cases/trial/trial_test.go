package trial_test

import (
	"bytes"
	"reflect"
	"testing"

	"loopbook/cases"
	"loopbook/cases/trial"
	"loopbook/diagram"
)

func levels() []trial.Level {
	return []trial.Level{trial.Temperatures, trial.OneSymptom, trial.Complaint, trial.Checks}
}

// A case is only of use if the program reads it as any other: the format's own
// decoding is the judge.
func TestCasesAreValid(t *testing.T) {
	for _, level := range levels() {
		for _, c := range trial.Cases(7, 300, level) {
			text, err := cases.Encode(c)
			if err != nil {
				t.Fatalf("level %d, %s: %v", level, c.ID, err)
			}
			back, err := cases.Decode(text)
			if err != nil {
				t.Fatalf("level %d, %s: %v", level, c.ID, err)
			}
			if again, err := cases.Encode(back); err != nil || !bytes.Equal(again, text) {
				t.Errorf("level %d, %s: the round trip changed it (%v)", level, c.ID, err)
			}
		}
	}
}

// Readings stand at points of the layout and within what a loop and its air
// can be: coolant under a sound cap boils below 140 °C (judgement).
func TestReadingsWithinRange(t *testing.T) {
	for _, c := range trial.Cases(8, 600, trial.Complaint) {
		loop, err := diagram.LoopByID(c.Loop.Layout)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range c.Rounds {
			if n := len(r.Readings); n < 4 || n > 9 {
				t.Errorf("%s, %s: %d readings", c.ID, r.Label, n)
			}
			for _, x := range r.Readings {
				if !loop.Has(x.Point) {
					t.Errorf("%s: %s isn't on %s", c.ID, x.Point, loop.ID)
				}
				if x.ShownC != nil && !(*x.ShownC > -25 && *x.ShownC < 160) {
					t.Errorf("%s, %s: %s shows %g °C", c.ID, r.Label, x.Point, float64(*x.ShownC))
				}
			}
		}
	}
}

func TestSameSeedSameCases(t *testing.T) {
	for _, level := range levels() {
		a, b := trial.Cases(3, 60, level), trial.Cases(3, 60, level)
		if !reflect.DeepEqual(a, b) {
			t.Errorf("level %d: two runs of one seed differ", level)
		}
		if reflect.DeepEqual(a[0].Rounds, trial.Cases(4, 60, level)[0].Rounds) {
			t.Errorf("level %d: another seed gives the same car", level)
		}
	}
}

// Each cause that a shipped layout can have is met, about one in thirty, and a
// healthy car about six times as often.
func TestEveryCauseIsMet(t *testing.T) {
	const n = 900
	met := map[cases.Cause]int{}
	for _, c := range trial.Cases(5, n, trial.Temperatures) {
		met[c.Verdict.Cause]++
	}
	_, err := diagram.LoopByID("heated-thermostat")
	heated := err == nil
	for _, cause := range cases.Words[cases.Cause]() {
		want := n / 30
		switch {
		case cause == cases.Healthy:
			want = 6 * n / 30
		case cause == "thermostat-heater-fault" && !heated:
			want = 0
		}
		if got := met[cause]; got < want*9/10 || got > want*12/10 {
			t.Errorf("%s: %d of %d cases, want about %d", cause, got, n, want)
		}
	}
}

// What a level holds and what it must not give away.
func TestLevelsHoldWhatTheySay(t *testing.T) {
	for _, level := range levels() {
		for _, c := range trial.Cases(6, 200, level) {
			rounds, symptoms := len(c.Rounds), len(c.Complaint.Symptoms)
			healthy := c.Verdict.Cause == cases.Healthy
			ok := rounds >= 1 && rounds <= 2 && len(c.Codes) == 0
			switch level {
			case trial.Temperatures:
				ok = ok && symptoms == 0 && len(c.Tests) == 0
			case trial.OneSymptom:
				ok = ok && symptoms == 1 && len(c.Tests) == 0
			default:
				ok = rounds >= 2 && rounds <= 4 && symptoms <= 3 && (symptoms >= 1 || healthy)
				ok = ok && (level == trial.Checks) == (len(c.Tests) > 0) && len(c.Tests) <= 3
			}
			if !ok {
				t.Errorf("level %d, %s: %d rounds, %d symptoms, %d codes, %d tests", level, c.ID, rounds, symptoms, len(c.Codes), len(c.Tests))
			}
		}
	}
}
