package practice

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

// A settled case with nothing measured teaches nobody: no set is offered of it. What is remembered of a case goes by what it
// says now, there as in the sets that have it.
func TestASetIsOfferedOfWhatCanBePractised(t *testing.T) {
	r, m, _ := withDemo(t)
	r.trainer.inSight = true
	r.Show()
	offered := func() int {
		t.Helper()
		d, err := r.start()
		if err != nil {
			t.Fatal(err)
		}
		return d.Found
	}
	was := offered()
	one := cases.Case{Title: "Told only", Opened: casetest.Invented(1).Opened, Loop: cases.Loop{Layout: "outlet-thermostat"},
		Verdict: cases.Verdict{Cause: "pump-weak"}, Rounds: []cases.Round{{Label: "warm idle", Stage: cases.BeforeRepair}}}
	id, err := m.Desk.Store.Put(m.Ctx, one, "test")
	if err != nil {
		t.Fatal(err)
	}
	if got := offered(); got != was {
		t.Errorf("with one that holds nothing, a set is offered of %d, not %d", got, was)
	}
	one.ID = id
	one.Rounds[0].EctC = casetest.P(diagram.Celsius(88))
	if _, err := m.Desk.Store.Put(m.Ctx, one, "measured"); err != nil {
		t.Fatal(err)
	}
	if got := offered(); got != was+1 {
		t.Errorf("measured, a set is offered of %d, not %d", got, was+1)
	}
	r.trainer.makeClass("Tuesday")
	if d, err := r.start(); err != nil || d.Classes[0].Of != was+1 {
		t.Errorf("the set is %+v, %v", d.Classes, err)
	}
	one.Title, one.Verdict.Cause = "Opened again", ""
	if _, err := m.Desk.Store.Put(m.Ctx, one, "opened again"); err != nil {
		t.Fatal(err)
	}
	d, err := r.start()
	if err != nil || d.Classes[0].Of != was || len(d.Classes[0].Cases) != was+1 {
		t.Fatalf("the set is %+v, %v", d.Classes, err)
	}
	said := 0
	for _, title := range d.Classes[0].Cases {
		if title == one.Title {
			said++
		}
	}
	if said != 1 {
		t.Errorf("its cases are %q", d.Classes[0].Cases)
	}
}

// BenchmarkShow shows Practice with a set of all of the demo's cases. Wanted: 10 ms; it was 45 ms while each was read whole,
// twice.
func BenchmarkShow(b *testing.B) {
	r, _, _ := withDemo(b)
	r.trainer.makeClass("Tuesday")
	b.ResetTimer()
	for range b.N {
		r.Show()
	}
}
