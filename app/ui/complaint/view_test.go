package complaint

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// screen is a complaint whose edits land in a case, as the desk's do.
func screen(t *testing.T) (*View, *cases.Case) {
	t.Helper()
	test.NewTempApp(t)
	var c cases.Case
	var v *View
	v = New(func(_ string, change func(*cases.Case)) {
		change(&c)
		v.Show(c, units.Metric())
	}, Words{
		Code:    func(code string) string { return "meaning of " + code },
		IsCode:  func(code string) bool { return len(code) == 5 },
		Coolant: func(c cases.Case, _ units.Set) string { return "coolant of " + c.Title },
		VIN: func(v cases.Vehicle) string {
			if v.VIN == "" {
				return ""
			}
			return "odd: " + v.VIN
		},
	})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 700))
	v.Show(c, units.Metric())
	return v, &c
}

// A caution that an edit leaves too low runs out of its box into what stands under it.
func TestTheCautionKeepsItsRoomWhenTheCaseChanges(t *testing.T) {
	v, c := screen(t)
	w := test.NewTempWindow(t, v.Content())
	for _, wide := range []float32{1050, 1049} { // by the second it knows its lines
		w.Resize(fyne.NewSize(wide, 700))
	}
	lines := v.caution.Size().Height
	if one := kit.Paragraphs(kit.Span{Text: "one line", Small: true}).MinSize().Height; lines < 1.5*one {
		t.Fatalf("the caution is %g high, a line of it %g", lines, one)
	}
	warm := diagram.Celsius(23)
	c.Site.AmbientC = &warm
	v.Show(*c, units.Metric())
	if text := kittest.Texts(v.caution); !strings.Contains(text, "50 °C") || v.caution.Size().Height != lines || v.caution.MinSize().Height > lines {
		t.Errorf("%g high, wants %g, had %g: %s", v.caution.Size().Height, v.caution.MinSize().Height, lines, text)
	}
	if v.Show(*c, units.US()); !strings.Contains(kittest.Texts(v.Content()), "122 °F") {
		t.Error("the caution isn't said in the chosen units")
	}
}

func TestCodesAreTypedAsTheyCome(t *testing.T) {
	v, c := screen(t)
	test.Type(v.codes.next, "0128, p0217;P1ABC") // the first as two bytes
	v.codes.next.Leave()
	if len(c.Codes) != 3 || c.Codes[0].Code != "P0128" || c.Codes[2].Code != "P1ABC" || v.codes.next.Text != "" {
		t.Errorf("codes = %+v, the field holds %q", c.Codes, v.codes.next.Text)
	}
	test.Type(v.codes.next, "PO118 NOTHING") // the letter for the nought, and no code
	v.codes.next.Leave()
	if len(c.Codes) != 5 || c.Codes[3].Code != "P0118" || c.Codes[4].Code != "NOTHING" {
		t.Errorf("codes = %+v", c.Codes)
	}
	if got := kittest.Texts(v.codes.rows[1].meaning); got != "meaning of P0217" {
		t.Errorf("the second code means %q", got)
	}
}

// The codes of the case that was looked at before aren't another one's; a finger on them would reach into a list without any.
func TestACaseWithoutCodesShowsNone(t *testing.T) {
	v, c := screen(t)
	c.ID, c.Codes = "first", []cases.Code{{Code: "P0217"}}
	v.Show(*c, units.Metric())
	v.Show(cases.Case{ID: "second"}, units.Metric())
	if text := kittest.Texts(v.codes.list); text != "" {
		t.Errorf("a case without codes shows %q", text)
	}
}

// A code that is typed again is that code, and the field for the next one doesn't sink out of sight under the rows.
func TestACodeIsntTypedTwice(t *testing.T) {
	v, c := screen(t)
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1050, 480))
	w.Canvas().Focus(v.codes.next)
	for _, text := range []string{"P0128 p0217", "P0117, P0118, P0117", "P0217", "P0480", "P0119"} {
		test.Type(v.codes.next, text)
		v.codes.next.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	var got []string
	for _, code := range c.Codes {
		got = append(got, code.Code)
	}
	if want := "P0128 P0217 P0117 P0118 P0480 P0119"; strings.Join(got, " ") != want {
		t.Errorf("kept %q, want %q", got, want)
	}
	w.Resize(fyne.NewSize(1051, 480)) // all rows have their places
	at := fyne.CurrentApp().Driver().AbsolutePositionForObject(v.codes.next)
	if bottom := at.Y + v.codes.next.Size().Height; at.Y < 0 || bottom > w.Canvas().Size().Height {
		t.Errorf("the field for the next one is at %g to %g of %g", at.Y, bottom, w.Canvas().Size().Height)
	}
	c.Codes[1].State = "pending"
	v.Show(*c, units.Metric())
	v.codes.add("P0217")
	if n := len(c.Codes); n != 7 {
		t.Errorf("stored beside pending, %d codes are kept", n)
	}
}

