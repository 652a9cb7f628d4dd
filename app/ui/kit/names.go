package kit

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// LayoutIDs names the layouts that the program ships.
func LayoutIDs() []string {
	loops, err := diagram.Loops()
	if err != nil {
		return nil // the program tells so when it starts
	}
	ids := make([]string, len(loops))
	for i, l := range loops {
		ids[i] = l.ID
	}
	return ids
}

// LayoutTitle is a layout in words.
func LayoutTitle(id string) string {
	if l, err := diagram.LoopByID(id); err == nil {
		return say.LoopName(l).String()
	}
	return id
}

// RoundName is a round's label, or its number where it has none; i is its place in
// the case.
func RoundName(r cases.Round, i int) string {
	if r.Label != "" {
		return r.Label
	}
	return Capital(L("chart.round", i+1))
}
