package evidence

import (
	"fmt"
	"strings"

	"loopbook/diagram"
)

// outOfRange asks for both ends of a difference again that is out of its range
// in a round where nothing else asks for anything.
func outOfRange(all []*moment, told []Flag) []Flag {
	var out []Flag
	for _, m := range all {
		if !pressed(told, m.i) {
			out = append(out, m.deltasOut()...)
		}
	}
	return out
}

func pressed(told []Flag, round int) bool {
	for _, f := range told {
		if f.Round == round && f.Severity != Note {
			return true
		}
	}
	return false
}

func (m *moment) deltasOut() []Flag {
	var points []diagram.Point
	var said, because []string
	for i := range m.deltas {
		d := &m.deltas[i]
		if !m.farOut(d) {
			continue
		}
		from, to := diagram.Point(d.From), diagram.Point(d.To)
		points = append(points, from, to)
		said = append(said, fmt.Sprintf("%s minus %s is %s, %s expected", name(from), name(to), inK(d.ValueK), d.span()))
		because = append(because, m.ends(d), d.words())
	}
	if said == nil {
		return nil
	}
	return []Flag{m.flag("delta-out-of-range", Look, points,
		"Out of range, and no fault shows that explains it: "+strings.Join(said, "; ")+". Read both ends again.",
		append(because, m.engineWords(), fmt.Sprintf("two readings differ by up to %.1f K (IR9, common practice)", float64(pairErrorK)))...)}
}

// farOut reports whether a difference of two gun readings is out by more than
// their error. A throttling thermostat may make any drop across the radiator
// (DT2, common practice), what the air takes up hangs on the fan, and an upper
// hose that holds still coolant says nothing.
func (m *moment) farOut(d *Delta) bool {
	if d.From == Sensor || d.Name == AirThroughRadiator || d.Name == AcrossRadiator && d.State == High {
		return false
	}
	from, to := m.readings[diagram.Point(d.From)], m.readings[diagram.Point(d.To)]
	if m.still(from) || m.still(to) {
		return false
	}
	slack := pairError(from, to)
	switch d.State {
	case Low:
		return *d.ExpectedLowK-d.ValueK > slack
	case High:
		return d.ValueK-*d.ExpectedHighK > slack
	}
	return false
}
