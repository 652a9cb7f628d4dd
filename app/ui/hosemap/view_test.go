package hosemap

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// bench is a screen whose edits land in a case, as the desk's do.
type bench struct {
	view *View
	data Data
	win  fyne.Window
}

func newBench(t *testing.T, c cases.Case) *bench {
	t.Helper()
	test.NewTempApp(t)
	b := &bench{view: New(), data: Data{Case: c, Units: units.Metric()}}
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	b.data.Picture = drawing.Draw(l, drawing.State{}, false)
	b.view.Edit = func(_ string, change func(*cases.Case)) {
		change(&b.data.Case)
		b.view.Show(b.data)
	}
	b.view.OnRound = func(i int) {
		b.data.Round = i
		b.view.Show(b.data)
	}
	b.view.OnReading = func(diagram.Point, string) {}
	b.view.Walk = func(label string) cases.Round { return cases.Round{Label: label} }
	b.view.OnLayout = func(id string) { b.view.Edit("", func(c *cases.Case) { c.Loop.Layout = id }) }
	b.win = test.NewTempWindow(t, b.view.Content())
	b.win.Resize(fyne.NewSize(1050, 700))
	b.view.Show(b.data)
	return b
}

func oneRound() cases.Case {
	return cases.Case{Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{Label: "warm idle"}}}
}

// A new round has the caret in its name, and a hand that is quick types the first hose's temperature: "77" became the name.
func TestABareNumberIsNoRoundsName(t *testing.T) {
	b := newBench(t, oneRound())
	b.view.AddRound("", true)
	name := b.view.conditions.label
	test.Type(name, "77")
	name.Leave()
	if got := b.data.Case.Rounds[1].Label; got != "" || name.Text != "77" || len(kit.Refused(b.view.content)) != 1 {
		t.Errorf("the round is called %q, its field holds %q", got, name.Text)
	}
	b.view.OnRound(0)
	if name.Text != "warm idle" {
		t.Errorf("the other round is called %q", name.Text)
	}
	b.view.OnRound(1)
	if name.Text != "77" {
		t.Errorf("back in its round %q stands there", name.Text)
	}
	name.SetText("2500 rpm")
	name.Leave()
	if got := b.data.Case.Rounds[1].Label; got != "2500 rpm" || len(kit.Refused(b.view.content)) != 0 {
		t.Errorf("mended, the round is called %q", got)
	}
}

func TestConditionsAreReadAndMarked(t *testing.T) {
	b := newBench(t, oneRound())
	rpm, road := b.view.conditions.fields[1], b.view.conditions.fields[2]
	test.Type(rpm, "2 500")
	rpm.Leave()
	if got := b.data.Case.Rounds[0].EngineRPM; got == nil || *got != 2500 {
		t.Errorf("rpm = %v, want 2500", got)
	}
	test.Type(road, "fast")
	road.Leave()
	if b.data.Case.Rounds[0].SpeedKmh != nil {
		t.Error("a word was kept as a speed")
	}
	for _, slip := range []string{"-800", "25000"} {
		rpm.SetText(slip)
		rpm.Leave()
		if got := b.data.Case.Rounds[0].EngineRPM; got == nil || *got != 2500 {
			t.Errorf("%s rpm left %v in the case, want 2500 as before", slip, got)
		}
		if said := texts(b.view.content.(*fyne.Container)); !strings.Contains(said, "Not kept. Rpm: write 0 to 20000") {
			t.Errorf("the reason isn't said in:\n%s", said)
		}
	}
	rpm.SetText("")
	rpm.Leave()
	if b.data.Case.Rounds[0].EngineRPM != nil {
		t.Error("an emptied field still counts")
	}
}

func TestSurfaceAndReachBelongToThePointWithTheCaret(t *testing.T) {
	b := newBench(t, oneRound())
	b.view.focused(diagram.Bypass)
	b.view.place.surface.SetSelected(surfaceName("aluminium-bare"))
	r := b.data.Case.Rounds[0].Reading(diagram.Bypass)
	if r == nil || r.Surface.Word != "aluminium-bare" || r.CantReach() {
		t.Fatalf("after choosing a surface the reading is %+v", r)
	}
	typed := ""
	b.view.OnReading = func(p diagram.Point, text string) { typed = string(p) + " " + text }
	if test.Tap(b.view.place.reach); typed != "bypass -" {
		t.Errorf("can't reach types %q", typed)
	}
	b.view.focused(diagram.AirOn)
	if !b.view.place.surface.Disabled() {
		t.Error("air has no surface, yet one can be chosen")
	}
}

