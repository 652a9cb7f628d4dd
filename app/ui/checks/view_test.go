package checks

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// desk stands for what keeps the case.
type desk struct {
	v      *View
	c      cases.Case
	units  units.Set
	hot    bool
	window fyne.Window
	asked  []float64 // what was asked of the topping up
}

func screen(t *testing.T) *desk {
	t.Helper()
	test.NewTempApp(t)
	d := &desk{units: units.Metric()}
	d.v = New(func(_ string, change func(*cases.Case)) {
		change(&d.c)
		d.show()
	}, Words{
		Info: func(k cases.TestKind, _ cases.FanKind, found Found, _ units.Set) Info {
			if found.Hot {
				return Info{Title: k.Name(), Caution: "too hot" + strings.Repeat(" and more to mind", 8)}
			}
			return Info{Title: k.Name(), Minutes: "5 min", Needs: "Engine cold", Text: "how", Caution: "mind", Accepts: "limit", NotProven: "rest"}
		},
		Result: func(_ *cases.Case, t *cases.Test, _ units.Set) Result {
			if t.EndKPa == nil {
				return Result{}
			}
			return Result{Says: "falls", Severity: "act", Told: []Told{{"It leaks.", []string{"why"}}}, Sums: [][2]string{{"Leak rate", "2 kPa/min"}}}
		},
		TopUp: func(_ *cases.Case, _ *cases.Test, want, with float64, _ units.Set) string {
			d.asked = []float64{want, with}
			return "drain"
		},
		Stage: func(*cases.Case, cases.TestKind) cases.Stage { return cases.BeforeRepair },
	})
	d.window = test.NewTempWindow(t, container.NewStack(d.v.Content()))
	d.window.Resize(fyne.NewSize(1048, 690))
	d.show()
	return d
}

func (d *desk) show() { d.v.Show(d.c, Found{Hot: d.hot}, d.units) }

// fields are the form's fields, in the way of the Tab key.
func fields(o fyne.CanvasObject) []*kit.Field {
	switch o := o.(type) {
	case *kit.Field:
		return []*kit.Field{o}
	case *container.Scroll:
		return fields(o.Content)
	case *fyne.Container:
		var out []*kit.Field
		for _, child := range o.Objects {
			out = append(out, fields(child)...)
		}
		return out
	}
	return nil
}

func selects(o fyne.CanvasObject) []*kit.Select {
	switch o := o.(type) {
	case *kit.Select:
		return []*kit.Select{o}
	case *container.Scroll:
		return selects(o.Content)
	case *fyne.Container:
		var out []*kit.Select
		for _, child := range o.Objects {
			out = append(out, selects(child)...)
		}
		return out
	}
	return nil
}

func (d *desk) key(k fyne.KeyName) {
	d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
}

// typed types at the caret and goes on by Enter.
func (d *desk) typed(texts ...string) {
	for _, text := range texts {
		for _, r := range text {
			d.window.Canvas().Focused().TypedRune(r)
		}
		d.key(fyne.KeyReturn)
	}
}

// Arrows choose the check, Enter goes into its form, Enter goes on: a whole
// pressure test without a mouse.
func TestACheckIsDoneByKeyboardAlone(t *testing.T) {
	d := screen(t)
	d.window.Canvas().Focus(d.v.Focus())
	d.key(fyne.KeyDown)
	d.key(fyne.KeyUp)
	d.key(fyne.KeyReturn)
	d.typed("100", "94,5", "20", "19", "10")
	if len(d.c.Tests) != 1 {
		t.Fatalf("tests = %+v, want one", d.c.Tests)
	}
	got := d.c.Tests[0]
	if got.Kind != "pressure-hold" || got.Stage != cases.BeforeRepair || *got.StartKPa != 100 || *got.EndKPa != 94.5 || *got.StartC != 20 || *got.EndC != 19 || *got.Minutes != 10 {
		t.Errorf("kept %+v", got)
	}
	said := kittest.Texts(d.v.sheet.result)
	for _, want := range []string{"Falls", "It leaks.", "Why.", "Leak rate", "2 kPa/min"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not told in %q", want, said)
		}
	}
}

// A caution of more words asks for its lines: what stands under it makes room, and the form stays.
func TestCautionFollowsTheEngine(t *testing.T) {
	d := screen(t)
	sheet, before := d.v.sheet, d.v.sheet.caution.MinSize().Height
	d.hot = true
	d.show()
	d.window.Resize(fyne.NewSize(1049, 690)) // as a window's painter, it asks anew
	if got := d.v.sheet.caution; d.v.sheet != sheet || !strings.Contains(kittest.Texts(got), "too hot") || !(got.MinSize().Height > before) || got.Size().Height < got.MinSize().Height {
		t.Errorf("%g high, wants %g, had %g: %s", got.Size().Height, got.MinSize().Height, before, kittest.Texts(got))
	}
}

