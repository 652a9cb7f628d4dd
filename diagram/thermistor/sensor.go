package thermistor

import (
	"cmp"
	"math"
	"slices"

	"loopbook/diagram"
)

// OffAt is by how many kelvins a sensor that was measured at some temperatures
// reads too high at t, held to the reference.
//
// Between two measured points the ratio of measured to reference resistance is
// taken to run straight in its logarithm, and beyond them to stay: that is how
// a sensor ages or a wrong one differs. ok is false where no measured point or
// not t itself lies within the reference.
func (c Curve) OffAt(t diagram.Celsius, measured []Point) (off diagram.DeltaK, ok bool) {
	type ratio struct{ c, log float64 }
	var ratios []ratio
	for _, p := range measured {
		if ref, err := c.Ohm(p.C); err == nil && p.Ohm > 0 {
			ratios = append(ratios, ratio{float64(p.C), math.Log(p.Ohm / ref)})
		}
	}
	ref, err := c.Ohm(t)
	if err != nil || len(ratios) == 0 {
		return 0, false
	}
	slices.SortFunc(ratios, func(a, b ratio) int { return cmp.Compare(a.c, b.c) })
	log := ratios[0].log
	for i := 1; i < len(ratios); i++ {
		a, b := ratios[i-1], ratios[i]
		switch at := float64(t); {
		case at >= b.c:
			log = b.log
		case at > a.c:
			log = a.log + (b.log-a.log)*(at-a.c)/(b.c-a.c)
		}
	}
	return c.at(ref * math.Exp(log)).Minus(t), true
}

// Beyond is by how many kelvins at least a sensor reads too high, or below 0 too low, that has a resistance beyond the
// reference's at a temperature within it: a cut wire's, a short's. ok is false where that doesn't tell which way it is off.
func (c Curve) Beyond(p Point) (off diagram.DeltaK, ok bool) {
	end, other := c.points[0], c.points[len(c.points)-1]
	if p.Ohm < other.Ohm {
		end, other = other, end
	} else if p.Ohm <= end.Ohm {
		return 0, false
	}
	off = end.C.Minus(p.C)
	return off, p.Ohm >= 0 && off != 0 && (off < 0) == (end.C < other.C)
}
