package diagnosis

import (
	"math"
	"slices"
	"sort"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Reason is one piece of evidence and what it says about a cause by itself.
type Reason struct {
	Words  say.Text
	Factor float64         // times as likely with the cause as on the whole; below 1 against it
	Round  int             // of the case, or -1
	Points []diagram.Point // where it was measured
}

// A reason counts from this factor on; so many are told for and against.
const (
	tellFrom = 1.25
	tellMost = 5
)

// Explain fills in what speaks for and against each of the first n causes.
func (r *Ranking) Explain(n int) {
	s := &r.sheet
	looks := s.features()
	for i := range r.Causes[:min(n, len(r.Causes))] {
		c := &r.Causes[i]
		all := append(s.factorReasons(c.Cause), s.lookReasons(c.Cause, looks)...)
		c.For, c.Against = split(all)
		if len(c.For)+len(c.Against) == 0 && s.measured != nil {
			// many that agree may each say too little to be told
			c.For, c.Against = split([]Reason{s.reason(likelihood.Factor{Label: say.Of("reason.together"), Log: s.measured}, c.Cause)})
		}
	}
}

// split puts the reasons in the order of their weight; of several that lean on
// the same reading only the heaviest is told.
func split(all []Reason) (pro, con []Reason) {
	sort.SliceStable(all, func(i, j int) bool { return math.Abs(math.Log(all[i].Factor)) > math.Abs(math.Log(all[j].Factor)) })
	type place struct {
		round int
		point diagram.Point
	}
	used := map[place]bool{}
	for _, r := range all {
		taken := false
		for _, p := range r.Points {
			taken = taken || used[place{r.Round, p}]
		}
		if taken || r.Factor < tellFrom && r.Factor > 1/tellFrom {
			continue
		}
		for _, p := range r.Points {
			used[place{r.Round, p}] = true
		}
		switch {
		case r.Factor > 1 && len(pro) < tellMost:
			pro = append(pro, r)
		case r.Factor < 1 && len(con) < tellMost:
			con = append(con, r)
		}
	}
	return pro, con
}

// factorReasons are those of symptoms, codes and tests.
func (s *sheet) factorReasons(c cases.Cause) []Reason {
	var out []Reason
	for _, f := range s.factors {
		out = append(out, s.reason(f, c))
	}
	return out
}

// reason is what a factor says of a cause.
func (s *sheet) reason(f likelihood.Factor, c cases.Cause) Reason {
	whole := 0.0
	for i, l := range f.Log {
		whole += s.prior[i] * math.Exp(l)
	}
	return Reason{Words: f.Label, Factor: math.Exp(f.Log[indexOf(c)]) / whole, Round: evidence.WholeCase}
}

// indexOf is a cause's place in the format's order, by which all that is of each
// cause is kept; an unknown one is taken for a sound loop.
func indexOf(c cases.Cause) int { return max(slices.Index(cases.Words[cases.Cause](), c), 0) }

// causeAt is the cause of a place.
func causeAt(i int) cases.Cause { return cases.Words[cases.Cause]()[i] }

// feature is a temperature, or a difference of two, that was measured.
type feature struct {
	stop   int
	a, b   *reading // b is nil for a temperature by itself
	title  say.Text
	value  float64
	sdK    float64
	points []diagram.Point
	delta  string // the difference's name, or ""
}

// features are all of the readings, and the layout's differences between them.
func (s *sheet) features() []feature {
	var out []feature
	for i := range s.readings {
		r := &s.readings[i]
		f := feature{stop: r.stop, a: r, value: r.shownC, sdK: r.sdK, title: say.Of("reason.sensor"), points: []diagram.Point{r.point}}
		if r.point != "" {
			f.title = say.Place(r.point)
		}
		out = append(out, f)
	}
	if s.crowd == nil {
		return out
	}
	for stop := range s.plan.Rounds {
		for _, d := range s.plan.Setting.Loop.Deltas {
			a, b := s.reading(stop, d.From), s.reading(stop, d.To)
			if a != nil && b != nil {
				out = append(out, feature{stop: stop, a: a, b: b, title: say.DeltaName(d.Name), value: a.shownC - b.shownC,
					sdK: math.Hypot(a.sdK, b.sdK) * 0.8, points: []diagram.Point{d.From, d.To}, delta: d.Name})
			}
		}
	}
	return out
}

func (s *sheet) reading(stop int, p diagram.Point) *reading {
	for i := range s.readings {
		if s.readings[i].stop == stop && s.readings[i].point == p {
			return &s.readings[i]
		}
	}
	return nil
}

// shows is the feature on a draw of a cause.
func (s *sheet) shows(f feature, cause, draw int) float64 {
	look, wall, air := s.crowd.Look(cause, draw, f.stop), s.crowd.Wall(draw), float64(s.crowd.AmbientC(f.stop))
	v := f.a.wouldShow(float64(look[f.a.slot]), wall, air)
	if f.b != nil {
		v -= f.b.wouldShow(float64(look[f.b.slot]), wall, air)
	}
	return v
}

// lookReasons hold each feature by itself against the crowd of the cause and
// against all causes as the prior has them.
func (s *sheet) lookReasons(c cases.Cause, looks []feature) []Reason {
	own, healthy := indexOf(c), indexOf(cases.Healthy)
	var out []Reason
	for _, f := range looks {
		mine, whole := 0.0, 0.0
		for cause, p := range s.prior {
			sum := 0.0
			for d := 0; d < s.crowd.N; d++ {
				off := (f.value - s.shows(f, cause, d)) / f.sdK
				sum += math.Pow(1+off*off/tail, -(tail+1)/2.)
			}
			whole += p * sum
			if cause == own {
				mine = sum
			}
		}
		i := s.plan.Rounds[f.stop]
		power := trust(byGun(s.readings))
		if f.a.sensor() {
			power = besideTrust
		}
		r := Reason{Factor: math.Pow(mine/whole, power), Round: i, Points: f.points}
		if s.word(&r, f, own, healthy) {
			out = append(out, r)
		}
	}
	return out
}

// word tells a feature with what the cause, and a healthy loop, would show. It is false where these numbers, which are of
// cars as warm as this one, say the opposite of the factor, which is of all: nobody could follow that.
func (s *sheet) word(r *Reason, f feature, own, healthy int) bool {
	title := f.title
	if label := s.c.Rounds[s.plan.Rounds[f.stop]].Title(); !label.Empty() {
		title = say.Of("reason.in-round", title, label)
	}
	low, high := s.expected(f, healthy)
	if own == healthy {
		r.Words = say.Of("reason.healthy", title, f.amount(f.value), f.amount(low), f.amount(high))
		return true
	}
	mine, most := s.span(f, own)
	r.Words = say.Of("reason.cause", title, f.amount(f.value), f.amount(mine), f.amount(most), f.amount(low), f.amount(high))
	bySound, byCause := low <= f.value && f.value <= high, mine <= f.value && f.value <= most
	return bySound == byCause || byCause == (r.Factor > 1)
}

// expected is what a healthy loop would show of a feature: of a difference what the hose map says,
// where it has a range there.
func (s *sheet) expected(f feature, healthy int) (low, high float64) {
	for _, d := range s.found.Deltas {
		if d.Name == f.delta && d.Round == s.plan.Rounds[f.stop] && d.ExpectedLowK != nil && d.ExpectedHighK != nil {
			return float64(*d.ExpectedLowK), float64(*d.ExpectedHighK)
		}
	}
	return s.span(f, healthy)
}

// amount is a number of the feature as the quantity that it is.
func (f feature) amount(v float64) any {
	if f.b != nil {
		return diagram.DeltaK(v)
	}
	return diagram.Celsius(v)
}

// span is what nine in ten of a cause's cars would show of a feature, as the hose
// map has it: of those that are as warm as this one where there are any.
func (s *sheet) span(f feature, cause int) (low, high float64) {
	cars := newCrowdAt(s.crowd, f.stop, causeAt(cause))
	if f.a.point != "" { // the sensor itself isn't taken as known
		cars = s.likeThisOne(cars, s.plan.Rounds[f.stop])
	}
	all := cars.over(func(d int) float64 { return s.shows(f, cause, d) })
	if f.b == nil {
		return nineTenths(all, f.sdK)
	}
	return nineTenths(all, differenceSdK(f.a.point, f.b.point, median(all)))
}

// likeThisOne are those of a cause's cars that are as warm as the round's engine. Where the sensor is the cause, it is
// those whose sensor shows what this one shows.
func (s *sheet) likeThisOne(cars crowdAt, round int) crowdAt {
	engine := s.found.Rounds[round].EngineC
	if shown := s.c.Rounds[round].EctC; shown != nil && causeAt(cars.cause).OfSensor() {
		engine = shown
	}
	cars, _ = cars.asWarmAs(engine)
	return cars
}

// Would is what a cause's cars show at a point in a round of the case: the
// middle nine tenths of what a gun would read, or false where nothing is
// simulated. Where the engine is as warm as some of them get here, it is those.
func (r Ranking) Would(cause cases.Cause, round int, at diagram.Point) (evidence.Range, bool) {
	s := r.sheet
	stop := s.plan.stop(round)
	if s.crowd == nil || stop < 0 || s.crowd.Slot(at) < 0 {
		return evidence.Range{}, false
	}
	return s.likeThisOne(newCrowdAt(s.crowd, stop, cause), round).point(at), true
}
