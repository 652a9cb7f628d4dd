package trial_test

import (
	"loopbook/cases"
	"loopbook/diagram"
)

// round is one round of a case, with a way to its temperatures.
type round struct {
	*cases.Round
	of   *cases.Case
	loop *diagram.Loop
}

// at is a reading on a surface that the gun reads well, or false.
func (r round) at(p diagram.Point) (float64, bool) {
	x := r.Reading(p)
	if x == nil || x.ShownC == nil || x.Surface.Word == "aluminium-oxidised" || x.Surface.Word == "cast-iron" {
		return 0, false
	}
	return float64(*x.ShownC), true
}

func (r round) ect() (float64, bool) {
	if r.EctC == nil {
		return 0, false
	}
	return float64(*r.EctC), true
}

func (r round) rating() (float64, bool) {
	if t := r.of.Loop.ThermostatOpensC; t != nil {
		return float64(*t), true
	}
	return 0, false
}

func (r round) inlet() bool { return r.loop.Thermostat == diagram.Inlet }

// value is a temperature of a round, where it was taken.
type value func(round) (float64, bool)

func point(p diagram.Point) value { return func(r round) (float64, bool) { return r.at(p) } }

// engine is the place that stands for what leaves the engine.
func engine(r round) (float64, bool) {
	if r.inlet() {
		return r.at(diagram.EngineOut)
	}
	return r.at(diagram.Housing)
}

// far is the hose that stays cold until the thermostat opens.
func far(r round) (float64, bool) {
	if r.inlet() {
		return r.at(diagram.RadOut)
	}
	return r.at(diagram.RadIn)
}

func minus(a, b value) value {
	return func(r round) (float64, bool) {
		x, okX := a(r)
		y, okY := b(r)
		return x - y, okX && okY
	}
}

// where keeps the rounds that the row of the table speaks of.
func where(ok func(round) bool, v value) value {
	return func(r round) (float64, bool) {
		if !ok(r) {
			return 0, false
		}
		return v(r)
	}
}

func outletSide(r round) bool { return !r.inlet() }

// over reports whether the engine is hotter than its rating by more than k.
func over(k float64) func(round) bool {
	return func(r round) bool {
		x, ok := minus(round.ect, round.rating)(r)
		return ok && x > k
	}
}

func heaterFull(r round) bool { return r.Heater == cases.HeaterFull }

// warmDay leaves out the weather in which a heater alone may keep an idling
// engine cool.
func warmDay(r round) bool { return *r.of.Site.AmbientC > 12 }

func across(r round) (float64, bool) { return minus(point(diagram.RadIn), point(diagram.RadOut))(r) }

func heaterDrop(r round) (float64, bool) {
	return minus(point(diagram.HeaterIn), point(diagram.HeaterOut))(r)
}

// each is the rounds of the cases of a cause under a label.
func each(list []cases.Case, cause cases.Cause, label string, do func(round)) {
	for i := range list {
		c := &list[i]
		loop, err := diagram.LoopByID(c.Loop.Layout)
		if err != nil || c.Verdict.Cause != cause {
			continue
		}
		for j := range c.Rounds {
			if c.Rounds[j].Label == label {
				do(round{&c.Rounds[j], c, loop})
			}
		}
	}
}

// labels says which round stands for a condition of signatures.csv, and for the road.
func labels(condition string) string {
	return map[string]string{"COLD5": "5 min from cold", "WIDLE": "warm idle", "W2500": "2500 rpm", "HIDLE_FAN": "hot idle", "road": "after the road"}[condition]
}

// within is how many rounds have the value and the share of them in the range.
func within(list []cases.Case, cause cases.Cause, condition string, v value, low, high float64) (n int, share float64) {
	in := 0
	each(list, cause, labels(condition), func(r round) {
		if x, ok := v(r); ok {
			n++
			if x >= low && x <= high {
				in++
			}
		}
	})
	return n, float64(in) / float64(max(n, 1))
}
