package window

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// The list has more room in a wide window, and none while it is hidden.
func TestTheRailGrowsWithTheWindow(t *testing.T) {
	test.NewTempApp(t)
	rooms, rail := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	both := container.New(railed{}, rooms, rail)
	for wide, want := range map[float32]float32{1280: 232, 1920: 320, 3840: 320} {
		both.Resize(fyne.NewSize(wide, 800))
		if got := rail.Size().Width; got != want || rooms.Position().X < want || rooms.Position().X+rooms.Size().Width != wide {
			t.Errorf("%g wide the rail is %g, want %g, and the rooms begin at %g", wide, got, want, rooms.Position().X)
		}
	}
	rail.Hide()
	both.Resize(fyne.NewSize(1000, 800))
	if rooms.Position().X != 0 || rooms.Size().Width != 1000 {
		t.Errorf("without the rail the rooms are %v at %v", rooms.Size(), rooms.Position())
	}
}

// A desktop's dock takes some 70 of a screen that is 1280 wide (common practice, no source): with any screen of a full
// case the window fits beside it.
func TestTheWindowFitsBesideADock(t *testing.T) {
	w := withDemo(t)
	if !w.at.Desk.Open {
		t.Fatal("no case of the demo is open")
	}
	for tab, one := range w.screens.all {
		if tab == whatIfTab {
			continue // it runs until it is left
		}
		w.screens.tabs.SelectIndex(tab)
		if wide := w.window.Content().MinSize().Width; wide > 1210 {
			t.Errorf("with %s the window is at least %g wide", one.title, wide)
		}
	}
}
