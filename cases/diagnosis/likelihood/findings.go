package likelihood

import (
	"errors"
	"fmt"
	"math"

	"loopbook/diagram/say"
)

const findingsFile = "findings.json"

// findingsTrust is the power that the findings' likelihood is raised to: they
// are drawn from the same readings as the model is held against, so they are a
// second opinion of it and no new evidence (judgement; a logarithmic pool of
// two opinions).
const findingsTrust = 0.6

// findingRow is what a rule of the trade says of a round's temperatures.
type findingRow struct {
	Finding string `json:"finding"` // the rule's word; "" is that no rule says anything
	shares
	grounds
}

func (r findingRow) text() say.Text {
	if r.Finding == "" {
		return say.Of("finding.none")
	}
	return say.Of("finding." + r.Finding)
}

func (t *Tables) readFindings(text []byte) error {
	t.findings = map[string]Factor{}
	err := read(findingsFile, text, func(r findingRow) error {
		if _, twice := t.findings[r.Finding]; twice {
			return fmt.Errorf("finding: %q stands twice", r.Finding)
		}
		v, err := r.vector()
		for i, p := range v {
			v[i] = findingsTrust * math.Log(p)
		}
		t.findings[r.Finding] = Factor{say.Of("reason.finding", r.text()), r.Reason, r.Class, v}
		return errors.Join(err, r.grounds.check())
	})
	if _, ok := t.findings[""]; err == nil && !ok {
		return fmt.Errorf("%s: no row has the finding \"\": %w", findingsFile, ErrData)
	}
	return err
}

// Findings are what the rules' words say, each once; words that no row has say
// nothing. Without any that has one, nothing stands out.
func (t *Tables) Findings(words []string) []Factor {
	var out []Factor
	said := map[string]bool{}
	for _, w := range words {
		if f, ok := t.findings[w]; ok && !said[w] {
			said[w] = true
			out = append(out, f)
		}
	}
	if len(out) == 0 {
		out = append(out, t.findings[""])
	}
	return out
}
