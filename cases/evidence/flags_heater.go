package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
)

const (
	supplyWarmC diagram.Celsius = 50  // below it a heater drop says little
	supplyHotC  diagram.Celsius = 70  // hot enough to heat the cabin
	valveStepK  diagram.DeltaK  = 30  // DT12, common practice
	hosesOddK   diagram.DeltaK  = 15  // DT10: a drop up to here is well, common practice
	coldDayC    diagram.Celsius = -10 // what an unnoted day may be, common practice
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
	if m.engine.regime == Shut || m.engine.regime == NoRegime {
		severity = Look
	}
	points := []diagram.Point{diagram.HeaterIn, diagram.HeaterOut}
	back, _ := m.at(diagram.HeaterOut)
	cold := d.ValueK > valveStepK && back.TrueC <= m.ambientC+diagram.Celsius(coldHoseK)
	if cold && !m.heatAskedFor() {
		return []Flag{m.flag("heater-no-flow", Look, points,
			"The heater's supply is hot and its return is as cold as the air outside: is the heater on? If it is, nothing flows through it.",
			m.ends(d), m.outsideWords(usualAmbientC), "the heater's setting is not noted")}
	}
	if cold {
		return []Flag{m.flag("heater-no-flow", severity, points,
			"The heater's supply is hot and its return is as cold as the air outside: nothing flows through the heater.",
			m.ends(d), m.outsideWords(usualAmbientC), "a step above 30 K with heat asked for is a shut valve or no flow (DT12, common practice)")}
	}
	return []Flag{m.flag("heater-restricted", severity, points,
		fmt.Sprintf("The heater's return is %s cooler than its supply: too little coolant flows through the heater.", inK(d.ValueK)),
		m.ends(d), d.words(), "a much cooler return means an obstruction or weak flow (published in words, V21)")}
}

// heaterCold: both hoses cold on a warm engine.
func (m *moment) heaterCold() []Flag {
	supply, ok := m.at(diagram.HeaterIn)
	warm := m.engine.regime == AtRating || m.engine.regime == Above
	if !ok || !warm || m.engine.c == nil {
		return nil
	}
	under := m.engine.c.Minus(supply.TrueC)
	if under <= valveStepK {
		return nil
	}
	points := []diagram.Point{diagram.HeaterIn, diagram.HeaterOut}
	text := fmt.Sprintf("The heater's supply is %s under the engine: ", inK(under))
	if !m.heatAskedFor() {
		return []Flag{m.flag("heater-no-flow", Look, points,
			text+"is the heater on? If it is, no coolant comes to it: set it to full and read again.",
			m.engineWords(), readingWords(supply), "the heater's setting is not noted")}
	}
	return []Flag{m.flag("heater-no-flow", Act, points, text+"no coolant comes to the heater.",
		m.engineWords(), readingWords(supply), "a step above 30 K with heat asked for is a shut valve or no flow (DT12, common practice)")}
}

// heatAskedFor reports whether the round notes that the heater is on.
func (m *moment) heatAskedFor() bool {
	return m.round.Heater == cases.HeaterFull || m.round.Heater == cases.HeaterHalf
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
	return []Flag{m.flag("heater-air-side", Act, []diagram.Point{diagram.Vent},
		fmt.Sprintf("Both heater hoses are hot and the vent gives only %s: the fault is on the air's side, not in the loop.", inC(vent.TrueC)),
		readingWords(supply), readingWords(back), m.outsideWords(coldDayC),
		"both hoses hot and a cold vent is a flap, a filter or the blower (F25, common practice; HT1: 50 to 65 °C at the vent in air of 20 °C)")}
}

// ventShare is how far the vent's air got from the outside to the supply.
func (m *moment) ventShare(vent, supply Reading) float64 {
	outside := m.outside(coldDayC)
	return float64(vent.TrueC.Minus(outside) / supply.TrueC.Minus(outside))
}