func TestLookingKeepsNothing(t *testing.T) {
	d := screen(t)
	for _, kind := range d.v.list.kinds {
		d.v.choose(kind)
		d.v.FocusForm()
		d.window.Canvas().Unfocus()
		if d.v.sheet.first == nil {
			t.Errorf("%s has no field to begin at", kind)
		}
	}
	if len(d.c.Tests) != 0 {
		t.Errorf("looking at the forms made %+v", d.c.Tests)
	}
}

func TestAgainStageAndDelete(t *testing.T) {
	d := screen(t)
	d.v.choose("level")
	pickLevel := func(word string) { selects(d.v.sheet.content)[1].SetSelected(word) }
	pickLevel("low")
	d.v.Again()
	pickLevel("full")
	selects(d.v.sheet.content)[2].SetSelected("after repair")
	if len(d.c.Tests) != 2 || d.c.Tests[0].State != "low" || d.c.Tests[1].State != "full" || d.c.Tests[1].Stage != cases.AfterRepair {
		t.Fatalf("tests = %+v", d.c.Tests)
	}
	d.v.sheet.which.SetSelectedIndex(0)
	d.v.Delete()
	if len(d.c.Tests) != 1 || d.c.Tests[0].State != "full" {
		t.Errorf("after deleting the first: %+v", d.c.Tests)
	}
	d.v.Delete()
	d.v.Delete() // nothing is left to delete
	if len(d.c.Tests) != 0 {
		t.Errorf("left: %+v", d.c.Tests)
	}
}

// What is being typed of a check is kept before the check goes, so that undoing brings both back.
func TestACheckGoesWithWhatIsBeingTypedOfIt(t *testing.T) {
	d := screen(t)
	d.v.choose("thermostat-bench")
	d.window.Canvas().Focus(d.v.sheet.first)
	d.typed("88")
	d.window.Canvas().Focused().(*kit.Field).SetText("102")
	edit := d.v.edit
	var before []cases.Test
	d.v.edit = func(what string, change func(*cases.Case)) {
		before = slices.Clone(d.c.Tests)
		edit(what, change)
	}
	d.v.Delete()
	if len(d.c.Tests) != 0 || len(before) != 1 || before[0].RatedFullC == nil || *before[0].RatedFullC != 102 {
		t.Errorf("left %+v of %+v", d.c.Tests, before)
	}
}

// Numbers are typed through line by line: no drop-down takes them.
func TestEnterGoesFromLineToLine(t *testing.T) {
	d := screen(t)
	d.v.choose("thermostat-bench")
	d.window.Canvas().Focus(d.v.sheet.first)
	d.typed("88", "102", "8", "70", "0", "88", "1,5", "95", "7")
	p := d.c.Tests[0].Points
	if len(p) != 3 || *p[1].WaterC != 88 || *p[1].LiftMM != 1.5 || *p[2].WaterC != 95 || *p[2].LiftMM != 7 {
		t.Fatalf("points = %+v", p)
	}
	d.typed("", "") // from the empty line on to what follows
	for _, f := range fields(d.v.sheet.content) {
		if d.window.Canvas().Focused() == f {
			t.Error("Enter doesn't leave the table")
		}
	}
}

// A table grows under the caret, line by line, and an emptied line goes.
func TestABenchTableIsTypedThrough(t *testing.T) {
	d := screen(t)
	d.v.choose("thermostat-bench")
	table := fields(d.v.sheet.content)[3:]
	d.window.Canvas().Focus(table[0])
	d.typed("70", "0")
	if n := len(fields(d.v.sheet.content)[3:]); n != 4 {
		t.Fatalf("%d fields in the table, want two lines", n)
	}
	table = fields(d.v.sheet.content)[3:]
	table[2].SetText("90")
	table[2].Leave()
	table[3].SetText("4.5")
	table[3].Leave()
	choices := selects(d.v.sheet.content)
	choices[len(choices)-2].SetSelected("cooling")
	p := d.c.Tests[0].Points
	if len(p) != 2 || *p[0].WaterC != 70 || *p[0].LiftMM != 0 || !*p[0].Heating || *p[1].WaterC != 90 || *p[1].LiftMM != 4.5 || *p[1].Heating {
		t.Fatalf("points = %+v", p)
	}
	for _, f := range table[:2] {
		f.SetText("")
		f.Leave()
	}
	if p := d.c.Tests[0].Points; len(p) != 1 || *p[0].WaterC != 90 {
		t.Errorf("after emptying the first line: %+v", p)
	}
	table[1].SetText("far")
	table[1].Leave()
	if d.c.Tests[0].Points[0].LiftMM == nil || table[1].Text != "far" {
		t.Errorf("a word for a lift: %+v, the field holds %q", d.c.Tests[0].Points, table[1].Text)
	}
}

