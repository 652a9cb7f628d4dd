package window

import (
	"testing"

	"fyne.io/fyne/v2"

	"loopbook/app/desk"
	"loopbook/app/window/tryout"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

func TestTheHoseMapTellsWhatIsLikely(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.tabs.SelectIndex(hoseMapTab)
	if got := likelyOf(w.at.Desk); got != nil {
		t.Errorf("before anything is measured it tells %+v", got)
	}
	typeAt(t, w, diagram.Housing, "60")
	if got := likelyOf(w.at.Desk); len(got) != 3 || got[0].Chance < got[1].Chance {
		t.Errorf("with a reading it tells %+v, want three, the likeliest first", got)
	}
}

func TestCausesAreShownWithWhatTheyWereWeighedFrom(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	if got := causesOf(w.at.Desk); !got.Blank || got.Basis != "Nothing is measured, told or tested yet." {
		t.Errorf("a new case: blank %t, %q", got.Blank, got.Basis)
	}
	typeAt(t, w, diagram.Housing, "60")
	w.goToCauses()
	d := causesOf(w.at.Desk)
	if want := "Weighed from 1 round, 1 reading, 0 warm-ups, 0 symptoms, 0 codes and 0 tests before repair, by 2 simulated cars of each cause."; d.Basis != want {
		t.Errorf("basis = %q, want %q", d.Basis, want)
	}
	if d.Chosen != d.Causes[0].Cause || len(d.Checks) == 0 {
		t.Errorf("%q is chosen of %+v, with %d checks", d.Chosen, d.Causes[0], len(d.Checks))
	}
	w.causes.OnCause("pump-weak")
	if got := causesOf(w.at.Desk).Chosen; got != "pump-weak" {
		t.Errorf("after choosing pump-weak reasons are of %q", got)
	}
}

func TestOddsArePreferences(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.causes.OnFlat(true)
	w.causes.OnLearn(false)
	if !w.prefs.flat() || w.prefs.learn() != desk.LearnNo || !w.at.Desk.Odds.Prior().Flat {
		t.Errorf("flat %t, learn %q, prior %+v", w.prefs.flat(), w.prefs.learn(), w.at.Desk.Odds.Prior())
	}
	c := causesOf(w.at.Desk).Causes
	if first, last := c[0].Probability, c[len(c)-1].Probability; first > 1.01*last && last > 0.01 {
		t.Errorf("all alike they run from %g to %g", last, first)
	}
}

func TestWhatIfRunsOnlyWhileItIsLookedAt(t *testing.T) {
	w, _ := shown(t)
	var q queue
	w.live = tryout.New(q.start, w.whatif.Show, w.at.Ask.Tell)
	w.newCase()
	w.goToWhatIf()
	if len(q) != 1 || w.tried == "" {
		t.Fatalf("%d cars run, want one", len(q))
	}
	w.at.Desk.Edit("title", func(*cases.Case) {})
	if len(q) != 1 {
		t.Error("an edit of the case began another car")
	}
	w.tabs.SelectIndex(causesTab)
	q[0]() // ends at once, for it was cancelled
	if w.tried != "" {
		t.Error("the car runs on behind another tab")
	}
}

// A ranked cause that is taken as the verdict is kept with what was held likeliest,
// and undone as any other edit.
func TestACauseTakenAsTheVerdictIsUndone(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.causes.OnTake("pump-weak")
	if got := w.at.Desk.Case.Verdict.Cause; got != "pump-weak" || causesOf(w.at.Desk).Verdict != got {
		t.Errorf("the verdict is %q", got)
	}
	w.undo()
	if got := w.at.Desk.Case.Verdict.Cause; got != "" {
		t.Errorf("after undo the verdict is %q", got)
	}
}

func noted(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// An advised check is begun where it is done: a walk in a round with its name and
// conditions, and once only; a hose at its field; a workshop test at its form.
func TestAnAdvisedCheckIsBegunWhereItIsDone(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
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
			w.goToCauses()
			w.causes.OnBegin(tt.walk, "")
		}
		n := len(w.at.Desk.Case.Rounds)
		r := w.at.Desk.Case.Rounds[n-1]
		if n != i+2 || w.at.Desk.Round != n-1 || r.Label != tt.label || noted(r.EngineRPM) != tt.rpm || noted(r.SpeedKmh) != tt.kmh ||
			r.Heater != tt.heater || r.Stage != cases.BeforeRepair || w.tabs.SelectedIndex() != hoseMapTab {
			t.Fatalf("%s: %d rounds, the last one %+v", tt.walk, n, r)
		}
		if do := w.toDo(); do.Title == "" || do.Text == "" || do.Caution == "" {
			t.Errorf("%s: on the hose map stands %+v", tt.walk, do)
		}
		w.at.Desk.Case.Rounds[n-1].EctC = casetest.P(diagram.Celsius(91))
		if do := w.toDo(); do.Title != "" {
			t.Errorf("%s: measured, %q still stands there", tt.walk, do.Title)
		}
	}
	w.causes.OnBegin(likelihood.HosePoint, diagram.RadOut)
	for _, r := range "44" {
		w.window.Canvas().Focused().TypedRune(r)
	}
	w.leave()
	if got := w.shownC(diagram.RadOut); got == nil || *got != 44 {
		t.Errorf("typed at the hose: %v", got)
	}
	w.causes.OnBegin("fan", "")
	if w.tabs.SelectedIndex() != checksTab || w.window.Canvas().Focused() == nil {
		t.Errorf("the fan is begun on page %d, with %v in focus", w.tabs.SelectedIndex(), w.window.Canvas().Focused())
	}
	w.causes.OnBegin(likelihood.WarmUp, "")
	if w.tabs.SelectedIndex() != warmUpTab {
		t.Errorf("the warm-up is begun on page %d", w.tabs.SelectedIndex())
	}
	w.at.Desk.Case.Verdict.Cause, w.at.Desk.Case.Repair.LabourHours = "pump-weak", casetest.P(1.0)
	w.causes.OnBegin(likelihood.RaisedIdle, "")
	if r := w.at.Desk.Case.Rounds[w.at.Desk.Round]; r.Stage != cases.AfterRepair {
		t.Errorf("after the repair a round of %q is begun", r.Stage)
	}
	n := len(w.at.Desk.Case.Rounds)
	if w.causes.OnBegin(likelihood.HotIdle, ""); len(w.at.Desk.Case.Rounds) != n || w.at.Desk.Case.Rounds[n-1].Label != "Hot idle, fan" {
		t.Errorf("a round with nothing in it isn't used up: %d rounds, %+v", len(w.at.Desk.Case.Rounds), w.at.Desk.Case.Rounds[n-1])
	}
}

