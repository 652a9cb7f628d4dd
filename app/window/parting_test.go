package window

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// What was typed and could not be kept is told before the case is left: it was gone without a word, though
// it may have been typed only a moment before.
func TestWhatWasRefusedIsToldBeforeItIsGone(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	first := w.at.Desk.Case.ID
	w.menus.ways.turnTo(warmUpTab)
	coolant := w.window.Canvas().Focused()
	coolant.TypedRune('8')
	coolant.TypedRune('a')
	typeAt(t, w, diagram.Housing, "7o")
	over := w.window.Canvas().Overlays()
	asked := func() fyne.CanvasObject {
		w.menus.opener.begin()
		if over.Top() == nil || w.at.Desk.Case.ID != first {
			t.Fatal("another case was begun over what was refused")
		}
		return over.Top().(*widget.PopUp).Content
	}
	content := asked()
	said := kittest.Texts(content)
	for _, want := range []string{"Coolant, °C: 8a", "Warm idle, Thermostat housing: 7o"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q isn't told in %q", want, said)
		}
	}
	test.Tap(benchtest.ButtonIn(t, content, kit.L("window.parting.stay")))
	if over.Top() != nil || w.at.Desk.Case.ID != first || len(w.at.Desk.Slips()) != 1 {
		t.Errorf("gone back, case %s is open with slips %v", w.at.Desk.Case.ID, w.at.Desk.Slips())
	}
	test.Tap(benchtest.ButtonIn(t, asked(), kit.L("window.parting.anyway")))
	if over.Top() != nil || w.at.Desk.Case.ID == first {
		t.Error("no other case was begun")
	}
	w.menus.opener.open(first)
	if over.Top() != nil || w.at.Desk.Case.ID != first {
		t.Error("it is asked where nothing was refused")
	}
}

// Who goes back to correct what was refused types on where it stands: the digits went nowhere, and were gone with the program.
func TestWhoGoesBackToCorrectTypesOn(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.menus.ways.turnTo(warmUpTab)
	coolant := w.window.Canvas().Focused()
	coolant.TypedRune('8')
	coolant.TypedRune('a')
	for name, back := range map[string]func(){
		"by its button": func() {
			test.Tap(benchtest.ButtonIn(t, w.window.Canvas().Overlays().Top().(*widget.PopUp).Content, kit.L("window.parting.stay")))
		},
		"by Escape": func() { w.window.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape}) },
	} {
		w.menus.opener.begin()
		if back(); w.window.Canvas().Overlays().Top() != nil || w.window.Canvas().Focused() != coolant {
			t.Errorf("gone back %s, %T has the focus", name, w.window.Canvas().Focused())
		}
	}
}

// A new case that nothing is noted in yet is the new case: each key left another blank one in the notebook.
func TestABlankCaseIsBegunOnce(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	first := w.at.Desk.Case.ID
	w.menus.ways.turnTo(checksTab)
	w.menus.opener.begin()
	if w.at.Desk.Case.ID != first || w.screens.tabs.SelectedIndex() != complaintTab {
		t.Errorf("case %q is open on page %d, want the blank one where it is told", w.at.Desk.Case.ID, w.screens.tabs.SelectedIndex())
	}
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "Runs hot" })
	if w.menus.opener.begin(); w.at.Desk.Case.ID == first {
		t.Error("with a title it is taken for blank")
	}
}

// A slip stays with its round: who turns to another one and back finds it, and it is told of from there too.
func TestASlipStaysWithItsRound(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	typeAt(t, w, diagram.RadIn, "8o")
	w.menus.ways.addRound()
	if d.Round != 1 || len(d.Slips()) != 0 {
		t.Fatalf("round %d begins with slips %v", d.Round, d.Slips())
	}
	if lost := w.screens.lost(); len(lost) != 1 || !strings.Contains(lost[0], "Warm idle") || !strings.Contains(lost[0], "8o") {
		t.Errorf("from another round %q is told", lost)
	}
	if kept := w.frame.head.kept.Text; kept != "not all kept: round 1" {
		t.Errorf("from another round the head says %q", kept)
	}
	w.menus.opener.undo()
	if len(d.Case.Rounds) != 1 || d.Slips()[diagram.RadIn].Text != "8o" {
		t.Errorf("with the other round undone the slips are %v", d.Slips())
	}
	w.menus.ways.addRound()
	if d.ShowRound(0); d.Slips()[diagram.RadIn].Text != "8o" {
		t.Errorf("back in its round the slips are %v", d.Slips())
	}
	d.Edit("rounds", func(c *cases.Case) { c.Rounds = c.Rounds[:1] })
	w.menus.opener.undo() // the other one comes back, and is turned to
	if d.ShowRound(0); len(d.Case.Rounds) != 2 || d.Slips()[diagram.RadIn].Text != "8o" {
		t.Errorf("with the other round brought back the slips are %v", d.Slips())
	}
	d.Edit("rounds", func(c *cases.Case) { c.Rounds = c.Rounds[1:] })
	if lost := w.screens.lost(); len(lost) > 0 {
		t.Errorf("with the round gone %q is told", lost)
	}
	w.menus.opener.undo()
	if lost := w.screens.lost(); len(lost) != 1 || !strings.Contains(lost[0], "8o") {
		t.Errorf("with the round back %q is told", lost)
	}
}

