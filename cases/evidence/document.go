package evidence

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
)

// Answer is the document that the analysis prints for a case. Causes, Next and
// WarmUp are for those who know them; they are never nil, so that the keys
// always hold a list.
type Answer struct {
	ID      string   `json:"id"`
	Deltas  []Delta  `json:"deltas"`
	Flags   []Flag   `json:"flags"`
	Causes  []any    `json:"causes"`
	Next    []any    `json:"next"`
	Boiling *Boiling `json:"boiling"`
	WarmUp  []any    `json:"warm_up"`
}

// Document is the answer for a case with its findings; temperatures and
// differences are rounded to 0.01.
func Document(c *cases.Case, f Findings) Answer {
	a := Answer{
		ID: c.ID, Deltas: make([]Delta, len(f.Deltas)), Flags: make([]Flag, len(f.Flags)),
		Causes: []any{}, Next: []any{}, WarmUp: []any{},
	}
	for i, d := range f.Deltas {
		d.ValueK = hundredths(d.ValueK)
		a.Deltas[i] = d
	}
	for i, flag := range f.Flags {
		if flag.Because == nil {
			flag.Because = []string{}
		}
		a.Flags[i] = flag
	}
	if b := f.Boiling; b != nil {
		a.Boiling = &Boiling{hundredths(b.PointC), hundredths(b.HottestC), hundredths(b.MarginK)}
	}
	return a
}

func hundredths[T diagram.Celsius | diagram.DeltaK](v T) T {
	return T(math.Round(float64(v)*100) / 100)
}
