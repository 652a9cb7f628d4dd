package evidence

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// sensorDisagrees: outside DT16 the sensor fails; outside the delta's range it
// is to be compared again, which is no finding: a gun's bias and a hose's wall do as much on many
// a sound car.
func (m *moment) sensorDisagrees() []Flag {
	if m.round.EctC == nil {
		return nil
	}
	w, ok := m.at(m.engine.witness)
	if !ok {
		return nil
	}
	points := []diagram.Point{w.Point}
	off := m.round.EctC.Minus(w.TrueC)
	apart := say.Of("because.sensor-off", off)
	if m.engine.lies {
		return []Flag{m.flag("sensor-disagrees", Act, points,
			say.Of("flag.sensor-lies", *m.round.EctC, w.TrueC, say.Place(w.Point)), apart,
			say.Of("because.sensor-rule", SensorFailK, hoseLeastK, hoseUnderK), // DT16, IR8
			say.Of("because.by-gun"))}
	}
	d := m.delta(SensorAgainstGun)
	if d == nil || !d.State.Out() || !m.flows(w) {
		return nil
	}
	return []Flag{m.flag("sensor-compare", Look, points,
		say.Of("flag.sensor-compare", *m.round.EctC, w.TrueC, say.Place(w.Point)), apart, d.text())}
}
