package warmup

import (
	"math"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What a sensor can't show. One that is open shows the least that a scan tool
// has words for, -40 °C; one over 130 °C from one moment to the next is shorted
// (SN2, published, V35). A step of 10 K may be a slug of coolant after a halt;
// on top of that 2 K/s is more than an engine gives: 100 kW into 10 l of coolant
// are 3 K/s (judgement). Five driven minutes without a kelvin of change, or ten
// standing ones, are no warm-up's under 60 °C, the regulation's example of a
// sensor stuck low (REG10, published, R1), nor from the start on under 75 °C or
// over 115 °C (times and these two: judgement; a real town log rests for two and
// a half minutes at 58 °C). A level that was come to by less than a kelvin a minute
// is the engine's own (judgement).
const (
	openSensorC  = -39.5
	shortSensorC = 130
	jumpK        = 10
	jumpKPerS    = 2
	spikeS       = 20
	restingK     = 1
	drivenKmh    = 30
	drivenRestS  = 300
	stoodRestS   = 600
	restsUnderC  = 60
	neverMovedC  = 75
	neverBelowC  = 115
	slowingS     = 120
)

// dropJumps takes spikes out of the trip and tells of all jumps. A level that
// is held after a jump is believed.
func (t trip) dropJumps() []Jump {
	var out []Jump
	var away []int // rows that are a jump off the last good one
	good := -1
	spike := func() {
		if len(away) > 0 {
			out = append(out, t.jump(good, away[0]))
			t.drop(away)
		}
	}
	for i, a := range t.rows {
		switch {
		case math.IsNaN(a.ect):
			continue
		case good < 0 || !jumped(t.rows[good], a):
			spike()
			good, away = i, nil
			continue
		}
		away = append(away, i)
		if a.s-t.rows[away[0]].s >= spikeS && a.ect > openSensorC && a.ect <= shortSensorC {
			out = append(out, t.jump(good, away[0]))
			good, away = i, nil
		}
	}
	spike()
	return out
}

func jumped(a, b sample) bool {
	return math.Abs(b.ect-a.ect) > jumpK+jumpKPerS*(b.s-a.s)
}

func (t trip) jump(from, to int) Jump {
	return Jump{t.rows[to].s - t.startS(), diagram.Celsius(t.rows[from].ect), diagram.Celsius(t.rows[to].ect)}
}

func (t trip) drop(rows []int) {
	for _, i := range rows {
		t.rows[i].ect = math.NaN()
	}
}

// findStuck is the longest stretch of the running engine in which the sensor
// rests where it can't.
func findStuck(w run) *Rest {
	var best *Rest
	for i := 0; i < len(w.bins); i++ {
		low, high, j := math.Inf(1), math.Inf(-1), i
		for ; j < len(w.bins); j++ {
			c := w.bins[j].ect
			if max(high, c)-min(low, c) > restingK {
				break
			}
			low, high = min(low, c), max(high, c)
		}
		rest := Rest{diagram.Celsius((low + high) / 2), float64(j-i) * w.widthS}
		if (best == nil || rest.ForS > best.ForS) && w.cantRest(rest, i, j) {
			best = &rest
		}
	}
	return best
}

func (w run) cantRest(r Rest, from, to int) bool {
	least := float64(stoodRestS)
	if mean(column(w.bins[from:to], func(b bin) float64 { return b.kmh })) >= drivenKmh {
		least = drivenRestS
	}
	never := from == 0 && (r.C < neverMovedC || r.C > neverBelowC)
	return r.ForS >= least && (never || r.C < restsUnderC && !w.slowedInto(from))
}

// slowedInto reports whether the coolant had all but come to rest before a bin, as an engine comes to its level
// beside a radiator that takes all of its heat; a sensor stops from one moment to the next.
func (w run) slowedInto(from int) bool {
	n := w.over(slowingS)
	return from >= n && math.Abs(w.bins[from].ect-w.bins[from-n].ect) < restingK*slowingS/60
}

func (r *Result) remarkSensor() {
	if s := r.Stuck; s != nil {
		r.remark(say.Of("remark.stuck", s.C, s.ForS/60))
	}
	if n := len(r.Jumps); n > 0 {
		j := r.Jumps[0]
		r.remark(say.Of("remark.jumps", n, j.FromC, j.C, j.S))
	}
}
