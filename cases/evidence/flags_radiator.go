package evidence

import (
	"cmp"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// engineRiseK parts a lack of water from a lack of air at the condition that
// is at fault: DT1, published (T1), a rule of thumb.
const engineRiseK diagram.DeltaK = 5.6

// flowRestricted: the radiator takes too much out of too little coolant. It is
// only told above the rating, for a throttling thermostat does the same.
func (m *moment) flowRestricted() []Flag {
	d := m.delta(AcrossRadiator)
	if d == nil || d.State != High || m.engine.regime != Above || m.shut != nil {
		return nil
	}
	because := []say.Text{m.engineText(), m.ends(d), d.text()}
	if rise, ok := m.engineRise(); ok && rise > engineRiseK {
		because = append(because, say.Of("because.engine-rise", rise, engineRiseK))
	}
	return []Flag{m.flag("flow-restricted", Act, []diagram.Point{diagram.RadIn, diagram.RadOut},
		say.Of("flag.flow-restricted", d.ValueK),
		because...)}
}

// coolFaceK is how far under the rating a radiator's outlet is cool: such a face gives no heat because it gets none
// (judgement).
const coolFaceK = 10

// airSide: the radiator is hot all through and gives its heat to no air.
func (m *moment) airSide() []Flag {
	d := m.delta(AcrossRadiator)
	if d == nil || d.State != Low || m.engine.regime != Above || m.fanMayWait() {
		return nil
	}
	out, _ := m.at(diagram.RadOut)
	if out.TrueC < m.rating.opensC-coolFaceK {
		return nil
	}
	severity := Act
	if m.slow() && m.round.Fan != cases.FanOn && !m.fanIsLate() {
		severity = Look
	}
	because := []say.Text{m.engineText(), m.ends(d), d.text(), say.Of("because.fan", cmp.Or(m.round.Fan, cases.FanUnknown).Text())}
	return []Flag{m.flag("air-side", severity, []diagram.Point{diagram.RadIn, diagram.RadOut},
		airSide(d.ValueK),
		because...)}
}

// ends tells both readings of a delta.
func (m *moment) ends(d *Delta) say.Text {
	from, to := m.readings[diagram.Point(d.From)], m.readings[diagram.Point(d.To)]
	return say.Of("because.ends", say.Place(from.Point), from.TrueC, say.Place(to.Point), to.TrueC, d.ValueK)
}

func (m *moment) engineRise() (diagram.DeltaK, bool) {
	out, okOut := m.at(diagram.EngineOut)
	in, okIn := m.at(diagram.PumpIn)
	return out.TrueC.Minus(in.TrueC), okOut && okIn
}

// airSide says by how little the radiator cools, or that it doesn't.
func airSide(k diagram.DeltaK) say.Text {
	if k < 0.5 {
		return say.Of("flag.air-side-none")
	}
	return say.Of("flag.air-side", k)
}
