package simulation

import (
	"math"
	"math/rand"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// The errors of measuring. A handheld gun is rarely better than 1 to 2 K as a
// whole (its bias) and repeats within 3 K (IR9, common practice); a hose stands
// 2 to 8 K under its coolant (IR8, from memory).
const (
	biasK     = 1.0 // standard deviation of the gun as a whole
	repeatK   = 0.7 // of one reading
	probeK    = 0.4 // of an air probe
	rubberK   = 3.5 // a hose under its coolant, 70 K over ambient
	rubberFor = 70.0
)

// gun measures with one bias for all of its readings.
type gun struct {
	rng     *rand.Rand
	bias    float64
	ambient diagram.Celsius
}

func newGun(rng *rand.Rand, ambient diagram.Celsius) gun {
	return gun{rng, rng.NormFloat64() * biasK, ambient}
}

// round walks round the loop. The housing is read on tape, hoses on rubber.
func (g gun) round(s *physics.Sim, l *diagram.Loop, step Step, st physics.Stage) cases.Round {
	minutes, ect := math.Round(s.Seconds()/60), diagram.Celsius(math.Round(float64(s.ECT())))
	emissivity, rpm, road := 0.95, st.RPM, st.SpeedKmh
	r := cases.Round{
		Label: step.Label, Stage: cases.BeforeRepair, MinutesSinceStart: &minutes, EngineRPM: &rpm, SpeedKmh: &road,
		Fan: cases.FanOff, Heater: step.Heater, AmbientC: &g.ambient, EctC: &ect,
		Gun: cases.Gun{Emissivity: &emissivity, ReflectedC: &g.ambient},
	}
	if s.FanRuns() {
		r.Fan = cases.FanOn
	}
	for _, at := range l.Points {
		truth, ok := s.At(at.Point)
		if !ok {
			continue
		}
		shown := tenth(g.shows(at.Point, truth))
		reading := cases.Reading{Point: at.Point, ShownC: &shown, Surface: cases.Surface{Word: "rubber"}}
		switch {
		case at.Point.Air():
			reading.Surface = cases.Surface{}
		case at.Point == diagram.Housing:
			reading.Surface = cases.Surface{Word: "tape"}
		}
		r.Readings = append(r.Readings, reading)
	}
	return r
}

func (g gun) shows(p diagram.Point, truth diagram.Celsius) diagram.Celsius {
	if p.Air() {
		return truth + diagram.Celsius(g.rng.NormFloat64()*probeK)
	}
	under := rubberK * float64(truth-g.ambient) / rubberFor
	if p == diagram.Housing {
		under = 0
	}
	return truth + diagram.Celsius(g.bias+g.rng.NormFloat64()*repeatK-under)
}

func tenth(c diagram.Celsius) diagram.Celsius { return diagram.Celsius(math.Round(float64(c)*10) / 10) }
