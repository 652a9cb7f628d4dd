package warmup

import (
	"math"
	"slices"

	"loopbook/diagram"
)

// What a plateau is (judgement, but for the swing: a healthy one cycles by 2 to
// 5 °C, common practice, so 5 K either way leaves room for a fan).
const (
	flatS      = 120  // shortest
	heldS      = 300  // shortest where the engine gets hotter later: a halt in frost rests as long
	driftK     = 2.0  // from its beginning to its end
	swingK     = 5.0  // either way
	creepShare = 0.15 // its slope against the warm-up's
	laterK     = 2.5
)

// findPlateau takes the longest flat stretch after the knee, or of all, that the
// engine doesn't leave upwards; without one, or where that is the top of a climb, the
// longest that is held for long.
func (s stretches) findPlateau(k *Knee) *Plateau {
	begin := 0
	if k != nil {
		begin = s.w.at(k.S)
	}
	from, to := s.longest(begin, flatS, true)
	if to == 0 || s.top(from, to) {
		if a, b := s.longest(begin, heldS, false); b != 0 {
			from, to = a, b
		}
	}
	if to == 0 {
		return nil
	}
	from, to = s.trim(from, to)
	return s.plateau(from, to)
}

// top reports whether a stretch is short and the engine falls off it: under load it rose to there, and nothing held it.
func (s stretches) top(from, to int) bool {
	if float64(to-from)*s.w.widthS >= heldS {
		return false
	}
	c, _ := s.line(from, to)
	return slices.ContainsFunc(s.w.smoothC(60)[to:], func(after float64) bool { return after < c-swingK })
}

// stretches holds running sums, so that any stretch's line is found at once.
type stretches struct {
	w                    run
	startC               float64
	sum, square, product []float64 // of ect, ect², ect × bin number, up to a bin
	heat                 []float64 // up to a bin
	later                []float64 // the highest minute's mean from a bin on
}

func newStretches(w run, startC float64) stretches {
	n := len(w.bins)
	s := stretches{w, startC, make([]float64, n+1), make([]float64, n+1), make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)}
	for i, b := range w.bins {
		s.heat[i+1] = s.heat[i] + b.heat()
		s.sum[i+1], s.square[i+1], s.product[i+1] = s.sum[i]+b.ect, s.square[i]+b.ect*b.ect, s.product[i]+b.ect*float64(i)
	}
	s.later[n] = math.Inf(-1)
	for i, c := range w.smoothC(60) {
		s.later[i] = c
	}
	for i := n - 1; i >= 0; i-- {
		s.later[i] = max(s.later[i], s.later[i+1])
	}
	return s
}

// line is the mean and the slope, per bin, of the stretch's best line.
func (s stretches) line(from, to int) (meanC, slope float64) {
	n := float64(to - from)
	middle := float64(from+to-1) / 2
	meanC = (s.sum[to] - s.sum[from]) / n
	return meanC, (s.product[to] - s.product[from] - middle*n*meanC) * 12 / (n * (n*n - 1))
}

// longest is the longest flat stretch of at least that many seconds; to is 0
// where there is none.
func (s stretches) longest(begin int, leastS float64, last bool) (from, to int) {
	n, least := len(s.w.bins), max(3, s.w.over(leastS))
	for i := begin; i+least <= n; i++ {
		low, high := math.Inf(1), math.Inf(-1)
		for j := i; j < n; j++ {
			low, high = min(low, s.w.bins[j].ect), max(high, s.w.bins[j].ect)
			if high-low > 2*swingK {
				break
			}
			if size := j + 1 - i; size >= least && size > to-from && s.flat(i, j+1, last) {
				from, to = i, j+1
			}
		}
	}
	return from, to
}

func (s stretches) flat(from, to int, last bool) bool {
	c, slope := s.line(from, to)
	if math.Abs(slope)*float64(to-from) > driftK || last && s.later[to] > c+laterK {
		return false
	}
	if s.humps(from, to) > driftK {
		return false
	}
	rise := (c - s.startC) / (float64(from) + 1)
	return rise*float64(from) < 10 || math.Abs(slope) <= creepShare*rise
}

// humps is how far the means of the stretch's thirds lie apart: a swing over
// may begin and end alike.
func (s stretches) humps(from, to int) float64 {
	third := (to - from) / 3
	low, high := math.Inf(1), math.Inf(-1)
	for i := 0; i < 3; i++ {
		a, b := from+i*third, from+(i+1)*third
		c := (s.sum[b] - s.sum[a]) / float64(third)
		low, high = min(low, c), max(high, c)
	}
	return high - low
}

// trim takes off a beginning and an end that still belong to the way up, over
// or down: what in the first and last quarter lies further off than the half
// minutes of the rest do.
func (s stretches) trim(from, to int) (int, int) {
	smooth := s.w.smoothC(30)
	quarter := (to - from) / 4
	rest := slices.Clone(smooth[from+quarter : to-quarter])
	low, c, high := quantile(rest, 0.02), median(rest), quantile(rest, 0.98)
	off := func(i int) bool {
		return smooth[i] < min(low, c-1)-0.25 || smooth[i] > max(high, c+1)+0.25
	}
	a, b := from, to
	for i := from; i < from+quarter; i++ {
		if off(i) {
			a = i + 1
		}
	}
	for i := to - 1; i >= to-quarter; i-- {
		if off(i) {
			b = i
		}
	}
	return a, b
}

func (s stretches) plateau(from, to int) *Plateau {
	n := float64(to - from)
	c, _ := s.line(from, to)
	sd := math.Sqrt(max(0, (s.square[to]-s.square[from])/n-c*c))
	return &Plateau{
		C: diagram.Celsius(c), SdK: diagram.DeltaK(sd),
		FromS: s.w.bins[from].s, ForS: n * s.w.widthS,
	}
}
