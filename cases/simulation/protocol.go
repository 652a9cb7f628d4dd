// Package simulation makes cases of simulated cars, for trainers: a car with a
// known fault is driven through a protocol, measured with a gun that errs, and
// checked on the bench.
//
// What it makes is invented by the model of diagram/physics and is no
// measurement.
package simulation

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/diagram/physics"
)

// ErrProtocol says that a protocol can't be driven.
var ErrProtocol = errors.New("protocol at fault")

// Step is one part of a protocol: how the car is run, for how long, and
// whether the hoses are measured at its end.
type Step struct {
	Label   string       `json:"label"`
	Drive   Drive        `json:"drive"`
	Minutes float64      `json:"minutes"`
	Heater  cases.Heater `json:"heater"`
	Measure bool         `json:"measure"`
}

// Drive is how the car is run.
type Drive string

// The drives: standing at idle, standing at 2500 rpm, 70 km/h on the road.
const (
	Idle   Drive = "idle"
	Raised Drive = "raised"
	Road   Drive = "road"
)

// Usual is the usual walk round the loop, from a cold start: common practice. Its rounds have the names that a notebook
// offers.
func Usual() []Step {
	return []Step{
		{"5 min from cold", Idle, 5, cases.HeaterHalf, true},
		{"warming up", Idle, 25, cases.HeaterOff, false}, // a full heater takes all that an idling engine gives
		{"Warm idle", Idle, 4, cases.HeaterFull, true},
		{"Raised idle", Raised, 3, cases.HeaterFull, true},
		{"Hot idle, fan", Idle, 12, cases.HeaterOff, true},
		{"After the road", Road, 10, cases.HeaterFull, true},
	}
}

// keys are what a step has.
const keys = "label, drive, minutes, heater, measure"

// ParseProtocol reads a list of steps from JSON. An error names the step and the key.
func ParseProtocol(text []byte) ([]Step, error) {
	var list []json.RawMessage
	if err := json.Unmarshal(bytes.TrimPrefix(text, []byte("\uFEFF")), &list); err != nil {
		return nil, fmt.Errorf("%w: %s", ErrProtocol, wholeFault(text, err))
	}
	if len(list) == 0 {
		return nil, fmt.Errorf("%w: it has no steps", ErrProtocol)
	}
	steps := make([]Step, len(list))
	for i, raw := range list {
		var err error
		if steps[i], err = parseStep(raw); err != nil {
			return nil, fmt.Errorf("%w: [%d]%w", ErrProtocol, i, err)
		}
	}
	return steps, nil
}

// wholeFault says why a text is no list.
func wholeFault(text []byte, err error) string {
	var syntax *json.SyntaxError
	if !errors.As(err, &syntax) {
		return "it must be a list of steps in brackets, as [{…}, {…}]"
	}
	line := 1 + bytes.Count(text[:min(int(syntax.Offset), len(text))], []byte("\n"))
	return fmt.Sprintf("line %d isn't JSON: look there for a quote, a comma or a bracket that is missing or too much", line)
}

// parseStep reads one step. An error begins with the key at fault.
func parseStep(raw []byte) (Step, error) {
	var s Step
	var given map[string]json.RawMessage
	if json.Unmarshal(raw, &given) != nil || given == nil {
		return s, fmt.Errorf(" must be a step in braces, with %s", keys)
	}
	for key := range given {
		if !slices.Contains(strings.Split(keys, ", "), key) {
			return s, fmt.Errorf(".%s: there is no such key: a step has %s", key, keys)
		}
	}
	var wrong *json.UnmarshalTypeError
	if err := json.Unmarshal(raw, &s); errors.As(err, &wrong) {
		wanted := map[reflect.Kind]string{reflect.String: "a word in quotes", reflect.Float64: "a number", reflect.Bool: "true or false"}
		return s, fmt.Errorf(".%s: must be %s", wrong.Field, wanted[wrong.Type.Kind()])
	} else if err != nil {
		return s, err
	}
	if s.Drive != Idle && s.Drive != Raised && s.Drive != Road {
		return s, fmt.Errorf(".drive: %q must be idle, raised or road", s.Drive)
	}
	if !(s.Minutes > 0 && s.Minutes <= 600) {
		return s, fmt.Errorf(".minutes: %g must be above 0 and up to 600", s.Minutes)
	}
	if _, ok := blower(s.Heater); !ok {
		return s, fmt.Errorf(".heater: %q must be off, half or full", s.Heater)
	}
	return s, nil
}

// stage is the step for the model.
func (s Step) stage(p physics.Params) physics.Stage {
	fan, _ := blower(s.Heater)
	seconds := s.Minutes * 60
	switch s.Drive {
	case Raised:
		return p.Raised(seconds, fan)
	case Road:
		return p.Road(seconds, fan)
	}
	return p.Idle(seconds, fan)
}

// blower is the cabin fan's part at a setting of the heater; not said is off.
func blower(h cases.Heater) (part float64, known bool) {
	if h == "" {
		h = cases.HeaterOff
	}
	return h.Blower()
}
