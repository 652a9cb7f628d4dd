package likelihood

import (
	"errors"
	"fmt"
	"slices"

	"loopbook/cases"
)

const checksFile = "checks.json"

// Checks that are no workshop test but more readings.
const (
	HosePoint  = "hose-point"  // one more point of the loop
	WarmUp     = "warm-up"     // from cold until the thermostat opens
	RaisedIdle = "raised-idle" // a round at 2500 rpm
)

// State is what a check needs the engine to be.
type State string

// The states of the engine.
const (
	Cold State = "cold"
	Warm State = "warm"
	Any  State = "any"
)

// Check is what one check costs and how it is done.
type Check struct {
	Check       string  `json:"check"` // a cases.TestKind, HosePoint, WarmUp or RaisedIdle
	Title       string  `json:"title"`
	Minutes     float64 `json:"minutes"` // hands on
	Needs       State   `json:"needs"`
	OpensSystem bool    `json:"opens_system"`
	Caution     string  `json:"caution"`
	Text        string  `json:"text"`
	Class       string  `json:"class"`
	Reason      string  `json:"reason"`
}

func (t *Tables) readChecks(text []byte) error {
	words := []string{HosePoint, WarmUp, RaisedIdle}
	for _, kind := range cases.Words[cases.TestKind]() {
		words = append(words, string(kind))
	}
	has := func(w string) bool {
		return slices.ContainsFunc(t.checks, func(c Check) bool { return c.Check == w })
	}
	err := read(checksFile, text, func(c Check) error {
		if err := newWord("check", c.Check, words, has(c.Check)); err != nil {
			return err
		}
		t.checks = append(t.checks, c)
		return c.valid()
	})
	if err == nil {
		err = complete(checksFile, "check", words, has)
	}
	return err
}

func (c Check) valid() error {
	switch {
	case !(c.Minutes > 0):
		return fmt.Errorf("minutes: %g must be above 0", c.Minutes)
	case !slices.Contains([]State{Cold, Warm, Any}, c.Needs):
		return fmt.Errorf("needs: unknown word %q", c.Needs)
	case c.OpensSystem && c.Caution == "":
		return errors.New("caution: is missing where the system is opened")
	case c.Title == "" || c.Text == "":
		return errors.New("text: needs a title and a text")
	}
	return grounds{c.Class, c.Reason}.check()
}

// Checks are all checks, in the table's order.
func (t *Tables) Checks() []Check { return slices.Clone(t.checks) }