// Whoever goes on by Enter sees where the caret is.
func TestALongTableFollowsTheCaret(t *testing.T) {
	d := screen(t)
	d.v.choose("thermostat-bench")
	d.window.Canvas().Focus(fields(d.v.sheet.content)[3])
	for i := 0; i < 25; i++ {
		f := fields(d.v.sheet.content)
		d.window.Canvas().Focus(f[len(f)-2]) // past the choice of the line before
		d.typed("70", "1")
	}
	if n := len(d.c.Tests[0].Points); n != 25 {
		t.Fatalf("%d points", n)
	}
	f := fields(d.v.sheet.content)
	last := f[len(f)-2]
	d.window.Canvas().Focus(last)
	y := fyne.CurrentApp().Driver().AbsolutePositionForObject(last).Y
	if y < 0 || y+last.Size().Height > 700 {
		t.Errorf("the caret's field lies at %g, out of sight", y)
	}
	d.window.Canvas().Focus(f[0])
	if y := fyne.CurrentApp().Driver().AbsolutePositionForObject(f[0]).Y; y < 0 {
		t.Errorf("back at the first field, it lies at %g", y)
	}
}

func TestASensorsReferenceIsATableOfItsOwn(t *testing.T) {
	d := screen(t)
	d.units = units.US()
	d.v.choose("sensor-resistance")
	d.show()
	f := fields(d.v.sheet.content)
	for i, text := range []string{"68", "2502", "212", "175,7"} {
		f[i].SetText(text)
		f[i].Leave()
		if i == 1 {
			f = append(f[:2], fields(d.v.sheet.content)[4:]...) // the second table's line
		}
	}
	got := d.c.Tests[0]
	if len(got.Points) != 1 || len(got.Reference) != 1 || *got.Points[0].TempC != 20 || *got.Reference[0].TempC != 100 || *got.Reference[0].Ohm != 175.7 {
		t.Errorf("kept %+v and %+v", got.Points, got.Reference)
	}
}

func TestWaysToWriteAFace(t *testing.T) {
	want := [][]float64{{85, 84.5, 85}, {70, math.NaN(), 70}}
	for name, text := range map[string]string{
		"tabs of a spreadsheet":      "85\t84,5\t85\r\n70\t\t70\r\n",
		"semicolons, decimal commas": "85;84,5;85\n70;;70",
		"commas":                     "85,84.5,85\n70,,70",
		"commas and blanks":          "85, 84.5, 85\n70, -, 70",
		"blanks":                     "85 84,5 85\n\n70  –  70\n",
	} {
		rows, err := parseGrid(text, units.Metric())
		if err != nil || !same(rows, want) {
			t.Errorf("%s: %v, %v", name, rows, err)
		}
		again, err := parseGrid(gridText(rows, units.Metric()), units.Metric())
		if err != nil || !same(again, want) {
			t.Errorf("%s, written and read again: %v, %v", name, again, err)
		}
	}
	if rows, err := parseGrid("212 185\n212", units.US()); err != nil || rows[0][0] != 100 || rows[0][1] != 85 || !math.IsNaN(rows[1][1]) {
		t.Errorf("in °F with a short row: %v, %v", rows, err)
	}
	if _, err := parseGrid("85 84\n70 warm", units.Metric()); err == nil || !strings.Contains(err.Error(), "line 2, place 2") {
		t.Errorf("a word: %v", err)
	}
	if _, err := parseGrid("85 8000", units.Metric()); err == nil {
		t.Error("8000 °C was taken")
	}
}

func same(a, b [][]float64) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		for j := range b[i] {
			if len(a[i]) != len(b[i]) || a[i][j] != b[i][j] && !(math.IsNaN(a[i][j]) && math.IsNaN(b[i][j])) {
				return false
			}
		}
	}
	return true
}

func TestAFaceIsKept(t *testing.T) {
	d := screen(t)
	d.v.choose("core-scan")
	area := fields(d.v.sheet.content)[0]
	area.SetText("85;84;85\n70;50;70\n55;55;56")
	area.Leave()
	if got := d.c.Tests[0].ShownC; len(got) != 3 || got[1][1] != 50 {
		t.Fatalf("kept %v", got)
	}
	area.SetText("85;84;warm")
	area.Leave()
	if got := d.c.Tests[0].ShownC; len(got) != 3 || area.Text != "85;84;warm" {
		t.Errorf("a word changed the face: %v, the field holds %q", got, area.Text)
	}
}

