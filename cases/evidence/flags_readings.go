package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// unevenK over the rating the thermostat has opened, by its tolerance (TH1,
// published, M2).
const unevenK = opensEarlyK

// doubtful asks for a better target where the gun can't tell.
func (m *moment) doubtful() []Flag {
	points, why := m.those(func(r Reading) bool { return r.Doubtful })
	if points == nil {
		return nil
	}
	return []Flag{m.flag("reading-doubtful", Look, points,
		say.Of("flag.reading-doubtful", places(points)), why...)}
}

// impossible asks for a reading again that contradicts its neighbour.
func (m *moment) impossible() []Flag {
	points, because := m.those(func(r Reading) bool { return r.Impossible && r.Point != m.alone && r.Point != m.hotAir })
	if points == nil {
		return nil
	}
	for _, rule := range []struct {
		key string
		air bool
	}{{"because.hotter-rule", false}, {"because.air-colder-rule", true}} { // IR9
		if slices.ContainsFunc(points, func(p diagram.Point) bool { return p.Air() == rule.air }) {
			because = append(because, say.Of(rule.key, pairErrorK))
		}
	}
	return []Flag{m.flag("reading-impossible", Look, points, say.Of("flag.reading-impossible", places(points)), because...)}
}

// standsAlone asks for the one hot reading again that all others speak against.
func (m *moment) standsAlone() []Flag {
	if m.alone == "" {
		return nil
	}
	r := m.readings[m.alone]
	return []Flag{m.flag("reading-alone", Look, []diagram.Point{r.Point},
		say.Of("flag.reading-alone", say.Place(r.Point), r.TrueC),
		r.Why, say.Of("because.alone-rule", sensorFailK))} // DT16
}

// airTooHot asks for the air before the radiator again, by a probe: a gun sees the core through it.
func (m *moment) airTooHot() []Flag {
	if m.hotAir == "" {
		return nil
	}
	r := m.readings[m.hotAir]
	return []Flag{m.flag("reading-air-hot", Look, []diagram.Point{r.Point},
		say.Of("flag.reading-air-hot", say.Place(r.Point), r.TrueC), r.Why, say.Of("because.air-hot-rule", roundAgainK))}
}

func (m *moment) notInLayout() []Flag {
	var points []diagram.Point
	for _, p := range diagram.Points() {
		if _, ok := m.readings[p]; ok && !m.has(p) {
			points = append(points, p)
		}
	}
	if points == nil {
		return nil
	}
	return []Flag{m.flag("point-not-in-layout", Look, points,
		say.Of("flag.point-not-in-layout", places(points)), say.Of("because.layout", say.LoopName(m.loop)))}
}

// hoseUneven: a hose with flow in it is as warm at one end as at the other.
func (m *moment) hoseUneven() []Flag {
	if hose, ok := m.farHose(); !ok || m.asCold(hose) {
		return nil // the thermostat may only just be opening
	}
	var out []Flag
	for _, name := range []string{AlongUpperHose, AlongLowerHose} {
		d := m.delta(name)
		if d == nil || !d.State.Out() || !m.over(unevenK) || m.shut != nil {
			continue
		}
		points := []diagram.Point{diagram.Point(d.From), diagram.Point(d.To)}
		out = append(out, m.flag("hose-uneven", Look, points,
			say.Of("flag.hose-uneven", abs(d.ValueK)),
			m.engineText(), m.ends(d), d.text()))
	}
	return out
}

// those lists the points of the readings asked for, along the flow, and why.
func (m *moment) those(which func(Reading) bool) (points []diagram.Point, why []say.Text) {
	for _, p := range diagram.Points() {
		r, ok := m.readings[p]
		if !ok || !which(r) {
			continue
		}
		points = append(points, p)
		if !slices.ContainsFunc(why, func(t say.Text) bool { return t.String() == r.Why.String() }) {
			why = append(why, r.Why)
		}
	}
	return points, why
}

// nothingMeasured says that there is nothing to go on.
func nothingMeasured(c *cases.Case, all []*moment) []Flag {
	if len(c.Tests) > 0 || len(c.Logs) > 0 {
		return nil
	}
	if slices.ContainsFunc(all, func(m *moment) bool {
		_, ok := m.hottest(diagram.Points()...)
		return ok || m.engine.regime != NoRegime
	}) {
		return nil
	}
	return []Flag{ofCase("nothing-measured", Note, say.Of("flag.nothing-measured"))}
}

// layoutUnknown says what can't be judged without a layout.
func layoutUnknown(all []*moment) []Flag {
	if len(all) == 0 || all[0].loop != nil {
		return nil
	}
	return []Flag{ofCase("layout-unknown", Note, say.Of("flag.layout-unknown"))}
}
