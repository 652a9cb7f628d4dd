package trial

import (
	"math"
	"slices"
	"time"

	"loopbook/cases"
	"loopbook/diagram"
)

// A stage is a moment at which a round is taken, in the order of a morning.
const (
	fromCold = iota
	warmIdle
	raised
	hotIdle
	afterRoad
)

// stages are the labels of the rounds, each with how often it is taken beside the
// others.
func stages() []weighted {
	return []weighted{
		fromCold:  {"5 min from cold", 2},
		warmIdle:  {"warm idle", 3},
		raised:    {"2500 rpm", 2},
		hotIdle:   {"hot idle", 3},
		afterRoad: {"after the road", 1.5},
	}
}

// plan picks which stages are measured, in their order.
func plan(d dice, least, most int) []int {
	chosen := draw(d, least+d.Intn(most-least+1), stages())
	var out []int
	for stage, s := range stages() {
		if slices.Contains(chosen, s.word) {
			out = append(out, stage)
		}
	}
	return out
}

// morning is a car that is run from cold through its stages.
type morning struct {
	*car
	state
	minutes float64
}

// rounds runs the car through the stages and measures at each.
func (v *car) rounds(d dice, planned []int, opened time.Time) []cases.Round {
	m := v.morning()
	points := v.reached(d)
	var out []cases.Round
	for _, stage := range planned {
		m.trapped = v.fault.trapped.shaken(d)
		heater := pick(d, 1.0, 1, 1, 1, 1, 0, 0, 0.5)
		if stage == hotIdle && d.chance(0.4) {
			heater = 0 // to let the fan come
		}
		r := m.to(d, stage, heater)
		out = append(out, m.note(d, stage, r, points, opened))
		if m.headC > v.patienceC {
			m.run(15, running{}, nil) // off, to cool
		}
	}
	return out
}

// morning is the car before its cold start.
func (v *car) morning() *morning {
	return &morning{car: v, state: state{headC: v.airC, blockC: v.airC, upperC: v.airC, lowerC: v.airC, waxC: v.airC}}
}

// overheats is how fast the car goes when it first notes itself too hot: up a
// hill or in the queue at its foot, whichever comes first; it is false for a car that doesn't.
func (v *car) overheats(d dice) (ectC, kmh float64, ok bool) {
	ways := []running{{rpm: 2600, kmh: 80, heatW: 1.5 * v.roadW, heater: 0}, {rpm: 800, heatW: 1.2 * v.idleW, heater: 0}}
	if d.chance(0.5) {
		ways[0], ways[1] = ways[1], ways[0]
	}
	customer := *v
	customer.patienceC = math.Inf(1) // who drives on
	m := customer.morning()
	limitC := v.ratedC + 20
	for _, r := range ways {
		m.run(30, r, func() bool { return m.sensorC(&m.state) > limitC })
		if shown := m.sensorC(&m.state); shown > limitC {
			return shown, r.kmh, true
		}
	}
	return 0, 0, false
}

// shaken is how the trapped air lies after a while: it comes and goes.
func (l lock) shaken(d dice) lock {
	sign := pick(d, -1, -1, 1.0)
	return lock{
		heater:  l.heater * d.between(0.6, 1),
		pump:    l.pump * d.between(0.3, 1),
		face:    l.face,
		sensorK: sign * l.sensorK * d.between(0.3, 1),
		crownK:  l.crownK * d.between(0.5, 1),
	}
}

// to brings the car to the stage and answers how it runs there.
func (m *morning) to(d dice, stage int, heater float64) running {
	idle := running{rpm: 800, heatW: m.idleW, heater: heater}
	if stage == fromCold {
		m.run(d.between(4.5, 6), running{rpm: 1100, heatW: 1.2 * m.idleW, heater: heater}, nil)
		idle.rpm = 1100
		return idle
	}
	if m.minutes < 8 {
		m.warmUp(d, idle)
	}
	switch stage {
	case warmIdle:
		m.run(10, idle, m.atRating)
		m.run(d.between(2, 6), idle, nil)
	case raised:
		r := running{rpm: 2500, heatW: m.raisedW, heater: heater}
		m.run(d.between(2, 5), r, nil)
		return r
	case hotIdle:
		m.run(20, idle, func() bool { return m.fanOn })
		m.run(d.between(0.2, 1), idle, func() bool { return m.sensorC(&m.state) < m.fanOffC+1 })
	case afterRoad:
		m.run(d.between(8, 18), running{rpm: 2300, kmh: d.between(60, 100), heatW: m.roadW, heater: heater}, nil)
		m.run(d.between(0.7, 2), idle, nil)
	}
	return idle
}

// warmUp is a drive through town, or idling until the sensor tells of warmth.
func (m *morning) warmUp(d dice, idle running) {
	if d.chance(0.55) {
		m.run(d.between(8, 14), running{rpm: 1800, kmh: 40, heatW: 0.3*m.roadW + 0.6*m.raisedW, heater: idle.heater}, nil)
		return
	}
	m.run(25, idle, m.atRating)
}

// atRating is what one waits for before a warm round.
func (m *morning) atRating() bool { return m.sensorC(&m.state) > m.ratedC-1 }

// run lets the car run until done or until it is too hot to go on.
func (m *morning) run(minutes float64, r running, done func() bool) {
	for t := 0.0; t < 60*minutes; t += stepS {
		if (done != nil && done()) || (m.headC > m.patienceC && r.rpm > 0) {
			break
		}
		m.step(&m.state, r)
		m.minutes += stepS / 60
	}
}

// note is the round as it is written down.
func (m *morning) note(d dice, stage int, r running, points []diagram.Point, opened time.Time) cases.Round {
	out := cases.Round{
		Label: stages()[stage].word, Stage: cases.BeforeRepair,
		Taken:     opened.Add(time.Duration(m.minutes * float64(time.Minute))),
		EngineRPM: ptr(math.Round(r.rpm/50+d.normal(0.5)) * 50), SpeedKmh: ptr(0.0),
		Fan: m.fanNoted(d), Heater: heaterWord(r.heater),
		Gun:      m.gun.noted(m.airC),
		Readings: m.readings(d, r, points),
	}
	if d.chance(0.88) {
		out.MinutesSinceStart = ptr(math.Round(m.minutes))
	}
	shown := m.sensorC(&m.state) + m.trapped.sensorK + d.normal(0.5)
	if d.chance(0.9) {
		out.EctC = celsius(math.Round(min(max(shown, -40), 140)))
	}
	if d.chance(0.7) {
		out.Gauge = gauge(shown, m.ratedC)
	}
	return out
}

func (m *morning) fanNoted(d dice) cases.FanState {
	switch {
	case d.chance(0.08) || (m.fan == "viscous" && d.chance(0.5)):
		return cases.FanUnknown
	case m.fanOn && m.fault.fan > 0:
		return cases.FanOn
	}
	return cases.FanOff
}

func heaterWord(part float64) cases.Heater {
	switch part {
	case 0:
		return cases.HeaterOff
	case 1:
		return cases.HeaterFull
	}
	return cases.HeaterHalf
}

// gauge is where a damped needle stands: the same over a wide middle.
func gauge(shownC, ratedC float64) cases.Gauge {
	switch {
	case shownC < 45:
		return "cold"
	case shownC < ratedC-15:
		return "below-middle"
	case shownC < ratedC+17:
		return "middle"
	case shownC < ratedC+25:
		return "above-middle"
	}
	return "red"
}
