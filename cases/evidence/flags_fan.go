package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// fanStartC is the highest temperature at which a fan usually starts: 98 °C
// (FN1, published, V23), or 10 K over a hotter rating (common practice).
func fanStartC(opensC diagram.Celsius) diagram.Celsius { return max(usualFanStartC, opensC+10) }

// FanDueC is where a fan that still stands is late, with a thermostat of that rating.
func FanDueC(opensC diagram.Celsius) diagram.Celsius { return fanStartC(opensC) + fanLateK }

const (
	usualFanStartC diagram.Celsius = 98
	secondLowC     diagram.Celsius = 105 // a fan's second speed: FN5, common practice
	secondHighC    diagram.Celsius = 112
)

// fanRestsC is where the last fan has stopped: a viscous clutch has let go by 57 °C, an electric one was switched off
// before (FN7 and FN2, published).
const fanRestsC = 57

// A viscous fan turns freely for no more turns than these when it is cold, and bites once the air at its clutch has come
// to a temperature between these: FN8 and FN6, published (V20).
const (
	ViscousTurns                   = 5
	ViscousBitesC  diagram.Celsius = 74
	ViscousBittenC diagram.Celsius = 82
)

// fanLateK is how far over its usual start a fan may be late (F07 in
// signatures.csv, common practice).
const fanLateK = 5

// beltFan reports whether the engine turns the fan, so that "off" says little.
func (m *moment) beltFan() bool { return m.c.Loop.Fan.ByBelt() }

// fanMayWait reports whether a standing vehicle's fan is off because it isn't
// its time yet; the radiator then is hot all through and well.
func (m *moment) fanMayWait() bool {
	return m.slow() && m.round.Fan == cases.FanOff && !m.beltFan() && !m.fanIsLate()
}

func (m *moment) fanIsLate() bool {
	return m.engine.c != nil && *m.engine.c >= FanDueC(m.rating.opensC)
}

func (m *moment) fanNotRunning() []Flag {
	if m.round.Fan != cases.FanOff || m.beltFan() || m.c.Loop.Fan == cases.NoFan || !m.slow() || !m.fanIsLate() || m.shut != nil {
		return nil
	}
	return []Flag{m.flag("fan-not-running", Act, nil,
		say.Of("flag.fan-not-running", *m.engine.c),
		m.engineText(), fanStarts(m.rating.opensC))} // F07
}

// fanStarts is where fans start: FN1 for a usual rating, which a hotter one leaves behind.
func fanStarts(opensC diagram.Celsius) say.Text {
	start := fanStartC(opensC)
	if start > usualFanStartC {
		return say.Of("because.fan-starts-hot", start, opensC, diagram.DeltaK(fanLateK))
	}
	return say.Of("because.fan-starts", start, diagram.DeltaK(fanLateK))
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
		say.Of("flag.fan-running", *m.engine.c), m.engineText(), say.Of("because.fan-may"))} // FN9
}

// fanTest passes a fan that runs when it is told to, or that starts in time: one
// that merely stands has shown nothing. In time is by the thermostat's rating, as in
// the rounds.
func fanTest(c *cases.Case, t *cases.Test) judgement {
	opens := ratingOf(c).opensC
	switch {
	case is(t.Commanded, true) && is(t.Runs, false):
		return found("dead", ofCase("fan-not-running", Act, say.Of("flag.fan-dead"), say.Of("because.fan-commanded")))
	case is(t.Commanded, false) && is(t.Runs, true):
		return found("runs", ofCase("fan-running", Look, say.Of("flag.fan-unbidden"), say.Of("because.fan-unbidden")))
	case t.StartsC != nil && *t.StartsC < fanRestsC:
		return found("runs", ofCase("fan-running", Look, say.Of("flag.fan-early", *t.StartsC), say.Of("because.fan-early", fanRestsC))) // FN7
	case t.StartsC != nil && *t.StartsC > FanDueC(opens):
		return found("late", ofCase("fan-late", Look, say.Of("flag.fan-late", *t.StartsC),
			fanStarts(opens), say.Of("because.fan-second", secondLowC, secondHighC))) // FN1
	}
	j := passIf(t.StartsC != nil || is(t.Commanded, true) && is(t.Runs, true))
	j.but(t.StartsC == nil, "runs", "late") // one that is told to run shows neither when it would by itself
	return j
}
