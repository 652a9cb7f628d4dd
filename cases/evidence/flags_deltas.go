package evidence

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// outOfRange asks for both ends of a difference again that is out of its range
// in a round where nothing else asks for anything.
func outOfRange(all []*moment, told []Flag) []Flag {
	var out []Flag
	for _, m := range all {
		if !pressed(told, m.i) {
			out = append(out, m.deltasOut()...)
		}
	}
	return out
}

func pressed(told []Flag, round int) bool {
	for _, f := range told {
		if f.Round == round && f.Severity != Note {
			return true
		}
	}
	return false
}

func (m *moment) deltasOut() []Flag {
	var points []diagram.Point
	var said, because []say.Text
	for i := range m.deltas {
		d := &m.deltas[i]
		if !m.farOut(d) {
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
// (DT2, common practice), and so any step to the lower hose at an inlet; what the air takes up hangs on the fan, and an upper
// hose that holds still coolant says nothing.
func (m *moment) farOut(d *Delta) bool {
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