// An emissivity that was refused is mended where it was typed, though the caret has been at another hose since;
// taken back, the field is that hose's again.
func TestARefusedEmissivityIsMendedWhereItWasTyped(t *testing.T) {
	b := newBench(t, oneRound())
	number := b.view.place.number
	at := func(p diagram.Point) float64 {
		if r := b.data.Case.Rounds[0].Reading(p); r != nil {
			return r.Surface.Emissivity
		}
		return 0
	}
	types := func(text string) {
		number.SetText(text)
		number.Leave()
	}
	b.view.focused(diagram.Bypass)
	types("95")
	b.view.focused(diagram.RadIn)
	if said := texts(b.view.content.(*fyne.Container)); !strings.Contains(said, "Not kept. Emissivity, Bypass: write above 0, up to 1") {
		t.Errorf("whose emissivity was refused isn't said in:\n%s", said)
	}
	types("0.92")
	if at(diagram.Bypass) != 0.92 || at(diagram.RadIn) != 0 || number.Text != "" {
		t.Errorf("bypass %g, upper hose %g, the field %q", at(diagram.Bypass), at(diagram.RadIn), number.Text)
	}
	b.view.focused(diagram.Bypass)
	types("9.5")
	b.view.focused(diagram.RadIn)
	number.Revert()
	if number.Text != "" {
		t.Errorf("taken back, the upper hose's field holds %q", number.Text)
	}
	types("0.8")
	if at(diagram.Bypass) != 0.92 || at(diagram.RadIn) != 0.8 {
		t.Errorf("after taking it back: bypass %g, upper hose %g", at(diagram.Bypass), at(diagram.RadIn))
	}
}

func TestFlagsOfTheRoundAndOfTheCaseAreTold(t *testing.T) {
	b := newBench(t, oneRound())
	b.data.Flags = []evidence.Flag{
		{Severity: evidence.Act, Round: 0, Text: say.Of("flag.fan-running", diagram.Celsius(100)), Because: []say.Text{say.Of("by.scan-tool")}},
		{Severity: evidence.Look, Round: evidence.WholeCase, Text: say.Own("old coolant")},
		{Severity: evidence.Act, Round: 1, Text: say.Own("of another round")},
	}
	b.data.Units = units.US()
	b.view.Show(b.data)
	told := texts(b.view.meaning)
	for _, want := range []string{"Act", "212 °F", "the scan tool", "Look", "old coolant"} {
		if !strings.Contains(told, want) {
			t.Errorf("%q is not told in %q", want, told)
		}
	}
	if strings.Contains(told, "another round") {
		t.Error("a flag of another round is told here")
	}
}

// A hot engine's caution is seen to be one, and is no finding: the loop may be as it should be.
func TestCautionIsNoFinding(t *testing.T) {
	analyst, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	c := oneRound()
	c.Rounds[0].EctC = casetest.P(diagram.Celsius(90))
	c.Rounds[0].Readings = []cases.Reading{{Point: diagram.RadIn, ShownC: casetest.P(diagram.Celsius(85))}}
	b := newBench(t, c)
	for _, f := range analyst.Analyse(&c).Flags {
		if f.Caution() {
			b.data.Flags = append(b.data.Flags, f)
		}
	}
	b.view.Show(b.data)
	if told := texts(b.view.meaning); !strings.Contains(told, "keep the cap shut") || !strings.Contains(told, "fan may start by itself") || !strings.Contains(told, "As it should be") {
		t.Errorf("a hot sound loop says %q", told)
	}
}

func TestNothingMeasuredIsNotAllWell(t *testing.T) {
	b := newBench(t, oneRound())
	if told := texts(b.view.meaning); strings.Contains(told, "As it should be") {
		t.Errorf("a round without readings says %q", told)
	}
}

