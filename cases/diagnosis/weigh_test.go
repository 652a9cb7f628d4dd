package diagnosis

import (
	"math"
	"testing"
)

// A fault as bad as one in twenty of its cars have fits two rounds in full, beside one whose every car fits each by a
// fifth. Apart they are 0.05² to 0.2², one to sixteen: what is rare is paid for twice. As the same cars they are 0.05 to
// 0.04. By the mixture's definition the rare one has oneCar of the one and the rest of the other.
func TestARareSeverityIsPaidForOnce(t *testing.T) {
	const rare, mild = 0, 1
	var stop scales
	for b := range stop {
		stop[b] = newWeights(20, 2)
		for draw := 0; draw < 20; draw++ {
			stop[b].w[draw*2+mild] = 0.2
		}
		stop[b].w[rare] = 1
	}
	stops := []scales{stop, stop}
	for cause, want := range map[int]float64{
		rare: (1-oneCar)*0.05*0.05 + oneCar*0.05,
		mild: 0.2 * 0.2, // all of its cars are alike
	} {
		if got := math.Exp(evidenceOf(stops, together(stops), cause)); math.Abs(got-want) > 1e-12 {
			t.Errorf("cause %d: %g, want %g", cause, got, want)
		}
	}
	one := stops[:1]
	if got := math.Exp(evidenceOf(one, together(one), rare)); math.Abs(got-0.05) > 1e-12 {
		t.Errorf("by one round %g, want 0.05 however far it is one car", got)
	}
}