// What was refused over the drawing goes with its round too, and comes back with it: what the scan tool shows, in a round
// that is deleted, or moved by one before it that is.
func TestWhatIsRefusedOverTheDrawingGoesWithItsRound(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	w.menus.ways.turnTo(hoseMapTab)
	w.screens.hosemap.AddRound("Hot idle", false)
	rpm := fieldUnder(t, w.screens.hosemap.Content(), "Rpm")
	rpm.SetText("85o")
	rpm.Leave()
	told := func(when string, round string) {
		t.Helper()
		lost := strings.Join(w.screens.lost(), "\n")
		if round == "" && lost != "" || round != "" && (!strings.Contains(lost, "85o") || !strings.Contains(lost, round)) {
			t.Errorf("%s %q is told", when, lost)
		}
	}
	told("at first", "Hot idle")
	w.screens.hosemap.DeleteRound(0)
	if told("with the first round gone", "Hot idle"); rpm.Text != "85o" {
		t.Errorf("the round that moved shows %q", rpm.Text)
	}
	w.menus.opener.undo()
	told("with it back", "Hot idle")
	w.screens.hosemap.DeleteRound(1)
	if told("with its round gone", ""); rpm.Text != "" {
		t.Errorf("another round shows %q", rpm.Text)
	}
	w.menus.opener.undo()
	if told("with its round back", "Hot idle"); d.Round != 1 || rpm.Text != "85o" {
		t.Errorf("round %d is shown, with %q", d.Round, rpm.Text)
	}
	w.screens.hosemap.DeleteRound(1)
	w.screens.hosemap.AddRound("Hot idle", false)
	if told("with a new round", ""); rpm.Text != "" {
		t.Errorf("a new round shows %q", rpm.Text)
	}
}

// What is being typed in a round comes back with it, and no round gets a slip of another one that stood in its place.
func TestARoundComesBackWhole(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	w.menus.ways.turnTo(hoseMapTab)
	rpm := fieldUnder(t, w.screens.hosemap.Content(), "Rpm")
	w.window.Canvas().Focus(rpm)
	rpm.SetText("850")
	w.screens.hosemap.DeleteRound(0)
	w.window.Canvas().Unfocus()
	w.menus.opener.undo()
	if r := d.Case.Rounds; len(r) != 1 || r[0].EngineRPM == nil || *r[0].EngineRPM != 850 {
		t.Fatalf("brought back, the rounds are %+v", r)
	}
	rpm.SetText("900")
	w.screens.hosemap.AddRound("", true)
	for i, r := range d.Case.Rounds {
		if r.EngineRPM == nil || *r.EngineRPM != 900 {
			t.Errorf("with a round added in the same conditions round %d has %+v", i+1, r)
		}
	}
	d.Edit("rounds", func(c *cases.Case) { c.Rounds = c.Rounds[1:] })
	typeAt(t, w, diagram.RadIn, "7o")
	w.menus.opener.undo()
	if d.ShowRound(0); len(d.Slips()) != 0 {
		t.Errorf("the round that came back before it has its slips %v", d.Slips())
	}
}

// What no coolant can be isn't kept at a hose, which stood empty though it was kept. In °F it may have been meant:
// whoever chooses that needn't type it again.
func TestWhatWasMeantInOtherUnits(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	d := w.at.Desk
	w.menus.ways.turnTo(complaintTab)
	opens := fieldUnder(t, w.screens.complaint.Content(), "Opens at, °C")
	w.window.Canvas().Focus(opens)
	test.Type(opens, "190")
	typeAt(t, w, diagram.RadIn, "204")
	typeAt(t, w, diagram.AirOn, "204")
	if slip := d.Slips()[diagram.RadIn]; slip.Text != "204" || slip.Why != "write -50…150" || len(d.Slips()) != 1 {
		t.Errorf("the slips are %v", d.Slips())
	}
	w.menus.choices.setUnits(func(u *units.Set) { u.Temperature = units.F })
	r := d.Case.Rounds[0].Reading(diagram.RadIn)
	if len(d.Slips()) > 0 || r == nil || r.ShownC == nil || math.Abs(float64(*r.ShownC)-95.56) > 0.01 {
		t.Errorf("in °F the slips are %v and the reading is %v", d.Slips(), r)
	}
	if o := d.Case.Loop.ThermostatOpensC; o == nil || math.Abs(float64(*o)-87.78) > 0.01 || opens.Text != "190" {
		t.Errorf("in °F the thermostat opens at %v, and its field says %q", o, opens.Text)
	}
	w.window.Canvas().Focus(opens)
	test.Type(opens, "1900")
	w.at.Leave()
	w.menus.choices.setUnits(func(u *units.Set) { u.Temperature = units.C })
	if opens.Text != "1900" {
		t.Errorf("what can't be in °C either became %q", opens.Text)
	}
	if opens.Revert(); opens.Text != "87.8" {
		t.Errorf("taken back it is %q, want the 190 °F that are kept", opens.Text)
	}
}