func TestLikelyCausesAreToldUntilThereAreNone(t *testing.T) {
	b := newBench(t, oneRound())
	asked := false
	b.view.OnCauses = func() { asked = true }
	b.view.ShowLikely(cases.BeforeRepair, []kit.Likely{{Name: "coolant pump weak", Chance: 0.62}, {Name: "loop healthy", Chance: 0.004}}, "")
	if got := b.view.likely.Objects[1].(*kit.LikelyLine).Text(); got != "Coolant pump weak 62 %" {
		t.Errorf("the first line says %q", got)
	}
	if got := b.view.likely.Objects[2].(*kit.LikelyLine).Text(); got != "Loop healthy under 1 %" {
		t.Errorf("the second line says %q", got)
	}
	test.Tap(b.view.likely.Objects[3].(*kit.Button))
	if !asked {
		t.Error("nobody was asked for all causes")
	}
	if b.view.ShowLikely("", nil, ""); len(b.view.likely.Objects) > 0 {
		t.Error("causes are told where there are none")
	}
}

// The likeliest causes stay in sight under what it means, however long that is; and who goes on to
// them by Enter in the last hose still reads what the number means, and keeps the focus as they change.
func TestWhatIsLikelyStaysInSight(t *testing.T) {
	b := newBench(t, oneRound())
	likely := []kit.Likely{{Name: "coolant pump weak", Chance: 0.62}}
	b.view.ShowLikely(cases.BeforeRepair, likely, "")
	long := say.Own(strings.Repeat("a long word or two of why ", 30))
	b.data.Flags = []evidence.Flag{{Severity: evidence.Act, Round: 0, Text: long, Because: []say.Text{long, long, long}}}
	b.view.Show(b.data)
	b.view.ShowLikely(cases.BeforeRepair, likely, "")
	driver, side := fyne.CurrentApp().Driver(), b.view.side
	bottom := driver.AbsolutePositionForObject(side).Y + side.Size().Height
	news := driver.AbsolutePositionForObject(b.view.news).Y + b.view.news.Size().Height
	at := driver.AbsolutePositionForObject(b.view.why).Y
	if at < news || at+b.view.why.Size().Height > bottom {
		t.Errorf("the way to the causes stands at %g, under findings that end at %g and over the end at %g", at, news, bottom)
	}
	if b.view.news.Content.Size().Height <= b.view.news.Size().Height {
		t.Fatal("there is nothing to scroll")
	}
	b.win.Canvas().Focus(b.view.why)
	if y := b.view.news.Offset.Y; y != 0 {
		t.Errorf("on the way to the causes what it means is scrolled by %g", y)
	}
	b.view.ShowLikely(cases.BeforeRepair, likely, "")
	if !slices.Contains(b.view.likely.Objects, fyne.CanvasObject(b.view.why)) || b.win.Canvas().Focused() != b.view.why {
		t.Error("the focus is lost as the causes change")
	}
}

// The air that nobody noted is assumed, and who reads the ranges sees which.
func TestTheAssumedAirIsShown(t *testing.T) {
	c, frost := oneRound(), diagram.Celsius(2)
	b := newBench(t, c)
	air := func(want string) {
		b.view.Show(b.data)
		if got := b.view.conditions.air.PlaceHolder; got != want {
			t.Errorf("the air stands as %q, want %q", got, want)
		}
	}
	air("20?")
	b.data.Units.Temperature = units.F
	air("68?")
	b.data.Case.Site.AmbientC = &frost
	air("35.6")
	b.data.Case.Site.AmbientC = nil
	b.data.Case.Rounds = append(b.data.Case.Rounds, cases.Round{AmbientC: &frost})
	air("35.6?")
}

// Beside hoses that were read nobody says that nothing is noted.
func TestATileSaysWhatIsNotNoted(t *testing.T) {
	c := diagram.Celsius(90)
	read := []cases.Reading{{Point: diagram.Housing, ShownC: &c}}
	for want, r := range map[string]cases.Round{"nothing noted yet": {}, "how it ran?": {Readings: read}, "off": {Readings: read, Fan: cases.FanOff}} {
		if got := condition(r, units.Metric()); !strings.Contains(got, want) {
			t.Errorf("%+v: %q, want %q", r, got, want)
		}
	}
}

