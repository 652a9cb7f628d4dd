package whatif

import (
	"math"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/whatif"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/physics"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// tryout is a simulated car that is driven by settings. It serves one
// goroutine at a time.
type tryout struct {
	build  ensemble.Setting // what the case says of the car
	params physics.Params
	set    view.Settings
	sim    *physics.Sim
	cold   bool // on its way from a cold start
}

// newTryout is a car of ordinary build with the case's loop and ratings, warm
// at those settings.
func newTryout(build ensemble.Setting, set view.Settings) (*tryout, error) {
	p, err := physics.Typical()
	if err != nil {
		return nil, err
	}
	if build.OpensC != nil {
		*p.RatingC(build.Loop) = float64(*build.OpensC)
	}
	if build.CapKPa != nil && *build.CapKPa > 0 {
		p.CapKPa = float64(*build.CapKPa)
	}
	t := &tryout{build: build, params: p, set: set}
	return t, t.warm()
}

// start puts a car of the settings there, stone cold.
func (t *tryout) start() error {
	sim, err := physics.New(t.build.Loop, t.params, physics.Fault{Cause: string(t.set.Cause), Severity: t.set.Severity}, physics.Conditions{
		AmbientC: diagram.Celsius(t.set.AmbientC), AltitudeM: t.build.AltitudeM, Coolant: t.build.Coolant, Fan: t.build.Fan,
	})
	if err != nil {
		return err
	}
	sim.Hurry()
	t.sim, t.cold = sim, true
	return nil
}

// warm jumps to where the car comes to rest, as far as it does.
func (t *tryout) warm() error {
	if err := t.start(); err != nil {
		return err
	}
	t.cold = false
	_, err := t.sim.Settle(t.stage(0))
	return err
}

// turn takes other settings. Weather and fault are built into the model's car,
// so that with others it is another one, warm.
func (t *tryout) turn(set view.Settings) error {
	old := t.set
	t.set = set
	if old.AmbientC != set.AmbientC || old.Cause != set.Cause || old.Severity != set.Severity {
		return t.warm()
	}
	return nil
}

// run lets time pass.
func (t *tryout) run(seconds float64) error { return t.sim.Run(t.stage(seconds), nil) }

func (t *tryout) stage(seconds float64) physics.Stage {
	st := t.params.Drive(seconds, t.set.RPM, t.set.SpeedKmh, t.set.Blower)
	st.HeatKW *= t.set.Load
	return st
}

// shown is the car now, drawn and in words.
func (t *tryout) shown(u units.Set) view.Shown {
	by := say.English().With(u)
	s := drawing.State{
		Points: map[diagram.Point]drawing.PointState{}, Unit: string(u.Temperature), Thermostat: lifted(t.sim.Lift()),
		By: by, Fan: by.Of("drawing.fan-off"), FanOn: t.sim.FanRuns(), Sensor: by.Of("drawing.sensor", t.sim.ECT()),
		ScaleText: [3]string{u.Temp(drawing.ScaleLowC), u.Temp((drawing.ScaleLowC + drawing.ScaleHighC) / 2), u.TempUnit(drawing.ScaleHighC)},
	}
	if s.FanOn {
		s.Fan = by.Of("drawing.fan-on")
	}
	for _, at := range t.build.Loop.Points {
		if c, ok := t.sim.At(at.Point); ok {
			s.Points[at.Point] = drawing.PointState{Text: u.Temp(c), TrueC: &c, Mark: drawing.Kept}
		}
	}
	return view.Shown{Picture: drawing.Draw(t.build.Loop, s, true), Facts: t.facts(u), Boils: t.sim.Boils()}
}

func (t *tryout) facts(u units.Set) []view.Fact {
	time := kit.L("window.tryout.warm")
	if t.cold {
		time = kit.L("window.tryout.cold", math.Floor(t.sim.Seconds()/60))
	}
	fan := cases.FanOff
	if t.sim.FanRuns() {
		fan = cases.FanOn
	}
	return []view.Fact{
		{Name: kit.L("window.tryout.time"), Value: time},
		{Name: kit.L("window.tryout.sensor"), Value: u.TempUnit(t.sim.ECT())},
		{Name: kit.L("window.tryout.lift"), Value: kit.L("window.whatif.percent", 100*t.sim.Lift())},
		{Name: kit.L("window.tryout.fan"), Value: fan.Name()},
		{Name: kit.L("window.tryout.flow"), Value: say.English().With(u).Of("window.tryout.flow-a-minute", diagram.Litre(60*t.sim.FlowLS()))},
	}
}

// lifted is a lift as the drawing shows it.
func lifted(lift float64) drawing.Opening {
	switch {
	case lift < 0.02:
		return drawing.Shut
	case lift < 0.6:
		return drawing.ALittleOpen
	}
	return drawing.Open
}

// buildOf is the build and the weather that the open case has.
func buildOf(c *cases.Case) (ensemble.Setting, view.Settings, bool) {
	set := view.Idle()
	p, ok := diagnosis.PlanFor(c, diagnosis.StageOf(c))
	if !ok {
		return ensemble.Setting{}, set, false
	}
	starts := p.Setting.Starts
	set.AmbientC = min(max(float64(starts[len(starts)-1].AmbientC), -20), 40)
	return p.Setting, set, true
}
