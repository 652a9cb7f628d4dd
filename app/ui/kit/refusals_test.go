package kit_test

import (
	"errors"
	"runtime"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// What is refused is told over the field, where its label stands, inside the group and on no
// field; nothing moves, so that a click that is under way hits what it was meant for.
func TestARefusalMovesNothing(t *testing.T) {
	test.NewTempApp(t)
	var fields []*kit.Field
	grid := container.NewGridWithColumns(3)
	for _, title := range []string{"Opens at, °C", "Fully open, °C", "Cap, kPa", "Strength, %", "Capacity, l", "Altitude, m"} {
		f := kit.NewField("", nil)
		fields = append(fields, f)
		grid.Add(kit.Labelled(title, f))
	}
	group := kit.Explained(grid)
	below := kit.NewButton("Remove", nil)
	w := test.NewTempWindow(t, container.NewVBox(group, below))
	w.Resize(fyne.NewSize(360, 300))
	place := fyne.CurrentApp().Driver().AbsolutePositionForObject
	line := func() (found *widget.Label) {
		for _, o := range test.LaidOutObjects(group) {
			if l, ok := o.(*widget.Label); ok && l.Visible() && strings.HasPrefix(l.Text, "Not kept") {
				found = l
			}
		}
		return found
	}
	at := place(below)
	for i, f := range fields {
		f.Refuse(errors.New("4000 can't be: write 20 to 500"))
		l := line()
		if l == nil || place(below) != at {
			t.Fatalf("field %d: told by %v; the button moved from %v to %v", i, l, at, place(below))
		}
		if !strings.Contains(l.Text, "write 20 to 500") || l.Size().Width < fyne.MeasureText(l.Text, 11, fyne.TextStyle{}).Width {
			t.Errorf("field %d: %q has a room of %v", i, l.Text, l.Size())
		}
		edge := place(group).X + group.Size().Width
		if from := place(l); from.X > place(f).X || from.X+l.Size().Width > edge+1 || from.Y >= place(f).Y || place(f).Y-from.Y > f.Size().Height {
			t.Errorf("field %d at %v is told of at %v, %v wide", i, place(f), from, l.Size().Width)
		}
		f.Refuse(nil)
		if l := line(); l != nil {
			t.Errorf("field %d: %q stays", i, l.Text)
		}
	}
}

// More refusals than a line has room for: each is read whole while the hand is at it, or was last.
func TestEachOfManyRefusalsIsRead(t *testing.T) {
	test.NewTempApp(t)
	var fields []*kit.Field
	grid := container.NewGridWithColumns(3)
	for _, title := range []string{"Opens at, °C", "Fully open, °C", "Cap, kPa", "Strength, %"} {
		f := kit.NewField("", nil)
		fields = append(fields, f)
		grid.Add(kit.Labelled(title, f))
	}
	group := kit.Explained(grid)
	w := test.NewTempWindow(t, group)
	w.Resize(fyne.NewSize(420, 200))
	place := fyne.CurrentApp().Driver().AbsolutePositionForObject
	read := func(f *kit.Field, want string) {
		t.Helper()
		for _, o := range test.LaidOutObjects(group) {
			l, ok := o.(*widget.Label)
			if !ok || !l.Visible() || !strings.HasPrefix(l.Text, "Not kept") {
				continue
			}
			if !strings.Contains(l.Text, want) || l.Size().Width < fyne.MeasureText(l.Text, theme.CaptionTextSize(), fyne.TextStyle{}).Width {
				t.Errorf("%q in a room of %v, want %q", l.Text, l.Size(), want)
			}
			if under := place(f).Y - place(l).Y; under <= 0 || under > f.Size().Height {
				t.Errorf("%q stands %g over its field", l.Text, under)
			}
			return
		}
		t.Errorf("nothing is told, want %q", want)
	}
	for i, f := range fields {
		f.Refuse(errors.New("write " + strings.Repeat(string(rune('1'+i)), 4) + " to 5000"))
	}
	read(fields[3], "Strength, %: write 4444 to 5000 · 3 more")
	w.Canvas().Focus(fields[2])
	read(fields[2], "Cap, kPa: write 3333 to 5000 · 3 more")
	fields[2].Refuse(nil)
	fields[3].Refuse(nil)
	read(fields[0], "Opens at, °C: write 1111 to 5000 · 1 more")
}

// A heading that stands at the right edge of its column is covered whole or left alone, never cut through.
func TestARefusalCutsThroughNoHeading(t *testing.T) {
	test.NewTempApp(t)
	for width := float32(240); width < 480; width += 4 {
		f := kit.NewField("", nil)
		sum := kit.Small("Sum")
		sum.Alignment = fyne.TextAlignTrailing
		group := kit.Explained(container.NewGridWithColumns(2, kit.Labelled("Price each", f), container.NewVBox(sum)))
		w := test.NewTempWindow(t, group)
		w.Resize(fyne.NewSize(width, 100))
		f.Refuse(errors.New("write 0 to 10000000"))
		place := fyne.CurrentApp().Driver().AbsolutePositionForObject
		words := fyne.MeasureText("Sum", theme.CaptionTextSize(), fyne.TextStyle{}).Width
		end := place(sum).X + sum.Size().Width - theme.InnerPadding()
		covers := false
		for _, o := range test.LaidOutObjects(group) {
			if g, ok := o.(*kit.Ground); ok && g.Visible() {
				covers = true
				from, to := place(g).X, place(g).X+g.Size().Width
				if whole, none := from <= end-words && to >= end, to <= end-words; !whole && !none {
					t.Errorf("%g wide: what is refused lies on %g to %g, the heading on %g to %g", width, from, to, end-words, end)
				}
			}
		}
		if !covers {
			t.Fatalf("%g wide: nothing lies under what is refused", width)
		}
	}
}

// A row that is gone takes its fields along: a group that kept them grew by each case with parts that was opened, and went
// through them all at each field that was left.
func TestRefusalsLetGoneFieldsGo(t *testing.T) {
	test.NewTempApp(t)
	group, freed := kit.NewRefusals(container.NewVBox()), make(chan bool, 1)
	func() {
		typed := new([64]byte)
		runtime.SetFinalizer(typed, func(*[64]byte) { freed <- true })
		group.Take(kit.NewField("", func(string) { typed[0]++ })) // in no row, as the toolkit holds for a minute what it painted
	}()
	for range 100 {
		runtime.GC()
		select {
		case <-freed:
			runtime.KeepAlive(group)
			return
		case <-time.After(10 * time.Millisecond):
		}
	}
	t.Error("the group holds a field that is gone")
	runtime.KeepAlive(group)
}
