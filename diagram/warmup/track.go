package warmup

import "math"

// How the record is evened out (judgement): bins of a second or as wide as its
// own step; a median over ±10 s takes out noise and whole-kelvin flicker and
// leaves a steady rise where it is.
const (
	maxBins = 4000
	medianS = 10

	enoughSteps = 1000 // tell the usual one
)

// BridgedS is the longest gap, in seconds, that a straight line may cross (judgement).
const BridgedS = 60

// track is a trip on even steps, from the engine's start. NaN is not known.
type track struct {
	stepS         float64
	ect, rpm, kmh []float64
	smooth        []float64 // ect by a running median
}

func (t trip) track() track {
	rows := t.rows[t.start:]
	k := track{stepS: stepOf(rows)}
	n := int((t.lastS()-t.startS())/k.stepS) + 1
	k.ect, k.rpm, k.kmh = make([]float64, n), make([]float64, n), make([]float64, n)
	for i, from := 0, 0; i < n; i++ {
		to := from
		for to < len(rows) && int((rows[to].s-rows[0].s)/k.stepS) <= i {
			to++
		}
		k.fill(i, rows[from:to])
		from = to
	}
	k.bridge(k.ect)
	k.hold(k.rpm)
	k.hold(k.kmh)
	k.smooth = k.runningMedian()
	return k
}

// stepOf is the record's usual step, a second at least and such that a long
// record stays quick to read.
func stepOf(rows []sample) float64 {
	var steps []float64
	last := math.NaN()
	for _, a := range rows {
		if math.IsNaN(a.ect) {
			continue
		}
		if !math.IsNaN(last) && len(steps) < enoughSteps {
			steps = append(steps, a.s-last)
		}
		last = a.s
	}
	step := max(1, (rows[len(rows)-1].s-rows[0].s)/maxBins)
	if len(steps) > 0 {
		step = max(step, median(steps))
	}
	return step
}

func (k *track) fill(i int, rows []sample) {
	ect, rpm, kmh := make([]float64, 0, 16), make([]float64, 0, 16), make([]float64, 0, 16)
	for _, a := range rows {
		if !math.IsNaN(a.ect) {
			ect = append(ect, a.ect)
		}
		rpm, kmh = append(rpm, a.rpm), append(kmh, a.kmh)
	}
	k.ect[i], k.rpm[i], k.kmh[i] = median(ect), mean(rpm), mean(kmh)
}

// bridge draws straight lines across short gaps.
func (k *track) bridge(v []float64) {
	last := -1
	for i := range v {
		if math.IsNaN(v[i]) {
			continue
		}
		if gap := i - last; last >= 0 && float64(gap)*k.stepS <= max(BridgedS, 2*k.stepS) {
			for j := last + 1; j < i; j++ {
				v[j] = v[last] + (v[i]-v[last])*float64(j-last)/float64(gap)
			}
		}
		last = i
	}
}

// hold lets a value stand until the next one, across short gaps.
func (k *track) hold(v []float64) {
	last := -1
	for i := range v {
		switch {
		case !math.IsNaN(v[i]):
			last = i
		case last >= 0 && float64(i-last)*k.stepS <= max(BridgedS, 2*k.stepS):
			v[i] = v[last]
		}
	}
}

func (k *track) runningMedian() []float64 {
	half := int(medianS / k.stepS)
	out := make([]float64, len(k.ect))
	window := make([]float64, 0, 2*half+1)
	for i := range out {
		window = window[:0]
		reach := min(half, i, len(out)-1-i) // even on both sides, or a slope would bend the ends
		for _, v := range k.ect[i-reach : i+reach+1] {
			if !math.IsNaN(v) {
				window = append(window, v)
			}
		}
		out[i] = median(window)
		if math.IsNaN(k.ect[i]) {
			out[i] = math.NaN()
		}
	}
	return out
}

func (k *track) runs(i int) bool { return !(k.rpm[i] < turnsRPM) }

// secondsTo finds the first time at or above each level after a cold start,
// without which the start is not known. Where the record's steps are wide, it
// is taken between two of them.
func (r *Result) secondsTo(k track) {
	for _, level := range Levels() {
		l := float64(level)
		if !r.ColdStart || float64(*r.StartC) >= l {
			continue
		}
		for i, c := range k.smooth {
			if c < l || math.IsNaN(c) {
				continue
			}
			s := float64(i) * k.stepS
			if i > 0 && k.stepS > 5 && k.smooth[i-1] < l {
				s -= k.stepS * (c - l) / (c - k.smooth[i-1])
			}
			r.SecondsTo[level] = s
			break
		}
	}
}