func TestFreezeFrameKeepsTheCaret(t *testing.T) {
	v, c := screen(t)
	test.Type(v.codes.next, "P0128")
	v.codes.next.Leave()
	row := v.codes.rows[0]
	test.Type(row.frame[0], "63,5")
	row.frame[0].Leave()
	test.Type(row.frame[1], "idle")
	row.frame[1].Leave()
	if f := c.Codes[0].FreezeFrame; f.EctC == nil || *f.EctC != 63.5 || f.RPM != nil {
		t.Errorf("freeze frame = %+v, want 63.5 °C and no speed", f)
	}
	if v.codes.rows[0] != row {
		t.Error("the row was made anew under the caret")
	}
}

func TestYearAndTags(t *testing.T) {
	var c cases.Case
	if err := writeYear(&c, "12", units.Metric()); err == nil || c.Vehicle.Year != nil {
		t.Error("a year of two figures was taken")
	}
	if err := writeYear(&c, " 2012 ", units.Metric()); err != nil || *c.Vehicle.Year != 2012 {
		t.Errorf("2012 = %v, %v", c.Vehicle.Year, err)
	}
	if err := writeYear(&c, "", units.Metric()); err != nil || c.Vehicle.Year != nil {
		t.Error("an emptied year still counts")
	}
}

func TestWhatIsRefusedStaysInSight(t *testing.T) {
	v, c := screen(t)
	test.Type(v.codes.next, "P0128")
	v.codes.next.Leave()
	rpm := v.codes.rows[0].frame[1]
	test.Type(rpm, "fast")
	rpm.Leave()
	c.Title = "painted anew"
	v.Show(*c, units.Metric())
	if rpm.Text != "fast" {
		t.Errorf("the refused word was replaced by %q", rpm.Text)
	}
	if !rpm.Revert() || rpm.Text != "" {
		t.Errorf("taking it back leaves %q", rpm.Text)
	}
}

func TestAWrongNumberIsKeptWithAWarning(t *testing.T) {
	v, c := screen(t)
	if v.number.Visible() {
		t.Error("a warning without a number")
	}
	c.Vehicle.VIN = "123"
	v.Show(*c, units.Metric())
	if c.Vehicle.VIN != "123" || !v.number.Visible() || v.number.Text != "odd: 123" {
		t.Errorf("number %q, warned %q", c.Vehicle.VIN, v.number.Text)
	}
}

// A freeze frame holds what a round may: a slip stays in its field, with the reason
// where it can be read, and isn't kept.
func TestAFreezeFrameHasTheBoundsOfARound(t *testing.T) {
	v, c := screen(t)
	v.codes.add("P0128")
	frame := v.codes.rows[0].frame
	for i, slip := range []string{"4000", "25000", "900"} {
		frame[i].SetText(slip)
		frame[i].Leave()
	}
	v.codes.add("P0217") // the slips stay while other things are noted
	if f := c.Codes[0].FreezeFrame; f.EctC != nil || f.RPM != nil || f.SpeedKmh != nil {
		t.Errorf("kept %+v", f)
	}
	said := kittest.Texts(v.codes.rows[0].content)
	for i, want := range []string{"write -50 °C to 150 °C", "write 0 to 20000", "write 0 to 500"} {
		if !strings.Contains(said, want) || frame[i].Text == "" {
			t.Errorf("field %d holds %q, and %q isn't said in:\n%s", i, frame[i].Text, want, said)
		}
	}
	v.Show(cases.Case{ID: "another", Codes: []cases.Code{{Code: "P0128"}}}, units.Metric())
	if said := kittest.Texts(v.codes.rows[0].content); strings.Contains(said, "not kept") || v.codes.rows[0].frame[0].Text != "" {
		t.Errorf("another case shows this one's slips:\n%s", said)
	}
}

