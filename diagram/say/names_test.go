package say_test

import (
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What the layouts' data name has its word in every language.
func TestPointsAndLayoutsHaveTheirWords(t *testing.T) {
	var named []say.Text
	for _, p := range diagram.Points() {
		named = append(named, say.PointName(p), say.Place(p))
	}
	loops, err := diagram.Loops()
	if err != nil || len(loops) == 0 {
		t.Fatal(len(loops), err)
	}
	for _, l := range loops {
		named = append(named, say.LoopName(l), say.LoopAbout(l))
		for _, d := range l.Deltas {
			named = append(named, say.DeltaName(d.Name))
		}
	}
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range named {
			if words[name.Key()] == "" {
				t.Errorf("%s: %q has no words", l, name.Key())
			}
		}
	}
}
