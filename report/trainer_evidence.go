package report

import (
	"loopbook/cases"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

// turn is when a check's turn comes at the bay.
type turn int

// The turns: the cold look, before the engine is run; what the hose map gives a reason for, which told before it would
// answer for it; and what confirmed the verdict.
const (
	atCold turn = iota
	afterMap
	toConfirm
)

// turnOf is a check's turn in a case (common practice, no source).
func turnOf(test *cases.Test, v *cases.Verdict) turn {
	if string(test.Kind) == v.ConfirmedBy {
		return toConfirm
	}
	switch test.Kind {
	case cases.LevelTest, cases.CoolantTest, cases.PressureTest, cases.CapTest:
		return atCold
	}
	return afterMap
}

// checks are the workshop checks before the repair whose turn it is.
func (t *trainer) checks(head say.Text, now turn) {
	const lines = 3
	tests := t.before(now)
	for i, test := range tests {
		list := measured(test)
		keep := t.factsHeight(list, 2) + t.firstHeight(test)
		if i == len(tests)-1 {
			keep += askHeight(lines)
		}
		if i == 0 {
			t.heading(t.by.Say(head), subStyle.lead()+10+keep)
		}
		t.subheading(t.by.Of("capital", test.Kind.Text()), keep)
		t.test(test, list)
	}
	switch len(tests) {
	case 0:
	case 1:
		t.ask(say.Of("trainer.ask.check"), lines)
	default:
		t.ask(say.Of("trainer.ask.checks"), lines)
	}
}

// before are the checks before the repair whose turn it is.
func (t *trainer) before(now turn) []*cases.Test {
	var out []*cases.Test
	for i := range t.c.Tests {
		test := &t.c.Tests[i]
		if test.Stage != cases.AfterRepair && turnOf(test, &t.c.Verdict) == now {
			out = append(out, test)
		}
	}
	return out
}

// logs are the warm-ups without what is read from them.
func (t *trainer) logs() {
	for i := range t.c.Logs {
		l := &t.c.Logs[i]
		if l.Stage == cases.AfterRepair || i >= len(t.f.WarmUps) {
			continue
		}
		t.heading(t.by.Of("trainer.warm-up"), chartHeight+5*writeLead)
		t.plot(picture.WarmUp(t.c, l, warmup.Result{TargetC: t.f.WarmUps[i].Result.TargetC}, nil, t.by), 1, chartHeight)
		t.ask(say.Of("trainer.ask.warm-up"), 3)
	}
}

// walk is a round with its readings on the drawing, which takes what the page has
// left.
func (t *trainer) walk(i int) {
	const lines = 4 // to answer on under the drawing
	t.round(i, t.muted, t.bottom(), askHeight(lines))
	if t.loop == nil {
		t.shownReadings(i)
	}
	t.ask(say.Of("trainer.ask.round"), lines)
}

// shownReadings are a round's readings where there is no drawing for them.
func (t *trainer) shownReadings(i int) {
	var rows [][]cell
	for _, r := range alongFlow(t.c.Rounds[i].Readings) {
		rows = append(rows, cells(t.by.Say(say.PointName(r.Point)), t.bare(r.ShownC), t.by.Say(surface(r))))
	}
	t.table([]column{{t.by.Of("record.point"), 2}, {t.by.Of("record.shown", string(t.by.Units.Temperature)), 1}, {t.by.Of("record.on"), 1}}, rows)
}
