package evidence

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Expecter says what a healthy loop like the case's would show in a round. It
// must be safe for use by several goroutines.
type Expecter interface {
	Expect(c *cases.Case, round int) Expectation
}

// Expectation holds ranges by point and by a delta's name. What it doesn't
// hold isn't judged.
type Expectation struct {
	EngineC *diagram.Celsius // what the round's engine is taken for; nil: not known
	Points  map[diagram.Point]Range
	Deltas  map[string]Span
}

// Span is a range of a difference; a nil end is open.
type Span struct {
	LowK, HighK *diagram.DeltaK
	Source      say.Text
	Class       Class
}

func (s Span) state(v diagram.DeltaK) State {
	v = tenth(v)
	switch {
	case s.LowK != nil && v < *s.LowK:
		return Low
	case s.HighK != nil && v > *s.HighK:
		return High
	case s.LowK == nil && s.HighK == nil:
		return Unknown
	}
	return InRange
}

func (r Range) state(v diagram.Celsius) State {
	v = tenth(v)
	switch {
	case v < r.LowC:
		return Low
	case v > r.HighC:
		return High
	}
	return InRange
}

// tenth rounds to what a gun can tell, so that a value on its bound is in.
func tenth[T ~float64](v T) T { return T(math.Round(float64(v)*10) / 10) }
