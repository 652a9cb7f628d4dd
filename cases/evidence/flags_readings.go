package evidence

import (
	"fmt"
	"strings"

	"loopbook/cases"
	"loopbook/diagram"
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
		fmt.Sprintf("The reading at %s is too uncertain to judge by: repeat it on tape.", names(points)), why...)}
}

// impossible asks for a reading again that contradicts its neighbour.
func (m *moment) impossible() []Flag {
	points, why := m.those(func(r Reading) bool { return r.Impossible && r.Point != m.alone })
	if points == nil {
		return nil
	}
	because := append(why, fmt.Sprintf("coolant doesn't warm on that way; two readings differ by up to %.1f K (IR9, common practice)", float64(pairErrorK)))
	return []Flag{m.flag("reading-impossible", Look, points,
		fmt.Sprintf("The readings at %s contradict each other: repeat these readings.", names(points)), because...)}
}

// standsAlone asks for the one hot reading again that all others speak against.
func (m *moment) standsAlone() []Flag {
	if m.alone == "" {
		return nil
	}
	r := m.readings[m.alone]
	return []Flag{m.flag("reading-alone", Look, []diagram.Point{r.Point},
		fmt.Sprintf("%s at %s stands alone against the sensor and the other readings: repeat this reading.", r.Point, inC(r.TrueC)),
		r.Why, fmt.Sprintf("more than %s from the sensor and from each of them (DT16, common practice); it takes no part", inK(SensorFailK)))}
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
		fmt.Sprintf("This layout has no %s: is it the right layout?", strings.TrimPrefix(names(points), "the ")),
		"layout "+m.c.Loop.Layout)}
}

// hoseUneven: a hose with flow in it is as warm at one end as at the other.
func (m *moment) hoseUneven() []Flag {
	if hose, ok := m.farHose(); !ok || hose.TrueC <= m.ambientC+diagram.Celsius(coldHoseK) {
		return nil // the thermostat may only just be opening
	}
	var out []Flag
	for _, name := range []string{AlongUpperHose, AlongLowerHose} {
		d := m.delta(name)
		if d == nil || (d.State != Low && d.State != High) || !m.over(unevenK) || m.shutOff() != nil {
			continue
		}
		points := []diagram.Point{diagram.Point(d.From), diagram.Point(d.To)}
		out = append(out, m.flag("hose-uneven", Look, points,
			fmt.Sprintf("The two ends of one hose are %s apart: air in it, or hardly any flow.", inK(max(d.ValueK, -d.ValueK))),
			m.engineWords(), m.ends(d), d.words()))
	}
	return out
}

// those lists the points of the readings asked for, along the flow, and why.
func (m *moment) those(which func(Reading) bool) (points []diagram.Point, why []string) {
	for _, p := range diagram.Points() {
		r, ok := m.readings[p]
		if !ok || !which(r) {
			continue
		}
		points = append(points, p)
		if !oneOf(append(why, ""), r.Why) {
			why = append(why, r.Why)
		}
	}
	return points, why
}

func names(points []diagram.Point) string {
	words := make([]string, len(points))
	for i, p := range points {
		words[i] = name(p)
	}
	return strings.Join(words, ", ")
}

// nothingMeasured says that there is nothing to go on.
func nothingMeasured(c *cases.Case, all []*moment) []Flag {
	if len(c.Tests) > 0 || len(c.Logs) > 0 {
		return nil
	}
	for _, m := range all {
		if _, ok := m.hottest(diagram.Points()...); ok || m.engine.regime != NoRegime {
			return nil
		}
	}
	return []Flag{ofCase("nothing-measured", Note, "Nothing to go on yet: no usable reading, no test and no log.")}
}

// layoutUnknown says what can't be judged without a layout.
func layoutUnknown(c *cases.Case, all []*moment) []Flag {
	if len(all) == 0 || all[0].loop != nil {
		return nil
	}
	return []Flag{ofCase("layout-unknown", Note, "The loop's layout isn't chosen: the thermostat, the bypass and the sensor are judged by halves.")}
}

// hotCautionC is where the cap stays shut: SF1, published (T18), the stricter
// of two.
const hotCautionC diagram.Celsius = 50

// hotCaution keeps the cap shut, and hands from the fan and the belt, as long
// as the last round was hot.
func hotCaution(all []*moment) []Flag {
	if len(all) == 0 {
		return nil
	}
	last := all[len(all)-1]
	t, ok := last.hottestLiquid()
	if !ok || t <= hotCautionC {
		return nil
	}
	return []Flag{ofCase("hot-caution", Note,
		fmt.Sprintf("Coolant at %s: keep the cap shut until it is under %s.", inC(t), inC(hotCautionC)),
		"above 50 °C the cap stays shut (SF1, published, T18)",
		"a hot engine's fan may start by itself, with the key off too (published, T6): unplug it before a hand goes in",
		"belt and pulleys: stop the engine first (published, V20)")}
}

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
	return []Flag{ofCase("stop-hot", Act, "Switch the engine off and let it cool, with the cap shut: don't rev it, don't open it.",
		last.engineWords(), fmt.Sprintf("from %s on, or with the gauge in the red, running on boils the coolant and warps the head (common practice)", inC(stopHotC)))}
}

// hottestLiquid is the hottest coolant of the round, by gun or sensor.
func (m *moment) hottestLiquid() (diagram.Celsius, bool) {
	best, ok := m.hottest(liquidPoints()...)
	t := best.TrueC
	if e := m.engine.c; e != nil && (!ok || *e > t) {
		return *e, true
	}
	return t, ok
}

func liquidPoints() []diagram.Point {
	var out []diagram.Point
	for _, p := range diagram.Points() {
		if !p.Air() {
			out = append(out, p)
		}
	}
	return out
}
