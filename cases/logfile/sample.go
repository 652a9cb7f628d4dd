package logfile

import (
	"errors"
	"io"
	"math"
)

const previewRows = 8

// sample is a column of the file's beginning, as numbers or as times in
// seconds; NaN is a gap.
type sample struct {
	values  []float64
	numbers int
	stamps  int
	text    tally // cells with another text
	form    form  // the longest of its stamps
	suffix  string
}

// sample reads the columns of the file's beginning, and the preview.
func (l *layout) sample(head []byte, out *Read) ([]sample, error) {
	t := &table{lines: linesOf(head, l.end), delim: l.delim}
	samples := make([]sample, len(l.header))
	for {
		cells, err := t.next()
		if errors.Is(err, io.EOF) {
			return samples, nil
		} else if err != nil {
			return nil, err
		}
		if t.at < l.firstData {
			continue
		}
		if len(out.Preview) < previewRows {
			shown := make([]string, len(l.header))
			copy(shown, textsOf(cells))
			out.Preview = append(out.Preview, shown)
		}
		for i := range samples {
			samples[i].add(l, cellAt(cells, i), t.at)
		}
	}
}

func (s *sample) add(l *layout, cell []byte, line int) {
	v := math.NaN()
	defer func() { s.values = append(s.values, v) }()
	if missing(cell) {
		return
	}
	if n, rest, ok := l.decimal.number(cell); ok {
		if v, ok = s.asFirst(n, rest); ok {
			s.numbers++
			return
		}
	}
	if at, ok := readStamp(cell, l.monthFirst); ok {
		v = at.total()
		s.stamps++
		s.form = max(s.form, at.form)
		return
	}
	s.text.add(line, cell)
}

// asFirst is a number in the unit that stood behind the column's first; ok is false where rest is no unit of the same.
func (s *sample) asFirst(n float64, rest []byte) (v float64, ok bool) {
	if len(rest) == 0 || string(rest) == s.suffix {
		return n, true
	}
	u, ok := unitOf(string(rest))
	if s.suffix == "" && ok {
		s.suffix = string(rest)
		return n, true
	}
	first, _ := unitOf(s.suffix)
	if !ok || u.of == otherwise || u.of != first.of {
		return math.NaN(), false
	}
	return (n*u.factor + u.offset - first.offset) / first.factor, true
}

// total is the stamp in seconds, since 1970 if it has a date.
func (s stamp) total() float64 { return float64(s.days)*dayS + s.seconds - s.zoneS }

// present are the values without gaps.
func (s *sample) present() []float64 {
	out := make([]float64, 0, s.numbers+s.stamps)
	for _, v := range s.values {
		if !math.IsNaN(v) {
			out = append(out, v)
		}
	}
	return out
}

// share of the values that lie in a range once they are converted.
func (s *sample) share(u unit, low, high float64) float64 {
	in := 0
	all := s.present()
	for _, v := range all {
		if v = v*u.factor + u.offset; v >= low && v <= high {
			in++
		}
	}
	return float64(in) / float64(max(1, len(all)))
}

// steps counts how often the values rise and fall from one to the next. That
// a clock begins again is no fall.
func (s *sample) steps() (rises, falls int) {
	all := s.present()
	turn := math.Inf(1)
	if s.stamps > s.numbers {
		turn = wrapsAfter * s.form.periodS()
	}
	for i := 1; i < len(all); i++ {
		switch {
		case all[i] > all[i-1] || all[i] < all[i-1]-turn:
			rises++
		case all[i] < all[i-1]:
			falls++
		}
	}
	return rises, falls
}

// restlessness is how far the values go up and down together, over their
// range, once they are averaged to two hundred: near 1 for a steady rise, some
// tens for a throttle.
func (s *sample) restlessness() float64 {
	all := s.present()
	const blocks = 200
	per := max(1, len(all)/blocks)
	low, high, path, before := math.Inf(1), math.Inf(-1), 0.0, math.NaN()
	for i := 0; i+per <= len(all); i += per {
		mean := meanOf(all[i : i+per])
		low, high = min(low, mean), max(high, mean)
		if !math.IsNaN(before) {
			path += math.Abs(mean - before)
		}
		before = mean
	}
	if !(high > low) {
		return 0
	}
	return path / (high - low)
}

func meanOf(values []float64) float64 {
	sum := 0.0
	for _, v := range values {
		sum += v
	}
	return sum / float64(len(values))
}
