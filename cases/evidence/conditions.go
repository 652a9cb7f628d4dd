package evidence

import (
	"cmp"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
)

// conditions are what a table's row may ask about a round. An empty value is
// not known and fits no row that asks for it.
type conditions struct {
	side       diagram.Side
	regime     Regime
	pace       Pace
	fan        cases.FanState
	heater     cases.Heater
	thermostat lift
	on         string // what the sensor's witness was read on
}

// lift is how far a healthy thermostat stands open at the engine's temperature.
type lift string

const (
	seated  lift = "shut"
	opening lift = "opening"
	full    lift = "full"
)

const (
	onSolid = "solid"
	onHose  = "hose" // with the engine's coolant in it
)

// opensEarlyK is the tolerance of a thermostat's opening: TH1, published (M2).
const opensEarlyK = 3

func (m *moment) conditions() conditions {
	return conditions{
		side: m.side(), regime: m.engine.regime, pace: PaceOf(m.round), thermostat: m.lift(), on: m.witnessOn(),
		fan:    cmp.Or(m.round.Fan, cases.FanUnknown),
		heater: cmp.Or(m.round.Heater, cases.HeaterUnknown),
	}
}

func (m *moment) lift() lift {
	switch t := m.engine.c; {
	case t == nil:
		return ""
	case *t >= m.rating.fullC:
		return full
	case *t >= m.rating.opensC-opensEarlyK:
		return opening
	}
	return seated
}

// witnessOn is empty where the witness says nothing about the engine.
func (m *moment) witnessOn() string {
	w, ok := m.at(m.engine.witness)
	switch {
	case !ok || !m.flows(w):
		return ""
	case w.onHose():
		return onHose
	}
	return onSolid
}

// when is a row's condition; an empty list asks nothing.
type when struct {
	Side       diagram.Side     `json:"side"`
	Regime     []Regime         `json:"regime"`
	Pace       []Pace           `json:"pace"`
	Fan        []cases.FanState `json:"fan"`
	Heater     []cases.Heater   `json:"heater"`
	Thermostat []lift           `json:"thermostat"`
	On         string           `json:"on"`
}

func (w when) fits(c conditions) bool {
	return (w.Side == "" || w.Side == c.side) && (w.On == "" || w.On == c.on) &&
		oneOf(w.Regime, c.regime) && oneOf(w.Pace, c.pace) && oneOf(w.Fan, c.fan) &&
		oneOf(w.Heater, c.heater) && oneOf(w.Thermostat, c.thermostat)
}

// oneOf reports whether v is asked for; an empty list takes any.
func oneOf[T comparable](list []T, v T) bool {
	return len(list) == 0 || slices.Contains(list, v)
}
