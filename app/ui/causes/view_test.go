package causes

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/diagram"
)

// heard is what the screen has told.
type heard struct {
	cause       cases.Cause
	taken       cases.Cause
	round       int
	begun       string
	flat, learn []bool
}

func shown(t *testing.T, d Data) (*View, *heard) {
	t.Helper()
	test.NewTempApp(t)
	v, h := New(), &heard{round: -1}
	v.OnCause = func(c cases.Cause) { h.cause = c }
	v.OnTake = func(c cases.Cause) { h.taken = c }
	v.OnRound = func(i int) { h.round = i }
	v.OnBegin = func(check string, at diagram.Point) { h.begun = check + " " + string(at) }
	v.OnFlat = func(on bool) { h.flat = append(h.flat, on) }
	v.OnLearn = func(on bool) { h.learn = append(h.learn, on) }
	test.NewTempWindow(t, v.Content()).Resize(fyne.NewSize(1048, 680))
	v.Show(d)
	return v, h
}

func ranked() Data {
	return Data{
		Causes: []Cause{{"pump-weak", 0.7}, {"cap-weak", 0.28}, {"none", 0.008}, {"fan-not-running", 0.007}, {"external-leak", 0.005}},
		Chosen: "pump-weak", Confirmed: 12, Learn: true,
	}
}

func TestSmallCausesAreOneLineUntilTheyAreOpened(t *testing.T) {
	v, h := shown(t, ranked())
	if n := v.list.length(); n != 3 {
		t.Fatalf("%d lines, want two causes and one for the others", n)
	}
	line := kit.NewLikelyLine()
	v.list.fill(2, line)
	if got := line.Text(); !strings.Contains(got, "3 others") || !strings.Contains(got, "2 %") {
		t.Errorf("the others say %q", got)
	}
	v.list.widget.Select(2)
	if n := v.list.length(); n != 5 || h.cause != "" {
		t.Errorf("opened, there are %d lines and %q is chosen; want 5 and none", n, h.cause)
	}
}

func TestACheckIsBegun(t *testing.T) {
	d := ranked()
	d.Checks = []Check{{Check: "level", Title: "Coolant level"}, {Check: "hose-point", Point: diagram.RadOut, Title: "Read the lower hose"}}
	v, h := shown(t, d)
	var all []*kit.Button
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *kit.Button:
			all = append(all, o)
		case *fyne.Container:
			for _, inner := range o.Objects {
				walk(inner)
			}
		}
	}
	walk(v.checks)
	if len(all) != 2 {
		t.Fatalf("%d buttons, want one for each check", len(all))
	}
	all[1].TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if h.begun != "hose-point rad_out" {
		t.Errorf("begun: %q", h.begun)
	}
}

func TestACauseIsChosenByKeyboard(t *testing.T) {
	v, h := shown(t, ranked())
	v.Focus().FocusGained()
	v.Focus().TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	v.Focus().TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	if h.cause != "cap-weak" {
		t.Errorf("Down and Space chose %q, want cap-weak", h.cause)
	}
}

func TestShowingTellsNothing(t *testing.T) {
	d := ranked()
	d.Rounds, d.Round, d.Flat = []Round{{2, "cold"}, {4, "warm"}}, 4, true
	v, h := shown(t, d)
	if h.cause != "" || h.round != -1 || len(h.flat)+len(h.learn) > 0 {
		t.Fatalf("showing told %+v", h)
	}
	v.rounds.SetSelected("cold")
	v.prior.odds.SetSelected(asMet())
	v.prior.learn.SetChecked(false)
	if h.round != 2 || len(h.flat) != 1 || h.flat[0] || len(h.learn) != 1 || h.learn[0] {
		t.Errorf("a person's choices told %+v", h)
	}
}

func TestReasonsForAndAgainstLookDifferent(t *testing.T) {
	d := ranked()
	d.For = []Reason{{"the flow is weak", "30×", 0.7}}
	d.Against = []Reason{{"the heater is hot", "3.0×", 0.2}}
	v, _ := shown(t, d)
	got := kittest.Texts(v.reasons)
	for _, want := range []string{"Speaks for it", "30×", "The flow is weak", "Speaks against it", "3.0×", "The heater is hot"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not told in %q", want, got)
		}
	}
}

func TestTheOddsBeforeTheCaseAreNamedSo(t *testing.T) {
	d := ranked()
	d.Blank = true
	v, _ := shown(t, d)
	if !v.blank.Visible() {
		t.Error("nothing says that nothing was measured")
	}
	v.Show(ranked())
	if v.blank.Visible() {
		t.Error("a case with evidence is said to have none")
	}
}

func TestAChecksCautionStandsInItsCard(t *testing.T) {
	d := ranked()
	d.Checks = []Check{{Title: "Cap test", Minutes: "5 min", Worth: "settles about 20 % of what is open", Text: "Pump it.", Needs: "Engine cold", Caution: "Never open it hot."}}
	v, _ := shown(t, d)
	got := kittest.Texts(v.checks.Objects[0])
	for _, want := range []string{"Cap test", "5 min", "20 %", "Engine cold. Pump it.", "Never open it hot."} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not told in %q", want, got)
		}
	}
}

func TestNobodyLearnsFromNoCases(t *testing.T) {
	d := ranked()
	d.Confirmed, d.Learn = 0, false
	v, _ := shown(t, d)
	if !v.prior.learn.Disabled() {
		t.Error("one can learn from no confirmed case")
	}
}

func TestACauseIsTakenAsTheVerdict(t *testing.T) {
	v, h := shown(t, ranked())
	test.Tap(v.take)
	if h.taken != "pump-weak" {
		t.Errorf("taken %q, want the chosen cause", h.taken)
	}
	d := ranked()
	d.Verdict = d.Chosen
	v.Show(d)
	if !v.take.Disabled() {
		t.Error("the verdict can be taken again")
	}
}

func TestAfterTheVerdictWhatFollowsStandsOverTheChecks(t *testing.T) {
	d := ranked()
	d.Checks = []Check{{Check: "level", Title: "Coolant level"}}
	v, _ := shown(t, d)
	if got := kittest.Texts(v.head); !strings.Contains(got, "Next checks") {
		t.Errorf("before the verdict the checks are headed %q", got)
	}
	went := false
	v.OnNext = func() { went = true }
	d.Next = Next{Title: "The repair comes next", Text: "Parts stand there.", Button: "Go there"}
	v.Show(d)
	if got := kittest.Texts(v.head); strings.Contains(got, "Next checks") || !strings.Contains(got, "The repair comes next") {
		t.Errorf("after the verdict the checks are headed %q", got)
	}
	if got := kittest.Texts(v.checks); !strings.Contains(got, "Coolant level") {
		t.Errorf("the checks are gone: %q", got)
	}
	var press func(fyne.CanvasObject)
	press = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case fyne.Tappable:
			test.Tap(o)
		case *fyne.Container:
			for _, inner := range o.Objects {
				press(inner)
			}
		}
	}
	press(v.head)
	if !went {
		t.Error("the button leads nowhere")
	}
}