// In a low window the first cause stands for all, so that what a number means is still read there.
func TestInALowWindowTheFirstCauseStandsForAll(t *testing.T) {
	b := newBench(t, oneRound())
	b.view.ShowLikely(cases.BeforeRepair, []kit.Likely{{Name: "coolant pump weak", Chance: 0.62}, {Name: "fan not running", Chance: 0.2}, {Name: "loop healthy", Chance: 0.1}}, "")
	for _, tt := range []struct {
		height float32
		lines  int
	}{{800, 3}, {420, 1}, {800, 3}} {
		b.win.Resize(fyne.NewSize(1050, tt.height))
		lines := 0
		for _, o := range b.view.likely.Objects {
			if line, ok := o.(*kit.LikelyLine); ok && line.Visible() {
				lines++
			}
		}
		if lines != tt.lines {
			t.Errorf("%g high it tells %d causes, want %d", tt.height, lines, tt.lines)
		}
		side := b.view.side.Size().Height
		if means := b.view.news.Size().Height; means < side/2 {
			t.Errorf("%g high what it means has %g of %g", tt.height, means, side)
		}
		if foot := b.view.why.Position().Y + b.view.why.Size().Height; foot > side-b.view.news.Size().Height {
			t.Errorf("%g high the way to the causes ends at %g of %g", tt.height, foot, side-b.view.news.Size().Height)
		}
	}
}

func TestLayoutIsAskedForWhereNoneIsKnown(t *testing.T) {
	b := newBench(t, cases.Case{})
	if !b.view.choose.Visible() {
		t.Fatal("nobody asks for the layout")
	}
	test.Tap(b.view.choose.Objects[1].(*fyne.Container).Objects[0].(*kit.Button))
	if b.data.Case.Loop.Layout == "" || b.view.choose.Visible() {
		t.Errorf("after choosing the layout is %q", b.data.Case.Loop.Layout)
	}
}

// texts gathers what a container says.
func texts(o fyne.CanvasObject) string {
	var out []string
	var walk func(fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *widget.Label:
			out = append(out, o.Text)
		case *kit.Prose:
			out = append(out, o.String())
		case *fyne.Container:
			for _, child := range o.Objects {
				walk(child)
			}
		}
	}
	walk(o)
	return strings.Join(out, "\n")
}

// What is measured after the repair is noted proves it.
func TestARoundAfterTheRepairIsTakenForOne(t *testing.T) {
	c := oneRound()
	c.Verdict.Cause, c.Repair.Parts = "pump-weak", []cases.Part{{Name: "pump"}}
	b := newBench(t, c)
	b.view.AddRound("", true)
	if got := b.data.Case.Rounds[1].Stage; got != cases.AfterRepair {
		t.Errorf("the new round is %q", got)
	}
}

// A round is walked again after the repair with its name and its conditions, and
// asked for twice it is begun once.
func TestARoundIsWalkedAgainAfterTheRepair(t *testing.T) {
	rpm, shown := 820.0, diagram.Celsius(88)
	c := oneRound()
	c.Rounds[0].EngineRPM, c.Rounds[0].Readings = &rpm, []cases.Reading{{Point: diagram.Housing, ShownC: &shown}}
	b := newBench(t, c)
	b.view.Again(0)
	b.view.OnRound(0)
	b.view.Again(0)
	rounds := b.data.Case.Rounds
	if len(rounds) != 2 || b.data.Round != 1 {
		t.Fatalf("%d rounds, the shown one %d; want 2 and 1", len(rounds), b.data.Round)
	}
	if r := rounds[1]; r.Label != "warm idle" || r.Stage != cases.AfterRepair || r.EngineRPM == nil || len(r.Readings) != 0 {
		t.Errorf("the round after the repair = %+v", r)
	}
}

// A round in which something was noted already isn't used up by the next one that is begun.
func TestABegunRoundKeepsWhatWasNoted(t *testing.T) {
	minutes := 25.0
	c := oneRound()
	c.Rounds = []cases.Round{{Label: "raised idle", MinutesSinceStart: &minutes}, {Label: "hot idle"}}
	b := newBench(t, c)
	b.view.Begin(cases.Round{Label: "after a drive"})
	if r := b.data.Case.Rounds; len(r) != 2 || r[0].Label != "raised idle" || r[1].Label != "after a drive" {
		t.Errorf("the rounds are %+v", r)
	}
}

// Beside a number that is marked out of its range nothing is said to be in range.
func TestNothingIsFineBesideAMarkedNumber(t *testing.T) {
	c := oneRound()
	c.Rounds[0].Readings = []cases.Reading{{Point: diagram.Housing}}
	b := newBench(t, c)
	for _, out := range []bool{true, false} {
		b.data.Out = out
		b.view.Show(b.data)
		if said := texts(b.view.meaning); strings.Contains(said, "Nothing measured so far is out") == out || strings.Contains(said, "A number is out of its range") != out {
			t.Errorf("out of range: %v, and the screen says\n%s", out, said)
		}
	}
}

