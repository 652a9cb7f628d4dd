package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
)

// Analyst turns cases into findings. It is immutable: build it once, use it
// from anywhere.
type Analyst struct {
	expecter Expecter
	loops    map[string]*diagram.Loop
}

// New is an analyst who judges by what e expects. An error names the shipped
// data that is at fault.
func New(e Expecter) (*Analyst, error) {
	loops, err := diagram.Loops()
	if err != nil {
		return nil, err
	}
	a := &Analyst{expecter: e, loops: make(map[string]*diagram.Loop, len(loops))}
	for _, l := range loops {
		a.loops[l.ID] = l
	}
	return a, nil
}

// Analyse judges the case as it stands. It doesn't change the case.
func (a *Analyst) Analyse(c *cases.Case) Findings {
	f := Findings{Rounds: make([]Round, len(c.Rounds))}
	for i := range c.Rounds {
		f.Rounds[i] = Round{Readings: readRound(c, i)}
	}
	return f
}
