package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
)

const (
	coldHoseK  diagram.DeltaK  = 15 // DT7: over the air outside, no flow; common practice
	followsK   diagram.DeltaK  = 15 // DT9: under the engine, flow; common practice
	stepFromK  diagram.DeltaK  = 10 // DT6: over the rating, the step is judged; common practice
	earlyK     diagram.DeltaK  = 6  // F04: under the rating, an opening is early; common practice
	hotDayC    diagram.Celsius = 35 // what an unnoted day may be, common practice
	noCallFrom                 = drivenMinutes
)

// farHose is the hose that stays cold while the thermostat is shut: the upper
// at the radiator with a thermostat in the outlet. With one in the inlet the
// upper hose creeps warm, so the lower one tells; for an unknown layout too.
func (m *moment) farHose() (Reading, bool) {
	if m.side() == diagram.Outlet {
		return m.first(diagram.RadIn, diagram.RadOut)
	}
	return m.first(diagram.RadOut, diagram.PumpIn)
}

// shutOff is the evidence that nothing passes the thermostat of an engine
// above its rating, or nil.
func (m *moment) shutOff() []string {
	if m.engine.regime != Above {
		return nil
	}
	if d := m.delta(ThermostatStep); d != nil && d.State == High && m.over(stepFromK) {
		return []string{m.ends(d), d.words()}
	}
	if hose, ok := m.farHose(); ok && hose.TrueC <= m.ambientC+diagram.Celsius(coldHoseK) {
		return []string{readingWords(hose), m.outsideWords(usualAmbientC), fmt.Sprintf("within %s of the air outside nothing flows (DT7, common practice)", inK(coldHoseK))}
	}
	return nil
}

// over reports whether the engine is that much above its rating.
func (m *moment) over(k diagram.DeltaK) bool {
	return m.engine.c != nil && m.engine.c.Minus(m.rating.opensC) > k
}

// outside is the air's temperature, or what is safe to assume for a rule.
func (m *moment) outside(assumed diagram.Celsius) diagram.Celsius {
	if a := m.c.Ambient(m.i); a != nil {
		return *a
	}
	return assumed
}

func (m *moment) outsideWords(assumed diagram.Celsius) string {
	if m.c.Ambient(m.i) == nil {
		return fmt.Sprintf("the air outside is not noted: %s assumed", inC(assumed))
	}
	return fmt.Sprintf("air outside at %s", inC(m.ambientC))
}

func (m *moment) notOpening() []Flag {
	evidence := m.shutOff()
	if evidence == nil {
		return nil
	}
	points := []diagram.Point{diagram.Housing}
	if hose, ok := m.farHose(); ok {
		points = append(points, hose.Point)
	}
	return []Flag{m.flag("thermostat-not-opening", Act, points,
		"The engine is above its rating and the radiator's side is cold: nothing passes the thermostat.",
		append([]string{m.engineWords()}, evidence...)...)}
}

// passingEarly: the radiator warms with the engine before the thermostat may
// open. After a hot round it may only be warm still.
func (m *moment) passingEarly() []Flag {
	hose, ok := m.farHose()
	if !ok || m.engine.c == nil || m.wasHot() {
		return nil
	}
	engine, limit := *m.engine.c, max(m.rating.targetC, m.rating.opensC-diagram.Celsius(earlyK))
	if m.rating.heated {
		limit = m.rating.targetC // its heater may open it from there on
	}
	under := engine.Minus(hose.TrueC)
	if engine >= limit || under > followsK || hose.TrueC <= m.outside(hotDayC)+diagram.Celsius(coldHoseK) {
		return nil
	}
	severity := Look
	if engine < m.rating.targetC {
		severity = Act
	}
	return []Flag{m.flag("thermostat-passing-early", severity, []diagram.Point{hose.Point},
		fmt.Sprintf("Coolant reaches the radiator with the engine at only %s: the thermostat stands open or opens early.", inC(engine)),
		m.engineWords(), fmt.Sprintf("%s, only %s under the engine; up to %s means flow (DT9, common practice)", readingWords(hose), inK(under), inK(followsK)),
		m.outsideWords(hotDayC))}
}