// What was walked before the repair is walked again from the proof: in a round of
// after it, with the caret at the first hose.
func TestTheProofBeginsTheRoundThatIsMissing(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	typeAt(t, w, diagram.Housing, "107")
	w.tabs.SelectIndex(proofTab)
	if again := w.proofData().Again; len(again) != 1 || again[0].Name != "Warm idle" {
		t.Fatalf("offered: %v", again)
	}
	w.proof.OnAgain(0)
	if n := len(w.at.Desk.Case.Rounds); n != 2 || w.at.Desk.Round != 1 || w.at.Desk.Case.Rounds[1].Stage != cases.AfterRepair || w.tabs.SelectedIndex() != hoseMapTab {
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

// The hose map's key leads to the first hose that isn't read yet, past one that can't be reached, and
// to the first again once all are read.
func TestTheHoseMapsKeyLeadsToTheFirstUnreadHose(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	first := l.Points[0].Point
	for i, text := range []string{"90", "-", "88"} {
		w.goTo(complaintTab)
		w.goToHoseMap()
		at := w.window.Canvas().Focused()
		if at == nil || at != w.hosemap.Read(0, l.Points[i].Point) {
			t.Fatalf("with %d hoses read the key leads to %v, not to %s", i, at, l.Points[i].Point)
		}
		for _, r := range text {
			at.TypedRune(r)
		}
	}
	w.goToHoseMap()
	if got := w.window.Canvas().Focused(); got != w.hosemap.Read(0, l.Points[3].Point) {
		t.Errorf("while a hose is typed at, the key doesn't lead to the next")
	}
	for _, p := range l.Points {
		typeAt(t, w, p.Point, "80")
	}
	w.goTo(complaintTab)
	w.goToHoseMap()
	if got := w.window.Canvas().Focused(); got != w.hosemap.Read(0, first) {
		t.Errorf("with all read the key doesn't lead to %s", first)
	}
	w.at.Desk.Edit("none", func(c *cases.Case) { c.Rounds = nil })
	w.goToHoseMap()
}
