package logfile

import (
	"math"
	"slices"

	"loopbook/cases"
)

const strayK = 5 // beyond both neighbours, a temperature is kept as it was

// bucket gathers rows that follow each other.
type bucket struct {
	rows     int
	from, to float64 // times of the first and of the last row
	sum      float64 // of the rows' times after the first
	cells    [5]spread
}

// spread is what a bucket keeps of a column.
type spread struct {
	n         int
	sum       float64
	low, high float64
}

// buckets keep at most most buckets of per rows each.
type buckets struct {
	most, per int
	all       []bucket
	begun     float64 // time of the first row, from which all count
}

func newBuckets(most int) *buckets {
	if most <= 0 {
		most = DefaultSamples
	}
	return &buckets{most: max(2, most), per: 1}
}

// add takes rows in the order of time. One at the time of the row before goes
// into its bucket, so that no two buckets share a time.
func (b *buckets) add(r record) {
	n := len(b.all)
	if n == 0 {
		b.begun = r.t
	}
	t := shed(r.t - b.begun)
	same := n > 0 && t <= b.all[n-1].to
	if !same && (n == 0 || b.all[n-1].rows >= b.per) {
		b.open(t)
	}
	b.all[len(b.all)-1].add(t, same, &r.values)
}

// open begins a bucket; when there are too many, neighbours are merged first.
func (b *buckets) open(t float64) {
	if len(b.all) == b.most {
		b.halve()
		if b.all[len(b.all)-1].rows < b.per {
			return // the last one had no neighbour and goes on
		}
	}
	b.all = append(b.all, bucket{from: t, to: t})
}

func (b *buckets) halve() {
	b.per *= 2
	half := b.all[:0]
	for i := 0; i < len(b.all); i += 2 {
		one := b.all[i]
		if i+1 < len(b.all) {
			one.merge(&b.all[i+1])
		}
		half = append(half, one)
	}
	b.all = half
}

func (k *bucket) add(t float64, same bool, values *[5]float64) {
	if !same {
		k.rows++
		k.to = t
		k.sum += t - k.from
	}
	for i, v := range values {
		if v == v { // no gap
			k.cells[i].add(v)
		}
	}
}

func (s *spread) add(v float64) {
	if s.n == 0 {
		s.low, s.high = v, v
	}
	s.n++
	s.sum += v
	s.low, s.high = min(s.low, v), max(s.high, v)
}

func (k *bucket) merge(next *bucket) {
	k.sum += next.sum + float64(next.rows)*(next.from-k.from)
	k.rows += next.rows
	k.to = next.to
	for i := range k.cells {
		a, b := &k.cells[i], next.cells[i]
		switch {
		case b.n == 0:
		case a.n == 0:
			*a = b
		default:
			*a = spread{a.n + b.n, a.sum + b.sum, min(a.low, b.low), max(a.high, b.high)}
		}
	}
}

// meanS is the mean of the rows' times.
func (k *bucket) meanS() float64 {
	return min(max(shed(k.from+k.sum/float64(k.rows)), k.from), k.to)
}

func (s spread) mean() float64 {
	if s.n == 0 {
		return math.NaN()
	}
	return min(max(s.sum/float64(s.n), s.low), s.high)
}

// log makes a sample of each bucket, with the columns that were found.
func (b *buckets) log(columns []*series) cases.Log {
	var out cases.Log
	for i := range b.all {
		out.TimeS = append(out.TimeS, b.all[i].meanS())
	}
	for _, s := range columns {
		values := b.column(s.at, dimensionOf(s.Key) == temperature)
		switch s.Key {
		case Ect:
			out.EctC = values
		case RPM:
			out.EngineRPM = values
		case Speed:
			out.SpeedKmh = values
		case Intake:
			out.IntakeC = values
		case Load:
			out.LoadPercent = values
		}
	}
	return out
}

func (b *buckets) column(at int, keepStrays bool) []float64 {
	out := make([]float64, len(b.all))
	for i := range b.all {
		out[i] = shed(b.all[i].cells[at].mean())
	}
	if !keepStrays || b.per == 1 {
		return out
	}
	strays := slices.Clone(out)
	for i := 1; i+1 < len(out); i++ {
		strays[i] = shed(b.all[i].cells[at].stray(out[i], out[i-1], out[i+1]))
	}
	return strays
}

// shed rounds off what sums and conversions add beyond a millionth.
func shed(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// stray is the value farthest beyond both neighbours, or the mean. A ramp
// isn't beyond its neighbours, however steep.
func (s spread) stray(mean, before, after float64) float64 {
	up := s.high - max(before, after) // NaN beside a gap: no stray
	down := min(before, after) - s.low
	switch {
	case up > strayK && !(down > up):
		return s.high
	case down > strayK:
		return s.low
	}
	return mean
}
