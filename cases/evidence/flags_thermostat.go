package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

const (
	coldHoseK   diagram.DeltaK  = 15 // DT7: over the air outside, no flow; common practice
	followsK    diagram.DeltaK  = 15 // DT9: under the engine, flow; common practice
	stepFromK   diagram.DeltaK  = 10 // DT6: over the rating, the step is judged; common practice
	shutAirK    diagram.DeltaK  = 15 // AR1: a shut thermostat's radiator warms its air by no more; common practice
	backK       diagram.DeltaK  = 30 // F02: the hose behind a shut thermostat under the engine; common practice
	earlyK      diagram.DeltaK  = 6  // F04: under the rating, an opening is early; common practice
	bypassRiseK diagram.DeltaK  = 5  // F11: engine's outlet over its inlet beside an open bypass, common practice
	inletUnderK diagram.DeltaK  = 6  // an inlet's wax under the engine's outlet at idle, judgement
	hotDayC     diagram.Celsius = 35 // what an unnoted day may be, common practice
	noCallFrom                  = drivenMinutes
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

// asCold reports whether a hose is as cold as the air outside, so that nothing comes through it.
func (m *moment) asCold(hose Reading) bool {
	return hose.TrueC <= m.ambientC+diagram.Celsius(coldHoseK)
}

// findShut is the evidence that nothing passes the thermostat of an engine
// above its rating, or nil.
func (m *moment) findShut() []say.Text {
	if m.engine.regime != Above || m.passedBefore() {
		return nil
	}
	if d := m.delta(ThermostatStep); d != nil && d.State == High && m.over(stepFromK) {
		return []say.Text{m.ends(d), d.text()}
	}
	if hose, ok := m.at(diagram.EngineOut); ok && m.side() == diagram.Outlet && m.standsBack(hose) && !m.heaterStandsBack() {
		return []say.Text{say.Of("because.stands-back", say.Place(hose.Point), hose.TrueC, m.engine.c.Minus(hose.TrueC), backK)}
	}
	if hose, ok := m.farHose(); ok && m.asCold(hose) && !m.givesOffHeat() {
		return []say.Text{readingText(hose), m.outsideText(UsualAmbientC), say.Of("because.no-flow", coldHoseK)}
	}
	return nil
}

// passedBefore reports whether the far hose followed the engine in a round before, in which that was no hotter: its
// thermostat opens, and what keeps the coolant back by now is something else (F02 and F05: what rules a shut one out).
func (m *moment) passedBefore() bool {
	return slices.ContainsFunc(m.before, func(b *moment) bool {
		return m.engine.c != nil && b.passes() && *b.engine.c <= *m.engine.c
	})
}

// passes reports whether the far hose follows the engine.
func (m *moment) passes() bool {
	hose, ok := m.farHose()
	return ok && m.engine.c != nil && m.engine.c.Minus(hose.TrueC) <= followsK
}

// staysShut reports whether nothing passes the thermostat, or nothing did in a round before and nothing shows by now
// that it opened: coolant that creeps warms a still hose in time.
func (m *moment) staysShut() bool {
	return m.shut != nil || !m.passes() && slices.ContainsFunc(m.before, func(b *moment) bool { return b.shut != nil })
}

// givesOffHeat reports whether air that a fan or the road moves leaves the radiator warmer than it does while a
// thermostat is shut: then coolant comes to it, however cold it leaves (energy balance).
func (m *moment) givesOffHeat() bool {
	before, ok := m.at(diagram.AirOn)
	behind, okBehind := m.at(diagram.AirOff)
	moved := m.round.Fan == cases.FanOn || PaceOf(m.round) == OnRoad
	return ok && okBehind && moved && behind.TrueC.Minus(before.TrueC) > shutAirK
}

// standsBack reports whether a hose is so far under an engine above its rating that nothing comes
// through it.
func (m *moment) standsBack(hose Reading) bool {
	return m.over(stepFromK) && m.engine.c.Minus(hose.TrueC) >= backK
}

// heaterStandsBack: where the heater gets nothing either, it isn't the thermostat that keeps the
// coolant back, but air or a lack of it.
func (m *moment) heaterStandsBack() bool {
	supply, ok := m.at(diagram.HeaterIn)
	return ok && m.standsBack(supply)
}

// over reports whether the engine is that much above its rating.
func (m *moment) over(k diagram.DeltaK) bool {
	return m.engine.c != nil && m.engine.c.Minus(m.rating.opensC) > k
}

// outside is the air's temperature, or what is safe to assume for a rule.
func (m *moment) outside(assumed diagram.Celsius) diagram.Celsius {
	if a := outsideC(m.c, m.i); a != nil {
		return *a
	}
	return assumed
}

// outsideText says what outside is. A rule that assumes a day hotter or colder than usual
// does so to be on the safe side: nobody is to take that for the weather.
func (m *moment) outsideText(assumed diagram.Celsius) say.Text {
	switch {
	case AirNoted(m.c, m.i) != nil:
		return say.Of("because.outside", m.ambientC)
	case outsideC(m.c, m.i) != nil:
		return say.Of("because.outside-read", m.ambientC)
	case assumed == UsualAmbientC:
		return say.Of("because.outside-assumed", assumed)
	}
	return say.Of("because.outside-even", assumed)
}

func (m *moment) notOpening() []Flag {
	evidence := m.shut
	if evidence == nil {
		return nil
	}
	points := []diagram.Point{diagram.Housing}
	if hose, ok := m.farHose(); ok {
		points = append(points, hose.Point)
	}
	return []Flag{m.flag("thermostat-not-opening", Act, points,
		say.Of("flag.thermostat-not-opening"), append([]say.Text{m.engineText()}, evidence...)...)}
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
		say.Of("flag.thermostat-passing-early", engine),
		m.engineText(), say.Of("because.follows", say.Place(hose.Point), hose.TrueC, under, followsK),
		m.outsideText(hotDayC))}
}

