package practice

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// answered is a session with its answer.
type answered struct {
	*practice.Session
	named      cases.Cause // "": it was given up
	confidence float64     // 0 to 1
}

func (a answered) score() practice.Score {
	return practice.ScoreOf(a.named, a.Truth(), a.confidence)
}

// answer judges the answer apart from the window, keeps the result, and shows it.
func (l *lesson) answer(named cases.Cause, confidence float64) {
	if l.judging {
		return
	}
	l.judge(true)
	s, own := l.session, l.own
	a := answered{s.Copy(), named, confidence}
	l.at.Start(func() {
		played, err := l.coach.Replay(l.at.Ctx, a.Session, named)
		if err == nil && own == nil {
			var made mind.Way
			made, err = l.coach.OwnWay(l.at.Ctx, s.Whole())
			own = &made
		}
		fyne.Do(func() {
			if s != l.session {
				return // stopped meanwhile
			}
			l.judge(false)
			if err != nil {
				l.at.Ask.Tell(err)
				return
			}
			l.keep(a, own.Minutes)
			l.unseal()
			l.judged = true
			d := l.teller.result(a, played, *own)
			d.CanOpen, d.CanHandIn, d.Total = l.canOpen(), l.through() && l.view.Trainee() != "", l.total()
			if l.in.left > 0 {
				d.Next = kit.L("window.practice.next", l.in.left)
			}
			l.view.ShowResult(d)
		})
	})
}

// through reports whether a class ends with this case.
func (l *lesson) through() bool { return l.in.class != "" && l.in.left == 0 }

// total tells how who practises did in the class that is through with this case; "": none is, or nobody knows whose it was.
func (l *lesson) total() string {
	if !l.through() {
		return ""
	}
	results, err := l.at.Desk.Store.Results(l.at.Ctx, l.in.class)
	if err != nil {
		l.at.Ask.Tell(err)
		return ""
	}
	for _, row := range resultRows(results) {
		if row.Trainee == l.view.Trainee() {
			return kit.L("window.practice.total", l.in.class, row.Right, row.Cases, row.Score, row.Minutes)
		}
	}
	return ""
}

// canOpen reports whether the whole case can be looked at: a simulated one is in no notebook, and beside one of
// the notebook stands the list, which tells what the class's cases to come were.
func (l *lesson) canOpen() bool {
	_, err := l.at.Desk.Store.Get(l.at.Ctx, l.session.Whole().ID)
	return err == nil && l.in.left == 0
}

// unseal lets a case that came shut stand among the others: its answer is told now.
func (l *lesson) unseal() {
	was, err := library.Unseal(l.at.Ctx, l.at.Desk.Store, l.session.Whole().ID)
	if err != nil {
		l.at.Ask.Tell(err)
	}
	if was {
		l.at.Desk.Kept()
	}
}

func (l *lesson) keep(a answered, best float64) {
	who := l.view.Trainee()
	if who == "" {
		return // practised for oneself
	}
	c := a.Whole()
	r := cases.Result{
		Trainee: who, Class: l.in.class, CaseID: c.ID, Title: c.Title, Finished: time.Now().UTC().Truncate(time.Second),
		Named: a.named, Truth: a.Truth(), Confidence: a.confidence, Bits: a.score().Bits, Minutes: a.Minutes(), BestMinutes: best,
	}
	for _, i := range a.Bought() {
		r.Bought = append(r.Bought, itemWord(i))
	}
	if err := l.at.Desk.Store.AddResult(l.at.Ctx, r); err != nil {
		l.at.Ask.Tell(err)
	}
}

// itemWord names an item in a file, free of any language.
func itemWord(i practice.Item) string {
	switch i.Kind {
	case practice.Point:
		return fmt.Sprintf("%s in round %d", i.Point, i.At+1)
	case practice.Test:
		return string(i.Check)
	}
	return fmt.Sprintf("%s %d", i.Kind, i.At+1)
}
