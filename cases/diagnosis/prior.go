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

// wrongLayout is how much of a cause's chance is left on a layout that hasn't
// got the part: the layout may have been noted wrongly.
const wrongLayout = 0.02

// chances are the prior's, in the format's order, for a case's layout.
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
	sum := 0.0
	for i, cause := range cases.Words[cases.Cause]() {
		out[i] = (shipped[i]*priorCases + float64(p.Confirmed[cause])) / float64(priorCases+confirmed)
		if cause == "thermostat-heater-fault" && c.Loop.Layout != "" && c.Loop.Layout != "heated-thermostat" {
			out[i] *= wrongLayout
		}
		sum += out[i]
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}
