package diagnosis

import (
	"fmt"
	"math"

	"loopbook/cases/evidence"
)

// Fill adds causes and next checks to the analysis's document; a case with
// nothing to go on gets a flag that says so.
func Fill(a *evidence.Answer, r Ranking, next []Check) {
	for _, c := range r.Causes {
		a.Causes = append(a.Causes, evidence.CauseAnswer{ID: c.Cause, Probability: c.Probability, For: told(c.For), Against: told(c.Against)})
	}
	for _, n := range next {
		a.Next = append(a.Next, evidence.CheckAnswer{
			Check: n.Check.Check, Point: n.Point, Minutes: n.Minutes, Bits: math.Round(n.Bits*1e4) / 1e4, Text: n.Words(),
		})
	}
	if r.Blank {
		a.Flags = append(a.Flags, evidence.Flag{
			ID: "prior-only", Round: evidence.WholeCase, Severity: evidence.Note,
			Text:    "Nothing was measured or told yet: the causes stand as they did before this case.",
			Because: []string{"each cause has the probability of the prior"},
		})
	}
}

func told(reasons []Reason) []string {
	out := []string{}
	for _, r := range reasons {
		out = append(out, fmt.Sprintf("%s (%s)", r.Words, r.Times()))
	}
	return out
}

// Times is the weight in words: how many times as likely, or as unlikely.
func (r Reason) Times() string {
	f := r.Factor
	if f < 1 {
		f = 1 / f
	}
	if f < 9.5 {
		return fmt.Sprintf("%.1f×", f)
	}
	return fmt.Sprintf("%.0f×", min(f, 999))
}

// Words are what to do, with the engine's state that it needs and its caution.
func (c Check) Words() string {
	text := c.Title
	if c.Point != "" {
		text += ": " + c.Point.String()
	}
	text += ". " + c.Text
	switch c.Needs {
	case "cold":
		text += " Engine cold."
	case "warm":
		text += " Engine warm."
	}
	if c.Caution != "" {
		text += " " + c.Caution
	}
	return text
}
