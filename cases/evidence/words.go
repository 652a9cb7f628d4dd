package evidence

import (
	"fmt"
	"strings"

	"loopbook/diagram"
)

func inC(t diagram.Celsius) string { return fmt.Sprintf("%.0f °C", float64(t)) }
func inK(d diagram.DeltaK) string  { return fmt.Sprintf("%.0f K", float64(d)) }

// name is the point within a sentence.
func name(p diagram.Point) string {
	return "the " + strings.ToLower(strings.Replace(p.String(), ", ", " at the ", 1))
}

// readingWords is one reading as evidence.
func readingWords(r Reading) string { return fmt.Sprintf("%s at %s", name(r.Point), inC(r.TrueC)) }

// words are the delta's range with its rule.
func (d *Delta) words() string {
	if d.ExpectedLowK == nil && d.ExpectedHighK == nil {
		return "no range is known"
	}
	return fmt.Sprintf("%s expected (%s, %s)", d.span(), d.Source, d.Class)
}

// span is the delta's range, of which at least one end is known.
func (d *Delta) span() string {
	switch {
	case d.ExpectedLowK == nil:
		return "up to " + inK(*d.ExpectedHighK)
	case d.ExpectedHighK == nil:
		return "at least " + inK(*d.ExpectedLowK)
	}
	return fmt.Sprintf("%.0f to %s", float64(*d.ExpectedLowK), inK(*d.ExpectedHighK))
}

// flag builds a flag of this round.
func (m *moment) flag(id string, s Severity, points []diagram.Point, text string, because ...string) Flag {
	return Flag{ID: id, Round: m.i, Severity: s, Text: text, Because: because, Points: points}
}

// ofCase builds a flag that belongs to no one round.
func ofCase(id string, s Severity, text string, because ...string) Flag {
	return Flag{ID: id, Round: WholeCase, Severity: s, Text: text, Because: because}
}
