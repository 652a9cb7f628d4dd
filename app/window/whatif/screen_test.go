package whatif

import (
	"context"
	"slices"
	"strings"
	"testing"

	view "loopbook/app/ui/whatif"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
)

func TestACarBeginsOnceAndEnds(t *testing.T) {
	m := benchtest.New(t)
	m.Desk.Begin()
	var q benchtest.Queue
	s := New(m.Desk, q.Start, m.Ask.Tell, m.Desk.Add)
	s.Show()
	if len(q) != 1 || s.tried == "" {
		t.Fatalf("%d cars run, want one", len(q))
	}
	s.Show()
	if len(q) != 1 {
		t.Error("looked at again, another car began")
	}
	s.End()
	q.Next() // ends at once, for it was cancelled
	if s.tried != "" {
		t.Error("the car runs on")
	}
}

// A trainer turns the sliders and has a case to practise on, with all of its evidence; the open one stays.
func TestACaseIsMadeOfTheCar(t *testing.T) {
	m := benchtest.New(t)
	m.Desk.Begin()
	before := m.Desk.Case.ID
	var q benchtest.Queue
	s := New(m.Desk, q.Start, m.Ask.Tell, m.Desk.Add)
	s.Show()
	set := view.Idle()
	set.Cause, set.AmbientC = "cap-weak", 31
	s.view.OnChange(set)
	s.view.OnCase()
	c := &m.Desk.Case
	if c.ID == before || c.Verdict.Cause != "cap-weak" || *c.Site.AmbientC != 31 || c.Opened.IsZero() {
		t.Fatalf("the open case is %s, %s", c.ID, c.Verdict.Cause)
	}
	if !slices.Contains(c.Tags, cases.TaughtTag) {
		t.Errorf("nobody met that car, and its tags are %v", c.Tags)
	}
	if len(c.Tests) < 10 || len(c.Logs) != 1 || len(c.Rounds) != 5 {
		t.Errorf("%d checks, %d logs, %d rounds", len(c.Tests), len(c.Logs), len(c.Rounds))
	}
	if _, err := m.Desk.Store.Get(context.Background(), before); err != nil {
		t.Errorf("the case that was open: %v", err)
	}
}

func TestNoCaseIsMadeOfACarThatCannotBe(t *testing.T) {
	m := benchtest.New(t)
	m.Desk.Begin()
	var q benchtest.Queue
	var told error
	s := New(m.Desk, q.Start, func(err error) { told = err }, func(cases.Case, string) { t.Error("a case was made") })
	s.Show()
	m.Desk.Edit("layout", func(c *cases.Case) { c.Loop.Layout = "" })
	if s.view.OnCase(); !strings.Contains(told.Error(), "layout") {
		t.Errorf("without a layout: %v", told)
	}
}
