package main

import (
	"context"
	"errors"
	"fmt"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
)

// judging keeps the causes of a case up to date. The crowd is simulated and
// weighed apart from the window; what a newer change has overtaken is dropped.
// All of it is called on the Fyne goroutine.
type judging struct {
	mind  *mind
	start func(func()) // runs what takes a while apart from the window
	prior diagnosis.Prior

	answer  answer
	c       *cases.Case // a copy that nobody changes; nil: no case
	grounds grounds     // of the stage that causes are asked of
	chosen  cases.Cause // whose reasons are asked for; "": the likeliest's
	key     string      // of the crowds that are there or being simulated
	crowd   *ensemble.Ensemble
	failed  error // why there is no crowd
	cancel  context.CancelFunc
	turn    int // of weighing; an older one's answer is dropped

	changed  func() // there is another answer
	gathered func() // the crowd is whole, so expected ranges are others
}

// answer is a case's ranking with the reasons of one cause.
type answer struct {
	c       *cases.Case
	plan    diagnosis.Plan // of the rounds that it was judged by
	thought thought
	crowd   *ensemble.Ensemble
	chosen  diagnosis.Ranked
}

func newJudging(m *mind, start func(func())) *judging {
	return &judging{mind: m, start: start, cancel: func() {}, changed: func() {}, gathered: func() {}}
}

// judge takes a case as it is now, with what is found of it. What is there weighs
// at once; a crowd that isn't is simulated.
func (j *judging) judge(c cases.Case, found evidence.Findings) error {
	own, err := copyOf(c)
	if err != nil {
		return err
	}
	if j.c == nil || j.c.ID != c.ID {
		j.stop()
	}
	j.c, j.grounds = &own, groundsOf(&own, found, diagnosis.StageOf(&own))
	if key := crowdsKey(&own, j.grounds); key != j.key {
		j.cancel()
		j.key, j.crowd, j.failed = key, j.mind.crowd(j.grounds), nil
		j.gather()
	}
	j.weigh()
	return nil
}

// stop drops the case and all that is under way for it.
func (j *judging) stop() {
	j.cancel()
	j.cancel = func() {}
	j.turn++
	j.c, j.grounds, j.chosen, j.key, j.crowd, j.failed, j.answer = nil, grounds{}, "", "", nil, nil, answer{}
}

// crowdsKey names the crowds that gather simulates for a case.
func crowdsKey(c *cases.Case, g grounds) string {
	plans := g.plans()
	if p, ok := otherPlan(c, g.plan.Stage); ok {
		plans = append(plans, p)
	}
	key := ""
	for _, p := range plans {
		key += fmt.Sprintf("%s %s\n", p.Stage, p.Setting.Key())
	}
	return key
}

// gather simulates the crowds, and weighs anew each time more draws are there.
func (j *judging) gather() {
	ctx, cancel := context.WithCancel(context.Background())
	c, g := j.c, j.grounds
	j.cancel = cancel
	j.start(func() {
		err := j.mind.gather(ctx, c, g, func(e *ensemble.Ensemble) {
			fyne.Do(func() {
				if ctx.Err() == nil {
					j.crowd = e
					j.weigh()
				}
			})
		})
		fyne.Do(func() {
			if ctx.Err() == nil {
				j.end(err)
			}
		})
	})
}

// end takes the whole crowd.
func (j *judging) end(err error) {
	j.cancel()
	if err != nil && !errors.Is(err, context.Canceled) {
		j.failed = err
	}
	j.crowd = j.mind.crowd(j.grounds)
	j.weigh()
	j.gathered()
}

// weigh makes the answer anew from what is there.
func (j *judging) weigh() {
	j.turn++
	turn, c, g, crowd, prior, chosen := j.turn, j.c, j.grounds, j.crowd, j.prior, j.chosen
	if c == nil {
		return
	}
	j.start(func() {
		a := answer{c: c, plan: g.plan, crowd: crowd, thought: j.mind.weigh(c, g, crowd, prior)}
		a.chosen = reasonsOf(a.thought.ranking, chosen)
		fyne.Do(func() {
			if turn == j.turn {
				j.answer = a
				j.changed()
			}
		})
	})
}

// reasonsOf explains one cause of a ranking, or the first where none is named.
func reasonsOf(r diagnosis.Ranking, cause cases.Cause) diagnosis.Ranked {
	one := r.Causes[0]
	for _, c := range r.Causes {
		if c.Cause == cause {
			one = c
		}
	}
	r.Causes = []diagnosis.Ranked{one}
	r.Explain(1)
	return r.Causes[0]
}

// choose asks for another cause's reasons.
func (j *judging) choose(c cases.Cause) {
	j.chosen = c
	j.weigh()
}

// believe judges by another prior.
func (j *judging) believe(p diagnosis.Prior) {
	j.prior = p
	j.weigh()
}

// progress tells how far the crowd is, or "" where it is whole or none is
// wanted.
func (j *judging) progress() string {
	switch {
	case j.c == nil || j.key == "":
		return ""
	case j.failed != nil:
		return kit.L("window.frame.cant-compute", j.failed.Error())
	case j.crowd == nil:
		return kit.L("window.frame.computing", 0)
	case j.crowd.N < j.mind.crowds.Draws:
		return kit.L("window.frame.computing", 100*j.crowd.N/j.mind.crowds.Draws)
	}
	return ""
}
