package kit_test

import (
	"errors"
	"image/color"
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/units"
)

func press(f fyne.Focusable, k fyne.KeyName) { f.TypedKey(&fyne.KeyEvent{Name: k}) }

func TestFieldTellsOnceWhenItIsLeftChanged(t *testing.T) {
	test.NewTempApp(t)
	var told []string
	f, other := kit.NewField("", func(s string) { told = append(told, s) }), kit.NewField("", nil)
	w := test.NewTempWindow(t, container.NewVBox(f, other))
	f.Put("88")
	w.Canvas().Focus(f)
	w.Canvas().Focus(other)
	if len(told) != 0 {
		t.Errorf("left unchanged, the field told %q", told)
	}
	w.Canvas().Focus(f)
	test.Type(f, "91") // replaces the old number, which was marked
	press(f, fyne.KeyReturn)
	if len(told) != 1 || told[0] != "91" {
		t.Errorf("told %q, want 91 once", told)
	}
	if w.Canvas().Focused() != other {
		t.Error("Enter does not go to the next field")
	}
}

// Whoever types faster than a tap comes through replaces the number all the same,
// and the tap takes nothing of it away.
func TestTypingIsFasterThanATap(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewField("", nil)
	w := test.NewTempWindow(t, f)
	f.Put("88")
	w.Canvas().Focus(f)
	f.Entry.MouseDown(&desktop.MouseEvent{Button: desktop.MouseButtonPrimary}) // takes the mark off
	press(f, fyne.Key9)                                                        // a window tells of the key, then of its digit
	f.TypedRune('9')
	f.Tapped(&fyne.PointEvent{})
	f.TypedRune('1')
	if f.Text != "91" && f.Text != "19" { // the tap may have set the caret before the 9
		t.Errorf("the field holds %q", f.Text)
	}
	w.Canvas().Unfocus()
	w.Canvas().Focus(f)
	press(f, fyne.KeyEnd)
	f.TypedRune('5')
	if len(f.Text) != 3 {
		t.Errorf("a key that moves the caret, and a digit: %q", f.Text)
	}
}

// The window may get the focus anew between two digits: the first one stays.
func TestTheWindowsFocusTakesNoDigit(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewField("", nil)
	w := test.NewTempWindow(t, f)
	f.Put("88")
	w.Canvas().Focus(f)
	f.TypedRune('4')
	f.FocusGained()
	f.TypedRune('2')
	if f.Text != "42" {
		t.Errorf("the field has %q, want 42", f.Text)
	}
}

func TestFieldKeepsWhatIsBeingTyped(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewField("", nil)
	w := test.NewTempWindow(t, f)
	w.Canvas().Focus(f)
	test.Type(f, "9")
	f.Put("70") // the case was painted anew meanwhile
	if f.Text != "9" {
		t.Errorf("the field shows %q, want what is being typed", f.Text)
	}
	press(f, fyne.KeyEscape)
	if f.Text != "70" || f.Revert() {
		t.Errorf("after Escape the field shows %q, want what is kept by now", f.Text)
	}
}

func TestChoiceTellsOnlyWhatAPersonPicked(t *testing.T) {
	test.NewTempApp(t)
	var picked []string
	c := kit.NewChoice([]string{"off", "on"}, func(s string) string { return "fan " + s }, func(s string) { picked = append(picked, s) })
	c.Put("on")
	if c.Selected != "fan on" || len(picked) != 0 {
		t.Errorf("shows %q and told %q", c.Selected, picked)
	}
	c.SetSelected("fan off")
	c.SetSelected(kit.Unknown())
	if len(picked) != 2 || picked[0] != "off" || picked[1] != "" {
		t.Errorf("told %q, want off and then not known", picked)
	}
}

func loopView(t *testing.T) (*kit.LoopView, fyne.Window, drawing.Picture) {
	t.Helper()
	test.NewTempApp(t)
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	p := drawing.Draw(l, drawing.State{}, false)
	v := kit.NewLoopView()
	w := test.NewTempWindow(t, v)
	w.SetPadded(false)
	w.Resize(fyne.NewSize(float32(p.Width), float32(p.Height)))
	v.Draw(p, nil)
	return v, w, p
}

