package kit_test

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
)

// Buttons and words that lead somewhere are pressed by Enter and by a space, and a radio stays chosen.
func TestAControlsKeys(t *testing.T) {
	test.NewTempApp(t)
	pressed, followed := 0, 0
	b := kit.NewButton("Take", func() { pressed++ })
	l := kit.NewLink("2 cases", func() { followed++ })
	c := kit.NewCheck("All", nil)
	r := kit.NewRadio([]string{"one", "two"}, nil)
	w := test.NewTempWindow(t, container.NewVBox(b, l, c, r))
	for _, on := range []fyne.Focusable{b, l} {
		for _, key := range []fyne.KeyName{fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyEscape, fyne.KeyLeft} {
			w.Canvas().Focus(on)
			w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
		}
	}
	w.Canvas().Focus(c)
	for range 3 { // the tick and both words
		w.Canvas().Focused().TypedRune(' ')
		w.Canvas().FocusNext()
	}
	w.Canvas().FocusPrevious()
	w.Canvas().Focused().TypedRune(' ')
	if pressed != 3 || followed != 3 || !c.Checked {
		t.Errorf("pressed %d times, followed %d times, ticked %v; want 3, 3, true", pressed, followed, c.Checked)
	}
	for _, o := range test.LaidOutObjects(r) {
		if b, ok := o.(*kit.Check); ok && b.Checked != (b.Text == "two") || r.Selected != "two" {
			t.Errorf("%q is chosen and %q marked %v; want two", r.Selected, b.Text, b.Checked)
		}
	}
}

// Enter goes from field to field; one too many doesn't press the button that it came to.
func TestEnterThatLedToAButtonDoesNotPressIt(t *testing.T) {
	test.NewTempApp(t)
	pressed := 0
	remove := kit.NewButton("Remove", func() { pressed++ })
	field := kit.NewField("", nil)
	w := test.NewTempWindow(t, container.NewVBox(field, remove))
	key := func(k fyne.KeyName) { w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	w.Canvas().Focus(field)
	key(fyne.KeyReturn)
	if key(fyne.KeyReturn); w.Canvas().Focused() != fyne.Focusable(remove) || pressed != 0 {
		t.Errorf("the focus is on %T, and it was pressed %d times", w.Canvas().Focused(), pressed)
	}
	if key(fyne.KeySpace); pressed != 1 {
		t.Error("a space doesn't press it")
	}
	w.Canvas().FocusPrevious()
	w.Canvas().FocusNext()
	if key(fyne.KeyReturn); pressed != 2 {
		t.Error("come to by Tab, Enter doesn't press it")
	}
}

// Whatever has the focus, Escape comes to the window.
func TestEscapeIsTheWindows(t *testing.T) {
	test.NewTempApp(t)
	radio := kit.NewRadio([]string{"one", "two"}, nil)
	field := kit.NewField("", nil)
	others := container.NewVBox(kit.NewButton("Take", nil), kit.NewCheck("All", nil), kit.NewSelect(nil, nil), kit.NewSlider(0, 9), kit.NewLink("2 cases", nil))
	w := test.NewTempWindow(t, container.NewVBox(others, radio, field))
	heard := 0
	w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			heard++
		}
	})
	escape := func() { w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape}) }
	for want := 1; want <= 8; want++ {
		w.Canvas().FocusNext()
		if escape(); heard != want {
			t.Errorf("%T keeps Escape to itself", w.Canvas().Focused())
		}
	}
	heard = 0
	test.Type(field, "7")
	if escape(); heard != 0 || field.Text != "" {
		t.Errorf("with %q typed in a field Escape came to the window %d times; want it to take that back first", field.Text, heard)
	}
}

// The arrows go on from what is chosen, however the list was opened.
func TestArrowsInAListGoOnFromWhatIsChosen(t *testing.T) {
	test.NewTempApp(t)
	s := kit.NewSelect([]string{"one", "two", "three", "four"}, nil)
	w := test.NewTempWindow(t, container.NewVBox(s))
	key := func(k fyne.KeyName) { w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	for how, open := range map[string]func(){
		"a tap":    func() { s.Tapped(&fyne.PointEvent{}) },
		"a space":  func() { w.Canvas().Focus(s); key(fyne.KeySpace) },
		"an arrow": func() { w.Canvas().Focus(s); key(fyne.KeyDown) },
	} {
		for arrow, want := range map[fyne.KeyName]string{fyne.KeyDown: "three", fyne.KeyUp: "one", "": "two"} {
			s.SetSelected("two")
			open()
			if arrow != "" {
				key(arrow)
			}
			if key(fyne.KeyReturn); s.Selected != want {
				t.Errorf("opened by %s, %q chooses %q, want %q", how, arrow, s.Selected, want)
			}
		}
	}
	s.ClearSelected()
	s.Tapped(&fyne.PointEvent{})
	key(fyne.KeyDown)
	if key(fyne.KeyReturn); s.Selected != "one" {
		t.Errorf("with nothing chosen the first arrow comes to %q, want the first", s.Selected)
	}
}

// A letter goes to the next entry that begins with it, and around; what begins none, or is no letter, changes nothing.
func TestALetterChoosesInAList(t *testing.T) {
	test.NewTempApp(t)
	told := 0
	s := kit.NewSelect([]string{"rubber", "steel", "rubber, used", "Öl"}, func(string) { told++ })
	w := test.NewTempWindow(t, container.NewVBox(s))
	w.Canvas().Focus(s)
	for i, tt := range []struct {
		letter rune
		want   string
	}{{'x', ""}, {'r', "rubber"}, {'R', "rubber, used"}, {'r', "rubber"}, {'ö', "Öl"}, {'7', "Öl"}, {' ', "Öl"}, {'s', "steel"}} {
		if w.Canvas().Focused().TypedRune(tt.letter); s.Selected != tt.want {
			t.Errorf("%d: %q chooses %q, want %q", i, tt.letter, s.Selected, tt.want)
		}
	}
	if told != 5 {
		t.Errorf("told %d times, want 5", told)
	}
	if s.Disable(); s.Selected != "steel" {
		t.Fatal(s.Selected)
	}
	if s.TypedRune('r'); s.Selected != "steel" {
		t.Errorf("a list that is switched off chooses %q", s.Selected)
	}
	kit.NewSelect(nil, nil).TypedRune('a') // an empty one has nothing to choose
}