// Enter goes from the road speed past fan and heater, which would swallow the next
// number, and from the last condition to the first hose.
func TestEnterGoesFromNumberToNumber(t *testing.T) {
	b := newBench(t, oneRound())
	canvas := fyne.CurrentApp().Driver().CanvasForObject(b.view.content)
	canvas.Focus(b.view.conditions.label)
	for i := range len(b.view.conditions.fields) {
		canvas.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		if canvas.Focused() != fyne.Focusable(b.view.conditions.fields[i].Field) {
			t.Fatalf("Enter number %d leads to %T", i+1, canvas.Focused())
		}
	}
	canvas.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if canvas.Focused() != b.view.loop.Field("") {
		t.Errorf("Enter behind the conditions leads to %T", canvas.Focused())
	}
}

// On a screen that is lower than the drawing (1366×768 is common, judgement) the
// drawing scrolls, and the field with the caret is in sight.
func TestALowScreenFollowsTheCaret(t *testing.T) {
	b := newBench(t, oneRound())
	b.win = test.NewTempWindow(t, b.view.Content())
	b.win.Resize(fyne.NewSize(1050, 400))
	if h := b.view.Content().MinSize().Height; h > 400 {
		t.Fatalf("the hose map wants %.0f of height", h)
	}
	for _, p := range []diagram.Point{diagram.RadOut, diagram.RadIn} {
		b.view.loop.Focus(p)
		field := b.view.loop.Field(p).(fyne.CanvasObject)
		driver := fyne.CurrentApp().Driver()
		top := driver.AbsolutePositionForObject(field).Y - driver.AbsolutePositionForObject(b.view.sheet).Y
		if bottom := top + field.Size().Height; top < -0.5 || bottom > b.view.sheet.Size().Height+0.5 {
			t.Errorf("%s: the field is at %.0f to %.0f of %.0f", p, top, bottom, b.view.sheet.Size().Height)
		}
	}
}

// A finding to act on that is new is seen, however far down one had read; so is another round
// from its beginning.
func TestWhatIsGraverComesIntoSight(t *testing.T) {
	b := newBench(t, oneRound())
	long := say.Own(strings.Repeat("a long word or two of why ", 30))
	look, act := evidence.Flag{Severity: evidence.Look, Text: long}, evidence.Flag{Severity: evidence.Act, Text: long}
	show := func(flags ...evidence.Flag) {
		b.data.Flags = flags
		b.view.Show(b.data)
	}
	down := func() { b.view.news.ScrollToBottom() }
	show(look, look, look)
	down()
	if b.view.news.Offset.Y == 0 {
		t.Fatal("there is nothing to scroll")
	}
	if show(look, look, look); b.view.news.Offset.Y == 0 {
		t.Error("with nothing new it went back to the top")
	}
	if show(act, look, look, look); b.view.news.Offset.Y != 0 {
		t.Error("a first finding to act on is out of sight")
	}
	down()
	if show(act, act, look, look); b.view.news.Offset.Y != 0 {
		t.Error("a second finding to act on is out of sight")
	}
	down()
	show()
	if s := b.view.news; s.Offset.Y > max(0, s.Content.Size().Height-s.Size().Height) {
		t.Errorf("with less to tell it stands at %g, past its end", s.Offset.Y)
	}
	b.data.Case.Rounds = append(b.data.Case.Rounds, cases.Round{Label: "hot idle"})
	b.data.Flags = []evidence.Flag{look, look, look}
	for i := range b.data.Flags {
		b.data.Flags[i].Round = evidence.WholeCase
	}
	b.view.Show(b.data)
	down()
	if b.view.OnRound(1); b.view.news.Offset.Y != 0 {
		t.Error("another round is told from where the last one was left")
	}
}

