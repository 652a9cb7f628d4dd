package warmup_test

import (
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/cases"
)

// Enter in how the car was run keeps the row that has its temperature, and the focus goes on to
// the next one; without a temperature it goes there, and what can't be read holds it.
func TestEnterBehindTheTemperatureKeepsTheRow(t *testing.T) {
	s := newSheet(t)
	s.typed(s.minute, "1")
	for i, text := range []string{"850", "20"} { // rpm, then speed
		tabs := i + 1
		s.typed(s.degrees, "14")
		for range tabs {
			s.w.Canvas().FocusNext()
		}
		s.types(text)
		s.press(fyne.KeyReturn)
		if s.w.Canvas().Focused() != s.degrees || s.degrees.Text != "" {
			t.Errorf("%d fields behind the temperature it stays %q", tabs, s.degrees.Text)
		}
	}
	s.want("kept", s.logged(), "1 14 850 -", "2 14 850 20")
	s.typed(s.rpm, "800")
	s.press(fyne.KeyReturn)
	s.press(fyne.KeyReturn)
	if s.w.Canvas().Focused() != s.degrees || len(s.steps) != 2 {
		t.Errorf("without a temperature the steps are %q", s.steps)
	}
	s.types("25")
	s.typed(s.speed, "fast")
	s.press(fyne.KeyReturn)
	if s.w.Canvas().Focused() != s.speed || s.degrees.Text != "25" || len(s.steps) != 2 {
		t.Errorf("refused, the temperature is %q and the steps %q", s.degrees.Text, s.steps)
	}
}

// Enter pressed twice is no row that was refused: nothing was typed.
func TestEnterWithoutATemperatureIsNoRow(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -")
	s.press(fyne.KeyReturn)
	if s.says("Not kept.") || len(s.steps) != 1 {
		t.Errorf("it is told as refused, after %q", s.steps)
	}
}

// Who turns from a mended row to another row, another stage or another screen has its change
// kept; one that can't be read holds the row, but nobody on the screen.
func TestAMendedRowIsKeptOnTheWayToAnother(t *testing.T) {
	away := map[string]func(*sheet){
		"another row":            func(s *sheet) { s.choose(0) },
		"another stage":          func(s *sheet) { s.turn(false, cases.AfterRepair) },
		"the log's stage":        func(s *sheet) { s.turn(true, cases.AfterRepair) },
		"another screen or case": func(s *sheet) { s.v.Leave() },
	}
	for to, turn := range away {
		s := newSheet(t)
		s.writes("1 14 - -", "2 19 - -", "3 25 - -")
		s.choose(1)
		s.types("hot")
		turn(s)
		if s.mends() != "Change minute 2" || s.degrees.Text != "hot" || !s.says("Not kept.") || len(s.steps) != 3 {
			t.Errorf("to %s, refused: %q with %q, after %q", to, s.mends(), s.degrees.Text, s.steps)
		}
		s.degrees.SetText("20")
		turn(s)
		s.want("to "+to, s.logged(), "1 14 - -", "2 20 - -", "3 25 - -")
		if s.mends() == "Change minute 2" || to == "another row" && s.mends() != "Change minute 3" {
			t.Errorf("to %s it is %q", to, s.mends())
		}
	}
}

// A row that was typed and not entered is kept as the screen is left, once; half a row isn't one.
func TestATypedRowIsKeptOnLeaving(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 800 -")
	s.v.Leave()
	if len(s.steps) != 1 || s.says("Not kept.") {
		t.Errorf("with no temperature the steps are %q", s.steps)
	}
	s.typed(s.degrees, "19")
	s.v.Leave()
	s.v.Leave()
	s.want("left", s.logged(), "1 14 800 -", "2 19 800 -")
	s.typed(s.degrees, "hot")
	s.v.Leave()
	if len(s.steps) != 2 || s.degrees.Text != "hot" || !s.says("Not kept.") {
		t.Errorf("what can't be read is %q after %q", s.degrees.Text, s.steps)
	}
}

// A first temperature without a minute is that of the start.
func TestTheFirstRowIsTheStarts(t *testing.T) {
	s := newSheet(t)
	s.typed(s.degrees, "14")
	s.degrees.OnSubmitted("14")
	s.typed(s.degrees, "19")
	s.degrees.OnSubmitted("19")
	s.want("written", s.logged(), "0 14 - -", "1 19 - -")
}

// An engine that starts anew isn't written into the rows of another start: not by starting the
// clock, nor by turning to them while it runs.
func TestTheClockStartsOnlyItsOwnRows(t *testing.T) {
	const refusal = "This stage has rows of another start."
	s := newSheet(t)
	clock := button(t, s.v.Content(), "Engine starts")
	s.writes("0 14 - -")
	test.Tap(clock) // the cold engine, before it started
	s.now = s.now.Add(2 * time.Minute)
	s.v.Tick()
	s.typed(s.degrees, "19")
	s.press(fyne.KeyReturn)
	s.want("by the clock", s.logged(), "0 14 - -", "2 19 - -")
	test.Tap(clock)
	test.Tap(clock)
	if clock.Text != "Engine starts" || !s.says(refusal) || s.minute.Text != "2" {
		t.Errorf("into other rows it says %q, minute %q", clock.Text, s.minute.Text)
	}
	s.turn(false, cases.AfterRepair)
	if s.says(refusal) {
		t.Error("a stage without rows is refused")
	}
	test.Tap(clock)
	if clock.Text != "Stop the clock" {
		t.Errorf("in a stage without rows it says %q", clock.Text)
	}
	s.turn(false, cases.BeforeRepair)
	if clock.Text != "Engine starts" || !s.says(refusal) {
		t.Errorf("turned to other rows it says %q", clock.Text)
	}
	test.Tap(button(t, s.v.Content(), "Remove this log"))
	if s.says(refusal) {
		t.Error("with the rows gone it is refused still")
	}
}
