package warmup

import (
	"math"
	"slices"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Where a knee is sought (judgement, with two real warm-ups and one that never
// opens at hand): the heating breaks off at the opening and creeps at most
// afterwards, while a halt in traffic only holds it up.
const (
	sideS       = 150  // of running time that is looked at before a break
	afterS      = 300  // and after it
	longAfterS  = 900  // and after it, unless the level was held by then
	heldWithinK = 2.0  // for that long as afterS
	leastAfterS = 90   // where the log ends soon
	leastRiseK  = 5    // before it, or there is nothing to break off
	nextShare   = 0.35 // the slope just after, against the one before
	creepOn     = 0.25 // the slope over all that is looked at after it
	sharpShare  = 0.2  // of the sharpest break's gain, for one to be the first
	leastTrust  = 0.2  // below it, it isn't called a knee
	seldomS     = 15   // speeds read more seldom tell the driving badly
	fewValues   = 12   // fewer about the break are trusted less
	coldestC    = 55   // 20 K under the coolest common rating (TH5, common practice): nothing opens there
	hottestC    = 115  // 5 K over the hottest band of a thermostat (TH6, published, T2): there it boils
)

// findKnee takes the sharpest part of the first break that lasts, and sets it exactly by a broken line.
func findKnee(w run, s stretches) *Knee {
	side := max(5, w.over(sideS))
	at := firstBreak(w, s, side)
	if at < 0 {
		return nil
	}
	from, to := at-side, min(len(w.bins), at+side)
	f := newBroken(w.bins[from:to])
	line := f.best()
	line = f.without(line).best()
	trust := f.trust(line) * s.sameHeat(from, at, to) * w.seen(at) * min(1, float64(to-from)/fewValues)
	if trust < leastTrust {
		return nil
	}
	return &Knee{C: diagram.Celsius(line.c), S: w.seconds(line.clock), Confidence: trust}
}

// firstBreak is the bin of the first break that is sharp beside the sharpest: after the thermostat a fan
// or the road breaks a climb off once more, and a halt before it hardly does. An engine that had stopped
// heating and heats faster again has its thermostat open: what breaks that off is none. -1: there is none.
func firstBreak(w run, s stretches, side int) int {
	gains, most, slowest := make([]float64, len(w.bins)), 0.0, math.Inf(1)
	for i := side; i+max(2, w.over(leastAfterS)) <= len(w.bins); i++ {
		rate := s.perHeat(i-side, i)
		if w.bins[i-side].ect >= coldestC {
			slowest = min(slowest, rate)
		}
		if c := w.bins[i].ect; c >= coldestC && c <= hottestC && slowest > nextShare*rate {
			gains[i] = s.breaks(i, side)
			most = max(most, gains[i])
		}
	}
	at := -1
	for i, gain := range gains {
		switch {
		case at >= 0 && i > at+side:
			return at
		case gain > 0 && gain >= sharpShare*most && (at < 0 || gain > gains[at]):
			at = i
		}
	}
	return at
}

// sameHeat is less than 1 where the engine heats less after the break, so that
// the break may be the driving's, or where that is known badly or not at all.
func (s stretches) sameHeat(from, at, to int) float64 {
	known := 1.0
	switch b := s.w.bins[at]; {
	case !(b.rpm > 0) && !(b.kmh >= 0):
		known = 0.5
	case s.w.widthS > seldomS:
		known = 0.7
	}
	return known * min(1, s.meanHeat(at, to)/s.meanHeat(from, at))
}

// breaks is how much better two lines that part at a bin fit than one, 0 where
// the second isn't a lasting end of the heating. Slopes are held against the
// heat that the engine gives, since driving slower heats slower.
func (s stretches) breaks(at, side int) float64 {
	n := len(s.w.bins)
	from, next, last, long := at-side, min(n, at+side), min(n, at+s.w.over(afterS)), min(n, at+s.w.over(longAfterS))
	before := s.perHeat(from, at)
	if _, slope := s.line(from, at); slope*float64(side) < leastRiseK {
		return 0
	}
	if s.perHeat(at, next) > nextShare*before || s.perHeat(at, last) > creepOn*before {
		return 0
	}
	if s.perHeat(at, long) > creepOn*before && !s.held(at, last) {
		return 0
	}
	return s.misfit(from, next) - s.misfit(from, at) - s.misfit(at, next)
}

// perHeat is a stretch's slope for the heat that it got.
func (s stretches) perHeat(from, to int) float64 {
	_, slope := s.line(from, to)
	return slope / s.meanHeat(from, to)
}

// held reports whether the engine stays near where it broke off.
func (s stretches) held(at, last int) bool {
	mostC := s.w.bins[at].ect + heldWithinK
	return !slices.ContainsFunc(s.w.bins[at:last], func(b bin) bool { return b.ect > mostC })
}

func (s stretches) meanHeat(from, to int) float64 {
	return (s.heat[to] - s.heat[from]) / float64(to-from)
}

// misfit is the sum of squares about the stretch's best line.
func (s stretches) misfit(from, to int) float64 {
	n := float64(to - from)
	c, slope := s.line(from, to)
	return max(0, s.square[to]-s.square[from]-n*c*c-slope*slope*n*(n*n-1)/12)
}

// seen is the share of the time after a break that the log still holds.
func (w run) seen(at int) float64 {
	return min(1, float64(len(w.bins)-at)*w.widthS/(afterS/2))
}

// seconds turns the running clock into seconds since the start.
func (w run) seconds(clock float64) float64 {
	i := 0
	for i+1 < len(w.bins) && w.bins[i+1].clock <= clock {
		i++
	}
	return w.bins[i].s + clock - w.bins[i].clock
}

// unsure is the confidence under which a knee is said to be doubtful.
const unsure = 0.5

func (r *Result) remarkKnee() {
	if k := r.Knee; k != nil && k.Confidence < unsure {
		r.remark(say.Of("remark.knee", k.C))
	}
}
