package warmup

import (
	"math"

	"loopbook/diagram"
)

// bin is a mean over some seconds of a running engine.
type bin struct {
	s             float64 // its middle, since the start
	clock         float64 // its middle, by running time only
	ect, rpm, kmh float64
}

// heat is how much an engine heats, roughly and in no unit (judgement, by the
// air that an engine drew in three real logs): by its revs alone in slow
// driving, by twice as much a turn at 110 km/h.
func (b bin) heat() float64 {
	h := 1.0
	if b.rpm > 0 {
		h = b.rpm / 1000
	}
	if b.kmh > 50 {
		h *= 1 + (b.kmh-50)/60
	}
	return h
}

// run is a trip with the halts of the engine cut out: what heats and cools
// while it stands says nothing of the thermostat.
type run struct {
	widthS float64
	bins   []bin
}

const maxRunBins = 500

func (k track) running() run {
	var at []int
	for i := range k.smooth {
		if k.runs(i) && !math.IsNaN(k.ect[i]) {
			at = append(at, i)
		}
	}
	per := max(1, int(5/k.stepS), len(at)/maxRunBins)
	w := run{widthS: float64(per) * k.stepS}
	for n := 0; n+per <= len(at); n += per {
		var b bin
		for _, i := range at[n : n+per] {
			b.s += float64(i) * k.stepS / float64(per)
			b.ect += k.ect[i] / float64(per)
			b.rpm += k.rpm[i] / float64(per)
			b.kmh += k.kmh[i] / float64(per)
		}
		b.clock = (float64(n) + float64(per-1)/2) * k.stepS
		w.bins = append(w.bins, b)
	}
	return w
}

// lasts is the running time of the record.
func (w run) lasts() float64 { return float64(len(w.bins)) * w.widthS }

// over is how many bins a time takes, one at least.
func (w run) over(s float64) int { return max(1, int(math.Ceil(s/w.widthS))) }

func (w run) meanC(from, to int) float64 {
	return mean(column(w.bins[from:to], func(b bin) float64 { return b.ect }))
}

func column(bins []bin, of func(bin) float64) []float64 {
	out := make([]float64, len(bins))
	for i, b := range bins {
		out[i] = of(b)
	}
	return out
}

// smoothC is the mean over a span around each bin.
func (w run) smoothC(spanS float64) []float64 {
	half := w.over(spanS) / 2
	out := make([]float64, len(w.bins))
	for i := range out {
		out[i] = w.meanC(max(0, i-half), min(len(out), i+half+1))
	}
	return out
}

// at is the first bin from a time on.
func (w run) at(s float64) int {
	for i, b := range w.bins {
		if b.s >= s {
			return i
		}
	}
	return len(w.bins)
}

// peak is the highest 15 s mean from a minute before the knee to two after it:
// how far the opening swings over.
func (w run) peak(k *Knee) *diagram.Celsius {
	if k == nil {
		return nil
	}
	best := math.Inf(-1)
	for i, c := range w.smoothC(15) {
		if s := w.bins[i].s; s >= k.S-60 && s <= k.S+120 {
			best = max(best, c)
		}
	}
	if math.IsInf(best, -1) {
		return nil
	}
	return pointer(diagram.Celsius(best))
}
