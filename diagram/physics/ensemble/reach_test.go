package ensemble

import (
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

// Who looks at the fan sees what it does now. So the minutes on the road before a stop, in which no fan has to run, take nothing
// from the part of the stop's own minutes that it ran (property: the same car, told of the stop alone).
func TestTheFansPartIsOfTheLastMinutes(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := physics.Table()
	if err != nil {
		t.Fatal(err)
	}
	d := Setting{Loop: l}.draw(0, rows)
	idle, road := d.params.Idle(600, 0), d.params.Road(600, 0)
	warm := func() *physics.Sim {
		sim, err := physics.New(l, d.params, physics.Fault{Cause: "none"}, physics.Conditions{
			AmbientC: 35, Coolant: coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50},
		})
		if err == nil {
			err = sim.Run(d.params.Idle(3600, 0), func(*physics.Sim) {})
		}
		if err != nil {
			t.Fatal(err)
		}
		return sim
	}
	whole, alone := warm(), warm()
	got, err := reach(whole, []physics.Stage{road, idle})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := reach(alone, []physics.Stage{road}); err != nil {
		t.Fatal(err)
	}
	want, err := reach(alone, []physics.Stage{idle})
	if err != nil {
		t.Fatal(err)
	}
	if !(want > 0.2) || math.Abs(got-want) > 0.01 {
		t.Errorf("with the way there the fan ran %.2f of the last minutes, without it %.2f", got, want)
	}
}
