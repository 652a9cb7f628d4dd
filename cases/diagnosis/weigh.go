package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram/physics/ensemble"
)

// tail is the degrees of freedom of Student's t: a reading that no draw
// explains, a slip or a fault of the model, can't rule a cause out by itself.
const tail = 4

// trust is the power that the temperatures' likelihood is raised to. Readings of
// one loop err together, by what the model lacks, so they count for fewer than
// they are; what calibrates on cars of other models was taken.
const trust = 0.4

// biases are the gun's biases that are integrated over, in standard
// deviations, with their weights (Gauss and Hermite, three nodes).
var biases = [...]struct{ at, weight float64 }{{-math.Sqrt(3), 1. / 6}, {0, 2. / 3}, {math.Sqrt(3), 1. / 6}}

// weights are the likelihoods of all draws of all causes, by draw, then cause.
type weights struct {
	causes int
	w      []float64
}

func (w weights) at(cause, draw int) float64 { return w.w[draw*w.causes+cause] }

// weigh holds every draw against the readings, the fan and the gauge.
func weigh(c *cases.Case, p Plan, e *ensemble.Ensemble, readings []reading) weights {
	w := weights{len(p.Setting.Causes), make([]float64, e.N*len(p.Setting.Causes))}
	seen := seenSigns(c, p)
	scale := make([]float64, len(readings)) // 1/(tail·sd²)
	airs := make([]float64, len(p.Rounds))
	for i, r := range readings {
		scale[i] = 1 / (tail * r.sdK * r.sdK)
	}
	for i := range airs {
		airs[i] = float64(e.AmbientC(i))
	}
	for draw := 0; draw < e.N; draw++ {
		wall := e.Wall(draw)
		for cause := 0; cause < w.causes; cause++ {
			product := [len(biases)]float64{1, 1, 1}
			for i, r := range readings {
				off := r.shownC - r.wouldShow(float64(e.Look(cause, draw, r.stop)[r.slot]), wall, airs[r.stop])
				if !r.gun {
					f := 1 + off*off*scale[i]
					product[0], product[1], product[2] = product[0]*f, product[1]*f, product[2]*f
					continue
				}
				for b := range biases {
					at := off - biases[b].at*gunBiasSdK
					product[b] *= 1 + at*at*scale[i]
				}
			}
			sum := 0.0
			for b, f := range product {
				sum += biases[b].weight * math.Pow(f, -trust*(tail+1)/2)
			}
			w.w[draw*w.causes+cause] = sum * seen.likelihood(e, cause, draw)
		}
	}
	return w
}
