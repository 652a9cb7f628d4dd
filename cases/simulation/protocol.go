// Package simulation makes cases of simulated cars, for trainers: a car with a
// known fault is driven through a protocol and measured with a gun that errs.
//
// What it makes is invented by the model of diagram/physics and is no
// measurement.
package simulation

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"

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

// Usual is the usual walk round the loop, from a cold start: common practice.
func Usual() []Step {
	return []Step{
		{"5 min from cold", Idle, 5, cases.HeaterHalf, true},
		{"warming up", Idle, 25, cases.HeaterOff, false}, // a full heater takes all that an idling engine gives
		{"warm idle", Idle, 4, cases.HeaterFull, true},
		{"raised idle", Raised, 3, cases.HeaterFull, true},
		{"hot idle", Idle, 12, cases.HeaterOff, true},
		{"after the road", Road, 10, cases.HeaterFull, true},
	}
}

// ParseProtocol reads a list of steps from JSON. An error names the step.
func ParseProtocol(text []byte) ([]Step, error) {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	var steps []Step
	if err := dec.Decode(&steps); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrProtocol, err)
	}
	if len(steps) == 0 {
		return nil, fmt.Errorf("%w: it has no steps", ErrProtocol)
	}
	for i, s := range steps {
		if s.Drive != Idle && s.Drive != Raised && s.Drive != Road {
			return nil, fmt.Errorf("%w: [%d].drive: %q must be idle, raised or road", ErrProtocol, i, s.Drive)
		}
		if !(s.Minutes > 0 && s.Minutes <= 600) {
			return nil, fmt.Errorf("%w: [%d].minutes: %g must be above 0 and up to 600", ErrProtocol, i, s.Minutes)
		}
		if _, ok := blower(s.Heater); !ok {
			return nil, fmt.Errorf("%w: [%d].heater: %q must be off, half or full", ErrProtocol, i, s.Heater)
		}
	}
	return steps, nil
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
