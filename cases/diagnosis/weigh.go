package diagnosis

import (
	"math"

	"loopbook/diagram/physics/ensemble"
)

// tail is the degrees of freedom of Student's t: a reading that no draw
// explains, a slip or a fault of the model, can't rule a cause out by itself.
const tail = 4

// trust is the power that the likelihood of n readings is raised to. Readings of
// one loop err together, by what the model lacks, so many of them count for
// fewer than they are: here for n to the power 0.6 (judgement; what calibrates on
// cars of other models was taken).
func trust(n int) float64 { return math.Pow(float64(max(n, 2)), -0.4) }

// besideTrust is the power for what each stop tells beside the hoses: the sensor's value, and the
// fan or the gauge as they were seen. They err by themselves, so how many hoses were
// read takes nothing from them, nor they from the hoses (judgement).
const besideTrust = 0.75

// biases are the gun's biases that are integrated over, in standard
// deviations, with their weights (Gauss and Hermite, three nodes).
var biases = [...]struct{ at, weight float64 }{{-math.Sqrt(3), 1. / 6}, {0, 2. / 3}, {math.Sqrt(3), 1. / 6}}

// weights are the likelihoods of all draws of all causes, by draw, then cause.
type weights struct {
	causes int
	w      []float64
}

func newWeights(draws, causes int) weights { return weights{causes, make([]float64, draws*causes)} }

func (w weights) at(cause, draw int) float64 { return w.w[draw*w.causes+cause] }

// mean is a cause's likelihood over its draws.
func (w weights) mean(cause int) float64 {
	sum, n := 0.0, 0
	for at := cause; at < len(w.w); at += w.causes {
		sum, n = sum+w.w[at], n+1
	}
	return max(sum/float64(n), math.SmallestNonzeroFloat64)
}

// scales are the weights of one stop for each of the gun's biases.
type scales [len(biases)]weights

// weigh holds every draw against what was read and seen at each stop.
func weigh(e *ensemble.Ensemble, readings []reading, seen signs) []scales {
	power := trust(byGun(readings))
	var out []scales
	for stop := 0; stop < e.Ahead(); stop++ {
		at := atStop{e: e, stop: stop, air: float64(e.AmbientC(stop))}
		for _, r := range readings {
			switch {
			case r.stop != stop:
			case r.sensor():
				at.sensor = append(at.sensor, r)
			default:
				at.readings, at.scale = append(at.readings, r), append(at.scale, 1/(tail*r.sdK*r.sdK))
			}
		}
		for _, s := range seen {
			if s.stop == stop {
				at.seen = append(at.seen, s)
			}
		}
		if len(at.readings)+len(at.sensor)+len(at.seen) > 0 {
			out = append(out, at.weigh(power))
		}
	}
	return out
}

// atStop is what was read and seen at one stop.
type atStop struct {
	e        *ensemble.Ensemble
	stop     int
	air      float64
	readings []reading // by the gun
	scale    []float64 // 1/(tail·sd²) of each
	sensor   []reading // one, or none
	seen     signs
}

func (a atStop) weigh(power float64) scales {
	var out scales
	causes := len(a.e.Setting.Causes)
	for b := range out {
		out[b] = newWeights(a.e.N, causes)
	}
	for draw := 0; draw < a.e.N; draw++ {
		for cause := 0; cause < causes; cause++ {
			beside := besideTrust * a.beside(cause, draw)
			for b, f := range a.misfit(cause, draw) {
				out[b].w[draw*causes+cause] = math.Exp(beside - power*(tail+1)/2*math.Log(f))
			}
		}
	}
	return out
}

// beside is the logarithm of the likelihood of what was seen and of what the sensor said.
func (a atStop) beside(cause, draw int) float64 {
	sum := math.Log(a.seen.likelihood(a.e, cause, draw))
	for _, r := range a.sensor {
		off := (r.shownC - float64(a.e.Look(cause, draw, a.stop)[ensemble.ECT])) / r.sdK
		sum -= (tail + 1) / 2. * math.Log(1+off*off/tail)
	}
	return sum
}

// misfit is the product of Student's terms of all of the gun's readings for each
// bias of it.
func (a atStop) misfit(cause, draw int) [len(biases)]float64 {
	product := [len(biases)]float64{1, 1, 1}
	look, wall := a.e.Look(cause, draw, a.stop), a.e.Wall(draw)
	for i, r := range a.readings {
		off := r.shownC - r.wouldShow(float64(look[r.slot]), wall, a.air)
		if !r.gun {
			f := 1 + off*off*a.scale[i]
			product[0], product[1], product[2] = product[0]*f, product[1]*f, product[2]*f
			continue
		}
		for b := range biases {
			at := off - biases[b].at*gunBiasSdK
			product[b] *= 1 + at*at*a.scale[i]
		}
	}
	return product
}

// oneCar is how far a car is believed to be at every stop what it was at the others. How it
// came to a stop, and how an air lock or a sticking valve stands by then, is the stop's
// own; but its build stays, and how bad its fault is, and one as bad as few are would be
// paid for at each stop (judgement; what calibrates on cars of other models was taken).
const oneCar = 0.2

// evidenceOf is the logarithm of a cause's likelihood by all stops, each held against the crowd
// by itself and, as far as it is one car, all of them by the same draws, whose weights are given.
// The gun's bias is the same at all.
func evidenceOf(stops []scales, same weights, cause int) float64 {
	sum := 0.0
	for b := range biases {
		product := biases[b].weight
		for _, s := range stops {
			product *= s[b].mean(cause)
		}
		sum += product
	}
	sum += oneCar * (same.mean(cause) - sum)
	return math.Log(max(sum, math.SmallestNonzeroFloat64))
}

// together are the draws' weights by all stops, of which there is one at least.
func together(stops []scales) weights {
	out := weights{stops[0][0].causes, make([]float64, len(stops[0][0].w))}
	for i := range out.w {
		for b := range biases {
			product := biases[b].weight
			for _, s := range stops {
				product *= s[b].w[i]
			}
			out.w[i] += product
		}
	}
	return out
}
