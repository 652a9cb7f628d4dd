package diagnosis

import (
	"fmt"

	"loopbook/cases"
)

// Prior says what is believed of the causes before anything is known of the
// case.
type Prior struct {
	Flat      bool                // all causes alike, rather than as workshops meet them
	Confirmed map[cases.Cause]int // of the notebook's own cases; nil: not used
}

// ParsePrior reads the name of a prior: workshop or flat.
func ParsePrior(name string) (Prior, error) {
	switch name {
	case "workshop":
		return Prior{}, nil
	case "flat":
		return Prior{Flat: true}, nil
	}
	return Prior{}, fmt.Errorf("prior %q: must be workshop or flat", name)
}

// priorCases is how many confirmed cases weigh as much as the shipped prior
// (judgement): a notebook of a dozen cases shouldn't overrule the trade's
// experience, one of hundreds should.
const priorCases = 50

// A thermostat's heater has its chance among all cars, of which one in three has a heated
// thermostat (judgement). So it has three times as much on a loop that has the part, and on one
// that hasn't what is left for a loop that was noted wrongly.
const (
	heatedPart = 1. / 3
	wronglySo  = 0.02
)

// chances are the prior's, in the format's order, for a case's loop.
func (j *Judge) chances(p Prior, c *cases.Case) []float64 {
	shipped := j.tables.Prior()
	if p.Flat {
		shipped = j.tables.Flat()
	}
	confirmed := 0
	for _, n := range p.Confirmed {
		confirmed += n
	}
	out := make([]float64, len(shipped))
	for i, cause := range cases.Words[cases.Cause]() {
		out[i] = (shipped[i]*priorCases + float64(p.Confirmed[cause])) / float64(priorCases+confirmed)
		out[i] *= p.onLoop(cause, c.Loop)
	}
	return toOne(out)
}

// onLoop is by how much likelier a cause is on a loop than among all cars.
func (p Prior) onLoop(cause cases.Cause, l cases.Loop) float64 {
	switch {
	case l.Lacks(cause):
		return wronglySo
	case cause == "thermostat-heater-fault" && l.Heated() && !p.Flat:
		return 1 / heatedPart
	}
	return 1
}
