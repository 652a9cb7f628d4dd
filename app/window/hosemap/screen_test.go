package hosemap

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// begun is the screen of a new case's rounds, in a window.
func begun(t *testing.T) (*Screen, *benchtest.Made) {
	t.Helper()
	m := benchtest.New(t)
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	s := New(m.Desk, tables, func() {})
	m.Window.SetContent(s.Content())
	m.Desk.Changed = s.Show
	m.Desk.Begin()
	return s, m
}

// typeAt types at a point of the drawing and leaves its field by Enter.
func typeAt(t *testing.T, s *Screen, m *benchtest.Made, p diagram.Point, text string) {
	t.Helper()
	kit.Focus(s.Read(m.Desk.Round, p))
	field := m.Window.Canvas().Focused()
	if field == nil {
		t.Fatalf("no field has the focus for %s", p)
	}
	for _, r := range text {
		field.TypedRune(r)
	}
	field.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
}

func shownC(m *benchtest.Made, p diagram.Point) *diagram.Celsius {
	if r := m.Desk.Case.Rounds[m.Desk.Round].Reading(p); r != nil {
		return r.ShownC
	}
	return nil
}

// Until the expected ranges are there no mark says that a hose is out of its own.
func TestNoMarksBeforeTheRangesAreThere(t *testing.T) {
	d, q := benchtest.Waiting(t, benchtest.Idling(20))
	drawn := func() string {
		p, _ := drawingOf(d)
		return fmt.Sprint(p.Shapes)
	}
	before := drawn()
	q.RunAll()
	after := drawn()
	if strings.Contains(before, "K under") || !strings.Contains(after, "K under") {
		t.Errorf("marked before: %t, after: %t; want only after", strings.Contains(before, "K under"), strings.Contains(after, "K under"))
	}
}

func TestUnitsSwitchWhatIsTypedAndShown(t *testing.T) {
	s, m := begun(t)
	m.Desk.Units = units.US()
	s.Show()
	typeAt(t, s, m, diagram.Housing, "212")
	if got := shownC(m, diagram.Housing); got == nil || *got != 100 {
		t.Errorf("212 °F is kept as %v °C, want 100", got)
	}
	_, texts := drawingOf(m.Desk)
	if texts[diagram.Housing].Rest != "212" {
		t.Errorf("the field shows %q, want 212", texts[diagram.Housing])
	}
}

// A corrected temperature is shown, what the gun showed is edited: else a
// second edit would correct it twice.
func TestACorrectionIsMadeOnce(t *testing.T) {
	s, m := begun(t)
	emissivity := 0.8
	m.Desk.Edit("gun", func(c *cases.Case) { c.Rounds[0].Gun.Emissivity = &emissivity })
	typeAt(t, s, m, diagram.EngineOut, "90")
	_, texts := drawingOf(m.Desk)
	if texts[diagram.EngineOut].Rest == "90" || texts[diagram.EngineOut].Edit != "90" {
		t.Fatalf("the field holds %+v, want a corrected temperature at rest and 90 to edit", texts[diagram.EngineOut])
	}
	kit.Focus(s.Read(m.Desk.Round, diagram.EngineOut))
	m.Window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) // looked at, not changed
	m.Window.Canvas().Unfocus()
	if got := shownC(m, diagram.EngineOut); got == nil || *got != 90 {
		t.Errorf("after a look the gun's value is %v, want 90", got)
	}
}

// A walk that is begun says how it is done until something is measured in it.
func TestAWalkSaysHowItIsDone(t *testing.T) {
	s, m := begun(t)
	typeAt(t, s, m, diagram.Housing, "91")
	for _, walk := range []string{likelihood.RaisedIdle, likelihood.HotIdle, likelihood.AfterRoad} {
		round, ok := WalkOf(walk)
		if !ok {
			t.Fatalf("%s is no walk", walk)
		}
		s.Begin(round)
		n := len(m.Desk.Case.Rounds)
		if do := s.toDo(); do.Title == "" || do.Text == "" || do.Caution == "" {
			t.Errorf("%s: on the hose map stands %+v", walk, do)
		}
		m.Desk.Case.Rounds[n-1].EctC = casetest.P(diagram.Celsius(91))
		if do := s.toDo(); do.Title != "" {
			t.Errorf("%s: measured, %q still stands there", walk, do.Title)
		}
	}
}

// A round that is chosen by a walk's name begins as the walk is walked, as one does that the causes ask for: the speed after
// a drive stood empty, and was filled with that of a car that stands.
func TestARoundOfAWalksNameBeginsAsItIsWalked(t *testing.T) {
	s, m := begun(t)
	for label, want := range map[string][2]float64{"Raised idle": {2500, 0}, "After the road": {0, 80}, "Warm idle": {}} {
		s.AddRound(label, false)
		r := m.Desk.Case.Rounds[len(m.Desk.Case.Rounds)-1]
		var got [2]float64
		for i, v := range []*float64{r.EngineRPM, r.SpeedKmh} {
			if v != nil {
				got[i] = *v
			}
		}
		if r.Label != label || got != want {
			t.Errorf("%s: %q at %v, want %v", label, r.Label, got, want)
		}
	}
}

// A hose that can't be reached says so by a press as by a dash: what was typed there before and couldn't be read is gone.
func TestWhatCantBeReachedIsTypedNoMore(t *testing.T) {
	s, m := begun(t)
	typeAt(t, s, m, diagram.RadIn, "hot")
	if len(m.Desk.Slips()) != 1 {
		t.Fatalf("typed amiss are %v", m.Desk.Slips())
	}
	kit.Focus(s.Read(m.Desk.Round, diagram.RadIn))
	test.Tap(benchtest.ButtonIn(t, s.Content(), kit.L("window.hosemap.cant-reach")))
	if r := m.Desk.Case.Rounds[m.Desk.Round].Reading(diagram.RadIn); r == nil || !r.CantReach() || len(m.Desk.Slips()) != 0 {
		t.Errorf("it is %+v, typed amiss are %v", r, m.Desk.Slips())
	}
}
