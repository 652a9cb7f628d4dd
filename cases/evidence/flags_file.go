package evidence

import (
	"loopbook/cases"
	"loopbook/diagram/say"
)

// misplaced remarks each key of the case's file that isn't read where it stands
// though the format has it elsewhere.
func misplaced(c *cases.Case) []Flag {
	var out []Flag
	for _, m := range cases.Misplaced(c) {
		homes := make([]say.Text, len(m.Belongs))
		for i, at := range m.Belongs {
			if homes[i] = say.Own(at); at == "" {
				homes[i] = say.Of("because.key-top")
			}
		}
		out = append(out, ofCase("key-misplaced", Note, say.Of("flag.key-misplaced", m.Path, say.List(homes...))))
	}
	return out
}
