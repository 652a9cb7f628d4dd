package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// moment is one round with all that is needed to judge it.
type moment struct {
	c        *cases.Case
	i        int
	round    *cases.Round
	loop     *diagram.Loop // nil: the layout isn't known
	readings map[diagram.Point]Reading
	ambientC diagram.Celsius
	rating   rating
	engine   engine
	deltas   []Delta
	expected map[diagram.Point]Range
	shut     []say.Text    // why nothing passes the thermostat; nil: something may
	before   []*moment     // earlier rounds of the same stage
	alone    diagram.Point // a hot reading that all others speak against; "": none
	hotAir   diagram.Point // the air before the radiator where it is no air from outside; "": it may be
}

// newMoment reads a round as far as it goes without knowing what to expect.
func newMoment(c *cases.Case, i int) *moment {
	loop, _ := diagram.LoopByID(c.Loop.Layout)
	m := &moment{
		c: c, i: i, round: &c.Rounds[i], loop: loop,
		readings: readRound(c, i), ambientC: AirC(c, i), rating: ratingOf(c),
	}
	m.markHotAir()
	m.markImpossible()
	m.markAlone()
	m.engine = m.findEngine()
	return m
}

// at is the reading at p, if it may be judged by.
func (m *moment) at(p diagram.Point) (Reading, bool) {
	r, ok := m.readings[p]
	return r, ok && r.Usable() && m.has(p)
}

// has reports whether the layout has p; an unknown layout may have any.
func (m *moment) has(p diagram.Point) bool { return m.loop == nil || m.loop.Has(p) }

// first is the first of the points that has a usable reading.
func (m *moment) first(points ...diagram.Point) (Reading, bool) {
	for _, p := range points {
		if r, ok := m.at(p); ok {
			return r, true
		}
	}
	return Reading{}, false
}

// side is the thermostat's, or "" where the layout isn't known.
func (m *moment) side() diagram.Side {
	if m.loop == nil {
		return ""
	}
	return m.loop.Thermostat
}

// delta is the round's delta of that name, or nil where it has none.
func (m *moment) delta(name string) *Delta {
	for i := range m.deltas {
		if m.deltas[i].Name == name {
			return &m.deltas[i]
		}
	}
	return nil
}

// Pace is what the engine and the vehicle do during a round.
type Pace string

// The paces.
const (
	Idling      Pace = "idle"
	Raised      Pace = "raised" // standing, engine held at speed
	OnRoad      Pace = "road"
	UnknownPace Pace = "unknown"
)

const raisedRPM = 1500 // above any idle, under the 2500 rpm that the trade holds

// StandingKmh is the speed up to which a car stands: a manoeuvre in the yard is
// no drive. From RamAirKmh the fan may stay off: FN9, published (T7).
const (
	StandingKmh = 5
	RamAirKmh   = 40
)

// PaceOf is how the car was driven in a round.
func PaceOf(r *cases.Round) Pace {
	switch {
	case r.SpeedKmh != nil && *r.SpeedKmh > StandingKmh:
		return OnRoad
	case r.EngineRPM != nil && *r.EngineRPM >= raisedRPM:
		return Raised
	case r.EngineRPM != nil:
		return Idling
	}
	return UnknownPace
}

// slow reports whether the vehicle gives the radiator no air by its speed.
func (m *moment) slow() bool { return m.round.SpeedKmh == nil || *m.round.SpeedKmh < RamAirKmh }
