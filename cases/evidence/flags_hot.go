package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// heat is what a round tells of whether the coolant scalds.
type heat int

const (
	untold heat = iota
	cold
	hot
)

// heat takes the engine for hot by whatever says so, a doubtful reading too, and
// for cold only by its own hot side: a cold hose stands on a hot engine as well.
func (m *moment) heat() heat {
	if t, ok := m.mostC(); ok && t > cases.OpenBelowC || m.warmByGauge() {
		return hot
	}
	if m.engine.c != nil && (m.round.EctC != nil || m.readOnEngine()) {
		return cold
	}
	return untold
}

// readOnEngine reports whether a place was surely read that is warm whenever the engine
// is: the heater's supply and a hose may be shut off, and the housing at an inlet
// belongs to the cool side. Bare metal shows the gun far too little (aluminium in
// testdata/reference/emissivity.csv, published): one place by itself counts only where somebody noted
// what the gun met there.
func (m *moment) readOnEngine() bool {
	places := []diagram.Point{diagram.Bypass}
	if m.side() == diagram.Outlet {
		places = append(places, diagram.Housing)
	}
	read, noted := 0, false
	for _, p := range places {
		if r, ok := m.at(p); ok {
			read, noted = read+1, noted || r.Surface != cases.Surface{}
		}
	}
	return noted || read > 1
}

func (m *moment) warmByGauge() bool {
	switch m.round.Gauge {
	case "middle", cases.GaugeAboveMiddle, cases.GaugeRed:
		return true
	}
	return false
}

// believedC is the highest temperature of the coolant by what can be judged by: the sensor, or the
// hottest point.
func (m *moment) believedC() (diagram.Celsius, bool) {
	best, ok := m.hottestLiquid()
	if t := m.round.EctC; t != nil && (!ok || *t > best) {
		return *t, true
	}
	return best, ok
}

// mostC is the highest temperature that the round notes of the coolant, whoever
// is right.
func (m *moment) mostC() (diagram.Celsius, bool) {
	best, ok := m.believedC()
	for p, r := range m.readings {
		if !p.Air() && (!ok || r.TrueC > best) {
			best, ok = r.TrueC, true
		}
	}
	return best, ok
}

// saidC is the highest temperature that is told for the coolant's: a reading that is too doubtful
// to judge by keeps the cap shut, but its figure isn't told where there is a better one.
func (m *moment) saidC() (diagram.Celsius, bool) {
	if t, ok := m.believedC(); ok && t > cases.OpenBelowC {
		return t, true
	}
	return m.mostC()
}

// lastHot is the last round that was hot and after which none shows the engine
// cold; nil: none.
func lastHot(all []*moment) *moment {
	for i := len(all) - 1; i >= 0; i-- {
		switch all[i].heat() {
		case hot:
			return all[i]
		case cold:
			return nil
		}
	}
	return nil
}

// hotCaution keeps the cap shut, and hands from the fan and the belt, until the
// case itself shows the engine cold.
func hotCaution(all []*moment) []Flag {
	m := lastHot(all)
	if m == nil {
		return nil
	}
	t, ok := m.saidC()
	text := say.Of("flag.hot-caution-before", t, m.place(), cases.OpenBelowC)
	switch {
	case !ok || t <= cases.OpenBelowC || m.redOnACoolSensor():
		text = say.Of("flag.hot-caution-gauge", cases.OpenBelowC)
	case m.i == len(all)-1:
		text = say.Of("flag.hot-caution", t, cases.OpenBelowC)
	}
	return []Flag{ofCase(hotCautionID, Note, text,
		say.Of("because.cap-shut", cases.OpenBelowC),
		say.Of("because.fan-by-itself"), // T6
		say.Of("because.belt"))}         // V20
}

// The flags of what can hurt stand before all others.
const (
	stopHotID    = "stop-hot"
	hotCautionID = "hot-caution"
)

// Caution reports whether the flag is no finding but says what can hurt.
func (f Flag) Caution() bool { return f.ID == hotCautionID }

// stopHotC is where an engine is switched off, whatever its thermostat: halfway
// from the hottest that fans allow (FN5, 105 to 112 °C, common practice) to where
// coolant under a usual cap boils.
const stopHotC diagram.Celsius = 115

// TooHotToRun reports whether the engine of a round, as it was judged, has to be
// switched off before anything else is done with it.
func TooHotToRun(noted *cases.Round, found Round) bool {
	return noted.Gauge == cases.GaugeRed || found.EngineC != nil && *found.EngineC >= stopHotC
}

// stopHot says first of all what to do with an engine that is too hot, as long
// as the last round was.
func stopHot(all []*moment) []Flag {
	if len(all) == 0 {
		return nil
	}
	last := all[len(all)-1]
	if !TooHotToRun(last.round, Round{EngineC: last.engine.c}) {
		return nil
	}
	because := []say.Text{last.engineText(), say.Of("because.stop-hot", stopHotC)}
	if last.round.Gauge == cases.GaugeRed {
		because = append([]say.Text{say.Of("because.gauge-red")}, because...)
	}
	return []Flag{ofCase(stopHotID, Act, say.Of("flag.stop-hot"), because...)}
}
