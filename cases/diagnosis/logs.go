package diagnosis

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
)

// LogPlan is a log with the cars that it is held against.
type LogPlan struct {
	Log    int // of the case
	Plan   Plan
	startS float64 // of the engine, by the log's clock
}

// weighedLogs is how many logs of a stage are weighed: each has to be simulated, and a
// third cold start tells little that two didn't.
const weighedLogs = 2

// LogPlans are the stage's logs that begin with a cold engine, as far as they are
// weighed; f is of the case as it is.
func LogPlans(c *cases.Case, f evidence.Findings, stage cases.Stage) []LogPlan {
	c, _ = evidence.Believed(c)
	var out []LogPlan
	for i := range c.Logs {
		l, r := &c.Logs[i], f.WarmUps[i].Result
		if !stage.Holds(l.Stage) || !r.ColdStart || len(out) == weighedLogs {
			continue
		}
		if p, ok := PlanForLog(c, l, r.StartS); ok {
			out = append(out, LogPlan{i, p, r.StartS})
		}
	}
	return out
}

// WithLog is the ranking with a log's curve weighed in: how well each cause's
// cars, run as the log's was, follow it. The crowd is of the log's plan.
func (r Ranking) WithLog(lp LogPlan, crowd *ensemble.Ensemble) Ranking {
	l := &r.sheet.c.Logs[lp.Log]
	marks := marksOf(l, lp, float64(crowd.AmbientC(0)))
	if len(marks) == 0 {
		return r
	}
	f := likelihood.Factor{Label: logText(l), Log: weighLog(crowd, marks)}
	logs := make([]float64, len(r.sheet.chance))
	for i, p := range r.sheet.chance {
		logs[i] = math.Log(p) + f.Log[i]
	}
	r.sheet.factors = append(slices.Clone(r.sheet.factors), f)
	r.sheet.chance = normalised(logs)
	r.Causes, r.Blank = sorted(r.sheet.chance), false
	return r
}

func logText(l *cases.Log) say.Text {
	if l.Name == "" {
		return say.Of("reason.log")
	}
	return say.Of("reason.log-named", cases.LogTitle(l.Name))
}

// mark is what the sensor showed about one stop of a log's crowd.
type mark struct {
	stop   int
	shownC float64
	scale  float64 // 1/(tail·sd²)
}

// markEvery is how many of the crowd's points go to one mark: nearer ones tell the same.
const markEvery = 2

// marksOf are the marks along a log; where the sensor has a gap there is none.
func marksOf(l *cases.Log, lp LogPlan, air float64) []mark {
	var out []mark
	at := lp.startS
	for stop, s := range lp.Plan.Setting.Starts[0].Stops {
		at += s.Seconds
		if c, ok := showedAt(l, at); ok && stop%markEvery == markEvery-1 {
			sd := sensorSd(c, air)
			out = append(out, mark{stop, c, 1 / (tail * sd * sd)})
		}
	}
	return out
}

// gapS is how far apart two rows may be for what the sensor showed between them to be known.
const gapS = 180

// showedAt is what the sensor showed at a time, between the rows beside it.
func showedAt(l *cases.Log, s float64) (c float64, ok bool) {
	before := -1
	for i, at := range l.TimeS {
		if math.IsNaN(l.EctC[i]) {
			continue
		}
		switch {
		case at <= s:
			before = i
		case before < 0 || at-l.TimeS[before] > gapS:
			return 0, false
		default:
			part := (s - l.TimeS[before]) / (at - l.TimeS[before])
			return l.EctC[before] + part*(l.EctC[i]-l.EctC[before]), true
		}
	}
	if before < 0 || s-l.TimeS[before] > 1 {
		return 0, false
	}
	return l.EctC[before], true // the last row
}

// weighLog is the logarithm of each cause's likelihood by the marks: the mean over its
// draws. Marks of one log err together as readings of one loop do.
func weighLog(e *ensemble.Ensemble, marks []mark) likelihood.Vector {
	power := trust(len(marks)) * (tail + 1) / 2
	out := make(likelihood.Vector, len(e.Setting.Causes))
	for cause := range out {
		sum := 0.0
		for draw := 0; draw < e.N; draw++ {
			product := 1.0
			for _, m := range marks {
				off := m.shownC - float64(e.Look(cause, draw, m.stop)[ensemble.ECT])
				product *= 1 + off*off*m.scale
			}
			sum += math.Pow(product, -power)
		}
		out[cause] = math.Log(max(sum/float64(e.N), math.SmallestNonzeroFloat64))
	}
	return out
}
