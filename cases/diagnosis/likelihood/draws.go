package likelihood

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"loopbook/cases"
)

const (
	symptomsFile = "symptoms.json"
	codesFile    = "codes.json"
)

// What is listed on the cause's account although it has nothing to do with it:
// a second, smaller fault, a word misheard, an old code (judgement).
const (
	strayingSymptoms = 0.08
	strayingCodes    = 0.10
)

// draws takes what a case lists for draws from each cause's distribution over
// all rows, of which the share mix is even. So a cause with many symptoms
// isn't favoured for having many, and what isn't listed says nothing: few
// write down everything.
func draws(rows []Vector, mix float64) []Vector {
	sum := newVector()
	for _, row := range rows {
		for c, p := range row {
			sum[c] += p
		}
	}
	out := make([]Vector, len(rows))
	for i, row := range rows {
		out[i] = newVector()
		for c, p := range row {
			out[i][c] = math.Log((1-mix)*p/sum[c] + mix/float64(len(rows)))
		}
	}
	return out
}

type symptomRow struct {
	Symptom cases.Symptom `json:"symptom"`
	shares
	grounds
}

func (t *Tables) readSymptoms(text []byte) error {
	words := cases.Words[cases.Symptom]()
	var listed []symptomRow
	var rows []Vector
	has := func(s cases.Symptom) bool {
		return slices.ContainsFunc(listed, func(r symptomRow) bool { return r.Symptom == s })
	}
	err := read(symptomsFile, text, func(r symptomRow) error {
		if err := newWord("symptom", r.Symptom, words, has(r.Symptom)); err != nil {
			return err
		}
		v, err := r.vector()
		listed, rows = append(listed, r), append(rows, v)
		return errors.Join(err, r.grounds.check())
	})
	if err == nil {
		err = complete(symptomsFile, "symptom", words, has)
	}
	if err != nil {
		return err
	}
	t.symptoms = map[cases.Symptom]Factor{}
	for i, log := range draws(rows, strayingSymptoms) {
		r := listed[i]
		t.symptoms[r.Symptom] = Factor{"symptom: " + r.Symptom.Name(), r.Reason, r.Class, log}
	}
	return nil
}

// Symptoms are what the listed symptoms say, one factor for each. One listed
// twice counts once.
func (t *Tables) Symptoms(listed []cases.Symptom) []Factor {
	var out []Factor
	for i, s := range listed {
		if f, ok := t.symptoms[s]; ok && !slices.Contains(listed[:i], s) {
			out = append(out, f)
		}
	}
	return out
}

// codeGroup are codes that speak of the same thing: two of them say no more
// than one.
type codeGroup struct {
	Codes []string `json:"codes"`
	Name  string   `json:"name"`
	shares
	grounds
	log Vector
}

func (t *Tables) readCodes(text []byte) error {
	var rows []Vector
	seen := map[string]bool{}
	err := read(codesFile, text, func(g codeGroup) error {
		if len(g.Codes) == 0 || g.Name == "" {
			return errors.New("codes: needs codes and a name")
		}
		for _, code := range g.Codes {
			if seen[code] {
				return fmt.Errorf("codes: %q stands twice", code)
			}
			seen[code] = true
		}
		v, err := g.vector()
		t.groups, rows = append(t.groups, g), append(rows, v)
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

// Codes are what the stored codes say: one factor for each group that is
// present. A code of no group, as a maker's own, says nothing.
func (t *Tables) Codes(codes []cases.Code) []Factor {
	stored := map[string]bool{}
	for _, c := range codes {
		stored[strings.ToUpper(strings.TrimSpace(c.Code))] = true
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
			out = append(out, Factor{"code " + strings.Join(present, ", ") + ": " + g.Name, g.Reason, g.Class, g.log})
		}
	}
	return out
}
