package desk

import (
	"context"
	"errors"
	"math"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/say"
)

// judging keeps the causes of a case up to date. The crowd is simulated and
// weighed apart from the window; what a newer change has overtaken is dropped.
// All of it is called on the desk's goroutine.
//
// Nobody is to see the answer wander: until all of the crowd is there the last one is held. A case
// that has none is answered without the model, and once more by the crowd's first cars.
type judging struct {
	mind  *mind.Mind
	apart Apart
	prior diagnosis.Prior

	answer  Answer
	now     Basis       // the case as it is
	settled Basis       // the case when its crowds were all there last
	chosen  cases.Cause // whose reasons are asked for; "": the likeliest's
	key     string      // of the crowds that are there or being simulated
	drawn   float64     // the part of them that is there, 0 to 1
	ranged  bool        // healthy cars are there: expected ranges stay as they are
	whole   bool        // nothing is being simulated
	failed  error       // why there is no crowd
	cancel  context.CancelFunc
	turn    int // of weighing; an older one's answer is dropped

	changed    func() // there is another answer
	progressed func() // more is simulated
	gathered   func() // healthy cars are there, so expected ranges are others
}

// Basis is what an answer is weighed from.
type Basis struct {
	Case    *cases.Case  // a copy that nobody changes; nil: no case
	Grounds mind.Grounds // of the stage that causes are asked of
	Crowd   *ensemble.Ensemble
}

// Answer is a case's ranking with the reasons of one cause.
type Answer struct {
	Basis
	Standing Standing
	Thought  mind.Thought
	Chosen   diagnosis.Ranked
}

// Standing is how an answer stands to the case as it is.
type Standing string

const (
	byAll     Standing = "by-all"     // weighed from all that is known
	noCars    Standing = "no-cars"    // without the model, whose cars are being simulated
	firstCars Standing = "first-cars" // by the first of them
	heldFor   Standing = "held"       // from before a change whose cars are being simulated
)

// Computing reports whether the answer is one without the model, because its cars are being simulated.
func (a Answer) Computing() bool { return a.Standing == noCars }

// firstDraws is how many cars of each cause are enough for a first answer; they are there in
// half a second.
const firstDraws = 40

func newJudging(m *mind.Mind, apart Apart) *judging {
	return &judging{mind: m, apart: apart, cancel: func() {}, changed: func() {}, progressed: func() {}, gathered: func() {}}
}

// judge takes a case as it is now, with what is found of it. What is there weighs
// at once; a crowd that isn't is simulated.
func (j *judging) judge(c cases.Case, found evidence.Findings) error {
	own, err := cases.Copy(c)
	if err != nil {
		return err
	}
	if j.now.Case == nil || j.now.Case.ID != c.ID {
		j.stop()
	}
	if s := j.settled.Case; s != nil && s.Loop.Layout != own.Loop.Layout {
		j.settled = Basis{}
	}
	j.now.Case, j.now.Grounds = &own, mind.GroundsOf(&own, found, diagnosis.StageOf(&own))
	key := mind.CrowdsKey(&own, j.now.Grounds)
	if key == j.key {
		j.weigh()
		return nil
	}
	j.cancel()
	j.key, j.now.Crowd, j.drawn, j.failed = key, nil, 0, nil
	j.whole, j.ranged = false, j.mind.Ranged(&own, j.now.Grounds)
	j.weigh() // first: simulating takes all cores
	j.gather()
	return nil
}

// stop drops the case and all that is under way for it.
func (j *judging) stop() {
	j.cancel()
	j.cancel = func() {}
	j.turn++
	j.now, j.settled, j.answer, j.chosen, j.key, j.failed = Basis{}, Basis{}, Answer{}, "", "", nil
	j.whole, j.ranged = true, true
}

// gather simulates the crowds, those of healthy cars first: they take a moment, and
// what is expected at the hoses is theirs.
func (j *judging) gather() {
	ctx, cancel := context.WithCancel(context.Background())
	j.cancel = cancel
	now := j.now
	tell := func(do func()) {
		j.apart.Do(func() {
			if ctx.Err() == nil {
				do()
			}
		})
	}
	j.apart.Start(func() {
		err := j.mind.GatherRanges(ctx, now.Case, now.Grounds)
		if err == nil {
			tell(j.haveRanges)
			err = j.mind.Gather(ctx, now.Case, now.Grounds, func(rounds *ensemble.Ensemble, part float64) {
				tell(func() {
					j.drawn = part
					j.haveFirst(rounds)
					j.progressed()
				})
			})
		}
		tell(func() { j.end(err) })
	})
}

// haveRanges takes it that what is expected at the hoses is known for good.
func (j *judging) haveRanges() {
	if !j.ranged {
		j.ranged = true
		j.gathered()
	}
}

// haveFirst answers by a crowd's first cars where there is no answer by any.
func (j *judging) haveFirst(e *ensemble.Ensemble) {
	if j.settled.Case == nil && j.now.Crowd == nil && e.N >= firstDraws {
		j.now.Crowd = e
		j.weigh()
	}
}

// end takes the whole crowd.
func (j *judging) end(err error) {
	j.cancel()
	if err != nil && !errors.Is(err, context.Canceled) {
		j.failed = err
	}
	j.whole, j.now.Crowd = true, j.mind.Crowd(j.now.Grounds)
	j.haveRanges() // by the trade's table, where the loop can't be simulated
	j.weigh()
}

// weigh makes the answer anew from what is there.
func (j *judging) weigh() {
	j.turn++
	turn, from, how, prior, chosen := j.turn, j.now, noCars, j.prior, j.chosen
	switch {
	case j.now.Case == nil:
		return
	case j.whole:
		j.settled, how = j.now, byAll
	case j.settled.Case != nil:
		from, how = j.settled, heldFor
	case j.now.Crowd != nil:
		how = firstCars
	}
	j.apart.Start(func() {
		a := Answer{Basis: from, Standing: how, Thought: j.mind.Weigh(from.Case, from.Grounds, from.Crowd, prior)}
		a.Chosen = reasonsOf(a.Thought.Ranking, chosen)
		j.apart.Do(func() {
			if turn == j.turn {
				j.answer = a
				j.changed()
			}
		})
	})
}

// reasonsOf explains one cause of a ranking, or the first where none is named.
func reasonsOf(r diagnosis.Ranking, cause cases.Cause) diagnosis.Ranked {
	one, ranked := r.Of(cause)
	if !ranked {
		one = r.Causes[0]
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

// progress tells how far the crowds are, or "" where they are whole or none is
// wanted.
func (j *judging) progress() string {
	switch {
	case j.now.Case == nil || j.key == "":
		return ""
	case j.failed != nil:
		return say.English().Of("window.frame.cant-compute", j.failed.Error())
	case j.whole:
		return ""
	}
	return say.English().Of("window.frame.computing", math.Floor(100*j.drawn))
}
