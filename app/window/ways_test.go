package window

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/app/window/whatif"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

func noted(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// The hose map's key leads to the first hose that isn't read yet, past one that can't be reached, and
// to the first again once all are read.
func TestTheHoseMapsKeyLeadsToTheFirstUnreadHose(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	first := l.Points[0].Point
	for i, text := range []string{"90", "-", "88"} {
		w.menus.ways.goTo(complaintTab)
		w.menus.ways.turnTo(hoseMapTab)
		at := w.window.Canvas().Focused()
		if at == nil || at != w.screens.hosemap.Read(0, l.Points[i].Point) {
			t.Fatalf("with %d hoses read the key leads to %v, not to %s", i, at, l.Points[i].Point)
		}
		for _, r := range text {
			at.TypedRune(r)
		}
	}
	w.menus.ways.turnTo(hoseMapTab)
	if got := w.window.Canvas().Focused(); got != w.screens.hosemap.Read(0, l.Points[3].Point) {
		t.Errorf("while a hose is typed at, the key doesn't lead to the next")
	}
	for _, p := range l.Points {
		typeAt(t, w, p.Point, "80")
	}
	w.menus.ways.goTo(complaintTab)
	w.menus.ways.turnTo(hoseMapTab)
	if got := w.window.Canvas().Focused(); got != w.screens.hosemap.Read(0, first) {
		t.Errorf("with all read the key doesn't lead to %s", first)
	}
	w.at.Desk.Edit("none", func(c *cases.Case) { c.Rounds = nil })
	w.menus.ways.turnTo(hoseMapTab)
}

// The warm-up's key leads to where its next row is written: whoever sits in the car types on.
func TestTheWarmUpsKeyLeadsToItsNextRow(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.menus.ways.turnTo(warmUpTab)
	if got := w.window.Canvas().Focused(); got == nil || got != w.screens.warmup.First() {
		t.Errorf("the key leads to %v", got)
	}
}

// A round that is added from another page belongs to the case that is open, not to the one that the
// hose map showed last, and waits for its name.
func TestARoundIsAddedToTheOpenCaseFromAnyPage(t *testing.T) {
	w, _ := shown(t)
	way, d := w.menus.ways, w.at.Desk
	w.menus.opener.begin()
	way.goTo(hoseMapTab)
	d.Edit("rounds", func(c *cases.Case) { c.Rounds = append(c.Rounds, cases.Round{EngineRPM: casetest.P(2500.0)}) })
	d.ShowRound(1)
	way.goTo(complaintTab)
	w.menus.opener.begin()
	way.addRound()
	rounds := d.Case.Rounds
	if len(rounds) != 2 || rounds[1].EngineRPM != nil || d.Round != 1 {
		t.Errorf("round %d of %+v is shown", d.Round, rounds)
	}
	way.goTo(complaintTab)
	w.window.Canvas().Unfocus()
	if way.addRound(); w.window.Canvas().Focused() == nil {
		t.Error("nothing has the focus")
	}
}

func TestWhatIfRunsOnlyWhileItIsLookedAt(t *testing.T) {
	w, _ := shown(t)
	var q benchtest.Queue
	car := whatif.New(w.at.Desk, q.Start, w.at.Ask.Tell, w.menus.opener.add)
	w.screens.whatif, w.screens.all[whatIfTab].show = car, car.Show
	w.menus.opener.begin()
	w.menus.ways.turnTo(whatIfTab)
	if len(q) != 1 {
		t.Fatalf("%d cars run, want one", len(q))
	}
	w.at.Desk.Edit("title", func(*cases.Case) {})
	if len(q) != 1 {
		t.Error("an edit of the case began another car")
	}
	w.screens.tabs.SelectIndex(causesTab)
	q.Next() // ends at once, for it was cancelled; else the test would not
}

// What was walked before the repair is walked again from the proof: in a round of
// after it, with the caret at the first hose.
func TestTheProofBeginsTheRoundThatIsMissing(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "107")
	w.screens.tabs.SelectIndex(proofTab)
	test.Tap(benchtest.ButtonIn(t, w.screens.tabs.Selected().Content, kit.L("window.proof.again", "Warm idle")))
	if n := len(w.at.Desk.Case.Rounds); n != 2 || w.at.Desk.Round != 1 || w.at.Desk.Case.Rounds[1].Stage != cases.AfterRepair || w.screens.tabs.SelectedIndex() != hoseMapTab {
		t.Fatalf("%d rounds, the shown one %d of stage %q", n, w.at.Desk.Round, w.at.Desk.Case.Rounds[w.at.Desk.Round].Stage)
	}
	for _, r := range "91" {
		w.window.Canvas().Focused().TypedRune(r)
	}
	w.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if got := w.shownC(diagram.Housing); got == nil || *got != 91 {
		t.Errorf("typed at once: %v", got)
	}
}