// What was refused of one code stays with it when another one goes, comes back or is of two states.
func TestASlipStaysWithItsCode(t *testing.T) {
	v, c := screen(t)
	v.codes.add("P0128 P0217")
	c.Codes = append(c.Codes, cases.Code{Code: "P0128", State: "pending"})
	v.Show(*c, units.Metric())
	all := c.Codes
	slip := v.codes.rows[2].frame[1]
	slip.SetText("many")
	slip.Leave()
	stays := func(what string, row int) {
		t.Helper()
		v.Show(*c, units.Metric())
		if v.codes.rows[row].frame[1] != slip || slip.Text != "many" || len(kit.Refused(v.codes.list)) != 1 {
			t.Errorf("%s: row %d holds %q, %d fields are refused", what, row, v.codes.rows[row].frame[1].Text, len(kit.Refused(v.codes.list)))
		}
	}
	c.Codes = all[1:]
	stays("the first is removed", 1)
	c.Codes = all
	stays("and taken back", 2)
	slip.SetText("2100")
	slip.Leave()
	if rpm := c.Codes[2].FreezeFrame.RPM; rpm == nil || *rpm != 2100 || c.Codes[0].FreezeFrame.RPM != nil {
		t.Errorf("mended, the codes are %+v", c.Codes)
	}
}

func TestWhatIsNoCodeIsKeptAndMarked(t *testing.T) {
	v, c := screen(t)
	v.codes.add("P012 P0128")
	marked := func(row int) bool { return v.codes.rows[row].name.Importance == widget.WarningImportance }
	if len(c.Codes) != 2 || !marked(0) || marked(1) {
		t.Errorf("codes %+v; marked: %v, %v", c.Codes, marked(0), marked(1))
	}
}

// A loop of 65 l is a missing point more often than a lorry: it is asked after, and kept.
func TestACapacityNoCarHasIsAskedAfter(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewForm(nil)
	odd := capacity(f, warning())
	for l, want := range map[float64]bool{6.5: false, 65: true, 0.65: true, 14: false} {
		f.Show(cases.Case{Loop: cases.Loop{CapacityL: &l}}, units.Metric())
		if odd.Visible() != want {
			t.Errorf("%g l is asked after: %v", l, odd.Visible())
		}
	}
	if f.Show(cases.Case{}, units.Metric()); odd.Visible() {
		t.Error("no capacity is asked after")
	}
}

// A thermostat is fully open some kelvins above where it begins to open (TH2): the
// two can't be the other way round.
func TestAThermostatFullBelowItsOpeningIsTold(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	f := kit.NewForm(nil)
	odd := rating(f)
	told := func() bool {
		f.Show(c, units.Metric())
		return odd.Visible()
	}
	for _, tt := range []struct {
		opens, full float64
		odd         bool
	}{{88, 103, false}, {88, 8, true}, {88, 88, true}} {
		opens, full := diagram.Celsius(tt.opens), diagram.Celsius(tt.full)
		c.Loop.ThermostatOpensC, c.Loop.ThermostatFullC = &opens, &full
		if told() != tt.odd {
			t.Errorf("opens at %v, full at %v: told %v", tt.opens, tt.full, !tt.odd)
		}
	}
	c.Loop.ThermostatOpensC = nil
	if told() {
		t.Error("told where one of them isn't known")
	}
}

// An electric car has no word of its own in the format: it is driven by something else.
func TestHighVoltageIsCautionedWhereThereMayBeAny(t *testing.T) {
	v, _ := screen(t)
	for motive, want := range map[cases.Motive]bool{"hybrid": true, "other": true, "": false, "petrol": false, "diesel": false} {
		v.Show(cases.Case{ID: "a" + string(motive), Vehicle: cases.Vehicle{Motive: motive}}, units.Metric())
		if told := strings.Contains(kittest.Texts(v.content), "Only trained people may work on it"); told != want {
			t.Errorf("driven by %q: told %v", motive, told)
		}
	}
}

// Who ticks milky oil is told at once to leave the engine off (common practice, no source).
func TestMilkyOilIsCautionedWhereItIsTicked(t *testing.T) {
	v, _ := screen(t)
	for _, s := range []cases.Symptom{"oil-milky", "coolant-loss"} {
		v.Show(cases.Case{ID: string(s), Complaint: cases.Complaint{Symptoms: []cases.Symptom{s}}}, units.Metric())
		if said := kittest.Texts(v.content); strings.Contains(said, "leave the engine off") != (s == "oil-milky") {
			t.Errorf("%s: the screen says\n%s", s, said)
		}
	}
}
