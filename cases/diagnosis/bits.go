package diagnosis

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
)

// testBits is the information expected of a check with those outcomes.
func testBits(chance []float64, outcomes []likelihood.Outcome) float64 {
	table := make([][]float64, len(outcomes))
	for o, out := range outcomes {
		table[o] = make([]float64, len(chance))
		for i, p := range chance {
			table[o][i] = p * out.P[i]
		}
	}
	return mutual(table)
}

// mutual is the mutual information in bits between the rows and the columns of
// a table of joint chances.
func mutual(table [][]float64) float64 {
	if len(table) == 0 {
		return 0
	}
	columns := make([]float64, len(table[0]))
	for _, row := range table {
		for i, p := range row {
			columns[i] += p
		}
	}
	bits := 0.0
	for _, row := range table {
		sum := 0.0
		for _, p := range row {
			sum += p
		}
		for i, p := range row {
			if p > 0 {
				bits += p * math.Log2(p/(sum*columns[i]))
			}
		}
	}
	return bits
}

// joint is the chance of each draw with each cause, after all evidence.
func (s *sheet) joint() weights {
	if s.crowd == nil {
		return weights{}
	}
	out := newWeights(s.crowd.N, len(s.chance))
	if copy(out.w, s.same.w) == 0 {
		for i := range out.w {
			out.w[i] = 1
		}
	}
	out.share(s.chance)
	return out
}

// share scales each cause's draws so that they sum to its chance.
func (w weights) share(chance []float64) {
	for cause, p := range chance {
		sum := 0.0
		for at := cause; at < len(w.w); at += w.causes {
			sum += w.w[at]
		}
		for at := cause; at < len(w.w) && sum > 0; at += w.causes {
			w.w[at] *= p / sum
		}
	}
}

// The bins that a reading is sorted into to count its information.
const (
	coldestC = -44
	binK     = 4
	bins     = 52
)

// pointBits is the information expected of reading one more point in the last
// round.
func (s *sheet) pointBits(joint weights, p diagram.Point) float64 {
	at := newCrowdAt(s.crowd, s.last(), cases.Healthy)
	sharp := make([][]float64, bins)
	for b := range sharp {
		sharp[b] = make([]float64, joint.causes)
	}
	for at.cause = 0; at.cause < joint.causes; at.cause++ {
		for d := 0; d < s.crowd.N; d++ {
			sharp[bin(at.shows(p, d))][at.cause] += joint.at(at.cause, d)
		}
	}
	root := math.Sqrt(trust(byGun(s.readings) + 1))
	return mutual(blurred(sharp, func(c float64) float64 { return modelSdK(p, c, at.air) / root }))
}

func bin(c float64) int { return int(min(max((c-coldestC)/binK, 0), bins-1)) }

// blurred spreads each row of a histogram over its neighbours by a normal
// error.
func blurred(rows [][]float64, sdK func(c float64) float64) [][]float64 {
	out := make([][]float64, len(rows))
	for b := range out {
		out[b] = make([]float64, len(rows[0]))
	}
	for b, row := range rows {
		spread, sum := make([]float64, len(rows)), 0.0
		sd := sdK(coldestC+binK*(float64(b)+0.5)) / binK
		for to := range spread {
			z := float64(to-b) / sd
			spread[to] = math.Exp(-z * z / 2)
			sum += spread[to]
		}
		for to, share := range spread {
			for i, p := range row {
				out[to][i] += p * share / sum
			}
		}
	}
	return out
}

// supposed is how many outcomes of a walk ahead are tried.
const supposed = 32

// aheadBits is the information expected of one of the walks ahead, all of its main
// points read and the fan looked at: the mean over draws taken as the truth, one
// after the other in steps of equal chance.
func (s *sheet) aheadBits(joint weights, walk int) float64 {
	if s.crowd == nil {
		return 0
	}
	few, stop, slots := s.reaching(joint), s.crowd.Ahead()+walk, s.mainSlots()
	if len(few.w) == 0 {
		return 0
	}
	before, after := entropy(s.chance), 0.0
	step, passed, next := 1/float64(supposed), 0.0, 0.5/float64(supposed)
	for i, w := range few.w {
		for passed += w; passed > next && next < 1; next += step {
			truth := s.ahead(few, i, stop)
			after += entropy(s.given(few, truth, stop, slots)) * step
		}
	}
	return max(before-after, 0)
}

// reaching is the joint chance of the draws that reach the stops ahead, each
// cause's chance kept; there is none while the crowd is simulated.
func (s *sheet) reaching(joint weights) weights {
	from := min(s.crowd.AheadFrom(), s.crowd.N)
	out := weights{joint.causes, slices.Clone(joint.w[from*joint.causes:])}
	out.share(s.chance)
	return out
}

// ahead is what the car with the ith weight of those that reach a stop ahead shows there.
func (s *sheet) ahead(reaching weights, i, stop int) []float32 {
	return s.crowd.Look(i%reaching.causes, s.crowd.AheadFrom()+i/reaching.causes, stop)
}

func (s *sheet) mainSlots() []int {
	var slots []int
	for _, p := range []diagram.Point{diagram.EngineOut, diagram.RadIn, diagram.RadOut, diagram.HeaterIn, diagram.HeaterOut} {
		if i := s.crowd.Slot(p); i >= 0 {
			slots = append(slots, i)
		}
	}
	return slots
}

// given are the causes' chances if a stop showed that.
func (s *sheet) given(joint weights, truth []float32, stop int, slots []int) []float64 {
	out := make([]float64, joint.causes)
	air, sum := float64(s.crowd.AmbientC(stop)), 0.0
	power := trust(byGun(s.readings) + len(slots))
	for i, w := range joint.w {
		if w < 1e-7 {
			continue
		}
		look, hoses := s.ahead(joint, i, stop), 1.0
		student := func(slot int) float64 {
			off := float64(truth[slot]-look[slot]) / (modelK + modelPart*math.Abs(float64(truth[slot])-air))
			return 1 + off*off/tail
		}
		for _, slot := range slots {
			hoses *= student(slot)
		}
		fan := fanNoted(truth[ensemble.FanDuty] >= 0.5, s.crowd.Setting.Causes[i%joint.causes], float64(look[ensemble.FanDuty]))
		p := w * math.Pow(hoses, -power*(tail+1)/2) * math.Pow(fan*math.Pow(student(ensemble.ECT), -(tail+1)/2.), besideTrust)
		out[i%joint.causes] += p
		sum += p
	}
	for i := range out {
		out[i] /= sum
	}
	return out
}

// entropy is in bits.
func entropy(chance []float64) float64 {
	bits := 0.0
	for _, p := range chance {
		if p > 0 {
			bits -= p * math.Log2(p)
		}
	}
	return bits
}
