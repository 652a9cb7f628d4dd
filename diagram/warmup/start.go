package warmup

import (
	"math"

	"loopbook/diagram/say"
)

// When a start is a cold one. After a night's rest engine and intake air agree
// within 9 K (CS2, published, V18). An intake warmed by the engine agrees with
// it too, so that only counts under 50 °C; under 35 °C nearly all of the
// warm-up is still to come (both judgement).
const (
	soakedK   = 9
	soakedC   = 50
	coldC     = 35
	noIntakeC = -35 // an intake sensor that isn't there yet shows -40
)

func (t trip) cold(o Options) bool {
	c := float64(*t.startC())
	return c < coldC || c < soakedC && math.Abs(c-t.airC(o)) <= soakedK
}

// airC is the air that the engine rested in: as told, or the intake's at the
// start. NaN: not known.
func (t trip) airC(o Options) float64 {
	if o.AmbientC != nil {
		return float64(*o.AmbientC)
	}
	if c := t.early(func(a sample) float64 { return a.intake }); c > noIntakeC {
		return c
	}
	return math.NaN()
}

func (r *Result) start(t trip, o Options) {
	r.StartS, r.StartC, r.ColdStart = t.startS(), t.startC(), t.cold(o)
	switch {
	case !r.ColdStart:
		r.remark(say.Of("remark.no-cold-start", *r.StartC))
	case !anyRPM(t.rows):
		r.remark(say.Of("remark.no-rpm"))
	case t.startS()-t.rows[0].s >= 1:
		r.remark(say.Of("remark.stands", t.startS()-t.rows[0].s))
	}
}
