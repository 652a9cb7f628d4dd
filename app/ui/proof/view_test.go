package proof_test

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/proof"
	"loopbook/cases"
	"loopbook/diagram/units"
	"loopbook/report/chart"
)

func screen(t *testing.T) (*proof.View, *cases.Case) {
	t.Helper()
	test.NewTempApp(t)
	c := &cases.Case{ID: "a"}
	v := proof.New(func(_ string, change func(*cases.Case)) { change(c) }, func(chart.Chart, string, string) {})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1040, 640))
	return v, c
}

// all are the words and the widgets under o.
func all(o fyne.CanvasObject, each func(fyne.CanvasObject)) {
	if !o.Visible() {
		return
	}
	each(o)
	switch o := o.(type) {
	case *fyne.Container:
		for _, inner := range o.Objects {
			all(inner, each)
		}
	case fyne.Widget:
		for _, inner := range test.WidgetRenderer(o).Objects() {
			all(inner, each)
		}
	}
}

func words(o fyne.CanvasObject) string {
	var out []string
	all(o, func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *widget.Label:
			out = append(out, o.Text)
		case *kit.Prose:
			out = append(out, o.String())
		}
	})
	return strings.Join(out, "\n")
}

func TestTheVerdictAndWhatIsOpenAreSaid(t *testing.T) {
	v, c := screen(t)
	v.Show(proof.Data{
		Case: *c, Units: units.Metric(), Severity: "act", Verdict: "Not fixed: a healthy loop is 4 % probable.", Pair: 0,
		Pairs: []string{"idle / idle"}, Rows: []proof.Row{{Name: "Across radiator", Before: "41 K", After: "40 K", Expected: "6–21 K", Out: true}},
		Unmatched: []string{"Road. Unmatched: no round before."}, Repeat: []string{"Walk again."}, Unexplained: []string{"Flow restricted."},
		Checks: []proof.Row{{Name: "Cap test", Before: "weak", After: "not done"}}, Codes: "Before: P0128.",
	})
	got := words(v.Content())
	for _, want := range []string{"Not fixed", "4 % probable", "41 K", "40 K", "Unmatched", "Walk again", "Flow restricted", "weak", "P0128"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q isn't said in:\n%s", want, got)
		}
	}
}

func TestWithoutAPairItSaysWhatToDo(t *testing.T) {
	v, c := screen(t)
	v.Show(proof.Data{Case: *c, Units: units.Metric(), Severity: "look", Verdict: "Not shown yet: nothing.", Pair: -1})
	if got := words(v.Content()); !strings.Contains(got, kit.L("window.proof.none")) {
		t.Errorf("it says:\n%s", got)
	}
	v.Show(proof.Data{Case: *c, Units: units.Metric(), Severity: "note", Verdict: "No repair: sound.", Pair: -1, NoRepair: true})
	if got := words(v.Content()); strings.Contains(got, kit.L("window.proof.none")) {
		t.Errorf("with a sound loop it says:\n%s", got)
	}
}

// A log of before the repair doesn't hide what is to be done, and a press begins it.
func TestARoundIsWalkedAgain(t *testing.T) {
	v, c := screen(t)
	asked := -1
	v.OnAgain = func(i int) { asked = i }
	v.Show(proof.Data{
		Case: *c, Units: units.Metric(), Severity: "look", Verdict: "Not shown yet: nothing.", Pair: -1, Again: []proof.Round{{Index: 3, Name: "warm idle"}},
		Curves: chart.Lines{Curves: []chart.Curve{{X: []float64{0, 1}, Y: []float64{20, 30}}}},
	})
	all(v.Content(), func(o fyne.CanvasObject) {
		if b, ok := o.(*kit.Button); ok && strings.Contains(b.Text, "warm idle") {
			test.Tap(b)
		}
	})
	if asked != 3 {
		t.Errorf("round %d is walked again, want 3", asked)
	}
}

// What is to be done again is named whole where its button has the room: the longest check's name in the side,
// a long round's in the middle.
func TestWhatIsDoneAgainIsNamedWhole(t *testing.T) {
	v, c := screen(t)
	for pair, name := range map[int]string{-1: "hot stop after the long climb", 0: "Face scan of the core"} {
		d := proof.Data{Case: *c, Units: units.Metric(), Pair: pair, Pairs: []string{"warm idle"}, Owed: []proof.Check{{Name: name, Again: true}}}
		v.Show(d)
		if b, ok := v.First().(*kit.Button); !ok || b.Text != "Check again: "+name {
			t.Errorf("with pair %d it says %+v", pair, v.First())
		}
	}
	long := strings.Repeat("a very long name ", 9)
	v.Show(proof.Data{Case: *c, Units: units.Metric(), Pair: 0, Pairs: []string{"warm idle"}, Again: []proof.Round{{Name: long}}})
	if b, ok := v.First().(*kit.Button); !ok || !strings.HasSuffix(b.Text, "…") || b.MinSize().Width > 300 {
		t.Errorf("a name longer than the side: %+v", v.First())
	}
}

