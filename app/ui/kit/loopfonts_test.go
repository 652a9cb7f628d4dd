package kit_test

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

// The toolkit reads the fonts anew, some 20 MB that it never gives back, for each part that is themed apart and each
// time that one is themed again. Each case with another layout, each size, and each way back to the hose map did that.
func TestCasesLookedAtInTurnReadNoFontAnew(t *testing.T) {
	read := countFonts(t)
	v := kit.NewLoopView()
	w := test.NewTempWindow(t, v)
	look := func(i int) {
		for _, layout := range []string{"outlet-thermostat", "inlet-thermostat-bottle", "split-head-block"} {
			drawWith(t, v, layout, fmt.Sprint(40+i))
			w.Resize(fyne.NewSize(800+float32(i), 600+float32(i)))
			w.Canvas().Capture()
			forgetRenderers(t, v) // as after a minute on another page
		}
	}
	look(0)
	before := read.n
	for i := 1; i < 4; i++ {
		look(i)
	}
	if read.n > before {
		t.Errorf("fonts were read %d times for the first look, %d times more for others", before, read.n-before)
	}
}

// A choice in a dialog that is opened again and again kept as many fonts as it was opened.
func TestAChoiceAndABarMadeAnewReadNoFontAnew(t *testing.T) {
	read := countFonts(t)
	show := func() {
		w := test.NewWindow(container.NewVBox(kit.NewRadio([]string{"one", "two"}, nil), kit.NewSlider(0, 10)))
		w.Canvas().Capture()
		w.Close()
	}
	show()
	before := read.n
	if show(); read.n > before {
		t.Errorf("fonts were read %d times for the first, %d times more for the second", before, read.n-before)
	}
}

func countFonts(t *testing.T) *fontCount {
	look := kit.NewTheme(kit.Bright)
	read := &fontCount{Theme: look.Theme}
	look.Theme = read
	test.NewTempApp(t).Settings().SetTheme(look)
	return read
}

// fontCount counts how often somebody asks for a font in order to read it.
type fontCount struct {
	fyne.Theme
	n int
}

func (f *fontCount) Font(s fyne.TextStyle) fyne.Resource {
	f.n++
	return f.Theme.Font(s)
}

// drawWith paints a layout with the same number at every hose.
func drawWith(t *testing.T, v *kit.LoopView, layout, number string) {
	t.Helper()
	l, err := diagram.LoopByID(layout)
	if err != nil {
		t.Fatal(err)
	}
	p := drawing.Draw(l, drawing.State{}, false)
	texts := map[diagram.Point]kit.Typed{}
	for _, e := range p.Entries {
		texts[e.Point] = kit.Typed{Rest: number}
	}
	v.Draw(p, texts)
}
