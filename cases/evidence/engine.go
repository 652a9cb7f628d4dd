package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// engine is the engine's own temperature, by the best witness there is.
type engine struct {
	c       *diagram.Celsius // nil: not known in degrees
	by      say.Text
	regime  Regime
	lies    bool // the sensor contradicts the gun
	onHose  bool // read on its rubber: the coolant in it is warmer
	witness diagram.Point
}

// On a hose the coolant is 2 to 8 K above the rubber (IR8, from memory).
const (
	hoseLeastK diagram.DeltaK = 2
	hoseUnderK diagram.DeltaK = 8
	creepK     diagram.DeltaK = 20 // a hose that much under the rating may hold still coolant
)

// sensorFailK is from where on the gun is believed rather than the scan tool:
// DT16 for a taped metal, common practice.
const sensorFailK diagram.DeltaK = 10

// engineSide are the points whose coolant comes straight from the engine, the
// upper hose's only while something flows there.
func engineSide() []diagram.Point {
	return []diagram.Point{diagram.Housing, diagram.EngineOut, diagram.RadIn, diagram.HeaterIn, diagram.Bypass}
}

// findEngine takes the scan tool's value unless the gun shows that it lies;
// without one, the hottest witness of the engine's side; the dash gauge at last.
func (m *moment) findEngine() engine {
	e := engine{witness: m.sensorWitness()}
	hottest, any := m.hottest(engineSide()...)
	switch ect := m.round.EctC; {
	case ect != nil && any && hottest.TrueC.Minus(*ect) > sensorFailK:
		e.lies, e.witness = true, hottest.Point // no hose is hotter than its coolant
		e.read(hottest, "by.gun-sensor-low")
	case ect != nil && !m.dry() && m.readsHigh(*ect, e.witness):
		e.lies = true
		e.read(m.readings[e.witness], "by.gun-sensor-high")
	case ect != nil:
		e.c, e.by = ect, say.Of("by.scan-tool")
	default:
		if w, ok := m.hottest(m.witnesses()...); ok {
			e.read(w, "by.gun")
		}
	}
	return m.sorted(e)
}

// read takes the gun's value.
func (e *engine) read(w Reading, by string) {
	e.c, e.by, e.onHose = &w.TrueC, say.Of(by, say.Place(w.Point)), w.onHose()
}

// sorted finds the regime. A gauge in the hot counts where no sensor speaks.
func (m *moment) sorted(e engine) engine {
	gauge := m.round.Gauge
	hot := gauge == cases.GaugeRed || gauge == cases.GaugeAboveMiddle
	switch {
	case m.round.EctC == nil && hot:
		e.regime = Above
		if e.c == nil {
			e.by = say.Of("by.gauge")
		}
	case e.c != nil:
		e.regime = m.regimeAt(*e.c)
	case gauge == "middle":
		e.regime, e.by = AtRating, say.Of("by.gauge")
	case gauge != "":
		e.regime, e.by = m.coldRegime(), say.Of("by.gauge")
	}
	return e
}

// sensorWitness is the point whose reading is held against the sensor: the
// layout's, or the upper hose where that isn't read.
func (m *moment) sensorWitness() diagram.Point {
	if m.loop == nil {
		return ""
	}
	for _, d := range m.loop.Deltas {
		if d.From != "" {
			continue
		}
		if _, ok := m.at(d.To); !ok && d.To == diagram.Housing {
			return diagram.EngineOut
		}
		return d.To
	}
	return ""
}

// readsHigh reports whether the sensor's value is more than the witness and a
// hose's wall explain.
func (m *moment) readsHigh(ect diagram.Celsius, p diagram.Point) bool {
	w, ok := m.at(p)
	if !ok || !m.flows(w) {
		return false
	}
	limit := sensorFailK
	if w.onHose() {
		limit += hoseUnderK
	}
	return ect.Minus(w.TrueC) > limit
}

// dry reports whether the loop was found without coolant: then no place that the gun meets is as
// hot as the engine, and a sensor in steam that shows more is no liar (F09, common practice).
func (m *moment) dry() bool {
	return slices.ContainsFunc(m.c.Tests, func(t cases.Test) bool {
		return t.Kind == cases.LevelTest && t.State == "empty" && m.round.Stage.Holds(t.Stage)
	})
}

// flows reports whether the reading stands for the engine's own coolant: the
// housing does, a hose only once it is near the thermostat's rating.
func (m *moment) flows(w Reading) bool {
	return w.Point == diagram.Housing || w.TrueC >= m.rating.opensC-diagram.Celsius(creepK)
}

// witnesses are the points of the engine's side that stand for the engine by
// themselves. Behind a shut thermostat the upper hose is cold on any engine, so
// it is one only where coolant flows; the heater's supply and the bypass are
// never hotter than the engine.
func (m *moment) witnesses() []diagram.Point {
	var out []diagram.Point
	for _, p := range engineSide() {
		if r, ok := m.at(p); ok && !m.still(r) {
			out = append(out, p)
		}
	}
	return out
}

// still reports whether the reading is an upper hose's that may hold still
// coolant.
func (m *moment) still(r Reading) bool {
	return (r.Point == diagram.EngineOut || r.Point == diagram.RadIn) && !m.flows(r)
}

// hottest is the hottest usable reading of the points.
func (m *moment) hottest(points ...diagram.Point) (best Reading, ok bool) {
	for _, p := range points {
		if r, usable := m.at(p); usable && (!ok || r.TrueC > best.TrueC) {
			best, ok = r, true
		}
	}
	return best, ok
}

// engineText tells the engine's temperature with its witness and the rating.
func (m *moment) engineText() say.Text {
	if m.engine.c == nil {
		return say.Of("because.engine-by", m.engine.by, m.rating.text())
	}
	return say.Of("because.engine", *m.engine.c, m.engine.by, m.rating.text())
}
