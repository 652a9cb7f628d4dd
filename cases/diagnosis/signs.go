package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram/physics/ensemble"
)

// sign is what was seen beside temperatures at a stop.
type sign struct {
	stop  int
	fan   cases.FanState
	gauge cases.Gauge // where the sensor's value isn't known: a gauge shows what the sensor does
}

type signs []sign

func seenSigns(c *cases.Case, p Plan) signs {
	var out signs
	for stop, i := range p.Rounds {
		r := &c.Rounds[i]
		s := sign{stop: stop, fan: r.Fan}
		if r.EctC == nil {
			s.gauge = r.Gauge
		}
		if s.fan == cases.FanOn || s.fan == cases.FanOff || s.gauge != "" {
			out = append(out, s)
		}
	}
	return out
}

// How often the fan is noted otherwise than the draw has it: it cycles, runs for the air
// conditioning, or wasn't looked at (judgement). Nothing starts a dead one, and nobody sees it turn: what is
// left is a slip of the pen.
const (
	fanSlip  = 0.15
	deadSlip = 0.03
)

// fanNoted is the likelihood of a fan noted as running, or not, on a draw of a cause where it runs that
// part of the time.
func fanNoted(runs bool, cause string, duty float64) float64 {
	slip := fanSlip
	if duty == 0 && cause == deadFan {
		slip = deadSlip
	}
	if !runs {
		duty = 1 - duty
	}
	return slip + (1-2*slip)*duty
}

// deadFan is the cause whose fan stands for good on most draws; on the others it is slow.
const deadFan = "fan-not-running"

// likelihood is of what was seen on a draw of a cause.
func (s signs) likelihood(e *ensemble.Ensemble, cause, draw int) float64 {
	p := 1.0
	for _, seen := range s {
		look := e.Look(cause, draw, seen.stop)
		if seen.fan == cases.FanOn || seen.fan == cases.FanOff {
			p *= fanNoted(seen.fan == cases.FanOn, e.Setting.Causes[cause], float64(look[ensemble.FanDuty]))
		}
		if seen.gauge != "" {
			p *= gaugeShows(seen.gauge, float64(look[ensemble.ECT]))
		}
	}
	return p
}

// gaugeShows is the likelihood of a gauge's place with the sensor at a
// temperature: most gauges stand in the middle over a wide span (common
// practice, no source).
func gaugeShows(g cases.Gauge, ectC float64) float64 {
	places := []struct {
		gauge cases.Gauge
		atC   float64
		sdK   float64
	}{
		{"cold", 35, 12}, {"below-middle", 62, 12}, {"middle", 90, 12}, {"above-middle", 109, 6}, {"red", 120, 7},
	}
	sum, own := 0.0, 0.0
	for i, at := range places {
		z := (ectC - at.atC) / at.sdK
		if i == 0 && z < 0 || i == len(places)-1 && z > 0 {
			z = 0
		}
		p := math.Exp(-z*z/2) + 0.02
		sum += p
		if at.gauge == g {
			own = p
		}
	}
	return own / sum
}