// What was refused over the drawing stays with its round as the slips at the hoses do: it was dropped without a word
// as another round was begun.
func TestARefusedConditionStaysWithItsRound(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.menus.ways.turnTo(hoseMapTab)
	d := w.at.Desk
	rpm := func() *kit.Field { return fieldUnder(t, w.screens.hosemap.Content(), "Rpm") }
	w.window.Canvas().Focus(rpm())
	test.Type(rpm(), "80000")
	w.menus.ways.addRound()
	if rpm().Text != "" || len(d.Case.Rounds) != 2 {
		t.Fatalf("the new one of %d rounds begins with %q rpm", len(d.Case.Rounds), rpm().Text)
	}
	if lost := strings.Join(w.screens.lost(), "\n"); lost != "Warm idle, Rpm: 80000" {
		t.Errorf("from the new round %q is told", lost)
	}
	for tab, want := range map[int]string{hoseMapTab: "not all kept: round 1", checksTab: "not all kept: round 1"} {
		w.menus.ways.turnTo(tab)
		if kept := w.frame.head.kept.Text; kept != want {
			t.Errorf("on tab %d the head says %q, want %q", tab, kept, want)
		}
	}
	w.menus.ways.turnTo(hoseMapTab)
	d.ShowRound(0)
	if rpm().Text != "80000" || w.frame.head.kept.Text != "not all kept" {
		t.Errorf("back in its round %q stands there, and the head says %q", rpm().Text, w.frame.head.kept.Text)
	}
	w.menus.ways.turnTo(checksTab)
	if kept := w.frame.head.kept.Text; kept != "not all kept: Hose map" {
		t.Errorf("from another screen the head says %q", kept)
	}
	w.menus.ways.turnTo(hoseMapTab)
	w.window.Canvas().Focus(rpm())
	test.Type(rpm(), "800")
	w.at.Leave()
	d.ShowRound(1)
	if lost := w.screens.lost(); len(lost) > 0 || d.Case.Rounds[0].EngineRPM == nil {
		t.Errorf("mended, %q is told, and of the round %v is kept", lost, d.Case.Rounds[0].EngineRPM)
	}
	if kept := w.frame.head.kept.Text; !strings.HasPrefix(kept, "kept ") {
		t.Errorf("mended, the head says %q", kept)
	}
}

// fieldUnder is the field that a label in o stands over.
func fieldUnder(t *testing.T, o fyne.CanvasObject, label string) *kit.Field {
	t.Helper()
	for _, inner := range test.LaidOutObjects(o) {
		box, ok := inner.(*fyne.Container)
		if !ok || len(box.Objects) != 2 {
			continue
		}
		l, isLabel := box.Objects[0].(*widget.Label)
		f, isField := box.Objects[1].(*kit.Field)
		if isLabel && isField && l.Text == label {
			return f
		}
	}
	t.Fatalf("no field is under %q", label)
	return nil
}

// A case that comes in, or back, takes the open one's place: what couldn't be kept there was gone unasked, and with it all
// that wasn't on the disk.
func TestWhatTakesTheOpenCasesPlaceAsksFirst(t *testing.T) {
	w, _ := shown(t)
	w.menus.opener.begin()
	w.at.Desk.Edit("title", func(c *cases.Case) { c.Title = "deleted" })
	w.menus.opener.remove()
	w.menus.opener.begin()
	open := w.at.Desk.Case.ID
	typeAt(t, w, diagram.Housing, "7o")
	path := filepath.Join(t.TempDir(), "one.json")
	if err := library.WriteFile(path, func(f *os.File) error { return exchange.WriteCase(f, casetest.Invented(1)) }); err != nil {
		t.Fatal(err)
	}
	for name, does := range map[string]func(){
		"taking one in": func() { w.menus.dropped([]fyne.URI{storage.NewFileURI(path)}) },
		"restoring":     w.menus.opener.restore,
		"deleting":      w.menus.opener.remove,
	} {
		does()
		if says := benchtest.Says(w.window); !strings.Contains(says, "7o") || w.at.Desk.Case.ID != open || len(w.at.Desk.Slips()) != 1 {
			t.Fatalf("%s says %q, with %v left", name, says, w.at.Desk.Slips())
		}
		test.Tap(benchtest.Button(t, w.window, kit.L("window.parting.stay")))
	}
	w.menus.opener.restore()
	if test.Tap(benchtest.Button(t, w.window, kit.L("window.parting.anyway"))); w.at.Desk.Case.Title != "deleted" {
		t.Errorf("agreed to, %q is open", w.at.Desk.Case.Title)
	}
}