// No coolant freezes above water: a refractometer's -35 without its sign made a good one far too weak, and a second fault of it.
func TestAFreezingPointWithoutItsSignIsAskedAgain(t *testing.T) {
	for _, tt := range []struct {
		units   units.Set
		typed   string
		want    diagram.Celsius
		refused bool
	}{
		{units.Metric(), "-35", -35, false}, {units.Metric(), "0", 0, false}, {units.Metric(), "35", 0, true},
		{units.US(), "-40", -40, false}, {units.US(), "32", 0, false}, {units.US(), "34", 0, true},
	} {
		d := screen(t)
		d.units = tt.units
		d.show()
		d.v.choose("coolant")
		at := fields(d.v.sheet.content)[0]
		at.SetText(tt.typed)
		at.Leave()
		kept := len(d.c.Tests) == 1 && d.c.Tests[0].FreezeC != nil && *d.c.Tests[0].FreezeC == tt.want
		if tt.refused && (len(d.c.Tests) > 0 || at.Text != tt.typed) || !tt.refused && !kept {
			t.Errorf("%s %s: %+v is kept, %q stands in the field", tt.typed, tt.units.Temperature, d.c.Tests, at.Text)
		}
	}
}

func TestToppingUpAsksForWhatIsWanted(t *testing.T) {
	d := screen(t)
	d.v.choose("coolant")
	f := fields(d.v.sheet.content)
	want := f[len(f)-2]
	want.SetText("45")
	want.Leave()
	if len(d.asked) != 2 || d.asked[0] != 45 || d.asked[1] != 100 || len(d.c.Tests) != 0 {
		t.Errorf("asked %v, tests %+v", d.asked, d.c.Tests)
	}
	want.SetText("450")
	want.Leave()
	if d.asked[0] != 45 {
		t.Errorf("asked for %v %%", d.asked[0])
	}
}

func TestAnotherCaseShowsItsOwn(t *testing.T) {
	d := screen(t)
	d.v.choose("level")
	selects(d.v.sheet.content)[1].SetSelected("low")
	first := d.v.sheet
	d.c = cases.Case{ID: "other"}
	d.show()
	if d.v.sheet == first || selects(d.v.sheet.content)[1].Selected != "" && selects(d.v.sheet.content)[1].Selected != kit.Unknown() {
		t.Errorf("the other case's level is %q", selects(d.v.sheet.content)[1].Selected)
	}
}

func TestTheListTellsWhatIsDone(t *testing.T) {
	d := screen(t)
	end := kPa(90)
	d.c.Tests = []cases.Test{{Kind: "pressure-hold", EndKPa: end}, {Kind: "pressure-hold", Stage: cases.AfterRepair, EndKPa: end}, {Kind: "bubbles"}}
	d.show()
	for kind, want := range map[cases.TestKind]string{"pressure-hold": "Falls after repair, falls before it", "bubbles": "Begun", "cap": "5 min · engine cold"} {
		row := newKindRow()
		for i, k := range d.v.list.kinds {
			if k == kind {
				d.v.list.fill(i, row)
			}
		}
		if row.done.Text != want {
			t.Errorf("%s: %q, want %q", kind, row.done.Text, want)
		}
	}
}

// Who turns to another check while the caret stands in a table types nothing into the one that is gone: a
// number landed there unseen, as a check that nobody had begun.
func TestAFormThatIsGoneTakesNothing(t *testing.T) {
	d := screen(t)
	d.v.choose("thermostat-bench")
	gone := fields(d.v.sheet.content)[3:]
	d.window.Canvas().Focus(gone[0])
	d.typed("20", "4")
	gone = fields(d.v.sheet.content)[3:]
	if on := d.window.Canvas().Focused(); on != fyne.Focusable(gone[2]) {
		t.Fatalf("the caret is in %T, want the second line", on)
	}
	d.v.choose("cap")
	if on := d.window.Canvas().Focused(); on != fyne.Focusable(d.v.list) {
		t.Errorf("the focus is on %T, want the list of checks", on)
	}
	gone[2].SetText("77")
	gone[2].Leave()
	if n := len(d.c.Tests); n != 1 || len(d.c.Tests[0].Points) != 1 {
		t.Errorf("the form that is gone wrote on: %+v", d.c.Tests)
	}
}