func TestATapOnABoxPutsTheCaretThere(t *testing.T) {
	v, w, p := loopView(t)
	var at diagram.Point
	v.OnFocus = func(p diagram.Point) { at = p }
	for _, e := range p.Entries {
		place := fyne.NewPos(float32(e.Box[0]+e.Box[2]-4), float32(e.Box[1]+4)) // beside the number, on the unit
		v.Tapped(&fyne.PointEvent{Position: place})
		if at != e.Point {
			t.Errorf("a tap on the box of %s puts the caret at %q", e.Point, at)
		}
	}
	v.Tapped(&fyne.PointEvent{Position: fyne.NewPos(260, 300)}) // on the engine
	if w.Canvas().Focused() != nil {
		t.Error("a tap beside the boxes leaves the caret")
	}
}

// Whatever the window's size, a field lies inside its drawn box.
func TestFieldsScaleWithTheDrawing(t *testing.T) {
	v, w, p := loopView(t)
	for _, scale := range []float32{0.85, 1, 1.6} {
		w.Resize(fyne.NewSize(float32(p.Width)*scale, float32(p.Height)*scale))
		for _, e := range p.Entries {
			v.Focus(e.Point)
			o, ok := w.Canvas().Focused().(fyne.CanvasObject)
			if !ok {
				t.Fatalf("no field for %s", e.Point)
			}
			driver := fyne.CurrentApp().Driver()
			at := driver.AbsolutePositionForObject(o).Subtract(driver.AbsolutePositionForObject(v))
			if at.X < float32(e.Box[0])*scale-1 || at.X+o.Size().Width > float32(e.Box[0]+e.Box[2])*scale+1 ||
				at.Y < float32(e.Box[1])*scale-1 || at.Y+o.Size().Height > float32(e.Box[1]+e.Box[3])*scale+3 {
				t.Errorf("at scale %g the field of %s lies at %v, %v: outside its box", scale, e.Point, at, o.Size())
			}
		}
	}
}

func TestPaletteFollowsTheLight(t *testing.T) {
	a := test.NewTempApp(t)
	for light, want := range map[kit.Light]drawing.Palette{kit.Bright: drawing.Light(), kit.Dim: drawing.Dark()} {
		a.Settings().SetTheme(kit.NewTheme(light))
		if got := kit.CurrentPalette()[drawing.Paper]; got != want[drawing.Paper] {
			t.Errorf("%s: paper is %v, want %v", light, got, want[drawing.Paper])
		}
	}
}

// What the pointer is on must still be read: WCAG 2.1, success criterion 1.4.3,
// at least 4.5 : 1, over each ground that a button or a row has.
func TestWordsAreReadThroughThePointersVeil(t *testing.T) {
	for light, p := range map[kit.Light]drawing.Palette{kit.Bright: drawing.Light(), kit.Dim: drawing.Dark()} {
		veil := color.NRGBAModel.Convert(kit.NewTheme(light).Color(theme.ColorNameHover, theme.VariantLight)).(color.NRGBA)
		for _, pair := range [][2]drawing.Role{
			{drawing.OnAccent, drawing.Accent}, {drawing.Text, drawing.PartFill}, {drawing.Text, drawing.Card}, {drawing.Text, drawing.Rail},
		} {
			under := p[pair[1]]
			over := func(a, b uint8) float64 { return (float64(a)*float64(255-veil.A) + float64(b)*float64(veil.A)) / 255 }
			x, y := luminance(float64(p[pair[0]].R), float64(p[pair[0]].G), float64(p[pair[0]].B)),
				luminance(over(under.R, veil.R), over(under.G, veil.G), over(under.B, veil.B))
			if got := (max(x, y) + 0.05) / (min(x, y) + 0.05); !(got >= 4.5) {
				t.Errorf("%s: %s on %s under the pointer has a contrast of %.2f", light, pair[0], pair[1], got)
			}
		}
	}
}

