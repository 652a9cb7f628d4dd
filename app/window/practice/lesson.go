package practice

import (
	"context"

	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/practice"
)

// lesson is one case that is practised on.
type lesson struct {
	at      bench.Bench
	view    *view.View
	coach   *mind.Coach
	teller  teller
	changed func() // it began or ended

	session *practice.Session // nil: nobody practises
	in      place
	shown   int       // round of the drawing
	own     *mind.Way // the program's own; nil while it is reckoned
	judging bool      // the answer is given and being judged
	judged  bool      // and what came of it is kept
	cancel  context.CancelFunc
}

// place is that of a case in the class that is gone through.
type place struct {
	class string // "": none is
	words string // which case it is, of how many
	left  int    // how many come after it
}

// begin begins a session. The program goes its own way meanwhile.
func (l *lesson) begin(c cases.Case, in place) {
	s, err := practice.Begin(c, l.coach.Costs)
	if err != nil {
		l.at.Ask.Tell(err)
		return
	}
	l.cancel()
	ctx, cancel := context.WithCancel(l.at.Ctx)
	l.session, l.in, l.own, l.cancel, l.shown, l.judged = s, in, nil, cancel, 0, false
	l.view.Begin(l.data())
	l.changed()
	l.at.Start(func() {
		own, err := l.coach.OwnWay(ctx, c)
		fyne.Do(func() {
			if ctx.Err() == nil && err == nil {
				l.own = &own
			}
		})
	})
}

// data is the session as the trainee sees it.
func (l *lesson) data() view.Session { return l.teller.session(l.session, l.in, l.shown) }

// buy takes one of the things that can be looked at.
func (l *lesson) buy(number int) {
	s := l.session
	if l.judging {
		return // the answer is given
	}
	item := s.Items()[number]
	if err := s.Buy(item); err != nil {
		l.at.Ask.Tell(err)
		return
	}
	if item.Kind == practice.Point || item.Kind == practice.Dash {
		l.shown = max(s.RoundOf(item.At), 0)
	}
	l.view.ShowSession(l.data())
}

// end gives the case up.
func (l *lesson) end() {
	l.cancel()
	l.session = nil
	l.judge(false)
}

// judge begins or ends the judging of the session's answer; a session that is stopped ends it too.
func (l *lesson) judge(on bool) {
	l.judging = on
	l.view.Judge(on)
}
