package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// outOfRange asks for both ends of a difference again that is out of its range
// in a round where nothing else asks for anything, and that no fault of another
// round explains.
func outOfRange(all []*moment, told []Flag) []Flag {
	var out []Flag
	for _, m := range all {
		if !pressed(told, m.i) {
			out = append(out, m.deltasOut(explained(all, told, m.round.Stage))...)
		}
	}
	return out
}

// explained are the branches of the loop in which a round of the stage shows a fault: what is odd
// there in other rounds isn't the gun's slip.
func explained(all []*moment, told []Flag, stage cases.Stage) map[branch]bool {
	out := map[branch]bool{}
	for _, f := range told {
		if f.Round >= 0 && f.Severity != Note && stage.Holds(all[f.Round].round.Stage) {
			for _, b := range branchesOf(f.ID) {
				out[b] = true
			}
		}
	}
	return out
}

// branch is a way that coolant takes from the engine and back.
type branch int

const (
	throughRadiator branch = iota
	throughHeater
)

// branchesOf are those in which what a flag tells makes differences odd; none for what is told of
// readings and of the sensor.
func branchesOf(id string) []branch {
	switch id {
	case "pump-weak":
		return []branch{throughRadiator, throughHeater}
	case "heater-no-flow", "heater-restricted":
		return []branch{throughHeater}
	case "thermostat-passing-early", "thermostat-not-opening", "thermostat-opening-late", "engine-below-target",
		"flow-restricted", "air-side", "fan-not-running", "bypass-open", "lower-hose-collapse", "hose-uneven":
		return []branch{throughRadiator}
	}
	return nil
}

func (d *Delta) branch() branch {
	if d.Name == HeaterDrop {
		return throughHeater
	}
	return throughRadiator
}

func pressed(told []Flag, round int) bool {
	return slices.ContainsFunc(told, func(f Flag) bool { return f.Round == round && f.Severity != Note })
}

func (m *moment) deltasOut(explained map[branch]bool) []Flag {
	var points []diagram.Point
	var said, because []say.Text
	for i := range m.deltas {
		d := &m.deltas[i]
		if explained[d.branch()] || !m.farOut(d) {
			continue
		}
		points = append(points, diagram.Point(d.From), diagram.Point(d.To))
		said = append(said, say.Of("because.delta-said", endText(d.From), endText(d.To), d.ValueK, d.span()))
		because = append(because, m.ends(d), d.text())
	}
	if said == nil {
		return nil
	}
	return []Flag{m.flag("delta-out-of-range", Look, points, say.Of("flag.delta-out-of-range", say.Items(said...)),
		append(because, m.engineText(), say.Of("because.two-readings", pairErrorK))...)} // IR9
}

// farOut reports whether a difference of two gun readings is out by more than
// their error. A throttling thermostat may make any drop across the radiator
// (DT2, common practice), and so any step to the lower hose at an inlet; what the air takes up hangs on the fan, an upper
// hose that holds still coolant says nothing, nor does a heater that is turned off, which a valve may shut (T8, T22).
func (m *moment) farOut(d *Delta) bool {
	if d.Name == HeaterDrop && m.round.Heater == cases.HeaterOff {
		return false
	}
	throttles := d.Name == AcrossRadiator && d.State == High || d.Name == MixStep && m.engine.regime == AtRating
	if d.From == Sensor || d.Name == AirThroughRadiator || throttles {
		return false
	}
	from, to := m.readings[diagram.Point(d.From)], m.readings[diagram.Point(d.To)]
	if m.still(from) || m.still(to) {
		return false
	}
	slack := pairError(from, to)
	switch d.State {
	case Low:
		return *d.ExpectedLowK-d.ValueK > slack
	case High:
		return d.ValueK-*d.ExpectedHighK > slack
	}
	return false
}
