package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
)

// engineRiseK parts a lack of water from a lack of air at the condition that
// is at fault: DT1, published (T1), a rule of thumb.
const engineRiseK diagram.DeltaK = 5.6

// flowRestricted: the radiator takes too much out of too little coolant. It is
// only told above the rating, for a throttling thermostat does the same.
func (m *moment) flowRestricted() []Flag {
	d := m.delta(AcrossRadiator)
	if d == nil || d.State != High || m.engine.regime != Above || m.shutOff() != nil {
		return nil
	}
	because := []string{m.engineWords(), m.ends(d), d.words()}
	if rise, ok := m.engineRise(); ok && rise > engineRiseK {
		because = append(because, fmt.Sprintf("engine out minus in is %s; above 5.6 K points at too little water (DT1, published, T1)", inK(rise)))
	}
	return []Flag{m.flag("flow-restricted", Act, []diagram.Point{diagram.RadIn, diagram.RadOut},
		fmt.Sprintf("The radiator cools the coolant by %s while the engine is above its rating: too little coolant gets through.", inK(d.ValueK)),
		because...)}
}

// airSide: the radiator is hot all through and gives its heat to no air.
func (m *moment) airSide() []Flag {
	d := m.delta(AcrossRadiator)
	if d == nil || d.State != Low || m.engine.regime != Above || m.fanMayWait() {
		return nil
	}
	out, _ := m.at(diagram.RadOut)
	if out.TrueC < m.rating.opensC-10 { // a cool face gives no heat because it gets none
		return nil
	}
	severity := Act
	if m.slow() && m.round.Fan != cases.FanOn && !m.fanIsLate() {
		severity = Look
	}
	because := []string{m.engineWords(), m.ends(d), d.words(), "fan " + orUnknown(m.round.Fan, cases.FanUnknown).Name()}
	return []Flag{m.flag("air-side", severity, []diagram.Point{diagram.RadIn, diagram.RadOut},
		fmt.Sprintf("The radiator is hot all through and cools the coolant by only %s: it gets too little air.", inK(d.ValueK)),
		because...)}
}

// fanMayWait reports whether a standing vehicle's fan is off because it isn't
// its time yet; the radiator then is hot all through and well.
func (m *moment) fanMayWait() bool {
	return m.slow() && m.round.Fan == cases.FanOff && !m.beltFan() && !m.fanIsLate()
}

func (m *moment) fanIsLate() bool {
	return m.engine.c != nil && *m.engine.c >= m.fanStartC()+fanLateK
}

func (m *moment) fanNotRunning() []Flag {
	if m.round.Fan != cases.FanOff || m.beltFan() || m.c.Loop.Fan == "none" || !m.slow() || !m.fanIsLate() || m.shutOff() != nil {
		return nil
	}
	return []Flag{m.flag("fan-not-running", Act, nil,
		fmt.Sprintf("The fan is off with the engine at %s, well above its usual start.", inC(*m.engine.c)),
		m.engineWords(), fmt.Sprintf("fans usually start by %s; %d K over it is late (FN1, published, V23; F07, common practice)", inC(m.fanStartC()), fanLateK))}
}

// fanRunning: a fan that runs on a cool engine keeps it cool.
func (m *moment) fanRunning() []Flag {
	if m.round.Fan != cases.FanOn || m.beltFan() || m.engine.c == nil || *m.engine.c >= m.rating.opensC {
		return nil
	}
	severity := Note
	if m.engine.regime == Shut || m.engine.regime == Below {
		severity = Look
	}
	return []Flag{m.flag("fan-running", severity, nil,
		fmt.Sprintf("The fan runs with the engine at only %s.", inC(*m.engine.c)), m.engineWords(),
		"it may, with the air conditioning on (FN9, published, T7) or a code stored that makes it run")}
}

// ends tells both readings of a delta.
func (m *moment) ends(d *Delta) string {
	from, to := m.readings[diagram.Point(d.From)], m.readings[diagram.Point(d.To)]
	return fmt.Sprintf("%s, %s: %s apart", readingWords(from), readingWords(to), inK(d.ValueK))
}

func (m *moment) engineRise() (diagram.DeltaK, bool) {
	out, okOut := m.at(diagram.EngineOut)
	in, okIn := m.at(diagram.PumpIn)
	return out.TrueC.Minus(in.TrueC), okOut && okIn
}
