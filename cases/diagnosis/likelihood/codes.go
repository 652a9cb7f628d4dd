package likelihood

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

const codesFile = "codes.json"

// codeGroup are codes that speak of the same thing: two of them say no more
// than one.
type codeGroup struct {
	Codes []string `json:"codes"`
	shares
	grounds
	present Vector // the share of cars that have one of them stored
	log     Vector
}

// text is what the codes speak of, named by the first of them.
func (g codeGroup) text() say.Text { return say.Of("code-group." + g.Codes[0]) }

func (t *Tables) readCodes(files fs.FS) error {
	var rows []Vector
	seen := map[string]bool{}
	err := read(files, codesFile, func(g codeGroup) error {
		if len(g.Codes) == 0 {
			return errors.New("codes: needs codes")
		}
		for _, code := range g.Codes {
			if seen[code] {
				return fmt.Errorf("codes: %q stands twice", code)
			}
			seen[code] = true
		}
		var err error
		g.present, err = g.vector()
		t.groups, rows = append(t.groups, g), append(rows, g.present)
		return errors.Join(err, g.grounds.check())
	})
	if err != nil {
		return err
	}
	for i, log := range draws(rows, strayingCodes) {
		t.groups[i].log = log
	}
	return nil
}

// CodeOutcomes are the ways that reading the codes comes out: none is stored, or one of a group is the
// first that is seen. They sum to 1 for each cause.
func (t *Tables) CodeOutcomes() []Outcome {
	none, sum := newVector(), newVector()
	for i := range none {
		none[i] = 1
		for _, g := range t.groups {
			none[i] *= 1 - g.present[i]
			sum[i] += g.present[i]
		}
	}
	out := []Outcome{{Word: evidence.Pass, P: none}}
	for _, g := range t.groups {
		first := newVector()
		for i := range first {
			first[i] = (1 - none[i]) * g.present[i] / sum[i]
		}
		out = append(out, Outcome{Word: g.Codes[0], P: first})
	}
	return out
}

// Codes are what the stored codes say: one factor for each group that is
// present. A code of no group, as a maker's own, says nothing.
func (t *Tables) Codes(codes []cases.Code) []Factor {
	stored := map[string]bool{}
	for _, c := range codes {
		stored[cases.InLetters(c.Code)] = true
	}
	var out []Factor
	for _, g := range t.groups {
		var present []string
		for _, code := range g.Codes {
			if stored[code] {
				present = append(present, code)
			}
		}
		if present != nil {
			out = append(out, Factor{Label: say.Of("reason.codes", strings.Join(present, ", "), g.text()), Log: g.log})
		}
	}
	return out
}
