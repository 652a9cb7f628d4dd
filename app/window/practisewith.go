package window

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// answerPractice judges the answer apart from the window, keeps the result, and shows it.
func (w *window) answerPractice(named cases.Cause, confidence float64) {
	p := w.trains
	if p.judging {
		return
	}
	w.judgePractice(true)
	s, own := p.session, p.own
	answered := s.Copy()
	w.at.Start(func() {
		beliefs, err := p.coach.Replay(w.at.Ctx, answered)
		if err == nil && own == nil {
			var made mind.Way
			made, err = p.coach.OwnWay(w.at.Ctx, s.Whole())
			own = &made
		}
		fyne.Do(func() {
			if s != p.session {
				return // stopped meanwhile
			}
			w.judgePractice(false)
			if err != nil {
				w.at.Ask.Tell(err)
				return
			}
			w.keepResult(answered, named, confidence, own.Minutes)
			w.practice.ShowResult(w.resultData(answered, practice.ScoreOf(named, s.Truth(), confidence), named, confidence, beliefs, *own))
		})
	})
}

// judgePractice begins or ends the judging of the session's answer; a session that is stopped ends it too.
func (w *window) judgePractice(on bool) {
	w.trains.judging = on
	w.practice.Judge(on)
}

func (w *window) keepResult(s *practice.Session, named cases.Cause, confidence, best float64) {
	who := w.practice.Trainee()
	if who == "" {
		return // practised for oneself
	}
	c := s.Whole()
	score := practice.ScoreOf(named, s.Truth(), confidence)
	r := cases.Result{
		Trainee: who, Class: w.trains.class, CaseID: c.ID, Title: c.Title, Finished: time.Now().UTC().Truncate(time.Second),
		Named: named, Truth: s.Truth(), Confidence: confidence, Bits: score.Bits, Minutes: s.Minutes(), BestMinutes: best,
	}
	for _, i := range s.Bought() {
		r.Bought = append(r.Bought, itemWord(i))
	}
	if err := w.at.Desk.Store.AddResult(w.at.Ctx, r); err != nil {
		w.at.Ask.Tell(err)
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
