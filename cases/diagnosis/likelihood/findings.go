package likelihood

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"loopbook/diagram"
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
	Finding string   `json:"finding"` // the rule's word; "" is that no rule says anything
	Needs   []string `json:"needs"`   // what the rule reads, one of them: words with blanks between, all in one round; none: it reads a log
	Rounds  int      `json:"rounds"`  // it compares so many; 0: it takes one
	shares
	grounds
}

// rule is how readily a rule of the rounds speaks of each cause, and what it reads.
type rule struct {
	speaks Vector
	needs  [][]string
	rounds int
}

func (r findingRow) text() say.Text {
	if r.Finding == "" {
		return say.Of("finding.none")
	}
	return say.Of("finding." + r.Finding)
}

func (t *Tables) readFindings(files fs.FS) error {
	t.findings, t.spoken = map[string]Factor{}, newVector()
	err := read(files, findingsFile, func(r findingRow) error {
		if _, twice := t.findings[r.Finding]; twice {
			return fmt.Errorf("finding: %q stands twice", r.Finding)
		}
		v, err := r.vector()
		switch {
		case r.Finding == "":
			t.silent = v
		case r.Needs != nil:
			needs, unknown := r.needs()
			t.rules, err = append(t.rules, rule{v, needs, max(r.Rounds, 1)}), errors.Join(err, unknown)
			for i, p := range v {
				t.spoken[i] += p
			}
		}
		t.findings[r.Finding] = Factor{Label: say.Of("reason.finding", r.text()), Log: v.logs().times(findingsTrust)}
		return errors.Join(err, r.grounds.check())
	})
	if _, ok := t.findings[""]; err == nil && !ok {
		return fmt.Errorf("%s: no row has the finding \"\": %w", findingsFile, ErrData)
	}
	return err
}

// The words of what a rule reads beside points.
const (
	EngineTemp = "engine" // the engine's temperature, by whatever tells it
	SensorTemp = "sensor"
	FanSeen    = "fan"
)

func (r findingRow) needs() ([][]string, error) {
	words := append(diagram.Points(), EngineTemp, SensorTemp, FanSeen)
	var out [][]string
	for _, line := range r.Needs {
		all := strings.Fields(line)
		for _, w := range all {
			if !slices.Contains(words, diagram.Point(w)) {
				return nil, fmt.Errorf("needs: unknown word %q", w)
			}
		}
		out = append(out, all)
	}
	return out, nil
}

// Findings are what the rules' words say, each once; words that no row has say
// nothing. Without any that has one, nothing stands out. Rounds counts those that hold all of what a rule reads.
func (t *Tables) Findings(words []string, rounds func(needs []string) int) []Factor {
	var out []Factor
	said := map[string]bool{}
	for _, w := range words {
		if f, ok := t.Finding(w); ok && !said[w] {
			said[w] = true
			out = append(out, f)
		}
	}
	if len(out) == 0 {
		out = append(out, t.silence(rounds))
	}
	return out
}

// Finding is what a rule's word says by itself; false where no row has it.
func (t *Tables) Finding(word string) (Factor, bool) {
	f, ok := t.findings[word]
	return f, ok
}

// silence is that nothing stands out. A rule that had nothing to read would have been silent with any
// cause: of a cause's chance to be spoken of, only the part of the rules that could speak counts.
func (t *Tables) silence(rounds func(needs []string) int) Factor {
	could := newVector()
	for _, r := range t.rules {
		if !slices.ContainsFunc(r.needs, func(needs []string) bool { return rounds(needs) >= r.rounds }) {
			continue
		}
		for i, p := range r.speaks {
			could[i] += p
		}
	}
	f, silent := t.findings[""], newVector()
	for i, p := range t.silent {
		silent[i] = 1 - (1-p)*could[i]/t.spoken[i]
	}
	f.Log = silent.logs().times(findingsTrust)
	return f
}
