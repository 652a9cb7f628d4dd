package hosemap

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// Where there is room a round's name and its conditions aren't cut; where there is less only the long ones are, so that
// none takes the room of the others.
func TestNoRoundIsCutBesideFreeRoom(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	row := container.New(strip{})
	for _, r := range []cases.Round{{Label: "5 min after a cold start"}, {Label: "idle"}, {Label: "idle with the heater at full and the fan asked for"}} {
		row.Add(newChip(r, 0, "after repair, 800 rpm, fan off", false, false, func() {}, nil))
	}
	if least := row.MinSize().Width; least > 3*chipMost+3*8 {
		t.Errorf("three rounds ask for %v", least)
	}
	for _, tt := range []struct {
		wide float32
		cut  int
	}{{row.MinSize().Width, 1}, {row.MinSize().Width + 20, 1}, {1200, 0}} {
		row.Resize(fyne.NewSize(tt.wide, 52))
		if got := strings.Count(test.RenderObjectToMarkup(row), "…"); got != tt.cut {
			t.Errorf("%v wide: %d are cut, want %d", tt.wide, got, tt.cut)
		}
	}
}
