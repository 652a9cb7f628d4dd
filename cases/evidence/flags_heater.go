package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

const (
	supplyWarmC diagram.Celsius = 50  // below it a heater drop says little
	supplyHotC  diagram.Celsius = 70  // hot enough to heat the cabin
	valveStepK  diagram.DeltaK  = 30  // DT12, common practice
	hosesOddK   diagram.DeltaK  = 15  // DT10: a drop up to here is well, common practice
	coldDayC    diagram.Celsius = -10 // what an unnoted day may be, common practice
	ventLowC    diagram.Celsius = 50  // HT1: at the vent in air of 20 °C, common practice
	ventHighC   diagram.Celsius = 65
	ventShare                   = 0.4 // of the way from the air outside to the supply; HT1's low end is 0.46, common practice
)

// heaterFlow: too little or nothing gets through the heater. In a warm-up a
// drop is a hint only.
func (m *moment) heaterFlow() []Flag {
	if m.round.Heater == cases.HeaterOff {
		return nil
	}
	if f := m.heaterCold(); f != nil {
		return f
	}
	d := m.delta(HeaterDrop)
	supply, _ := m.at(diagram.HeaterIn)
	if d == nil || d.State != High || supply.TrueC < supplyWarmC {
		return nil
	}
	severity := Act
	if m.engine.regime == Shut || m.engine.regime == NoRegime || !m.farOut(d) { // no more than two readings differ by
		severity = Look
	}
	points := []diagram.Point{diagram.HeaterIn, diagram.HeaterOut}
	back, _ := m.at(diagram.HeaterOut)
	cold := d.ValueK > valveStepK && m.asCold(back)
	if cold && !m.round.Heater.Asked() {
		return []Flag{m.flag("heater-no-flow", Look, points,
			say.Of("flag.heater-return-cold-ask"),
			m.ends(d), m.outsideText(UsualAmbientC), say.Of("because.heater-not-noted"))}
	}
	if cold {
		return []Flag{m.flag("heater-no-flow", severity, points,
			say.Of("flag.heater-return-cold"),
			m.ends(d), m.outsideText(UsualAmbientC), say.Of("because.heater-step", valveStepK))}
	}
	return []Flag{m.flag("heater-restricted", severity, points,
		say.Of("flag.heater-restricted", d.ValueK),
		m.ends(d), d.text(), say.Of("because.heater-obstruction"))} // V21, in words
}

// heaterCold: both hoses cold on a warm engine.
func (m *moment) heaterCold() []Flag {
	supply, ok := m.at(diagram.HeaterIn)
	if !ok || !m.isHot() || m.engine.c == nil {
		return nil
	}
	under := m.engine.c.Minus(supply.TrueC)
	if under <= valveStepK {
		return nil
	}
	points := []diagram.Point{diagram.HeaterIn, diagram.HeaterOut}
	if !m.round.Heater.Asked() {
		return []Flag{m.flag("heater-no-flow", Look, points, say.Of("flag.heater-supply-cold-ask", under),
			m.engineText(), readingText(supply), say.Of("because.heater-not-noted"))}
	}
	return []Flag{m.flag("heater-no-flow", Act, points, say.Of("flag.heater-supply-cold", under),
		m.engineText(), readingText(supply), say.Of("because.heater-step", valveStepK))}
}

// heaterAirSide: hot hoses and a cold vent put the fault on the cabin's side.
func (m *moment) heaterAirSide() []Flag {
	vent, okVent := m.at(diagram.Vent)
	supply, okIn := m.at(diagram.HeaterIn)
	back, okOut := m.at(diagram.HeaterOut)
	if !okVent || !okIn || !okOut || m.round.Heater == cases.HeaterOff || m.round.Heater == cases.HeaterHalf {
		return nil
	}
	if supply.TrueC < supplyHotC || supply.TrueC.Minus(back.TrueC) > hosesOddK || m.ventShare(vent, supply) >= ventShare {
		return nil
	}
	because := []say.Text{readingText(supply), readingText(back), m.outsideText(coldDayC),
		say.Of("because.heater-air-side", ventLowC, ventHighC, UsualAmbientC, m.ventLeastC(supply))} // F25, HT1
	points := []diagram.Point{diagram.Vent}
	if !m.round.Heater.Asked() { // cold air may be what was set
		return []Flag{m.flag("heater-air-side", Look, points, say.Of("flag.heater-air-side-ask", vent.TrueC),
			append(because, say.Of("because.heater-not-noted"))...)}
	}
	return []Flag{m.flag("heater-air-side", Act, points, say.Of("flag.heater-air-side", vent.TrueC), because...)}
}

// ventLeastC is what the vent gives here at least in good order.
func (m *moment) ventLeastC(supply Reading) diagram.Celsius {
	outside := m.outside(coldDayC)
	return outside + diagram.Celsius(ventShare*float64(supply.TrueC.Minus(outside)))
}

// ventShare is how far the vent's air got from the outside to the supply.
func (m *moment) ventShare(vent, supply Reading) float64 {
	outside := m.outside(coldDayC)
	return float64(vent.TrueC.Minus(outside) / supply.TrueC.Minus(outside))
}