// wasHot reports whether an earlier round of the stage found the engine warm.
func (m *moment) wasHot() bool { return slices.ContainsFunc(m.before, (*moment).isHot) }

func (m *moment) isHot() bool { return m.engine.regime == AtRating || m.engine.regime == Above }

// runsOn reports whether the engine may have run on from an earlier round. Fewer minutes since its start than
// there were then mean another start, before which it may have stood all night.
func (m *moment) runsOn(from *moment) bool {
	then, now := from.round.MinutesSinceStart, m.round.MinutesSinceStart
	return then == nil || now == nil || *now >= *then
}

// belowTarget: warm-up's verdict, in the regulator's form. That a round can't tell isn't said where
// the radiator tells already.
func (m *moment) belowTarget() []Flag {
	if m.redOnACoolSensor() {
		return nil
	}
	cool := m.engine.regime == Shut || m.engine.regime == Below
	if m.engine.onHose && m.regimeAt(*m.engine.c+diagram.Celsius(hoseUnderK)) == AtRating {
		return nil // the coolant in it may be as warm as it should
	}
	rule := m.rating.targetRule()
	ranHot := slices.ContainsFunc(m.before, func(b *moment) bool { return b.isHot() && m.runsOn(b) })
	fellBack := ranHot && PaceOf(m.round) == OnRoad
	why := m.noCall()
	switch {
	case cool && fellBack:
		return []Flag{m.flag("engine-below-target", Act, nil, m.orByGauge("flag.fell-back", "flag.fell-back-gauge"), m.engineText(), rule)}
	case m.engine.regime == Below:
		return []Flag{m.flag("engine-below-target", Act, nil, m.orByGauge("flag.stays-cool", "flag.stays-cool-gauge"),
			m.engineText(), rule, say.Of("because.minutes", *m.round.MinutesSinceStart))}
	case cool && !ranHot && m.passingEarly() == nil && (m.round.MinutesSinceStart == nil || *m.round.MinutesSinceStart >= noCallFrom):
		return []Flag{m.flag("warm-up-no-call", Note, nil, m.orByGauge("flag.warm-up-open", "flag.warm-up-open-gauge"), why, m.engineText())}
	}
	return nil
}

