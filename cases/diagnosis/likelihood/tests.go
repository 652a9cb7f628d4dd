package likelihood

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

const testsFile = "tests.json"

// leastPass is what the other outcomes leave to a pass at least.
const leastPass = leastShare

// Outcome is one way that a check comes out. The outcomes of a check sum to 1
// for each cause.
type Outcome struct {
	Word string
	P    Vector // probability given each cause; don't change it
}

type testRow struct {
	Check   cases.TestKind `json:"check"`
	Outcome string         `json:"outcome"`
	shares
	grounds
}

func (t *Tables) readTests(files fs.FS) error {
	kinds := cases.Words[cases.TestKind]()
	t.tests = map[cases.TestKind][]Outcome{}
	err := read(files, testsFile, func(r testRow) error {
		if !slices.Contains(kinds, r.Check) {
			return fmt.Errorf("check: unknown word %q", r.Check)
		}
		if _, twice := t.outcome(r.Check, r.Outcome); twice || r.Outcome == "" {
			return fmt.Errorf("outcome: %q of %s stands twice, or its word is missing", r.Outcome, r.Check)
		}
		o, err := r.outcome()
		t.tests[r.Check] = append(t.tests[r.Check], o)
		return errors.Join(err, r.grounds.check())
	})
	if err != nil {
		return err
	}
	for _, kind := range kinds {
		if err := t.leaveToPass(kind); err != nil {
			return fmt.Errorf("%s: %s: %w: %w", testsFile, kind, err, ErrData)
		}
	}
	return nil
}

// outcome of a row; what a pass gets is what the others leave.
func (r testRow) outcome() (Outcome, error) {
	o := Outcome{r.Outcome, newVector()}
	if r.Outcome == evidence.Pass {
		if r.Else != 0 || r.Given != nil {
			return o, errors.New("else: a pass gets what the other outcomes leave, it can't be given")
		}
		return o, nil
	}
	var err error
	o.P, err = r.vector()
	return o, err
}

func (t *Tables) leaveToPass(kind cases.TestKind) error {
	pass, ok := t.outcome(kind, evidence.Pass)
	if !ok || len(t.tests[kind]) < 2 {
		return errors.New("needs a row for the outcome \"pass\" and one for another")
	}
	for i, c := range cases.Words[cases.Cause]() {
		left := 1.0
		for _, o := range t.tests[kind] {
			left -= o.P[i]
		}
		if !(left >= leastPass) {
			return fmt.Errorf("given.%s: the outcomes sum to %g and leave nothing to a pass", c, 1-left)
		}
		pass.P[i] = left
	}
	return nil
}

func (t *Tables) outcome(kind cases.TestKind, word string) (Outcome, bool) {
	for _, o := range t.tests[kind] {
		if o.Word == word {
			return o, true
		}
	}
	return Outcome{}, false
}

// Test is what a check's outcome says, as one that may as well have been any of the unseen. It is false where the
// table has no such outcome.
func (t *Tables) Test(kind cases.TestKind, outcome string, unseen ...string) (Factor, bool) {
	word := outcome
	if evidence.Passed(word) {
		word = evidence.Pass
	}
	if _, ok := t.outcome(kind, word); !ok {
		return Factor{}, false
	}
	return Factor{Label: CameOut(kind, outcome), Log: sum(t.among(kind, word, unseen)).logs(), Check: true}, true
}

// Left are the ways that a check can still come out which passed but for the unseen: a pass or one of those, as likely
// against each other as before.
func (t *Tables) Left(kind cases.TestKind, unseen []string) []Outcome {
	left := t.among(kind, evidence.Pass, unseen)
	all := sum(left)
	for n, o := range left {
		left[n].P = newVector()
		for i, p := range o.P {
			left[n].P[i] = p / all[i]
		}
	}
	return left
}

// among are a check's outcome and the unseen ones.
func (t *Tables) among(kind cases.TestKind, outcome string, unseen []string) []Outcome {
	return slices.DeleteFunc(t.Outcomes(kind), func(o Outcome) bool { return o.Word != outcome && !slices.Contains(unseen, o.Word) })
}

// sum is the probability of any of the outcomes, given each cause.
func sum(outcomes []Outcome) Vector {
	out := newVector()
	for _, o := range outcomes {
		for i, p := range o.P {
			out[i] += p
		}
	}
	return out
}

// CameOut tells how a check came out.
func CameOut(kind cases.TestKind, outcome string) say.Text {
	return say.Of("reason.test", kind.Text(), evidence.OutcomeText(kind, outcome))
}

// Outcomes are all ways that a check comes out, a pass among them.
func (t *Tables) Outcomes(kind cases.TestKind) []Outcome { return slices.Clone(t.tests[kind]) }