// A round that is walked again is driven as before; what is seen in it is seen anew.
func TestARoundAgainCopiesNothingThatIsObserved(t *testing.T) {
	rpm, ect, minutes := 2500.0, diagram.Celsius(96), 25.0
	c := oneRound()
	c.Rounds[0] = cases.Round{Label: "held", EngineRPM: &rpm, Heater: cases.HeaterFull, Fan: cases.FanOff, Gauge: cases.Words[cases.Gauge]()[0], EctC: &ect, MinutesSinceStart: &minutes, Taken: time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC),
		Readings: []cases.Reading{{Point: diagram.Housing, ShownC: &ect}}}
	b := newBench(t, c)
	b.view.Again(0)
	b.view.OnRound(0)
	b.view.AddRound("", true)
	for _, r := range b.data.Case.Rounds[1:] {
		if r.EngineRPM == nil || *r.EngineRPM != rpm || r.Heater != cases.HeaterFull {
			t.Errorf("%q isn't driven as before: %+v", r.Label, r)
		}
		if r.MinutesSinceStart != nil || !r.Taken.IsZero() {
			t.Errorf("%q holds when the round before was: %+v", r.Label, r)
		}
		if r.Fan != "" || r.Gauge != "" || r.EctC != nil || len(r.Readings) > 0 {
			t.Errorf("%q holds what was observed before: %+v", r.Label, r)
		}
	}
	if n := len(b.data.Case.Rounds); n != 3 {
		t.Errorf("%d rounds, want 3", n)
	}
}

// In a round just begun the line about a place names none until one is gone to: it kept the last round's hose, which
// "can't reach" then was noted of.
func TestANewRoundIsAtNoPlaceYet(t *testing.T) {
	b := newBench(t, oneRound())
	b.win.Canvas().Focus(b.view.loop.Field(diagram.RadIn))
	if got := b.view.place.name.Text; got != say.PointName(diagram.RadIn).String() {
		t.Fatalf("with the caret at the upper hose the line names %q", got)
	}
	b.view.AddRound("", true)
	if got := b.view.place.name.Text; got != kit.L("window.hosemap.tab") || !b.view.place.reach.Disabled() {
		t.Errorf("in a new round the line names %q, and can be pressed: %v", got, !b.view.place.reach.Disabled())
	}
	b.win.Canvas().Focus(b.view.loop.Field(diagram.RadOut))
	b.view.Edit("", func(c *cases.Case) { c.Rounds[1].Label = "later" })
	if got := b.view.place.name.Text; got != say.PointName(diagram.RadOut).String() {
		t.Errorf("an edit of the same round takes the place away: %q", got)
	}
}

// In the smallest window that the program is made for the line about a place is read in full: its name, what is taken
// for its surface, and the hints of its fields.
func TestTheLineAboutAPlaceIsReadInFull(t *testing.T) {
	b := newBench(t, oneRound())
	fyne.CurrentApp().Settings().SetTheme(kit.NewTheme(kit.Bright))
	p := b.view.place
	p.content.Resize(fyne.NewSize(752, p.content.MinSize().Height)) // as wide as at 1280 x 800
	fits := func(what, text string, style fyne.TextStyle, size, room float32) {
		if w := fyne.MeasureText(text, size, style).Width; w > room {
			t.Errorf("%s: %q is %.0f wide and has %.0f", what, text, w, room)
		}
	}
	pad, icon := 2*theme.InnerPadding(), theme.InnerPadding()+theme.IconInlineSize()
	for _, at := range diagram.Points() {
		fits("name", say.PointName(at).String(), fyne.TextStyle{Bold: true}, theme.TextSize(), p.name.Size().Width-pad-2)
	}
	fits("name", kit.L("window.hosemap.tab"), fyne.TextStyle{Bold: true}, theme.TextSize(), p.name.Size().Width-pad-2)
	fits("surface", p.surface.PlaceHolder, fyne.TextStyle{}, theme.TextSize(), p.surface.Size().Width-pad-icon)
	for _, f := range []*kit.Field{p.number, p.gun, p.reflected} {
		fits("field", f.PlaceHolder, fyne.TextStyle{}, theme.TextSize(), f.Size().Width-pad)
	}
	for _, l := range []int{4, 6} {
		label := p.content.Objects[l].(*widget.Label)
		fits("label", label.Text, fyne.TextStyle{}, theme.Size(label.SizeName), label.Size().Width-pad-1) // text is a little wider at other scales
	}
	if reach := p.reach; reach.Size().Width < reach.MinSize().Width {
		t.Errorf("%q wants %.0f and has %.0f", reach.Text, reach.MinSize().Width, reach.Size().Width)
	}
}
