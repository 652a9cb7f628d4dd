package evidence

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Answer is the document that the analysis prints for a case. Causes and Next
// are for those who know them; no list is ever nil, so that the keys always hold
// one.
type Answer struct {
	ID      string        `json:"id"`
	Deltas  []Delta       `json:"deltas"`
	Flags   []FlagAnswer  `json:"flags"`
	Causes  []CauseAnswer `json:"causes"`
	Next    []CheckAnswer `json:"next"`
	Boiling *Boiling      `json:"boiling"`
	WarmUp  []WarmUp      `json:"warm_up"`
}

// FlagAnswer is a flag in the document, in English and in °C, K, kPa and km/h.
type FlagAnswer struct {
	ID       string   `json:"id"`
	Round    int      `json:"round"` // WholeCase: of no one round
	Severity Severity `json:"severity"`
	Text     string   `json:"text"`
	Because  []string `json:"because"`
}

// CauseAnswer is a cause in the document, with what speaks for it and against
// it by weight.
type CauseAnswer struct {
	ID          cases.Cause `json:"id"`
	Probability float64     `json:"probability"`
	For         []string    `json:"for"`
	Against     []string    `json:"against"`
}

// CheckAnswer is a next check in the document.
type CheckAnswer struct {
	Check   string        `json:"check"`
	Point   diagram.Point `json:"point,omitempty"` // of a hose to read
	Minutes float64       `json:"minutes"`
	Bits    float64       `json:"information_bits"`
	Text    string        `json:"text"`
}

// Document is the answer for a case with its findings; temperatures and
// differences are rounded to 0.01.
func Document(c *cases.Case, f Findings) Answer {
	a := Answer{
		ID: c.ID, Deltas: make([]Delta, len(f.Deltas)), Flags: make([]FlagAnswer, len(f.Flags)),
		Causes: []CauseAnswer{}, Next: []CheckAnswer{}, WarmUp: make([]WarmUp, len(f.WarmUps)),
	}
	for i, d := range f.Deltas {
		d.ValueK, d.ExpectedLowK, d.ExpectedHighK = hundredths(d.ValueK), rounded(d.ExpectedLowK), rounded(d.ExpectedHighK)
		a.Deltas[i] = d
	}
	for i, flag := range f.Flags {
		a.Flags[i] = flag.Answer()
	}
	for i, w := range f.WarmUps {
		a.WarmUp[i] = w.rounded()
	}
	if b := f.Hottest(); b != nil {
		a.Boiling = &Boiling{PointC: hundredths(b.PointC), HottestC: hundredths(b.HottestC), MarginK: hundredths(b.MarginK)}
	}
	return a
}

// Answer is the flag as the document has it.
func (f Flag) Answer() FlagAnswer {
	by := say.English()
	return FlagAnswer{f.ID, f.Round, f.Severity, by.Say(f.Text), by.All(f.Because)}
}

func hundredths[T diagram.Celsius | diagram.DeltaK](v T) T {
	return T(math.Round(float64(v)*100) / 100)
}

func rounded[T diagram.Celsius | diagram.DeltaK](v *T) *T {
	if v == nil {
		return nil
	}
	at := hundredths(*v)
	return &at
}
