// Package practice fills the room where closed cases are practised on, and where a trainer makes classes of them.
package practice

import (
	"fmt"
	"math/rand"

	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
)

// Room is the room of practice.
type Room struct {
	at      bench.Bench
	view    *view.View
	coach   *mind.Coach
	known   *glances
	ways    Ways
	lesson  *lesson
	course  *course
	trainer *trainer
	making  bool // a simulated car
}

// Ways lead from practice elsewhere.
type Ways struct {
	Back    func()             // to the case
	Open    func(id string)    // to a case
	Shown   func() cases.Query // what the list of cases shows
	Changed func()             // somebody else may see the list of cases now
}

// New practises on nothing yet.
func New(at bench.Bench, tables *likelihood.Tables, ways Ways) (*Room, error) {
	k, err := mind.NewCoach(tables)
	if err != nil {
		return nil, err
	}
	r := &Room{at: at, coach: k, known: &glances{at: at, coach: k}, ways: ways}
	r.known.forget()
	v := view.New(r.back)
	r.view = v
	r.lesson = &lesson{at: at, view: v, coach: k, teller: teller{at.Desk, k.Mind.Analyst}, changed: ways.Changed, cancel: func() {}}
	r.course = &course{at: at, coach: k, known: r.known, lesson: r.lesson, end: r.stop, who: v.Trainee}
	r.trainer = &trainer{at: at, view: v, known: r.known, shown: ways.Shown, changed: r.Show}
	r.joinTrainee()
	r.joinTrainer()
	return r, nil
}

func (r *Room) joinTrainee() {
	v := r.view
	v.OnOpenOne = func() { r.course.alone(r.at.Desk.Case) }
	v.OnSimulated = r.simulate
	v.OnClass, v.OnNext, v.OnStop, v.OnGiveUp = r.course.begin, r.course.next, r.stop, r.giveUp
	v.OnBuy, v.OnAnswer = r.lesson.buy, r.lesson.answer
	v.OnOpenCase, v.OnHandIn = r.openCase, r.handIn
}

func (r *Room) joinTrainer() {
	v, t := r.view, r.trainer
	v.OnTrainer = func(on bool) {
		t.inSight = on
		r.ways.Changed()
		r.Show()
	}
	v.OnMake, v.OnMove, v.OnRetire, v.OnExport = t.makeClass, t.move, t.retire, t.export
	v.OnTakeResults = t.takeResults
	v.OnForget, v.OnGive, v.OnUnseal, v.OnAdd = t.forget, t.give, t.unseal, t.add
	v.OnChoose = func(name string) {
		t.chosen = name
		r.Show()
	}
}

// Content is the room.
func (r *Room) Content() fyne.CanvasObject { return r.view.Content() }

// First is where a hand begins.
func (r *Room) First() fyne.Focusable { return r.view.First() }

// TakeResults takes in the tables that trainees handed in, wherever they were dropped.
func (r *Room) TakeResults(paths []string) { r.trainer.takeResultsOf(paths...) }

// Practises reports whether a case is being practised on: its answer stands in the notebook.
func (r *Room) Practises() bool { return r.lesson.session != nil }

// Spent are the minutes of checks that would be gone with the notebook: of a case that isn't answered yet.
func (r *Room) Spent() float64 {
	if l := r.lesson; l.session != nil && !l.judged {
		return l.session.Minutes()
	}
	return 0
}

// Trains reports whether a trainer is there, who may see what each case turned out to be.
func (r *Room) Trains() bool { return !r.Practises() && r.trainer.inSight }

// CountFound counts anew of how many cases a class set can be made, where a trainer sees it.
func (r *Room) CountFound() {
	if !r.Trains() {
		return
	}
	ids, err := r.trainer.practisable()
	if err != nil {
		r.at.Ask.Tell(err)
		return
	}
	r.view.Offer(len(ids))
}

// Drop ends what is under way for a notebook that is being closed.
func (r *Room) Drop() {
	r.lesson.end()
	r.trainer.chosen = ""
	r.known.forget()
}

func (r *Room) stop() {
	r.lesson.end()
	r.Show()
	r.ways.Changed()
}

// back leads to the case, but not past a question that isn't answered yet: its answer stands there, or in the list beside it.
// Who comes to more such in their set is asked first.
func (r *Room) back() {
	switch {
	case r.Practises() && !r.lesson.judged:
		r.giveUp()
	case r.Practises() && r.course.listed():
		r.at.Ask.Show(r.at.Ask.Offer(kit.L("window.practice.back"), kit.L("window.practice.back-anyway"), kit.L("window.practice.keep-on"),
			asking.Words(kit.L("window.practice.answers-lie", r.course.class)), r.ways.Back))
	default:
		r.ways.Back()
	}
}

// giveUp asks how: the answer is told, or the case is left for another day. One whose answer is being judged is left.
func (r *Room) giveUp() {
	if r.lesson.judging {
		r.stop()
		return
	}
	r.at.Ask.Show(r.at.Ask.Choose(kit.L("window.practice.stop"), asking.Words(kit.L("window.practice.giving-up")),
		asking.Choice{Words: kit.L("window.practice.keep-on"), Take: func() {}},
		asking.Choice{Words: kit.L("window.practice.later"), Take: r.stop},
		asking.Choice{Words: kit.L("window.practice.reveal"), Take: func() { r.lesson.answer("", 0) }}))
}

// openCase turns to the case that was practised on.
func (r *Room) openCase() { r.ways.Open(r.lesson.session.Whole().ID) }

// simulate makes a car and practises on it: on one at a time, since a second would take the place of the first, and on none
// where something else was begun meanwhile.
func (r *Room) simulate(how view.Difficulty) {
	if r.making {
		return
	}
	r.making = true
	seed := rand.Int63()
	r.view.Tell(kit.L("window.practice.making"))
	r.at.Start(func() {
		c, ok := simulated(r.at.Ctx, r.coach, seed, how)
		fyne.Do(func() {
			r.view.Tell("")
			r.making = false
			if r.Practises() {
				return
			}
			if !ok {
				r.at.Ask.Tell(fmt.Errorf("no simulated car of that difficulty was found: try again"))
				return
			}
			r.course.alone(c)
		})
	})
}
