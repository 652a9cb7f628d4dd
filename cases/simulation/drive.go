package simulation

import (
	"fmt"
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

// drive takes cars of one build through the same steps.
type drive struct {
	car    Car
	loop   *diagram.Loop
	params physics.Params
	steps  []Step
}

// course is what a car showed on its way.
type course struct {
	sim    *physics.Sim // as it stands in the end
	log    cases.Log    // of the scan tool
	legs   []leg        // by the steps
	lastS  float64
	fanS   float64 // how long the fan ran
	rested bool    // the fan did at some time
	fanC   float64 // shown as it came on for the first time; NaN: it never came on
	boilS  float64 // how long the engine boiled
}

// leg is one step of the way.
type leg struct {
	Step
	warms         bool // it began with an engine that isn't warm yet
	endS          float64
	leastC, mostC float64 // that the sensor showed
	endC, ventC   float64 // that it showed, and of the air at the vent, at its end
}

// scanS is how often a scan tool notes what it shows, in seconds.
const scanS = 10

// along drives a car with that fault from a cold start. It shows each look, and measures at the end of each step that asks
// for it; nil: nobody does.
func (d drive) along(fault physics.Fault, see func(*physics.Sim, physics.Stage), measure func(*physics.Sim, Step)) (*course, error) {
	sim, err := physics.New(d.loop, d.params, fault, physics.Conditions{
		AmbientC: d.car.AmbientC, AltitudeM: d.car.AltitudeM,
		Coolant: coolant.Mixture{Base: coolant.Base(cases.EthyleneGlycol), Strength: strength},
	})
	if err != nil {
		return nil, err
	}
	out := &course{sim: sim, log: cases.Log{Stage: cases.BeforeRepair}, fanC: math.NaN()}
	out.scan(0, float64(sim.ECT()), d.steps[0].stage(d.params))
	for i, step := range d.steps {
		st := step.stage(d.params)
		l := leg{Step: step, warms: sim.Seconds() < warmByS, leastC: math.Inf(1), mostC: math.Inf(-1)}
		err := sim.Run(st, func(s *physics.Sim) {
			if see != nil {
				see(s, st)
			}
			out.note(s, st, &l)
		})
		if err != nil {
			return nil, fmt.Errorf("step %d (%s): %w", i+1, step.Label, err)
		}
		vent, _ := sim.At(diagram.Vent)
		l.endS, l.endC, l.ventC = sim.Seconds(), float64(sim.ECT()), float64(vent)
		out.legs = append(out.legs, l)
		if step.Measure && measure != nil {
			measure(sim, step)
		}
	}
	return out, nil
}

// note takes a look into the course.
func (c *course) note(s *physics.Sim, st physics.Stage, l *leg) {
	shown, now := float64(s.ECT()), s.Seconds()
	l.leastC, l.mostC = min(l.leastC, shown), max(l.mostC, shown)
	if !s.FanRuns() {
		c.rested = true
	} else {
		if c.fanS += now - c.lastS; c.rested && math.IsNaN(c.fanC) {
			c.fanC = shown
		}
	}
	if s.Boils() {
		c.boilS += now - c.lastS
	}
	c.lastS = now
	if n := len(c.log.TimeS); now >= c.log.TimeS[n-1]+scanS {
		c.scan(now, shown, st)
	}
}

// boiledOverS is how long an engine boils until the coolant that it throws out is missed (judgement).
const boiledOverS = 60

// boiledOver reports whether coolant was thrown out where the sound car kept its own.
func (c *course) boiledOver(well *course) bool {
	return c.boilS > boiledOverS && well.boilS <= boiledOverS
}

// scan notes what a scan tool shows, in whole numbers.
func (c *course) scan(atS, shownC float64, st physics.Stage) {
	add := func(to *[]float64, v float64) { *to = append(*to, math.Round(v)) }
	add(&c.log.TimeS, atS)
	add(&c.log.EctC, shownC)
	add(&c.log.EngineRPM, st.RPM)
	add(&c.log.SpeedKmh, st.SpeedKmh)
}
