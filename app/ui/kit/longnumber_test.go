package kit

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// A refused text that is longer than its field ends before the unit, and is whole again for who goes back to it.
func TestALongNumberEndsBeforeTheUnit(t *testing.T) {
	test.NewTempApp(t)
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	const typed = "1234567890"
	v := NewLoopView()
	test.NewTempWindow(t, v)
	put := func(text string) {
		v.Draw(drawing.Draw(l, drawing.State{}, false), map[diagram.Point]Typed{diagram.Housing: {Rest: text, Edit: text}})
	}
	put(typed)
	f := v.fields[diagram.Housing]
	if !strings.HasPrefix(f.Text, "123") || !strings.HasSuffix(f.Text, "…") {
		t.Errorf("at rest the field shows %q", f.Text)
	}
	v.OnLeft = func(_ diagram.Point, text string) { t.Errorf("%q is left though nothing was typed", text) }
	v.Focus(diagram.Housing)
	if f.Text != typed {
		t.Errorf("gone back to, it holds %q", f.Text)
	}
	f.FocusLost()
	v.Leave()
	for _, short := range []string{"-12.5", "212.9", "1000"} {
		if put(short); f.Text != short {
			t.Errorf("%q is shown as %q", short, f.Text)
		}
	}
}