func TestCodesThatCameBackAreKept(t *testing.T) {
	v, c := screen(t)
	v.Show(proof.Data{Case: *c, Units: units.Metric(), Severity: "look", Verdict: "Not shown yet: nothing.", Pair: -1})
	all(v.Content(), func(o fyne.CanvasObject) {
		if f, ok := o.(*kit.Field); ok {
			f.SetText("P0128; P0217")
			f.FocusGained()
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
			if on := fyne.CurrentApp().Driver().CanvasForObject(f).Focused(); on != fyne.Focusable(f) {
				t.Errorf("Enter leads to %T", on)
			}
		}
	})
	if !slices.Equal(c.Repair.CodesAfter, []string{"P0128", "P0217"}) {
		t.Errorf("kept %v", c.Repair.CodesAfter)
	}
}

// A key leads to what is to be measured again next, also beside a round that was: it led to saving the curves.
func TestAKeyLeadsToWhatIsToBeDoneNext(t *testing.T) {
	v, c := screen(t)
	for _, pair := range []int{-1, 0} {
		d := proof.Data{Case: *c, Units: units.Metric(), Pair: pair, Pairs: []string{"warm idle"}, Again: []proof.Round{{Name: "hot idle", Index: 1}}}
		v.Show(d)
		if b, ok := v.First().(*kit.Button); !ok || b.Text != "Measure again: hot idle" {
			t.Errorf("with pair %d the key leads to %v", pair, v.First())
		}
		d.Again = nil
		v.Show(d)
		if b, ok := v.First().(*kit.Button); ok || v.First() == nil {
			t.Errorf("with nothing left to do the key leads to %v and not to the codes", b)
		}
	}
}

// A repair that didn't help leads on to the next one, and to nothing else, with the verdict in sight.
func TestWhatIsNotFixedLeadsToTheNextRepair(t *testing.T) {
	v, c := screen(t)
	begun := 0
	v.OnNext = func() { begun++ }
	for _, not := range []bool{true, false} {
		v.Show(proof.Data{Case: *c, Units: units.Metric(), Severity: "act", Verdict: "Not fixed: so.", Pair: -1, NotFixed: not})
		b, ok := v.First().(*kit.Button)
		if ok != not {
			t.Fatalf("not fixed %v: first is %T", not, v.First())
		}
		if ok {
			test.Tap(b)
		}
	}
	if begun != 1 {
		t.Errorf("begun %d times", begun)
	}
}

// What is to be done next keeps the focus while the proof is judged, and is painted as the first from the beginning.
func TestWhatIsNextKeepsTheFocus(t *testing.T) {
	v, c := screen(t)
	d := proof.Data{Case: *c, Units: units.Metric(), Severity: "note", Verdict: "Being judged: wait.", Pair: 0, Pairs: []string{"a"}, Again: []proof.Round{{Index: 1, Name: "warm idle"}}}
	v.Show(d)
	canvas := fyne.CurrentApp().Driver().CanvasForObject(v.Content())
	kit.Focus(v.First())
	d.Severity, d.Verdict, d.NotFixed = "act", "Not fixed: so.", true
	v.Show(d)
	if got := canvas.Focused(); got == nil || got != v.First() {
		t.Errorf("judged, the focus is on %T", got)
	}
	if b := v.First().(*kit.Button); b.Importance != widget.HighImportance {
		t.Error("it isn't painted as the first")
	}
}

// A sound loop isn't asked for the codes after a repair, unless some are noted.
func TestASoundLoopIsAskedForNoCodes(t *testing.T) {
	v, c := screen(t)
	for codes, want := range map[string]bool{"": false, "P0128": true} {
		if c.Repair.CodesAfter = nil; codes != "" {
			c.Repair.CodesAfter = []string{codes}
		}
		v.Show(proof.Data{Case: *c, Units: units.Metric(), Severity: "note", Verdict: "No repair: sound.", Pair: -1, NoRepair: true, Codes: "the codes"})
		asked := false
		all(v.Content(), func(o fyne.CanvasObject) {
			_, field := o.(*kit.Field)
			asked = asked || field
		})
		if asked != want || (v.First() != nil) != want {
			t.Errorf("codes %q: asked %v, first %T", codes, asked, v.First())
		}
	}
}

// The numbers on the picture stand without their unit, so the legend tells it, as it is chosen.
func TestTheLegendTellsTheUnit(t *testing.T) {
	v, c := screen(t)
	for unit, set := range map[string]units.Set{"°C": units.Metric(), "°F": units.US()} {
		v.Show(proof.Data{Case: *c, Units: set, Pairs: []string{"warm idle"}, Severity: "fine", Verdict: "Fixed: so."})
		if drawn := test.RenderObjectToMarkup(v.Content()); !strings.Contains(drawn, "after, "+unit) || !strings.Contains(drawn, "before, "+unit) {
			t.Errorf("in %s the legend is without it", unit)
		}
	}
}
