package diagnosis

import (
	"math"
	"time"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
	"loopbook/diagram/physics/ensemble"
)

// Plan is what has to be simulated to judge a stage of a case.
type Plan struct {
	Stage   cases.Stage
	Setting ensemble.Setting
	Rounds  []int           // of the case, by the setting's stops
	Ahead   []string        // the walks that might come next, by the setting's stops ahead
	opensC  diagram.Celsius // where the thermostat is taken to begin to open
	share   int             // of the usual draws, one in so many is enough; 0: all
}

// StageOf is the stage that a case's causes are judged by: before the repair,
// unless all that was measured was measured after it.
func StageOf(c *cases.Case) cases.Stage {
	if c.HasStage(cases.AfterRepair) && !c.HasStage(cases.BeforeRepair) {
		return cases.AfterRepair
	}
	return cases.BeforeRepair
}

// PlanFor is the plan for a stage of the case, with every cause. It reports
// false where the layout isn't known.
func PlanFor(c *cases.Case, stage cases.Stage) (Plan, bool) {
	l, err := diagram.LoopByID(c.Loop.Layout)
	if err != nil {
		return Plan{Stage: stage}, false
	}
	c, _ = evidence.Believed(c)
	p := Plan{Stage: stage, opensC: evidence.OpensC(c), Setting: ensemble.Setting{
		Loop: l, Causes: causeWords(), OpensC: c.Loop.ThermostatOpensC, FullC: c.Loop.ThermostatFullC,
		CapKPa: c.Loop.CapKPa, Coolant: filling(c), Fan: physics.FanKind(c.Loop.Fan),
	}}
	if a := c.Site.AltitudeM; a != nil {
		p.Setting.AltitudeM = diagram.Metre(math.Round(min(max(float64(*a), 0), 4000)/100) * 100)
	}
	for i := range c.Rounds {
		if stage.Holds(c.Rounds[i].Stage) {
			p.add(c, i)
		}
	}
	p.lookAhead(c)
	return p, true
}

// Healthy is the plan with healthy cars alone and nothing ahead, for whoever wants
// ranges and no causes. They are the same cars as in the plan's crowd.
func (p Plan) Healthy() Plan {
	p.Ahead, p.Setting.Ahead = nil, nil
	p.Setting.Causes = []string{string(cases.Healthy)}
	return p
}

func causeWords() []string {
	all := cases.Words[cases.Cause]()
	words := make([]string, len(all))
	for i, c := range all {
		words[i] = string(c)
	}
	return words
}

// filling is the coolant as noted, or the usual half of ethylene glycol; a
// strength that no car can run with is somebody's slip or the fault itself, and
// hardly changes what flows.
func filling(c *cases.Case) coolant.Mixture {
	m := coolant.Mixture{Base: coolant.Base(cases.EthyleneGlycol), Strength: 50}
	if b := c.Loop.Coolant.Base; b != "" {
		m.Base = coolant.Base(b)
	}
	switch v := c.Loop.Coolant.VolumePercent; {
	case c.Loop.Coolant.Base == cases.Water:
		m.Strength = 0
	case v != nil:
		m.Strength = coolant.VolumePercent(math.Round(min(max(*v, 25), 60)/5) * 5)
	}
	return m
}

// Two rounds belong to one warm-up unless the clock went back, the air is another day's, or so long lies between that the
// engine is cold again: six hours are the soak that emission rules ask of a cold start (from memory).
const (
	otherDayK = 6
	coolsIn   = 6 * time.Hour
)

// add takes a round in as a stop.
func (p *Plan) add(c *cases.Case, i int) {
	r := &c.Rounds[i]
	air := ambient(c, i)
	starts := p.Setting.Starts
	if n := len(starts); n == 0 || math.Abs(float64(starts[n-1].AmbientC-air)) > otherDayK || p.wentBack(c, i) || p.cooled(c, i) {
		starts = append(starts, ensemble.Start{AmbientC: air})
	}
	last := &starts[len(starts)-1]
	stop := ensemble.Stop{Seconds: p.sinceLast(c, i, len(last.Stops) == 0), Blower: blower(r.Heater)}
	if r.EngineRPM != nil {
		stop.RPM = min(max(*r.EngineRPM, 0), 6000)
	}
	if r.SpeedKmh != nil && *r.SpeedKmh > evidence.StandingKmh {
		stop.SpeedKmh = min(*r.SpeedKmh, 160)
	}
	last.Stops = append(last.Stops, stop)
	p.Setting.Starts, p.Rounds = starts, append(p.Rounds, i)
}

// ambient is the air outside at a round, or of the case (below 0), in whole degrees and within
// what the model knows.
func ambient(c *cases.Case, i int) diagram.Celsius {
	return diagram.Celsius(math.Round(min(max(float64(evidence.AirC(c, i)), -40), 55)))
}

// blower is the cabin's fan at a setting of the heater; below 0 it isn't known.
func blower(h cases.Heater) float64 {
	if part, known := h.Blower(); known {
		return part
	}
	return -1
}

func (p *Plan) before(c *cases.Case) *cases.Round {
	if len(p.Rounds) == 0 {
		return nil
	}
	return &c.Rounds[p.Rounds[len(p.Rounds)-1]]
}

func (p *Plan) wentBack(c *cases.Case, i int) bool {
	last, now := p.before(c), c.Rounds[i].MinutesSinceStart
	return last != nil && now != nil && last.MinutesSinceStart != nil && *now < *last.MinutesSinceStart
}

// cooled reports whether the round before was walked so long ago that the engine was started cold again.
func (p *Plan) cooled(c *cases.Case, i int) bool {
	last, now := p.before(c), c.Rounds[i].Taken
	return last != nil && !last.Taken.IsZero() && !now.IsZero() && now.Sub(last.Taken).Abs() > coolsIn
}

// steadySeconds is by when a car that is held as it is shows what it always will: simulating it for longer
// tells nothing more (of the model; 250 minutes rank as 90 do).
const steadySeconds = 90 * 60

// sinceLast is the time from the stop before, or from the cold start, in
// seconds; 0 where the minutes aren't noted.
func (p *Plan) sinceLast(c *cases.Case, i int, first bool) float64 {
	now := c.Rounds[i].MinutesSinceStart
	if now == nil {
		return 0
	}
	from := 0.0
	if !first {
		last := p.before(c).MinutesSinceStart
		if last == nil {
			return 0
		}
		from = *last
	}
	return min(max((*now-from)*60, 1), steadySeconds)
}
