package warmup

import (
	"math"

	"loopbook/diagram"
)

// The road (judgement): 60 km/h held for a minute and more gives the radiator
// air enough to show a thermostat that doesn't shut.
const (
	roadKmh = 60
	roadS   = 60
)

// swingsOverK is how far over its rating a healthy thermostat may hold an
// engine: TH8, common practice.
const swingsOverK = 5

// road compares what a warm engine holds on the road with what it held before:
// its plateau, or where that is the road's own, what it had in slow driving.
// What a fan lets it have beyond the thermostat's doesn't count.
func (r *Result) road(w run, o Options) {
	if r.Plateau == nil {
		return
	}
	warm := w.at(r.Plateau.FromS)
	if r.Knee == nil { // without an opening it is warm once it is near its level
		warm = w.firstNear(float64(r.Plateau.C))
	}
	road, slow := w.roadLow(warm), w.slowHigh(warm)
	if math.IsNaN(road) {
		return
	}
	rating := float64(ratingOf(o))
	held := min(float64(r.Plateau.C), rating+swingsOverK)
	if !math.IsNaN(slow) {
		held = max(held, min(slow, rating))
	}
	r.RoadC = pointer(diagram.Celsius(road))
	r.DropsOnRoadK = pointer(diagram.DeltaK(max(0, held-road)))
}

func (w run) firstNear(levelC float64) int {
	for i, b := range w.bins {
		if b.ect >= levelC-1 {
			return i
		}
	}
	return len(w.bins)
}

// roadLow is the lowest minute's mean within the stretches on the road, each
// without its first minute.
func (w run) roadLow(from int) float64 {
	low, held, minute := math.NaN(), 0, w.over(roadS)
	for i := from; i < len(w.bins); i++ {
		if !(w.bins[i].kmh >= roadKmh) {
			held = 0
			continue
		}
		held++
		if held < 2*minute {
			continue
		}
		if c := w.meanC(i+1-minute, i+1); !(c >= low) {
			low = c
		}
	}
	return low
}

// slowHigh is what slower driving reaches, but for its hottest tenth.
func (w run) slowHigh(from int) float64 {
	var values []float64
	for _, b := range w.bins[min(from, len(w.bins)):] {
		if b.kmh < roadKmh {
			values = append(values, b.ect)
		}
	}
	if len(values) < w.over(roadS) {
		return math.NaN()
	}
	return quantile(values, 0.9)
}
