package evidence

import "loopbook/diagram"

// The names of the deltas in the layouts' data.
const (
	AcrossRadiator       = "across-radiator"
	AlongUpperHose       = "along-upper-hose"
	AlongLowerHose       = "along-lower-hose"
	ThermostatStep       = "thermostat-step"
	HeaterDrop           = "heater"
	BypassBelowEngineOut = "bypass-below-engine-out"
	AirThroughRadiator   = "air-through-radiator"
	SensorAgainstGun     = "sensor-against-gun"
	MixStep              = "housing-over-lower-hose"
)

// anyLayout are the deltas that every layout has, for a case without one.
func anyLayout() []diagram.DeltaAt {
	return []diagram.DeltaAt{
		{Name: AlongUpperHose, From: diagram.EngineOut, To: diagram.RadIn},
		{Name: AcrossRadiator, From: diagram.RadIn, To: diagram.RadOut},
		{Name: AirThroughRadiator, From: diagram.AirOff, To: diagram.AirOn},
		{Name: AlongLowerHose, From: diagram.RadOut, To: diagram.PumpIn},
		{Name: HeaterDrop, From: diagram.HeaterIn, To: diagram.HeaterOut},
	}
}

// judge holds the readings and the differences against what is expected.
func (m *moment) judge(e Expectation) {
	m.expected = e.Points
	for p, r := range m.readings {
		if want, ok := e.Points[p]; ok {
			r.Expected = &want
			if r.Usable() {
				r.State = want.state(r.TrueC)
			}
			m.readings[p] = r
		}
	}
	m.deltas = m.findDeltas(e.Deltas)
	m.shut = m.findShut()
}

// findDeltas are the differences whose two ends were read. One with an end
// that takes no part is told without a verdict.
func (m *moment) findDeltas(spans map[string]Span) []Delta {
	layout := anyLayout()
	if m.loop != nil {
		layout = m.loop.Deltas
	}
	var out []Delta
	for _, at := range layout {
		d, usable, ok := m.difference(at)
		if !ok {
			continue
		}
		if s, known := spans[at.Name]; known {
			d.ExpectedLowK, d.ExpectedHighK, d.Source, d.Class = s.LowK, s.HighK, s.Source, s.Class
			if usable {
				d.State = s.state(d.ValueK)
			}
		}
		out = append(out, d)
	}
	return out
}

func abs(k diagram.DeltaK) diagram.DeltaK { return max(k, -k) }

func (m *moment) difference(at diagram.DeltaAt) (d Delta, usable, ok bool) {
	d = Delta{Name: at.Name, Round: m.i, From: string(at.From), To: string(at.To), State: Unknown}
	if at.From == "" {
		return m.sensorDifference(d)
	}
	from, okFrom := m.readings[at.From]
	to, okTo := m.readings[at.To]
	d.ValueK = from.TrueC.Minus(to.TrueC)
	return d, from.Usable() && to.Usable(), okFrom && okTo
}

// sensorDifference is the sensor's value against the engine's own coolant: a hose in which that stands
// still tells nothing of a sensor.
func (m *moment) sensorDifference(d Delta) (_ Delta, usable, ok bool) {
	w, ok := m.readings[m.engine.witness]
	if !ok || m.round.EctC == nil || !m.engine.lies && !m.flows(w) {
		return d, false, false
	}
	d.From, d.To = Sensor, string(w.Point)
	d.ValueK = m.round.EctC.Minus(w.TrueC)
	return d, w.Usable(), true
}
