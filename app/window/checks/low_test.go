package checks

import (
	"strings"
	"testing"
	"time"

	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram/say"
)

// Once the coolant was found low, the form of a check that runs the engine says to fill it up first, as the advised checks do.
func TestTheFormTellsOfALowLevel(t *testing.T) {
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	c := cases.Case{Opened: time.Now(), Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{Label: "warm idle"}}}
	for level, want := range map[cases.LevelState]bool{"low": true, "full": false} {
		c.Tests = []cases.Test{{Kind: cases.LevelTest, State: level}}
		d, _ := benchtest.Waiting(t, c)
		s := New(d, tables, nil)
		s.Show()
		s.Begin(cases.BubblesTest)
		if got := strings.Contains(kittest.Texts(s.Content()), say.English().Of("check.low")); got != want {
			t.Errorf("with the level %q the form tells it: %t", level, got)
		}
	}
}
