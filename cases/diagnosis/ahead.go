package diagnosis

import (
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics"
	"loopbook/diagram/physics/ensemble"
)

// hotIdleS is how long an idle lasts until a fan ought to have come (judgement).
const hotIdleS = 720

// openK is how far under its rating a thermostat may already be opening.
const openK = 3

// lookAhead adds the walks that might come next: the warm-up, from here with a cold engine,
// from the next cold one with a warm one, and then whatever loads the loop otherwise. Whether one
// was walked already is left to wanted: no crowd is made anew for the first hose of a round.
func (p *Plan) lookAhead(c *cases.Case) {
	r := p.before(c)
	switch {
	case r == nil:
		p.Setting.Starts = []ensemble.Start{{AmbientC: ambient(c, -1)}}
		p.ahead(likelihood.WarmUp, ensemble.Stop{Seconds: 1500, RPM: 800, Blower: 1})
	case p.stillCold(r):
		p.ahead(likelihood.WarmUp, ensemble.Stop{Seconds: 900, RPM: 800, Blower: 1})
	default:
		p.ahead(likelihood.WarmUp, ensemble.Stop{Seconds: 900, RPM: 800, Blower: 1, FromCold: true})
		p.ahead(likelihood.RaisedIdle, ensemble.Stop{Seconds: 300, RPM: 2500, Blower: blower(r.Heater)})
		if p.fanComes() {
			p.ahead(likelihood.HotIdle, ensemble.Stop{Seconds: hotIdleS, RPM: 800, Held: true})
		}
		p.ahead(likelihood.AfterRoad, ensemble.Stop{Seconds: 900, RPM: 2200, SpeedKmh: 80})
	}
}

// wanted reports whether a walk ahead is one to advise: it wasn't walked yet, and the engine
// stands it.
func (p *Plan) wanted(c *cases.Case, walk string) bool {
	switch walk {
	case likelihood.RaisedIdle:
		return !p.walked(c, raised) && !p.farAbove(c)
	case likelihood.HotIdle:
		return !p.walked(c, p.hotIdle)
	case likelihood.AfterRoad:
		return !p.walked(c, onRoad) && !p.walked(c, p.hot)
	}
	return true
}

// fanComes reports whether the fan is one that starts by itself: others turn with the engine, or
// there is none.
func (p *Plan) fanComes() bool {
	return p.Setting.Fan == "" || p.Setting.Fan == physics.ElectricFan
}

func (p *Plan) ahead(walk string, s ensemble.Stop) {
	p.Ahead, p.Setting.Ahead = append(p.Ahead, walk), append(p.Setting.Ahead, s)
}

// walked reports whether one of the plan's rounds was of that kind; one that is begun and
// has nothing in it yet isn't.
func (p *Plan) walked(c *cases.Case, kind func(*cases.Round) bool) bool {
	return slices.ContainsFunc(p.Rounds, func(i int) bool {
		r := &c.Rounds[i]
		return r.TellsWarmth() && kind(r)
	})
}

func onRoad(r *cases.Round) bool { return evidence.PaceOf(r) == evidence.OnRoad }
func raised(r *cases.Round) bool { return evidence.PaceOf(r) == evidence.Raised }

// longIdleMin is when who waits for the fan gives up: an engine's warm-up and the walk's own
// minutes.
const longIdleMin = warmsUpMin + hotIdleS/60

// hotIdle reports whether the fan ran at an idle, or should have, or was long waited for.
func (p *Plan) hotIdle(r *cases.Round) bool {
	if onRoad(r) || raised(r) {
		return false
	}
	waited := r.Fan == cases.FanOff && r.MinutesSinceStart != nil && *r.MinutesSinceStart >= longIdleMin
	return r.Fan == cases.FanOn || waited || p.hot(r)
}

// hot reports whether the engine is so warm standing that nobody should drive it to see
// more: where a fan is late.
func (p *Plan) hot(r *cases.Round) bool {
	return !onRoad(r) && (r.EctC != nil && *r.EctC >= evidence.FanDueC(p.opensC) || r.Gauge == cases.GaugeAboveMiddle || r.Gauge == cases.GaugeRed)
}

// farAbove reports whether the engine was last so far over its rating that it is let cool, and not
// held at speed beside that word.
func (p *Plan) farAbove(c *cases.Case) bool {
	i := p.lastWarmth(c)
	return i >= 0 && c.Rounds[i].EctC != nil && c.Rounds[i].EctC.Minus(p.opensC) >= evidence.SwitchOffK
}

// lastWarmth is the plan's last round that tells how warm the engine was, or -1: one that is only
// begun saw nothing.
func (p *Plan) lastWarmth(c *cases.Case) int {
	for n := len(p.Rounds) - 1; n >= 0; n-- {
		if i := p.Rounds[n]; c.Rounds[i].TellsWarmth() {
			return i
		}
	}
	return -1
}

// warmsUpMin is when an engine that idles from cold is warm, if it ever will be: 10 to 25
// minutes (WU3, published and common practice).
const warmsUpMin = 20

// stillCold reports whether a round was walked before the thermostat could
// open: by the sensor, or else by the minutes. An engine that is still cool after
// the time it takes won't warm by waiting.
func (p *Plan) stillCold(r *cases.Round) bool {
	minutes := r.MinutesSinceStart
	if r.EctC != nil {
		return *r.EctC < p.opensC-openK && (minutes == nil || *minutes < warmsUpMin)
	}
	return minutes != nil && *minutes < 10
}
