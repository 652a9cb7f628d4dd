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
	town     bool    // whether the way to a stop was driven rather than idled
	blower   float64 // where a stop doesn't say
	lateS    float64 // since the cold start, where a stop doesn't say
	wall     float64 // by how much of its excess over ambient a hose's outside stands under its coolant
}

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

// townPart is of the cars that were driven to the stop.
const townPart = 0.4

func (s Setting) draw(number int, rows []physics.Row) draw {
	rng := rand.New(rand.NewSource(int64(number) + 1))
	d := draw{params: physics.Pick(rows, func(r physics.Row) float64 {
		return r.Low * math.Pow(r.High/r.Low, rng.Float64())
	})}
	opens, full, capKPa := rng.NormFloat64()*opensSdK, rng.NormFloat64()*fullSdK, 1+rng.NormFloat64()*capSd
	if s.OpensC != nil {
		at := float64(*s.OpensC) + opens
		d.params.OutletRatingC, d.params.InletRatingC = at, at
		if s.FullC != nil && *s.FullC > *s.OpensC {
			d.params.OpenSpanK = max(float64(*s.FullC-*s.OpensC)+full, 4)
		}
	}
	if s.CapKPa != nil && *s.CapKPa > 0 {
		d.params.CapKPa = float64(*s.CapKPa) * capKPa
	}
	d.severity = leastSeverity + (1-leastSeverity)*rng.Float64()
	d.town = rng.Float64() < townPart
	d.blower = float64(rng.Intn(3)) / 2
	d.lateS = 900 + 1500*rng.Float64()
	d.wall = wallLeast + (wallMost-wallLeast)*rng.Float64()
	return d
}

// How long a stop's own running is taken to have gone on before it, at most.
const (
	standingS = 240
	roadS     = 600
	nextS     = 300 // to a further stop that doesn't say
)

// town is the driving on the way to a stop.
const townRPM, townKmh = 1500, 30

// way is how the car is run to a stop; first says that it comes from cold.
func (d draw) way(stop Stop, first bool) []physics.Stage {
	seconds, blower := stop.Seconds, stop.Blower
	if blower < 0 {
		blower = d.blower
	}
	switch {
	case seconds <= 0 && first:
		seconds = d.lateS
	case seconds <= 0:
		seconds = nextS
	}
	own, hold := d.params.Drive(0, stop.RPM, stop.SpeedKmh, blower), float64(standingS)
	before := own
	switch {
	case stop.SpeedKmh > 0:
		hold = roadS
	case d.town:
		before = d.params.Drive(0, townRPM, townKmh, blower)
	case stop.RPM > 0: // nobody holds the pedal for long
		before = d.params.Drive(0, 0, 0, blower)
	}
	hold = min(hold, seconds)
	before.Seconds, own.Seconds = seconds-hold, hold
	return []physics.Stage{before, own}
}