// luminance is the relative luminance of WCAG 2.1.
func luminance(parts ...float64) (sum float64) {
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		s := parts[i] / 255
		if s <= 0.03928 {
			sum += weight * s / 12.92
		} else {
			sum += weight * math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return sum
}

func TestARefusedFieldWithoutALabelIsMarked(t *testing.T) {
	test.NewTempApp(t)
	f, no := kit.NewField("", nil), errors.New("no number")
	edged := func() bool {
		for _, o := range test.WidgetRenderer(f).Objects() {
			if r, ok := o.(*canvas.Rectangle); ok && r.Visible() && r.StrokeColor == theme.Color(theme.ColorNameError) {
				return r.Size() == f.Size()
			}
		}
		return false
	}
	wide := f.MinSize()
	f.Resize(fyne.NewSize(80, wide.Height))
	f.Refuse(no)
	if !edged() || f.MinSize() != wide {
		t.Errorf("a refused field has its edge: %v; it wants %v, before %v", edged(), f.MinSize(), wide)
	}
	f.Put("70")
	if f.Text == "70" {
		t.Error("what was refused was overwritten")
	}
	f.Refuse(nil)
	if f.Put("70"); f.Text != "70" || edged() {
		t.Errorf("a field that is mended holds %q and is marked: %v", f.Text, edged())
	}
}

// A cap that is marked 1.4 has 140 kPa (1 bar is 100 kPa by definition): as
// kilopascals it is refused rather than kept as next to nothing.
func TestAPressureInBarIsNotKeptAsKilopascals(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	form := kit.NewForm(func(_ string, change func(*cases.Case)) { change(&c) })
	row := form.CapMark("Cap", func(c *cases.Case) **diagram.KPa { return &c.Loop.CapKPa }).(*fyne.Container)
	form.Show(c, units.Metric())
	label, field := row.Objects[0].(*widget.Label), row.Objects[1].(*kit.Field)
	for text, want := range map[string]string{"1.4": "write 20 to 250", "251": "write 20 to 250", "140": "Cap, kPa"} {
		c.Loop.CapKPa = nil
		field.SetText(text)
		field.Leave()
		if kept := c.Loop.CapKPa != nil; kept != (text == "140") || !strings.Contains(label.Text, want) {
			t.Errorf("%s kPa kept: %v; over the field stands %q, want %q", text, kept, label.Text, want)
		}
	}
}

func TestALeftFieldIsReadFromItsBeginning(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewField("", nil)
	test.Type(f, "idle after the road, lamps on")
	if f.CursorColumn == 0 {
		t.Fatal("the caret stands before what was typed")
	}
	f.FocusLost()
	if f.CursorColumn != 0 {
		t.Errorf("the caret is left in column %d, so that a narrow field shows the end", f.CursorColumn)
	}
}

func TestCapitalLeavesPHAlone(t *testing.T) {
	for text, want := range map[string]string{"pH out of its band": "pH out of its band", "falls a little": "Falls a little", "km/h, if driven": "km/h, if driven", "": "", "x": "X"} {
		if got := kit.Capital(text); got != want {
			t.Errorf("Capital(%q) = %q, want %q", text, got, want)
		}
	}
}

// A tap into a field that holds something marks it, so that what is typed
// replaces it rather than stands behind it.
func TestATapMarksWhatStands(t *testing.T) {
	test.NewTempApp(t)
	left := ""
	f := kit.NewField("", func(text string) { left = text })
	f.Put("39")
	w := test.NewTempWindow(t, f)
	w.Resize(fyne.NewSize(120, 60))
	test.Tap(f)
	test.Type(f, "38")
	f.Leave()
	if left != "38" {
		t.Errorf("over 39, 38 was typed and %q was left", left)
	}
}

// A text is kept as it is typed, wherever its lines break.
func TestTypedTextIsKeptAtEveryWidth(t *testing.T) {
	test.NewTempApp(t)
	const want = "Gets hot on the motorway uphill since spring. Fine in town, and the heater is good at all times."
	for width := float32(150); width < 420; width += 13 {
		f := kit.NewArea("", 3, nil)
		w := test.NewTempWindow(t, f)
		w.Resize(fyne.NewSize(width, 200))
		w.Canvas().Focus(f)
		test.Type(f, want)
		if f.Text != want {
			t.Errorf("%g wide: %q", width, f.Text)
		}
	}
}

// What is marked is replaced, in a field that has had the focus all along too.
func TestWhatIsMarkedIsReplaced(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewField("", nil)
	w := test.NewTempWindow(t, f)
	w.Canvas().Focus(f)
	f.TypedRune('3')
	f.Leave()
	f.Put("27")
	f.Mark()
	for _, r := range "72" {
		f.TypedRune(r)
	}
	if f.Text != "72" {
		t.Errorf("the field holds %q, want 72", f.Text)
	}
}

// A mark goes with the text that it was on: what is typed into the field that was emptied stays.
func TestAMarkGoesWithItsText(t *testing.T) {
	test.NewTempApp(t)
	for _, left := range []bool{false, true} {
		f, other := kit.NewField("", nil), kit.NewField("", nil)
		w := test.NewTempWindow(t, container.NewVBox(f, other))
		f.Put("27")
		w.Canvas().Focus(f)
		if left {
			w.Canvas().Focus(other)
		}
		f.Put("")
		w.Canvas().Focus(f)
		for _, r := range "62" {
			f.TypedRune(r)
		}
		if f.Text != "62" {
			t.Errorf("left %v: the field holds %q, want 62", left, f.Text)
		}
	}
}

// Ctrl End leads behind a text's last word and Ctrl Home before its first: what was typed next went into the
// middle of a word.
func TestCtrlEndAndHomeLeadToATextsEnds(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewArea("", 4, nil)
	test.NewTempWindow(t, f).Resize(fyne.NewSize(200, 120))
	f.SetText("Hot standing.\nTopped up.")
	f.FocusGained()
	for _, tt := range []struct {
		key  fyne.KeyName
		r    rune
		want string
	}{
		{fyne.KeyEnd, '!', "Hot standing.\nTopped up.!"},
		{fyne.KeyHome, '?', "?Hot standing.\nTopped up.!"},
	} {
		f.TypedShortcut(&desktop.CustomShortcut{KeyName: tt.key, Modifier: fyne.KeyModifierShortcutDefault})
		if f.TypedRune(tt.r); f.Text != tt.want {
			t.Errorf("%s leads to %q, want %q", tt.key, f.Text, tt.want)
		}
	}
}

// Whoever comes by Tab to what a customer said writes on behind it, and later where they were; typed letters went before
// the first word.
func TestTabWritesOnInATextOfSeveralLines(t *testing.T) {
	test.NewTempApp(t)
	f := kit.NewArea("", 2, nil)
	w := test.NewTempWindow(t, f)
	w.Resize(fyne.NewSize(120, 60))
	f.Put("Hot standing at the lights.\nTopped up on Monday.")
	w.Canvas().Capture()
	f.FocusGained()
	if f.TypedRune('!'); f.Text != "Hot standing at the lights.\nTopped up on Monday.!" {
		t.Errorf("it makes %q", f.Text)
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyLeft})
	f.FocusLost()
	f.FocusGained()
	if f.TypedRune('?'); f.Text != "Hot standing at the lights.\nTopped up on Monday?.!" {
		t.Errorf("come back, it makes %q", f.Text)
	}
	f.FocusLost()
	f.Put("Cold cabin, hot hoses, every morning.")
	w.Canvas().Capture()
	f.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(2, 10)}, Button: desktop.MouseButtonPrimary})
	if f.TypedRune('A'); f.Text != "ACold cabin, hot hoses, every morning." {
		t.Errorf("a press before the first letter makes %q", f.Text)
	}
}
