package diagnosis_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// fanDead is a fan that doesn't run when told to.
func fanDead() cases.Test {
	return cases.Test{Kind: "fan", Stage: cases.BeforeRepair, Commanded: casetest.P(true), Runs: casetest.P(false)}
}

// leaking is a system that loses its pressure within minutes (PR1 to PR4 of testdata/trade/numbers.csv are what
// a sound one may lose).
func leaking() cases.Test {
	return cases.Test{Kind: "pressure-hold", Stage: cases.BeforeRepair, StartKPa: casetest.P(diagram.KPa(100)), EndKPa: casetest.P(diagram.KPa(50)), Minutes: casetest.P(10.0)}
}

// A dead fan doesn't empty the loop (common practice, no source): a pressure that falls beside it
// is open, and what it would be are the leaks that the trade's tests look for with pressure.
func TestWhatTheVerdictIsNoReasonFor(t *testing.T) {
	b := newBench(t)
	for name, tt := range map[string]struct {
		verdict cases.Cause
		tests   []cases.Test
		open    int
		likely  cases.Cause
	}{
		"a leak beside a dead fan":     {"fan-not-running", []cases.Test{fanDead(), leaking()}, 1, "external-leak"},
		"a dead fan beside a leak":     {"external-leak", []cases.Test{fanDead(), leaking()}, 1, "fan-not-running"},
		"each alone is the verdict":    {"fan-not-running", []cases.Test{fanDead()}, 0, ""},
		"a leak that is the verdict":   {"external-leak", []cases.Test{leaking()}, 0, ""},
		"nothing wrong but both":       {cases.Healthy, []cases.Test{fanDead(), leaking()}, 2, ""},
		"neither judged nor measured":  {"", nil, 0, ""},
		"likely, if not yet a verdict": {"", []cases.Test{leaking()}, 0, ""},
	} {
		c := cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat", Fan: "electric"}, Tests: tt.tests, Verdict: cases.Verdict{Cause: tt.verdict}}
		beside := b.judge.Beside(b.rank(t, c, diagnosis.Prior{}))
		if tt.open == 0 {
			if beside != nil {
				t.Errorf("%s: %v is open", name, beside.Checks)
			}
			continue
		}
		if beside == nil || len(beside.Checks) != tt.open {
			t.Errorf("%s: open is %v, want %d checks", name, beside, tt.open)
			continue
		}
		if tt.likely != "" && (len(beside.Causes) == 0 || beside.Causes[0].Cause != tt.likely) {
			t.Errorf("%s: it would be %v, want %s first", name, beside.Causes, tt.likely)
		}
		if slices.ContainsFunc(beside.Causes, func(r diagnosis.Ranked) bool { return r.Cause == tt.verdict || r.Cause == cases.Healthy }) {
			t.Errorf("%s: %v names what it can't be", name, beside.Causes)
		}
		if slices.ContainsFunc(beside.Next, func(n diagnosis.Check) bool { return n.Check.Check == "fan" || n.Check.Check == "pressure-hold" }) {
			t.Errorf("%s: a check that is done comes next: %v", name, beside.Next)
		}
	}
}

// A leak lets in the air that stops a heater's flow (common practice, no source): while that one cause may be it, no
// second fault is looked for. A verdict has decided.
func TestOneCauseIsLookedForBeforeTwo(t *testing.T) {
	b := newBench(t)
	c := cases.Case{
		Loop: cases.Loop{Layout: "outlet-thermostat"}, Complaint: cases.Complaint{Symptoms: []cases.Symptom{"coolant-loss"}},
		Tests: []cases.Test{leaking(), {Kind: "heater-flow", Stage: cases.BeforeRepair, Flows: "none"}},
	}
	r := b.rank(t, c, diagnosis.Prior{})
	if first := r.Causes[0]; first.Cause != "external-leak" || first.Probability < 0.5 {
		t.Fatalf("%v is judged", first)
	}
	if second := b.judge.Beside(r); second != nil {
		t.Errorf("a second fault is named though %v may be all of it: %v", r.Causes[1], second.Causes)
	}
	c.Verdict.Cause = "external-leak"
	if b.judge.Beside(b.rank(t, c, diagnosis.Prior{})) == nil {
		t.Error("the verdict is no reason for a heater without flow, and nothing is said of it")
	}
}

