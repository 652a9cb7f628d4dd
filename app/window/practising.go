package window

import (
	"context"
	"fmt"
	"math/rand"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/cases"
	"loopbook/cases/invented"
	"loopbook/cases/practice"
	cars "loopbook/cases/trial"
)

// practising is who practises on what, and the trainer's choice of a class.
type practising struct {
	coach   *mind.Coach
	session *practice.Session
	shown   int       // round of the drawing
	class   string    // that is gone through; empty: none
	queue   []string  // its cases still to come
	of      int       // how many it has that can be practised
	chosen  string    // class that the trainer looks at
	own     *mind.Way // the program's own; nil while it is reckoned
	trainer bool      // the trainer's half is in sight
	judging bool      // the session's answer is given and being judged
	cancel  context.CancelFunc
}

func (w *window) makePractice() error {
	k, err := mind.NewCoach(w.tables)
	if err != nil {
		return err
	}
	w.trains = &practising{coach: k, cancel: func() {}}
	v := view.New(func() { w.enter(caseRoom) })
	w.practice = v
	v.OnOpenOne = func() { w.practiseOn(w.at.Desk.Case, "", nil) }
	v.OnSimulated = w.practiseSimulated
	v.OnClass = w.practiseClass
	v.OnBuy = w.buyEvidence
	v.OnAnswer = w.answerPractice
	v.OnNext = w.nextOfClass
	v.OnStop = w.stopPractice
	v.OnTrainer = func(on bool) {
		w.trains.trainer = on
		w.showRail()
		w.showPractice()
	}
	v.OnOpenCase = func() {
		if c := w.trains.session.Whole(); w.isKept(c.ID) {
			w.openCase(c.ID)
		}
	}
	w.makeTrainer()
	return nil
}

func (w *window) isKept(id string) bool {
	_, err := w.at.Desk.Store.Get(w.at.Ctx, id)
	return err == nil
}

// practiseOn begins a session. The program goes its own way meanwhile.
func (w *window) practiseOn(c cases.Case, class string, queue []string) {
	s, err := practice.Begin(c, w.trains.coach.Costs)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	p := w.trains
	p.cancel()
	ctx, cancel := context.WithCancel(w.at.Ctx)
	p.session, p.class, p.queue, p.own, p.cancel, p.shown = s, class, queue, nil, cancel, 0
	w.practice.Begin(w.sessionData())
	w.showRail()
	w.at.Start(func() {
		own, err := p.coach.OwnWay(ctx, c)
		fyne.Do(func() {
			if ctx.Err() == nil && err == nil {
				p.own = &own
			}
		})
	})
}

// practiseSimulated makes a car and practises on it.
func (w *window) practiseSimulated(how view.Difficulty) {
	seed := rand.Int63()
	w.practice.Tell(kit.L("window.practice.making"))
	w.at.Start(func() {
		c, ok := simulated(w.trains.coach, seed, how)
		fyne.Do(func() {
			w.practice.Tell("")
			if !ok {
				w.at.Ask.Tell(fmt.Errorf("no simulated car of that difficulty was found: try again"))
				return
			}
			w.practiseOn(c, "", nil)
		})
	})
}

func (w *window) practiseClass(name string) {
	list, err := w.at.Desk.Store.Classes(w.at.Ctx)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	retired, err := w.at.Desk.Store.Retired(w.at.Ctx)
	if err != nil {
		w.at.Ask.Tell(err)
		return
	}
	for _, c := range list {
		if c.Name == name {
			ids := slices.DeleteFunc(slices.Clone(c.Cases), func(id string) bool {
				_, can := w.toPractise(id)
				return retired[id] || !can
			})
			w.trains.of = len(ids)
			w.goThrough(name, ids)
		}
	}
}

// toPractise is a case of the notebook, and whether it is there and can be practised.
func (w *window) toPractise(id string) (cases.Case, bool) {
	c, err := w.at.Desk.Store.Get(w.at.Ctx, id)
	if err == nil {
		_, err = practice.Begin(c, w.trains.coach.Costs)
	}
	return c, err == nil
}

// goThrough begins the next of a class's cases that is still there.
func (w *window) goThrough(class string, ids []string) {
	for i, id := range ids {
		if c, can := w.toPractise(id); can {
			w.practiseOn(c, class, ids[i+1:])
			return
		}
	}
	w.stopPractice()
}

// place says which case of a class it is, of how many; "" where there is no class.
func (p *practising) place() string {
	if p.class == "" {
		return ""
	}
	return kit.L("window.practice.place", p.of-len(p.queue), p.of, p.class)
}

func (w *window) nextOfClass() { w.goThrough(w.trains.class, w.trains.queue) }

func (w *window) stopPractice() {
	w.trains.cancel()
	w.trains.session = nil
	w.judgePractice(false)
	w.showPractice()
	w.showRail()
}

// leaveLibrary ends what is under way for a notebook that is being closed.
func (w *window) leaveLibrary() {
	w.trains.cancel()
	w.trains.session, w.trains.chosen = nil, ""
	w.judgePractice(false)
	if w.ranking != nil {
		w.ranking()
	}
	w.enter(caseRoom)
}

func (w *window) buyEvidence(number int) {
	s := w.trains.session
	if w.trains.judging {
		return // the answer is given
	}
	item := s.Items()[number]
	if err := s.Buy(item); err != nil {
		w.at.Ask.Tell(err)
		return
	}
	if item.Kind == practice.Point || item.Kind == practice.Dash {
		w.trains.shown = max(s.RoundOf(item.At), 0)
	}
	w.practice.ShowSession(w.sessionData())
}

// simulated is a car of the plain model with that difficulty: how likely the program
// holds the truth, all evidence at hand but the simulation of its loop.
func simulated(k *mind.Coach, seed int64, how view.Difficulty) (cases.Case, bool) {
	const tries = 60
	r := rand.New(rand.NewSource(seed))
	for range tries {
		c := oneInvented(r.Int63())
		p := k.Mind.Guess(c).TruthP
		fits := map[view.Difficulty]bool{view.Easy: p >= 0.7, view.Usual: p >= 0.25 && p < 0.7, view.Hard: p < 0.25}[how]
		if _, err := practice.Begin(c, k.Costs); err == nil && fits {
			return c, true
		}
	}
	return cases.Case{}, false
}

// canPractise tells why the open case can't be practised; "": it can.
func (w *window) canPractise() string {
	switch _, err := practice.Begin(w.at.Desk.Case, w.trains.coach.Costs); {
	case !w.at.Desk.Open:
		return kit.L("window.practice.none-open")
	case err != nil && slices.Contains([]error{practice.ErrOpen}, err):
		return kit.L("window.practice.not-closed")
	case err != nil:
		return kit.L("window.practice.bare")
	}
	return ""
}

// oneInvented is one car with every check, for practice.
func oneInvented(seed int64) cases.Case {
	list := cars.Cases(seed, 1, cars.Everything)
	invented.NewShop(seed, time.Now(), 0, 1).Dress(&list[0])
	return list[0]
}
