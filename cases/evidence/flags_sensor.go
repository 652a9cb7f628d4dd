package evidence

import (
	"fmt"

	"loopbook/diagram"
)

// sensorDisagrees: outside DT16 the sensor fails; outside the delta's range it
// is to be compared again.
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
	text := fmt.Sprintf("The sensor shows %s where the gun finds %s at %s", inC(*m.round.EctC), inC(w.TrueC), name(w.Point))
	apart := fmt.Sprintf("sensor minus gun %+.0f K", float64(off))
	if m.engine.lies {
		return []Flag{m.flag("sensor-disagrees", Act, points,
			text+": it doesn't tell the engine's temperature.", apart,
			"10 K either way fails; rubber may stand 2 to 8 K under the coolant (DT16, common practice; IR8, from memory)",
			"this round is judged by the gun's value")}
	}
	d := m.delta(SensorAgainstGun)
	if d == nil || (d.State != Low && d.State != High) || !m.flows(w) {
		return nil
	}
	return []Flag{m.flag("sensor-disagrees", Look, points, text+": compare them again, on tape.", apart, d.words())}
}
