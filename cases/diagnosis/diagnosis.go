// Package diagnosis goes from a case's evidence to its causes: how probable
// each is, what speaks for it and against it, and which check is worth its
// minutes next.
//
// Temperatures are held against a crowd of simulated cars with every cause
// (package diagram/physics/ensemble); symptoms, codes and workshop tests enter by
// tables of how often each goes with each cause (package likelihood). The
// likelihood of temperatures has heavy tails, a stated error of the model, and
// the gun's bias integrated out; points that weren't read are integrated out by
// the crowd. What was measured before and after the repair is never mixed.
package diagnosis

import (
	"math"
	"slices"
	"sort"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
)

// Judge ranks causes. It is immutable: build it once, use it from anywhere.
type Judge struct {
	tables *likelihood.Tables
}

// NewJudge is a judge by the shipped tables. An error names the data that is at
// fault.
func NewJudge() (*Judge, error) {
	t, err := likelihood.Shipped()
	if err != nil {
		return nil, err
	}
	return &Judge{t}, nil
}

// Ranking is a stage's causes, most likely first, and what they were judged by.
type Ranking struct {
	Causes []Ranked
	Stage  cases.Stage
	Draws  int  // of each cause that temperatures were held against; 0: no temperatures were
	Blank  bool // nothing to go on: the probabilities are the prior

	sheet sheet
}

// Ranked is a cause with its probability.
type Ranked struct {
	Cause        cases.Cause
	Probability  float64
	For, Against []Reason // by weight; filled by Explain
}

// Of is a cause as it is ranked; false where it isn't.
func (r Ranking) Of(cause cases.Cause) (Ranked, bool) {
	i := slices.IndexFunc(r.Causes, func(c Ranked) bool { return c.Cause == cause })
	if i < 0 {
		return Ranked{}, false
	}
	return r.Causes[i], true
}

// sheet is all that a ranking was made from, for those who ask why.
type sheet struct {
	tables   *likelihood.Tables
	c        *cases.Case
	found    evidence.Findings
	plan     Plan
	crowd    *ensemble.Ensemble // nil: none
	readings []reading
	stops    []scales
	same     weights // of the draws, by all stops; empty: no stop
	factors  []likelihood.Factor
	measured likelihood.Vector // what all temperatures say; nil: there are none
	prior    []float64
	chance   []float64 // of each cause, in the format's order
}

// Rank weighs the stage's evidence. The crowd is of the plan's setting, or nil
// where there is none yet or no layout; then temperatures take no part, nor does one that
// no coolant can have. The case must not change while the ranking is in use.
func (j *Judge) Rank(c *cases.Case, f evidence.Findings, p Plan, crowd *ensemble.Ensemble, prior Prior) Ranking {
	c, _ = evidence.Believed(c)
	s := sheet{tables: j.tables, c: c, found: f, plan: p, crowd: crowd, prior: j.chances(prior, c), factors: j.factors(c, f, p.Stage)}
	r := Ranking{Stage: p.Stage, Blank: len(s.factors) == 0}
	logs := make([]float64, len(s.prior))
	for i, p := range s.prior {
		logs[i] = math.Log(p)
		for _, factor := range s.factors {
			logs[i] += factor.Log[i]
		}
	}
	if crowd != nil {
		s.readings = readings(c, f, p, crowd)
		s.stops = weigh(crowd, s.readings, seenSigns(c, p))
	}
	if len(s.stops) > 0 {
		s.same, s.measured = together(s.stops), make(likelihood.Vector, len(logs))
		for i := range logs {
			s.measured[i] = evidenceOf(s.stops, s.same, i)
			logs[i] += s.measured[i]
		}
		r.Blank, r.Draws = false, crowd.N
	}
	s.chance = normalised(logs)
	r.sheet = s
	r.Causes = sorted(s.chance)
	return r
}

// Doubt is what is open of the cause, in bits.
func (r Ranking) Doubt() float64 { return entropy(r.sheet.chance) }

// ruledOutUnder is the chance under which a cause counts as one that doesn't explain the case
// (judgement).
const ruledOutUnder = 0.01

