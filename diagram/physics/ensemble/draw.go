package ensemble

import (
	"math"
	"math/rand"

	"loopbook/diagram/physics"
)

// draw is one car with its habits, by number.
type draw struct {
	params   physics.Params
	severity float64 // 0 to 1
	form     float64 // 0 to 1
	habit    habit
	pace     float64 // how much longer than noted the way from cold really was
	holdS    float64 // how long a stop's own running goes on before it, at most
	blower   float64 // where a stop doesn't say
	lateS    float64 // since the cold start, where a stop doesn't say
	nextS    float64 // since the stop before, where a stop doesn't say
	valved   bool    // whether the heater has a valve that shuts on cold
	switched bool    // whether an electric fan goes by a switch of its own
	wall     float64 // by how much of its excess over ambient a hose's outside stands under its coolant
}

// habit is how a car is run on its way to a stop at which it stands.
type habit int

// The habits, common practice: left to idle, held at raised speed to save
// time, driven about town, or on the open road.
const (
	idling habit = iota
	raising
	town
	road
	habits
)

// How well a rating is kept: a thermostat's opening within 3 K (TH1, published,
// M2), of which 2 K is taken as the standard deviation; the others are judgement.
const (
	opensSdK = 2
	fullSdK  = 2
	capSd    = 0.05 // of the rating
)

// A hose's outside stands 2 to 8 K under hot coolant, 70 K over ambient (IR8,
// from memory).
const wallLeast, wallMost = 2. / 70, 8. / 70

// leastSeverity is of a fault that somebody comes with.
const leastSeverity = 0.2

// How far cars differ beyond their build in what they are asked for: heat at
// the same speed, by gear, load and consumers, and minutes, which are noted to
// the nearest five if at all; standard deviations of the logarithm (judgement).
const (
	heatSpread = 0.2
	paceSpread = 0.2
)

// valvedPart is of the cars whose heater has a valve (judgement): fewer than
// those with a flap, where coolant always flows (published, T8).
const valvedPart = 0.35

// switchedPart is of the cars whose fan goes by a switch in the radiator (published, V23: on at 93 to
// 98 °C), so that a sensor that misreads doesn't move it (the share is judgement).
const switchedPart = 0.35

func (s Setting) draw(number int, rows []physics.Row) draw {
	rng := rand.New(rand.NewSource(int64(number) + 1))
	d := draw{params: physics.Pick(rows, func(r physics.Row) float64 {
		return r.Low * math.Pow(r.High/r.Low, rng.Float64())
	})}
	for _, heat := range []*float64{&d.params.IdleHeatKW, &d.params.RaisedHeatKW, &d.params.RoadHeatKW} {
		*heat *= math.Exp(heatSpread * rng.NormFloat64())
	}
	s.rate(&d.params, rng)
	d.severity = leastSeverity + (1-leastSeverity)*rng.Float64()
	d.form = rng.Float64()
	d.habit = habit(rng.Intn(int(habits)))
	d.pace = math.Exp(paceSpread * rng.NormFloat64())
	d.holdS = between(rng, 45, 300)
	d.blower = float64(rng.Intn(3)) / 2
	d.lateS = between(rng, 240, 2700)
	d.nextS = between(rng, 60, 1200)
	d.valved = rng.Float64() < valvedPart
	d.wall = wallLeast + (wallMost-wallLeast)*rng.Float64()
	d.switched = rng.Float64() < switchedPart
	return d
}

// rate brings the parameters to the ratings that are known.
func (s Setting) rate(p *physics.Params, rng *rand.Rand) {
	opens, full, capKPa := rng.NormFloat64()*opensSdK, rng.NormFloat64()*fullSdK, 1+rng.NormFloat64()*capSd
	if s.OpensC != nil {
		*p.RatingC(s.Loop) = float64(*s.OpensC) + opens
		if s.FullC != nil && *s.FullC > *s.OpensC {
			p.OpenSpanK = max(float64(*s.FullC-*s.OpensC)+full, 4)
		}
	}
	if s.CapKPa != nil && *s.CapKPa > 0 {
		p.CapKPa = float64(*s.CapKPa) * capKPa
	}
}

// between draws evenly over the logarithm.
func between(rng *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, rng.Float64())
}

// roadHoldS is how long a steady drive goes on before a stop on the road, at
// most.
const roadHoldS = 600

// way is how the car is run to a stop; first says that it comes from cold.
func (d draw) way(stop Stop, first bool) []physics.Stage {
	seconds, blower := stop.Seconds*d.pace, stop.Blower
	if blower < 0 {
		blower = d.blower
	}
	switch {
	case seconds <= 0 && first:
		seconds = d.lateS
	case seconds <= 0:
		seconds = d.nextS
	}
	own, before, hold := d.params.Drive(0, stop.RPM, stop.SpeedKmh, blower), d.lead(blower), d.holdS
	shut := d.valved && stop.Blower == 0
	own.HeaterShut, before.HeaterShut = shut, shut
	if stop.Held {
		if stop.Unsaid && !(stop.RPM > 0 && d.habit == idling) {
			own = before
		}
		own.Seconds = stop.Seconds
		return []physics.Stage{own}
	}
	if stop.SpeedKmh > 0 {
		before, hold = own, roadHoldS
	}
	hold = min(hold, seconds)
	before.Seconds, own.Seconds = seconds-hold, hold
	return []physics.Stage{before, own}
}

// lead is how the car is run before it stands.
func (d draw) lead(blower float64) physics.Stage {
	switch d.habit {
	case raising:
		return d.params.Raised(0, blower)
	case town:
		return d.params.Drive(0, 0, 35, blower)
	case road:
		return d.params.Road(0, blower)
	}
	return d.params.Idle(0, blower)
}

// fault is a cause as the draw's car has it.
func (d draw) fault(cause string) physics.Fault {
	return physics.Fault{Cause: cause, Severity: d.severity, Form: d.form}
}
