package diagnosis

import "loopbook/diagram/say"

// Chance is a probability in words. It never says that anything is sure: no model
// of a car is surer than 1 in 100.
func Chance(p float64) say.Text {
	switch {
	case p < 0.01:
		return say.Of("chance.under-1")
	case p > 0.99:
		return say.Of("chance.over-99")
	}
	return say.Of("chance.percent", 100*p)
}
