package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

const (
	growsK   diagram.DeltaK = 8 // F10: growth of the drop across the radiator; common practice
	climbsK  diagram.DeltaK = 5 // TH11: a healthy plateau drifts up to 4 K; common practice
	recoverK diagram.DeltaK = 5 // F08: the heater's drop falls with revs; common practice
	ventUpK  diagram.DeltaK = 8 // F09: the vent's rise with revs; common practice
	warmHose diagram.DeltaK = 30
)

// acrossRounds compares each standing idle round with each at raised speed of
// the same stage, and each shut thermostat with what came after it. What several
// rounds show of one is told of it once.
func acrossRounds(all []*moment) []Flag {
	var out []Flag
	add := func(found []Flag) {
		for _, f := range found {
			if !slices.ContainsFunc(out, func(told Flag) bool { return told.ID == f.ID && told.Round == f.Round }) {
				out = append(out, f)
			}
		}
	}
	for _, b := range all {
		for _, a := range all {
			if !a.round.Stage.Holds(b.round.Stage) || a == b {
				continue
			}
			if PaceOf(a.round) == Idling && PaceOf(b.round) == Raised {
				add(collapse(a, b))
				add(weakAtIdle(a, b))
			}
			if a.i < b.i {
				add(openedLate(a, b))
			}
		}
	}
	return out
}

// collapse: the drop across the radiator grows with revs and the engine gets
// hotter than its thermostat holds it: the pump sucks the lower hose flat. Up to
// its rating it only comes to it, and the opening thermostat makes the drop.
func collapse(slow, fast *moment) []Flag {
	a, b := slow.delta(AcrossRadiator), fast.delta(AcrossRadiator)
	if a == nil || b == nil || !slow.bothUsable(a) || !fast.bothUsable(b) || fast.engine.c == nil || slow.engine.c == nil {
		return nil
	}
	grows, climbs := b.ValueK-a.ValueK, fast.engine.c.Minus(*slow.engine.c)
	if !slow.isHot() || !fast.over(unevenK) || grows < growsK || climbs < climbsK || fast.staysShut() {
		return nil // a warm-up's drop is no measure
	}
	return []Flag{fast.flag("lower-hose-collapse", Look, []diagram.Point{diagram.RadOut, diagram.PumpIn},
		say.Of("flag.hose-sucked", grows, climbs),
		slow.ends(a), fast.ends(b), say.Of("because.growth", growsK), fast.engineText())}
}

// weakAtIdle: heat that comes with revs is a weak pump, low coolant or air. It
// is told from two rounds with the heater set alike, and on as far as that is noted.
func weakAtIdle(slow, fast *moment) []Flag {
	if slow.round.Heater == cases.HeaterOff || slow.round.Heater != fast.round.Heater {
		return nil
	}
	var because []say.Text
	if a, b := slow.delta(HeaterDrop), fast.delta(HeaterDrop); a != nil && b != nil &&
		a.State == High && fast.bothUsable(b) && a.ValueK-b.ValueK >= recoverK {
		because = append(because, say.Of("because.heater-recovers", a.ValueK, b.ValueK))
	}
	va, okA := slow.at(diagram.Vent)
	vb, okB := fast.at(diagram.Vent)
	if rise := vb.TrueC.Minus(va.TrueC); okA && okB && rise >= ventUpK && slow.ventIsCool(va) {
		because = append(because, say.Of("because.vent-warms", rise))
	}
	if because == nil || slow.engine.regime == Shut {
		return nil
	}
	return []Flag{fast.flag("pump-weak", Look, []diagram.Point{diagram.HeaterOut, diagram.PumpIn},
		say.Of("flag.heat-with-revs"), because...)}
}

// ventIsCool keeps a vent that is well at idle out of the comparison.
func (m *moment) ventIsCool(vent Reading) bool { return vent.TrueC.Minus(m.outside(coldDayC)) < 30 }

// starved: radiator and heater both short of coolant in one round.
func (m *moment) starved() []Flag {
	r, h := m.delta(AcrossRadiator), m.delta(HeaterDrop)
	if r == nil || h == nil || r.State != High || h.State != High || m.engine.regime != Above || m.shut != nil {
		return nil
	}
	return []Flag{m.flag("pump-weak", Look, []diagram.Point{diagram.PumpIn, diagram.HeaterOut},
		say.Of("flag.both-starved"), m.engineText(), m.ends(r), m.ends(h), say.Of("because.both-starved"))} // F08
}

// openedLate: a thermostat that stood shut above its rating and then opened.
func openedLate(then, now *moment) []Flag {
	hose, ok := now.farHose()
	if then.shut == nil || !ok || now.engine.regime != AtRating || hose.TrueC < now.ambientC+diagram.Celsius(warmHose) {
		return nil
	}
	return []Flag{now.flag("thermostat-opening-late", Look, []diagram.Point{diagram.Housing, hose.Point},
		say.Of("flag.opened-late"), say.Of("because.earlier", then.engineText()), say.Of("because.now", readingText(hose)),
		say.Of("because.late-peak", overshootK))} // TH9
}

func (m *moment) bothUsable(d *Delta) bool {
	_, okFrom := m.at(diagram.Point(d.From))
	_, okTo := m.at(diagram.Point(d.To))
	return okFrom && okTo
}