// targetRule is REG1, or TH7 where a heated thermostat may hold less than that asks for.
func (r rating) targetRule() say.Text {
	if r.targetC < r.opensC-diagram.Celsius(targetK) {
		return say.Of("because.target-heated", r.targetC)
	}
	return say.Of("because.target", r.targetC, targetK)
}

// orByGauge says a sentence with the engine's temperature, or the one that does
// without where only the gauge is known.
func (m *moment) orByGauge(key, byGauge string) say.Text {
	if m.engine.c == nil {
		return say.Of(byGauge)
	}
	return say.Of(key, *m.engine.c)
}

// SwitchOffK is how far over its rating an engine is soon let cool: a usual one is
// past where fans start then, and near their second speed (FN1, FN5; judgement).
const SwitchOffK diagram.DeltaK = 15

// aboveRating lets a standing engine wait for its fan.
func (m *moment) aboveRating() []Flag {
	if m.engine.regime != Above {
		return nil
	}
	waits := m.slow() && !m.beltFan() && !m.fanIsLate()
	switch {
	case m.engine.c == nil && m.round.Gauge == cases.GaugeAboveMiddle:
		return []Flag{m.flag("engine-above-rating", Look, nil, say.Of("flag.gauge-high"), m.engineText())}
	case m.engine.c == nil || m.round.EctC == nil && m.round.Gauge == cases.GaugeRed:
		return []Flag{m.flag("engine-above-rating", Act, nil, say.Of("flag.gauge-red"), m.engineText())}
	case waits && m.shut == nil:
		return nil
	}
	key := "flag.engine-above-rating"
	if m.over(SwitchOffK) && m.round.Gauge != cases.GaugeRed && *m.engine.c < stopHotC { // nobody switches off before what is there
		key = "flag.engine-far-above-rating"
	}
	return []Flag{m.flag("engine-above-rating", Act, nil,
		say.Of(key, *m.engine.c, m.engine.c.Minus(m.rating.opensC)),
		m.engineText(), say.Of("because.above-rating", aboveK, diagram.DeltaK(fanLateK)))} // DT4, TH9
}

// bypassOpen is told once the thermostat's second plate should have shut it, by
// the tolerance of its opening (TH1) and not at the very degree that is given. That of a thermostat which
// doesn't open is open rightly.
func (m *moment) bypassOpen() []Flag {
	if m.engine.c == nil || !m.fullyOpen() || m.staysShut() || m.littleThrough() {
		return nil
	}
	if d := m.delta(BypassBelowEngineOut); d != nil && d.State == Low {
		return []Flag{m.flag("bypass-open", Act, []diagram.Point{diagram.Bypass},
			say.Of("flag.bypass-open"), m.engineText(), m.ends(d), d.text())}
	}
	if d := m.delta(MixStep); d != nil && d.State == High {
		return []Flag{m.flag("bypass-open", Look, []diagram.Point{diagram.Housing, diagram.PumpIn},
			say.Of("flag.bypass-mixes", d.ValueK), m.engineText(), m.ends(d), d.text())}
	}
	return nil
}

// fullyOpen reports whether the engine is so hot that its thermostat is open all the way. An inlet's is in colder coolant than
// leaves the engine, which its housing shows.
func (m *moment) fullyOpen() bool {
	full := m.rating.fullC + opensEarlyK
	if m.side() != diagram.Inlet {
		return *m.engine.c >= full
	}
	in, ok := m.at(diagram.Housing)
	return ok && in.TrueC >= full || *m.engine.c >= full+diagram.Celsius(inletUnderK)
}

// littleThrough reports whether the coolant of an inlet thermostat's loop warms on its way through the engine by more than a
// bypass that takes most of it lets it (F11): then the valve mixes as it should, and something else holds the flow.
func (m *moment) littleThrough() bool {
	in, ok := m.at(diagram.Housing)
	out, okOut := m.first(diagram.EngineOut, diagram.RadIn)
	return ok && okOut && out.TrueC.Minus(in.TrueC) > bypassRiseK
}
