package proof

import (
	"strings"
	"testing"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/report/chart"
)

// shown is the screen of the proof of what is open, which is looked at.
func shown(t *testing.T) (*Screen, *benchtest.Made) { return shownLeading(t, Ways{}) }

func shownLeading(t *testing.T, to Ways) (*Screen, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	tab := bench.Tab{Open: func() {}, InSight: func() bool { return true }}
	s := New(m.Bench, tab, func(chart.Chart, string, string) {}, to)
	m.Desk.Changed = s.Show
	return s, m
}

// A demo case's repair is judged once its cars are there, and again by what is
// changed since.
func TestTheProofFollowsTheCase(t *testing.T) {
	s, m := shown(t)
	m.OpenDemo(t, "Cold cabin on frosty mornings, P0128")
	d := s.data()
	if len(d.Pairs) != 3 || d.Curves == nil || len(d.Rows) == 0 || d.Verdict == kit.L("window.proof.computing") {
		t.Fatalf("pairs %v, %d differences, %q", d.Pairs, len(d.Rows), d.Verdict)
	}
	if (d.Open != "") != (d.Severity == "fine" && len(d.Repeat) > 0) {
		t.Errorf("%s, to repeat %q, told %q", d.Severity, d.Repeat, d.Open)
	}
	m.Desk.Edit("check", func(c *cases.Case) {
		c.Tests = append(c.Tests, cases.Test{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: casetest.P(true)})
	})
	if more := s.data(); more.Severity == "fine" || len(more.Repeat) != len(d.Repeat)+1 {
		t.Errorf("a check that failed and is not repeated: %s, %q", more.Severity, more.Repeat)
	}
	m.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{"P0128"} })
	if d := s.data(); !strings.Contains(d.Codes, kit.L("window.proof.codes-back", "P0128")) || d.Severity == "fine" {
		t.Errorf("a code that came back: %q, %s", d.Codes, d.Severity)
	}
	m.Desk.Edit("rpm", func(c *cases.Case) {
		for i := range c.Rounds {
			if c.Rounds[i].Stage == cases.AfterRepair {
				c.Rounds[i].EngineRPM = casetest.P(4000.0)
			}
		}
	})
	if d := s.data(); d.Pair != -1 || len(d.Unmatched) != len(m.Desk.Case.Rounds) {
		t.Errorf("other engine speeds: pair %d, unmatched %v", d.Pair, d.Unmatched)
	}
}

func TestWhatIsNoCodeIsToldAfterTheRepairToo(t *testing.T) {
	s, m := shown(t)
	m.Desk.Begin()
	m.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{"P0128", "P12"} })
	if got := s.data().NoCodes; !strings.HasPrefix(got, "P12: no trouble code") {
		t.Errorf("told: %q", got)
	}
	m.Desk.Edit("codes", func(c *cases.Case) { c.Repair.CodesAfter = []string{cases.NoCodes} })
	if got := s.data().NoCodes; got != "" {
		t.Errorf("no codes: %q", got)
	}
}

// The round that showed what was wrong is offered, not the cold one before it: by a button, and in words.
func TestTheRoundThatShowedTheFaultIsWalkedAgain(t *testing.T) {
	s, m := shown(t)
	cold, hot := diagram.Celsius(20), diagram.Celsius(118)
	m.Desk.Begin()
	m.Desk.Edit("rounds", func(c *cases.Case) {
		c.Loop.Layout = "outlet-thermostat"
		c.Rounds = []cases.Round{
			{Label: "cold", Stage: cases.BeforeRepair, Readings: []cases.Reading{{Point: diagram.AirOn, ShownC: &cold}}},
			{Label: "hot", Stage: cases.BeforeRepair, Readings: []cases.Reading{{Point: diagram.RadIn, ShownC: &hot}}},
		}
	})
	if n := m.Desk.Found.Rounds[1].Out(); n == 0 {
		t.Fatal("nothing is out of its range")
	}
	data := s.data()
	if told := strings.Join(data.Repeat, " "); len(data.Again) != 1 || data.Again[0].Index != 1 || !strings.Contains(told, "hot") || strings.Contains(told, "cold") {
		t.Errorf("offered: %v, told: %q", data.Again, told)
	}
}

// What was walked before the repair and not after it is offered.
func TestARoundIsMissingAfterTheRepair(t *testing.T) {
	s, m := shown(t)
	m.Desk.Begin()
	m.Desk.Typed(diagram.Housing, "107")
	if again := s.data().Again; len(again) != 1 || again[0].Name != "Warm idle" {
		t.Fatalf("offered: %v", again)
	}
}

// A sound loop has no after: its checks tell how they came out, and not that something was left undone.
func TestASoundLoopsChecksWantNoAfter(t *testing.T) {
	s, m := shown(t)
	m.Desk.Begin()
	m.Desk.Edit("sound", func(c *cases.Case) {
		c.Tests = []cases.Test{{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: casetest.P(false)}}
	})
	if got := s.data().Checks; len(got) != 1 || got[0].After != kit.L("window.proof.not-done") {
		t.Fatalf("before a verdict: %v", got)
	}
	m.Desk.Edit("sound", func(c *cases.Case) { c.Verdict.Cause = cases.Healthy })
	if got := s.data().Checks; len(got) != 1 || got[0].Before == "" || got[0].After != "" {
		t.Errorf("found sound: %v", got)
	}
}

// Where a repair didn't help, the next one is begun from there, by looking for its cause, and taken back by one step.
func TestTheNextRepairIsBegunFromAProofThatFailed(t *testing.T) {
	led := ""
	s, m := shownLeading(t, Ways{Causes: func() { led = "causes" }})
	m.OpenDemo(t, "Cold cabin on frosty mornings, P0128")
	m.Desk.Edit("not fixed", func(c *cases.Case) {
		var cold []cases.Round
		for _, r := range c.Rounds {
			if r.Stage != cases.AfterRepair {
				again := r
				again.Stage = cases.AfterRepair
				cold = append(cold, r, again)
			}
		}
		c.Rounds = cold
		c.Logs = nil
	})
	if d := s.data(); !d.NotFixed || d.Severity != "act" {
		t.Fatalf("%s: %s", d.Severity, d.Verdict)
	}
	s.view.OnNext()
	if m.Desk.Case.HasStage(cases.AfterRepair) || s.data().NotFixed {
		t.Errorf("still after the repair: %s", s.data().Verdict)
	}
	if kit.StageNow(&m.Desk.Case) != cases.BeforeRepair || led != "causes" {
		t.Errorf("what is measured next is of %q, at %q", kit.StageNow(&m.Desk.Case), led)
	}
	m.Desk.Undo()
	if !m.Desk.Case.HasStage(cases.AfterRepair) {
		t.Error("one step doesn't take it back")
	}
}
