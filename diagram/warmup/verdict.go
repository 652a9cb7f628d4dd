package warmup

import (
	"math"
	"slices"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// UsualOpensC is taken for a thermostat whose rating isn't known: TH5, common practice.
const UsualOpensC diagram.Celsius = 88

// The regulation's criterion for a warm-up and what keeps from a verdict.
const (
	targetK   = 11  // 20 °F: REG1, published (R1, R4)
	frostC    = -7  // 20 °F: REG2, published (R1, R4)
	idleShare = 0.5 // REG5, published (R4)
	idleKmh   = 3
	idleRPM   = 1200
	drivenS   = 12 * 60 // WU1, common practice: the longest that driving takes
	windowS   = 30 * 60 // the longest time window of a maker seen (published, V10)
)

func ratingOf(o Options) diagram.Celsius {
	if o.OpensC == nil {
		return UsualOpensC
	}
	return *o.OpensC
}

// verdict says whether the engine reaches the regulation's target. Reaching is
// seen; not reaching needs time, driving and air that isn't frost.
func (r *Result) verdict(w *run, o Options) {
	if o.OpensC == nil {
		r.remark(say.Of("remark.rating", UsualOpensC))
	}
	r.TargetC = ratingOf(o) - targetK
	if w == nil || !r.ColdStart || *r.StartC >= r.TargetC {
		return
	}
	if w.reaches(float64(r.TargetC)) <= windowS {
		r.ReachesRegulating = pointer(true)
		return
	}
	if why := r.noCall(*w, o); !why.Empty() {
		r.remark(say.Of("remark.cant-say", r.TargetC, why))
		return
	}
	r.ReachesRegulating = pointer(false)
}

// reaches is the time at which 15 seconds' mean comes to a temperature.
func (w run) reaches(c float64) float64 {
	for i, mean := range w.smoothC(15) {
		if mean >= c {
			return w.bins[i].s
		}
	}
	return math.Inf(1)
}

// noCall says why an engine under its target isn't called cold, or nothing.
func (r *Result) noCall(w run, o Options) say.Text {
	switch share := w.idles(); {
	case !w.drivingKnown():
		return say.Of("remark.driving-unknown")
	case o.AmbientC != nil && *o.AmbientC < frostC:
		return say.Of("remark.frost", diagram.Celsius(frostC))
	case share > idleShare:
		return say.Of("remark.idles", 100*share)
	case w.lasts() < drivenS:
		return say.Of("remark.short", w.lasts()/60)
	case w.lasts() >= windowS:
		return say.Text{}
	case r.Plateau == nil:
		return say.Of("remark.warming")
	case r.Plateau.ForS < heldS:
		return say.Of("remark.not-held")
	}
	return say.Text{}
}

// drivingKnown reports whether revs or speed are recorded at all.
func (w run) drivingKnown() bool {
	return slices.ContainsFunc(w.bins, func(b bin) bool { return !math.IsNaN(b.kmh) || !math.IsNaN(b.rpm) })
}

// idles is the share of the run that is idling, by speed or else by revs; 0
// where neither is known.
func (w run) idles() float64 {
	idle := 0.0
	for _, b := range w.bins {
		if b.kmh < idleKmh || math.IsNaN(b.kmh) && b.rpm < idleRPM {
			idle++
		}
	}
	return idle / float64(max(1, len(w.bins)))
}