// checkedFrom is from which factor on a check speaks for a cause (judgement): less is what a sound part leaves to
// each of the others.
const checkedFrom = 2

// RuledOut are the faults that what was measured leaves hardly a chance, the likeliest first. What may be there
// besides is none of them: what is named as a second fault (nil: none is), and what a check speaks for, as a leak beside a
// burnt gasket. Nor is the verdict; that the measurements say otherwise is told with it.
func (r Ranking) RuledOut(second *Beside) []cases.Cause {
	var out []cases.Cause
	for _, c := range r.Causes {
		if c.Probability < ruledOutUnder && c.Cause != cases.Healthy && c.Cause != r.sheet.c.Verdict.Cause &&
			!second.names(c.Cause) && !r.sheet.checked(c.Cause) {
			out = append(out, c.Cause)
		}
	}
	return out
}

// checked reports whether a check speaks for a cause.
func (s *sheet) checked(cause cases.Cause) bool {
	return slices.ContainsFunc(s.factors, func(f likelihood.Factor) bool {
		return f.Check && s.reason(f, cause).Factor >= checkedFrom
	})
}

// normalised turns logarithms into chances that sum to 1.
func normalised(logs []float64) []float64 {
	most := slices.Max(logs)
	out := make([]float64, len(logs))
	for i, l := range logs {
		out[i] = math.Exp(l - most)
	}
	return toOne(out)
}

// toOne scales chances in place so that they sum to 1.
func toOne(chance []float64) []float64 {
	sum := 0.0
	for _, p := range chance {
		sum += p
	}
	for i := range chance {
		chance[i] /= sum
	}
	return chance
}

func sorted(chance []float64) []Ranked {
	out := make([]Ranked, len(chance))
	for i, c := range cases.Words[cases.Cause]() {
		out[i] = Ranked{Cause: c, Probability: chance[i]}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].Probability > out[j].Probability })
	return out
}

// factors are what symptoms, codes, the trade's rules for temperatures, the
// filling and the stage's tests say. Symptoms and codes are of the complaint, so
// of the time before the repair.
func (j *Judge) factors(c *cases.Case, f evidence.Findings, stage cases.Stage) []likelihood.Factor {
	var out []likelihood.Factor
	if stage == cases.BeforeRepair {
		out = append(out, j.tables.Symptoms(c.Complaint.Symptoms)...)
		out = append(out, j.tables.Codes(c.Codes)...)
		if f, ok := j.tables.Frame(c); ok {
			out = append(out, f)
		}
	}
	if words, measured := findings(c, f, stage); measured {
		out = append(out, j.tables.Findings(words, holding(c, f, stage))...)
	}
	for _, o := range outcomes(c, stage) {
		if f, ok := j.tables.Test(o.Kind, o.Word, o.Unseen...); ok {
			out = append(out, f)
		}
	}
	return out
}

// Outcome is how a workshop check came out, in a word of its tables.
type Outcome struct {
	Kind   cases.TestKind
	Word   string
	Unseen []string // as evidence.OutcomeAndUnseen
}

// outcomes are those of the stage's tests, the last of each kind: a check that
// is done again replaces the one before. A filling noted in the loop's data
// stands for the coolant's test where there is none.
func outcomes(c *cases.Case, stage cases.Stage) []Outcome {
	last := map[cases.TestKind]Outcome{}
	if word := evidence.FillOutcome(c); word != "" && !evidence.Passed(word) {
		last[cases.CoolantTest] = Outcome{Kind: cases.CoolantTest, Word: word}
	}
	for i := range c.Tests {
		if t := &c.Tests[i]; stage.Holds(t.Stage) {
			if word, unseen := evidence.OutcomeAndUnseen(c, t); word != "" {
				last[t.Kind] = Outcome{t.Kind, word, unseen}
			}
		}
	}
	var out []Outcome
	for _, kind := range cases.Words[cases.TestKind]() {
		if o, ok := last[kind]; ok {
			out = append(out, o)
		}
	}
	return out
}