// A check that passes speaks against the second fault that it looks for.
func TestSecondFaultIsNarrowedDown(t *testing.T) {
	b := newBench(t)
	c := cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Tests: []cases.Test{fanDead(), leaking()}, Verdict: cases.Verdict{Cause: "fan-not-running"}}
	wide := b.judge.Beside(b.rank(t, c, diagnosis.Prior{}))
	if len(wide.Next) == 0 {
		t.Fatal("no check tells the second faults apart")
	}
	var a evidence.Answer
	diagnosis.Fill(&a, diagnosis.Ranking{}, nil, wide)
	if len(a.Flags) != 1 || a.Flags[0].ID != "second-fault" || len(a.Flags[0].Because) != 1 {
		t.Errorf("the analysis tells %v", a.Flags)
	}
	c.Tests = append(c.Tests, cases.Test{Kind: "combustion-gas", Stage: cases.BeforeRepair, Result: "negative"})
	if out := b.rank(t, c, diagnosis.Prior{}).RuledOut(wide); slices.Contains(out, wide.Causes[0].Cause) {
		t.Errorf("%s is a second fault and doesn't explain it: %v", wide.Causes[0].Cause, out)
	}
	narrow := b.judge.Beside(b.rank(t, c, diagnosis.Prior{}))
	share := func(s *diagnosis.Beside) float64 {
		for _, r := range s.Causes {
			if r.Cause == "combustion-leak" {
				return r.Probability
			}
		}
		return 0
	}
	if !(share(narrow) < share(wide)) {
		t.Errorf("without gas found the head's chance goes from %g to %g", share(wide), share(narrow))
	}
}

// A fault that a check speaks for may be there besides, as a leak beside a burnt gasket, and the verdict is what explains
// the case whatever was measured: neither is ruled out.
func TestWhatACheckSpeaksForIsNotRuledOut(t *testing.T) {
	b := newBench(t)
	c := cases.Case{
		Loop: cases.Loop{Layout: "outlet-thermostat"}, Complaint: cases.Complaint{Symptoms: []cases.Symptom{"oil-milky", "white-exhaust", "coolant-loss"}},
		Tests: []cases.Test{{Kind: "combustion-gas", Stage: cases.BeforeRepair, Result: "positive"}, leaking(), {Kind: "level", Stage: cases.BeforeRepair, State: "low"}},
	}
	for _, tt := range []struct {
		verdict cases.Cause
		not     []cases.Cause
		out     cases.Cause
	}{
		{"", []cases.Cause{"external-leak", "coolant-low-air"}, "fan-not-running"},
		{"fan-not-running", []cases.Cause{"external-leak", "coolant-low-air", "fan-not-running"}, "thermostat-early"},
	} {
		c.Verdict.Cause = tt.verdict
		out := b.rank(t, c, diagnosis.Prior{}).RuledOut(nil)
		if !slices.Contains(out, tt.out) || slices.ContainsFunc(tt.not, func(n cases.Cause) bool { return slices.Contains(out, n) }) {
			t.Errorf("with the verdict %q these are ruled out: %v", tt.verdict, out)
		}
	}
}

// A check that runs an engine says so where that has been too hot (stop at the red zone: M15, published).
func TestHotEngineIsMindedAtTheNextChecks(t *testing.T) {
	b := newBench(t)
	for ect, want := range map[float64]bool{118: true, 96: false} {
		c := idle("outlet-thermostat", ect, map[diagram.Point]float64{"housing": ect - 1, "rad_in": ect - 4, "rad_out": ect - 8})
		cold := cases.Round{Stage: cases.BeforeRepair, EctC: casetest.P(diagram.Celsius(30)), MinutesSinceStart: casetest.P(2.0)}
		c.Rounds = append(c.Rounds, cold)
		asked := false
		for _, n := range b.judge.Next(b.rank(t, c, diagnosis.Prior{})) {
			asked = asked || n.Check.Check == "warm-up"
			if n.Check.Check == "warm-up" && strings.Contains(n.Caution().String(), "got too hot") != want {
				t.Errorf("after %g °C the warm-up minds: %s", ect, n.Caution())
			}
			if n.Check.Check == "fan" && n.Hot {
				t.Error("the command to the fan runs no engine")
			}
		}
		if !asked {
			t.Errorf("after %g °C no warm-up is advised", ect)
		}
	}
}

// A warm-up alone shows nothing at the hoses, so nothing that isn't seen there speaks for health.
func TestLogAloneLeavesTheHosesOpen(t *testing.T) {
	b := newBench(t)
	c := cases.Case{Logs: []cases.Log{{Name: "written down", Stage: cases.BeforeRepair, TimeS: []float64{0, 60, 120}, EctC: []float64{60, 61, 62}}}}
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	for _, ranked := range r.Causes {
		for _, why := range append(ranked.For, ranked.Against...) {
			if strings.Contains(why.Words.String(), "nothing stands out") {
				t.Fatalf("%s: %s", ranked.Cause, why.Words)
			}
		}
	}
}
