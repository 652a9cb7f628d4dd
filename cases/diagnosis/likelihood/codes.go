package likelihood

import (
	"errors"
	"fmt"
	"strings"

	"loopbook/cases"
)

const codesFile = "codes.json"

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
