package likelihood

import (
	"fmt"
	"io/fs"
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
)

const checksFile = "checks.json"

// Checks that are no workshop test but more to read.
const (
	ReadCodes  = "read-codes"  // what the engine's control has stored
	HosePoint  = "hose-point"  // one more point of the loop
	WarmUp     = "warm-up"     // a round after warming from cold until the thermostat opens
	RaisedIdle = "raised-idle" // a round at 2500 rpm
	HotIdle    = "hot-idle"    // a round after idling until the fan ought to have come
	AfterRoad  = "after-road"  // a round right after a drive
)

// Walks are the checks that are a walk round the loop.
func Walks() []string { return []string{WarmUp, RaisedIdle, HotIdle, AfterRoad} }

// State is what a check needs the engine to be.
type State string

// The states of the engine.
const (
	Cold State = "cold"
	Warm State = "warm"
	Any  State = "any"
)

// Text is what the engine has to be, "" where it doesn't matter.
func (s State) Text() say.Text {
	if s == Cold || s == Warm {
		return say.Of("needs." + string(s))
	}
	return say.Text{}
}

// Check is what one check costs. How it is done stands in the catalogue.
type Check struct {
	Check       string  `json:"check"`   // a cases.TestKind, ReadCodes, HosePoint or one of Walks()
	Minutes     float64 `json:"minutes"` // hands on
	Needs       State   `json:"needs"`
	RunsEngine  bool    `json:"runs_engine"` // while it is done, or until it can be
	OpensSystem bool    `json:"opens_system"`
	Class       string  `json:"class"`
	Reason      string  `json:"reason"`
}

func (t *Tables) readChecks(files fs.FS) error {
	words := append(Walks(), HosePoint, ReadCodes)
	for _, kind := range cases.Words[cases.TestKind]() {
		words = append(words, string(kind))
	}
	return readEach(files, checksFile, vocabulary[string]{"check", words}, func(c Check) string { return c.Check },
		func(c Check) error {
			t.checks = append(t.checks, c)
			return c.valid()
		})
}

// Kind is the workshop test that the check is; "" where it is more to read.
func (c Check) Kind() cases.TestKind {
	if kind := cases.TestKind(c.Check); slices.Contains(cases.Words[cases.TestKind](), kind) {
		return kind
	}
	return ""
}

// Title is the check's name.
func (c Check) Title() say.Text { return say.Of("check." + c.Check + ".title") }

// Text is how the check is done.
func (c Check) Text() say.Text { return say.Of("check." + c.Check + ".text") }

// Caution is what to mind first. The vehicle maker's procedure comes before it.
func (c Check) Caution() say.Text { return say.Of("check." + c.Check + ".caution") }

func (c Check) valid() error {
	switch {
	case !(c.Minutes > 0):
		return fmt.Errorf("minutes: %g must be above 0", c.Minutes)
	case !slices.Contains([]State{Cold, Warm, Any}, c.Needs):
		return fmt.Errorf("needs: unknown word %q", c.Needs)
	}
	return grounds{c.Class, c.Reason}.check()
}

// Checks are all checks, in the table's order.
func (t *Tables) Checks() []Check { return slices.Clone(t.checks) }
