package practice

import (
	"strings"
	"testing"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/practice"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// After an answer it is told where the minutes went, what would have told more from where on, and what the evidence said for
// the truth and against what was named instead.
func TestAResultTeaches(t *testing.T) {
	r, m, _ := withDemo(t)
	c := m.Desk.Case
	shown := diagram.Celsius(60)
	c.Rounds = []cases.Round{{Readings: []cases.Reading{{Point: diagram.RadIn, ShownC: &shown}, {Point: diagram.RadOut, ShownC: &shown}, {Point: diagram.Bypass, ShownC: &shown}}}}
	c.Logs, c.Tests, c.Verdict.Cause = nil, nil, "pump-weak"
	s, err := practice.Begin(c, r.coach.Costs)
	if err != nil {
		t.Fatal(err)
	}
	item := s.Items()
	at := func(bought, then practice.Item, chance float64, proof bool) mind.Belief {
		return mind.Belief{Bought: bought, Then: then, Guess: cases.Guess{First: "pump-weak", TruthP: chance}, Proof: proof}
	}
	none := practice.Item{}
	open := mind.Played{Steps: []mind.Belief{at(none, item[2], 0.1, false), at(item[0], item[2], 0.2, false), at(item[2], item[1], 0.3, false)}}
	told := func(p mind.Played, named cases.Cause) (way string, notes, reasons []string) {
		d := r.lesson.teller.result(answered{s, named, 0.5}, p, mind.Way{})
		for _, step := range d.Steps {
			notes = append(notes, step.Note)
		}
		for _, one := range d.Reasons {
			reasons = append(reasons, one.Title+"|"+strings.Join(one.Lines, "|"))
		}
		return d.Way, notes, reasons
	}
	way, notes, reasons := told(open, "pump-weak")
	if way != kit.L("window.practice.way-open") || !strings.Contains(notes[0], itemName(item[2])) || notes[1] != "" || !strings.Contains(notes[2], itemName(item[1])) {
		t.Errorf("an open end is told as %q, %q", way, notes)
	}
	if len(reasons) != 1 || !strings.HasSuffix(reasons[0], kit.L("window.practice.for-none")) {
		t.Errorf("without reasons: %q", reasons)
	}
	long := mind.Played{
		Steps:   []mind.Belief{at(none, item[0], 0.1, false), at(item[0], none, 0.9, false), at(item[1], none, 0.95, true), at(item[2], none, 0.97, false)},
		For:     []diagnosis.Reason{{Words: say.Of("reason.together"), Factor: 3}},
		Against: []diagnosis.Reason{{Words: say.Of("reason.together"), Factor: 0.1}},
	}
	way, notes, reasons = told(long, "cap-weak")
	if want := kit.L("window.practice.way-longer", minutesText(item[0].Minutes), kit.Chance(0.9), 1, minutesText(item[2].Minutes)); way != want {
		t.Errorf("what came after is told as %q, want %q", way, want)
	}
	if notes[0] != "" || notes[2] != kit.L("window.practice.proves") {
		t.Errorf("notes are %q", notes)
	}
	if len(reasons) != 2 || !strings.Contains(reasons[0], "(3×)") || !strings.Contains(reasons[1], "(10×)") {
		t.Errorf("reasons are %q", reasons)
	}
	long.Steps = long.Steps[:3]
	if way, _, _ := told(long, "pump-weak"); way != kit.L("window.practice.way-straight", minutesText(item[0].Minutes), kit.Chance(0.9)) {
		t.Errorf("a straight way is told as %q", way)
	}
}

// A check that would have told most for long, while others were made, is named with the minutes that it waited, whichever
// round it was read in at last.
func TestWhatWaitedIsNamed(t *testing.T) {
	item := func(at int, p diagram.Point) practice.Item {
		return practice.Item{Kind: practice.Point, At: at, Point: p, Minutes: 1}
	}
	step := func(bought, then practice.Item) mind.Belief { return mind.Belief{Bought: bought, Then: then} }
	best, other := item(1, diagram.HeaterOut), item(1, diagram.RadOut)
	p := mind.Played{Steps: []mind.Belief{
		step(practice.Item{}, best), step(item(0, diagram.EngineOut), best), step(item(0, diagram.RadIn), best), step(item(0, diagram.HeaterOut), other), step(item(0, diagram.Bypass), other),
	}}
	if most, minutes := waited(p); most != best || minutes != 2 {
		t.Errorf("%+v waited for %g min, want the heater's return for 2", most, minutes)
	}
	again := item(2, diagram.HeaterOut) // is worth most in the next round too
	p.Steps[3].Then = again
	p.Steps = append(p.Steps[:4], step(item(0, diagram.RadOut), again))
	if most, minutes := waited(p); most != best || minutes != 2 {
		t.Errorf("read and wished for again, %+v waited for %g min, want 2", most, minutes)
	}
	p.Steps = p.Steps[:2]
	if most, minutes := waited(p); minutes != 0 {
		t.Errorf("%+v is said to have waited for %g min", most, minutes)
	}
}
