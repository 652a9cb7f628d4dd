package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// sensorDisagrees: outside DT16 the sensor fails; outside the delta's range it
// is to be compared again, which is no finding: a gun's bias and a hose's wall do as much on many
// a sound car.
func (m *moment) sensorDisagrees() []Flag {
	if m.round.EctC == nil || m.dry() && !m.engine.lies {
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
			say.Of("because.sensor-rule", sensorFailK, hoseLeastK, hoseUnderK), // DT16, IR8
			say.Of("because.by-gun"))}
	}
	d := m.delta(SensorAgainstGun)
	if d == nil || !d.State.Out() {
		return nil
	}
	return []Flag{m.flag("sensor-compare", Look, points,
		say.Of("flag.sensor-compare", *m.round.EctC, w.TrueC, say.Place(w.Point)), apart, d.text())}
}

// sensorLies reports whether the sensor is found to be wrong on that side of the repair: by the gun in a round, or by its
// resistance.
func sensorLies(c *cases.Case, all []*moment, stage cases.Stage) bool {
	return slices.ContainsFunc(all, func(m *moment) bool { return m.engine.lies && stage.Holds(m.round.Stage) }) ||
		slices.ContainsFunc(c.Tests, func(t cases.Test) bool {
			return t.Kind == cases.SensorTest && stage.Holds(t.Stage) && slices.Contains([]string{"low", "high"}, Outcome(c, &t))
		})
}

// redOnACoolSensor reports whether the gauge stands in the red while the scan tool shows an engine
// that isn't above its rating.
func (m *moment) redOnACoolSensor() bool {
	return m.round.Gauge == cases.GaugeRed && m.round.EctC != nil && m.engine.regime != Above && m.regimeAt(*m.round.EctC) != Above
}

// gaugeAgainstSensor: nobody knows yet which of them is right, and a sensor without coolant shows
// too little; so the engine is taken for hot.
func (m *moment) gaugeAgainstSensor() []Flag {
	if !m.redOnACoolSensor() {
		return nil
	}
	return []Flag{m.flag("gauge-against-sensor", Act, nil,
		say.Of("flag.gauge-against-sensor", *m.round.EctC), say.Of("because.dry-sensor"))}
}
