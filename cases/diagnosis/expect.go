package diagnosis

import (
	"math"
	"slices"
	"sort"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
)

// Expecter says what healthy cars of the crowd would show in a case's rounds,
// and asks the trade's table where there is no crowd. It satisfies
// evidence.Expecter.
//
// An engine hotter than any healthy one of the crowd has no healthy like. What
// it should show there is the trade's rule for a thermostat that stands wide
// open, so differences are the table's then.
type Expecter struct {
	Table  evidence.Expecter
	Crowds *Crowds
}

// Expect is for one round of the case.
func (x Expecter) Expect(c *cases.Case, round int) evidence.Expectation {
	out := x.Table.Expect(c, round)
	p, ok := PlanFor(c, c.Rounds[round].Stage)
	if !ok {
		return out
	}
	crowd := x.Crowds.Healthy(p)
	stop := p.stop(round)
	if crowd == nil || stop < 0 {
		return out
	}
	h, hot := newCrowdAt(crowd, stop, cases.Healthy).asWarmAs(out.EngineC)
	skip := func(p diagram.Point) bool {
		return p == diagram.AirOn || p == diagram.AirOff && stillAir(&c.Rounds[round])
	}
	for _, at := range p.Setting.Loop.Points {
		if !skip(at.Point) {
			out.Points[at.Point] = h.point(at.Point)
		}
	}
	if hot {
		return out
	}
	for _, d := range p.Setting.Loop.Deltas {
		if d.From != "" && !skip(d.From) {
			out.Deltas[d.Name] = wider(h.delta(d), out.Deltas[d.Name])
		}
	}
	return out
}

// wider is the model's span, as wide at least as the trade's rule for the same
// conditions: what the trade calls usual isn't called unusual on a model's word,
// and where its rule has no end there is none.
func wider(model, trade evidence.Span) evidence.Span {
	if trade.Source.Empty() {
		return model
	}
	if trade.LowK == nil || *trade.LowK < *model.LowK {
		model.LowK = trade.LowK
	}
	if trade.HighK == nil || *trade.HighK > *model.HighK {
		model.HighK = trade.HighK
	}
	model.Source = say.Of("source.model-or-trade", model.Source, trade.Source)
	return model
}

// stillAir reports whether no fan and no road moves the air through the
// radiator: what a probe behind it shows then is the draught's whim.
func stillAir(r *cases.Round) bool {
	return r.Fan != cases.FanOn && !(r.SpeedKmh != nil && *r.SpeedKmh > evidence.StandingKmh)
}

// stop is a round's place among the stops, or -1.
func (p Plan) stop(round int) int { return slices.Index(p.Rounds, round) }

// crowdAt are the crowd's cars with one cause at a stop.
type crowdAt struct {
	crowd *ensemble.Ensemble
	stop  int
	cause int
	air   float64
	draws []int
}

func newCrowdAt(crowd *ensemble.Ensemble, stop int, cause cases.Cause) crowdAt {
	at := crowdAt{crowd, stop, indexOf(cause), float64(crowd.AmbientC(stop)), make([]int, crowd.N)}
	for d := range at.draws {
		at.draws[d] = d
	}
	return at
}

// over is f of each of the draws.
func (h crowdAt) over(f func(draw int) float64) []float64 {
	out := make([]float64, len(h.draws))
	for i, d := range h.draws {
		out[i] = f(d)
	}
	return out
}

func (h crowdAt) point(p diagram.Point) evidence.Range {
	all := h.over(func(d int) float64 { return h.shows(p, d) })
	low, high := nineTenths(all, modelSdK(p, median(all), h.air))
	if p == diagram.AirOff { // air leaves no warmer than its coolant comes in
		high = min(high, float64(h.point(diagram.RadIn).HighC))
	}
	return evidence.Range{LowC: diagram.Celsius(low), HighC: diagram.Celsius(high), Source: h.source(), Class: evidence.Computed}
}

func (h crowdAt) source() say.Text {
	return say.Of("source.model", len(h.draws))
}

func (h crowdAt) delta(at diagram.DeltaAt) evidence.Span {
	all := h.over(func(d int) float64 { return h.shows(at.From, d) - h.shows(at.To, d) })
	low, high := nineTenths(all, differenceSdK(at.From, at.To, median(all)))
	from, to := h.point(at.From), h.point(at.To) // beyond what these allow one of them is out itself
	l := max(diagram.DeltaK(low), from.LowC.Minus(to.HighC))
	u := min(diagram.DeltaK(high), from.HighC.Minus(to.LowC))
	return evidence.Span{LowK: &l, HighK: &u, Source: h.source(), Class: evidence.Computed}
}

// shows is what a gun would read at a point of one of the cars.
func (h crowdAt) shows(p diagram.Point, draw int) float64 {
	r := reading{point: p, wall: wallOf(p)}
	return r.wouldShow(float64(h.crowd.Look(h.cause, draw, h.stop)[h.crowd.Slot(p)]), h.crowd.Wall(draw), h.air)
}

func (h crowdAt) ect(draw int) float64 {
	return float64(h.crowd.Look(h.cause, draw, h.stop)[ensemble.ECT])
}

// asWarmAs are those of the cars that are about as warm as the round's engine. All
// of them are left where that isn't known, or where none gets so hot, of which
// it reports true.
func (h crowdAt) asWarmAs(engine *diagram.Celsius) (like crowdAt, hotter bool) {
	if engine == nil {
		return h, false
	}
	if h.allColder(float64(*engine)) {
		return h, true
	}
	h.draws = h.nearest(float64(*engine))
	return h, false
}

// allColder reports whether an engine of that temperature is hotter than the
// cars get here.
func (h crowdAt) allColder(engineC float64) bool {
	_, high := nineTenths(h.over(h.ect), sensorSdK)
	return engineC > high
}

// nearest are the quarter of the draws whose engine is nearest to that
// temperature: how far its thermostat has come is no longer open then.
func (h crowdAt) nearest(engineC float64) []int {
	out := slices.Clone(h.draws)
	sort.SliceStable(out, func(i, j int) bool {
		return math.Abs(h.ect(out[i])-engineC) < math.Abs(h.ect(out[j])-engineC)
	})
	return out[:(len(out)+3)/4]
}

// nineTenths is the range from the 5th to the 95th percentile of values, each
// read with an error of that standard deviation: both spreads in quadrature
// about the median. Values are sorted.
func nineTenths(values []float64, sdK float64) (low, high float64) {
	mid := median(values)
	n := len(values)
	down, up := mid-values[n/20], values[n-1-n/20]-mid
	return mid - math.Hypot(down, normal95*sdK), mid + math.Hypot(up, normal95*sdK)
}

// normal95 is the 95th percentile of the standard normal distribution.
const normal95 = 1.645

// median sorts the values.
func median(values []float64) float64 {
	sort.Float64s(values)
	return values[len(values)/2]
}

// wallOf is the part of a hose wall's step that is in a reading at a point, as
// it is usually taken: hoses on their rubber, the housing on tape.
func wallOf(p diagram.Point) float64 {
	if p.Air() || p == diagram.Housing {
		return 0
	}
	return 1
}