// A check that came out badly before the repair is done again from the proof, as one of after it.
func TestTheProofBeginsTheCheckThatIsMissing(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.at.Desk.Edit("a cap and a repair", func(c *cases.Case) {
		c.Tests = []cases.Test{{Kind: "cap", Stage: cases.BeforeRepair, RatedKPa: casetest.P(diagram.KPa(100)), OpensKPa: casetest.P(diagram.KPa(60))}}
		c.Rounds = []cases.Round{{Stage: cases.AfterRepair, EctC: casetest.P(diagram.Celsius(90))}}
	})
	w.screens.tabs.SelectIndex(proofTab)
	test.Tap(benchtest.ButtonIn(t, w.screens.tabs.Selected().Content, kit.L("window.proof.check-again", "Cap test")))
	field := w.window.Canvas().Focused()
	if w.screens.tabs.SelectedIndex() != checksTab || field == nil {
		t.Fatalf("tab %d, focus %v", w.screens.tabs.SelectedIndex(), field)
	}
	for _, r := range "90" { // a cap's mark
		field.TypedRune(r)
	}
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	w.at.Leave()
	if tests := w.at.Desk.Case.Tests; len(tests) != 2 || tests[1].Kind != "cap" || tests[1].Stage != cases.AfterRepair || *tests[0].OpensKPa != 60 {
		t.Errorf("the checks are %+v", tests)
	}
}

// An advised check is begun where it is done: a walk in a round with its name and
// conditions, and once only; a hose at its field; a workshop test at its form.
func TestAnAdvisedCheckIsBegunWhereItIsDone(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	typeAt(t, w, diagram.Housing, "91")
	w.at.Desk.Case.Rounds[0].Heater = cases.HeaterHalf
	for i, tt := range []struct {
		walk, label string
		rpm, kmh    float64
		heater      cases.Heater
	}{
		{likelihood.RaisedIdle, "Raised idle", 2500, 0, cases.HeaterHalf},
		{likelihood.HotIdle, "Hot idle, fan", 800, 0, cases.HeaterOff},
		{likelihood.AfterRoad, "After the road", 0, 80, cases.HeaterOff},
	} {
		for range 2 {
			w.menus.ways.turnTo(causesTab)
			w.menus.ways.begin(tt.walk, "")
		}
		n := len(w.at.Desk.Case.Rounds)
		r := w.at.Desk.Case.Rounds[n-1]
		if n != i+2 || w.at.Desk.Round != n-1 || r.Label != tt.label || noted(r.EngineRPM) != tt.rpm || r.SpeedKmh == nil || *r.SpeedKmh != tt.kmh ||
			r.Heater != tt.heater || r.Stage != cases.BeforeRepair || w.screens.tabs.SelectedIndex() != hoseMapTab {
			t.Fatalf("%s: %d rounds, the last one %+v", tt.walk, n, r)
		}
		w.at.Desk.Case.Rounds[n-1].EctC = casetest.P(diagram.Celsius(91))
	}
	w.menus.ways.begin(likelihood.HosePoint, diagram.RadOut)
	for _, r := range "44" {
		w.window.Canvas().Focused().TypedRune(r)
	}
	w.leave()
	if got := w.shownC(diagram.RadOut); got == nil || *got != 44 {
		t.Errorf("typed at the hose: %v", got)
	}
	w.menus.ways.begin("fan", "")
	if w.screens.tabs.SelectedIndex() != checksTab || w.window.Canvas().Focused() == nil {
		t.Errorf("the fan is begun on page %d, with %v in focus", w.screens.tabs.SelectedIndex(), w.window.Canvas().Focused())
	}
	w.menus.ways.begin(likelihood.WarmUp, "")
	if w.screens.tabs.SelectedIndex() != warmUpTab {
		t.Errorf("the warm-up is begun on page %d", w.screens.tabs.SelectedIndex())
	}
	w.at.Desk.Case.Verdict.Cause, w.at.Desk.Case.Repair.LabourHours = "pump-weak", casetest.P(1.0)
	w.menus.ways.begin(likelihood.RaisedIdle, "")
	if r := w.at.Desk.Case.Rounds[w.at.Desk.Round]; r.Stage != cases.AfterRepair {
		t.Errorf("after the repair a round of %q is begun", r.Stage)
	}
	n := len(w.at.Desk.Case.Rounds)
	if w.menus.ways.begin(likelihood.HotIdle, ""); len(w.at.Desk.Case.Rounds) != n || w.at.Desk.Case.Rounds[n-1].Label != "Hot idle, fan" {
		t.Errorf("a round with nothing in it isn't used up: %d rounds, %+v", len(w.at.Desk.Case.Rounds), w.at.Desk.Case.Rounds[n-1])
	}
}

// Each screen's key puts the focus on something of that screen: hands that left the mouse need no Tab.
func TestEveryScreensKeyLeadsIntoIt(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	for tab := complaintTab; tab < whatIfTab; tab++ { // the simulated car has a test of its own
		w.window.Canvas().Unfocus()
		w.menus.ways.turnTo(tab)
		at, ok := w.window.Canvas().Focused().(fyne.CanvasObject)
		if !ok || !kit.Holds(w.screens.all[tab].content, at) {
			t.Errorf("%s: the focus is on %T", w.screens.all[tab].title, at)
		}
	}
}
