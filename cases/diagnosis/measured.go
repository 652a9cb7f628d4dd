package diagnosis

import (
	"math"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
)

// reading is one temperature that the crowd is held against.
type reading struct {
	stop, slot int
	point      diagram.Point // "": the sensor
	shownC     float64       // of the surface, corrected; of the coolant for the sensor
	wall       float64       // 1 on a hose, 0 on metal and in air: part of the wall's step that it has
	gun        bool          // the gun's bias is in it
	sdK        float64       // of the model and the reading together
}

// The model's error as a standard deviation: a part that is always there and
// one that grows with the excess over ambient. A car isn't this model, whatever
// its parameters, so this is judgement and meant to be generous.
const (
	modelK      = 2.5
	modelPart   = 0.065
	sensorSdK   = 3.5
	gunBiasSdK  = 1.5 // of a handheld gun as a whole, shared by a case's readings
	loosePoints = 2   // of points that depend on how a car is plumbed
)

// looseness is by how much the model is worse at a point than at the upper
// hose, for what it leaves out there (judgement).
func looseness(p diagram.Point) float64 {
	switch p {
	case diagram.Bypass, diagram.Vent, diagram.AirOff, diagram.BottleBleed, diagram.BottleOut, diagram.OilIn, diagram.OilOut:
		return loosePoints
	case diagram.RadOut, diagram.PumpIn, diagram.HeaterOut, diagram.Housing:
		return 1.4
	}
	return 1
}

// modelSdK is the error of the model and the gun at a point of that temperature.
func modelSdK(p diagram.Point, c, air float64) float64 {
	return looseness(p) * math.Hypot(modelK, modelPart*math.Abs(c-air))
}

// sensorSd is the error of the model and the engine's own sensor at a temperature, K.
func sensorSd(c, air float64) float64 { return math.Hypot(sensorSdK, modelPart*math.Abs(c-air)/2) }

// A difference of two readings errs by what the gun repeats to (3 K each: IR9,
// common practice) and by two hoses' walls, which stand 2 to 8 K under their
// coolant (IR8, from memory); the model errs by a part of it (judgement).
const (
	pairSdK  = 3.5
	pairPart = 0.2
)

func differenceSdK(a, b diagram.Point, k float64) float64 {
	return max(looseness(a), looseness(b)) * math.Hypot(pairSdK, pairPart*k)
}

// readings are what a stage's rounds hold of temperatures, stop by stop.
func readings(c *cases.Case, f evidence.Findings, p Plan, e *ensemble.Ensemble) []reading {
	var out []reading
	for stop, i := range p.Rounds {
		air := float64(e.AmbientC(stop))
		for _, at := range p.Setting.Loop.Points {
			r, ok := f.Rounds[i].Readings[at.Point]
			whim := at.Point == diagram.AirOff && stillAir(&c.Rounds[i])
			if ok && !whim && r.Usable() && at.Point != diagram.AirOn {
				out = append(out, newReading(r, stop, e.Slot(at.Point), air))
			}
		}
		if ect := c.Rounds[i].EctC; ect != nil {
			out = append(out, reading{stop: stop, slot: ensemble.ECT, shownC: float64(*ect), sdK: sensorSd(float64(*ect), air)})
		}
	}
	return out
}

func newReading(r evidence.Reading, stop, slot int, air float64) reading {
	out := reading{stop: stop, slot: slot, point: r.Point, shownC: float64(r.TrueC), gun: !r.Point.Air()}
	out.sdK = math.Hypot(modelSdK(r.Point, out.shownC, air), float64(r.UncertainK))
	out.wall = wallOf(r.Point)
	return out
}

// sensor reports whether it is what the engine's own sensor said.
func (r reading) sensor() bool { return r.slot == ensemble.ECT }

// byGun is how many of the readings are the gun's.
func byGun(readings []reading) int {
	n := 0
	for _, r := range readings {
		if !r.sensor() {
			n++
		}
	}
	return n
}

// wouldShow is what a draw shows at a reading's place, without the gun's bias.
func (r reading) wouldShow(coolantC, wall, air float64) float64 {
	return coolantC - r.wall*wall*(coolantC-air)
}