// wasHot reports whether an earlier round of the stage found the engine warm.
func (m *moment) wasHot() bool {
	for _, b := range m.before {
		if b.engine.regime == AtRating || b.engine.regime == Above {
			return true
		}
	}
	return false
}

// belowTarget: warm-up's verdict, in the regulator's form.
func (m *moment) belowTarget() []Flag {
	cool := m.engine.regime == Shut || m.engine.regime == Below
	rule := fmt.Sprintf("a warm engine stands above %s, 11 K under the rating (REG1, published, R1, R4)", inC(m.rating.targetC))
	fellBack := m.wasHot() && paceOf(m.round) == road
	why := m.noCall()
	switch {
	case cool && fellBack:
		return []Flag{m.flag("engine-below-target", Act, nil, m.coolText("fell back to")+" on the road: the thermostat doesn't hold it.", m.engineWords(), rule)}
	case m.engine.regime == Below:
		return []Flag{m.flag("engine-below-target", Act, nil, m.coolText("stays at")+" though it had the time to warm up.",
			m.engineWords(), rule, fmt.Sprintf("%.0f min since the start", *m.round.MinutesSinceStart))}
	case cool && !m.wasHot() && (m.round.MinutesSinceStart == nil || *m.round.MinutesSinceStart >= noCallFrom):
		return []Flag{m.flag("warm-up-no-call", Note, nil, m.coolText("stands at")+"; whether that is too cold can't be told from this round.", why, m.engineWords())}
	}
	return nil
}

func (m *moment) coolText(verb string) string {
	if m.engine.c == nil {
		return "By its gauge the engine " + verb + " a low temperature"
	}
	return fmt.Sprintf("The engine %s %s", verb, inC(*m.engine.c))
}

// aboveRating lets a standing engine wait for its fan.
func (m *moment) aboveRating() []Flag {
	if m.engine.regime != Above {
		return nil
	}
	waits := m.slow() && !m.beltFan() && !m.fanIsLate()
	switch {
	case m.engine.c == nil && m.round.Gauge == cases.GaugeAboveMiddle:
		return []Flag{m.flag("engine-above-rating", Look, nil, "By its gauge the engine is hotter than usual.", m.engineWords())}
	case m.engine.c == nil || m.round.EctC == nil && m.round.Gauge == cases.GaugeRed:
		return []Flag{m.flag("engine-above-rating", Act, nil, "By its gauge the engine is too hot.", m.engineWords())}
	case waits && m.shutOff() == nil:
		return nil
	}
	return []Flag{m.flag("engine-above-rating", Act, nil,
		fmt.Sprintf("The engine is at %s, %s above its rating.", inC(*m.engine.c), inK(m.engine.c.Minus(m.rating.opensC))),
		m.engineWords(), "more than 8 K above the rating is hot (DT4, TH9, common practice); standing, up to 5 K over the fan's start")}
}

// bypassOpen is told once the thermostat's second plate should have shut it.
func (m *moment) bypassOpen() []Flag {
	if m.lift() != full || m.shutOff() != nil {
		return nil
	}
	if d := m.delta(BypassBelowEngineOut); d != nil && d.State == Low {
		return []Flag{m.flag("bypass-open", Act, []diagram.Point{diagram.Bypass},
			"The bypass is as hot as the engine's outlet with the engine fully hot: it stays open.", m.engineWords(), m.ends(d), d.words())}
	}
	if d := m.delta(MixStep); d != nil && d.State == High {
		return []Flag{m.flag("bypass-open", Look, []diagram.Point{diagram.Housing, diagram.PumpIn},
			fmt.Sprintf("The thermostat housing is %s hotter than the lower hose with the engine fully hot: hot coolant still joins by the bypass.", inK(d.ValueK)),
			m.engineWords(), m.ends(d), d.words())}
	}
	return nil
}
