package warmup_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/warmup"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/units"
)

// sheet is the screen with a case that it edits, and the steps that can be undone.
type sheet struct {
	t                           *testing.T
	c                           cases.Case
	u                           units.Set
	now                         time.Time
	v                           *warmup.View
	w                           fyne.Window
	steps                       []string
	before                      []cases.Case
	minute, degrees, rpm, speed *kit.Field
}

func newSheet(t *testing.T) *sheet {
	t.Helper()
	test.NewTempApp(t)
	s := &sheet{t: t, u: units.Metric(), c: cases.Case{ID: "a"}, now: time.Date(2024, 2, 5, 8, 0, 0, 0, time.UTC)}
	s.v = warmup.New(s.edit, func() time.Time { return s.now })
	s.w = test.NewTempWindow(t, s.v.Content())
	s.w.Resize(fyne.NewSize(1040, 640))
	s.w.Canvas().SetOnTypedKey(func(e *fyne.KeyEvent) {
		if e.Name == fyne.KeyEscape {
			s.v.Back()
		}
	})
	s.show()
	s.minute, s.degrees, s.rpm, s.speed = fields(t, s.v.Content())
	return s
}

// edit changes a copy, as the desk does.
func (s *sheet) edit(what string, change func(*cases.Case)) {
	s.before, s.steps = append(s.before, s.c), append(s.steps, what)
	s.c = s.copied()
	change(&s.c)
	s.c = s.copied() // what can't be kept fails here
	s.show()
}

func (s *sheet) copied() cases.Case {
	text, err := cases.Encode(s.c)
	if err != nil {
		s.t.Fatal(err)
	}
	c, err := cases.Decode(text)
	if err != nil {
		s.t.Fatal(err)
	}
	return c
}

func (s *sheet) undo() {
	n := len(s.steps) - 1
	s.c, s.before, s.steps = s.before[n], s.before[:n], s.steps[:n]
	s.show()
}

func (s *sheet) show() {
	s.v.Show(warmup.Data{Case: s.c, Log: len(s.c.Logs) - 1, Units: s.u})
}

// typed puts the focus on a field and types over what stands there.
func (s *sheet) typed(f *kit.Field, text string) {
	s.w.Canvas().Focus(f)
	s.types(text)
}

// types goes to whatever has the focus.
func (s *sheet) types(text string) {
	for _, r := range text {
		s.w.Canvas().Focused().TypedRune(r)
	}
}

func (s *sheet) press(k fyne.KeyName) {
	s.w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: k})
}

// writes keeps rows of minute, temperature, rpm and speed; a dash is left as it stands.
func (s *sheet) writes(rows ...string) {
	for _, row := range rows {
		for i, f := range []*kit.Field{s.minute, s.rpm, s.speed, s.degrees} {
			if text := strings.Fields(row)[[]int{0, 2, 3, 1}[i]]; text != "-" {
				s.typed(f, text)
			}
		}
		s.press(fyne.KeyReturn)
	}
}

func (s *sheet) list() (list *kit.List) {
	walk(s.v.Content(), func(o fyne.CanvasObject) {
		if l, ok := o.(*kit.List); ok {
			list = l
		}
	})
	return list
}

// choose goes down to a line of the list and takes it with a blank.
func (s *sheet) choose(line int) {
	s.w.Canvas().Focus(s.list())
	for range 40 {
		s.press(fyne.KeyUp)
	}
	for range line {
		s.press(fyne.KeyDown)
	}
	s.press(fyne.KeySpace)
	s.types(" ") // the blank's rune comes behind its key
}

// lines are what the list says, each line's cells.
func (s *sheet) lines() (out []string) {
	l := s.list()
	for i := range l.Length() {
		o := l.CreateItem()
		l.UpdateItem(i, o)
		var cells []string
		walk(o, func(o fyne.CanvasObject) {
			if cell, ok := o.(*widget.Label); ok {
				cells = append(cells, cell.Text)
			}
		})
		out = append(out, strings.Join(cells, "|"))
	}
	return out
}

// logged are the rows of the case's log, in the format's units.
func (s *sheet) logged() (out []string) {
	s.t.Helper()
	if len(s.c.Logs) != 1 {
		s.t.Fatalf("%d logs", len(s.c.Logs))
	}
	l := s.c.Logs[0]
	at := func(column []float64, i int) string {
		if len(column) == 0 || math.IsNaN(column[i]) {
			return "-"
		}
		return fmt.Sprintf("%.5g", column[i])
	}
	for i, t := range l.TimeS {
		out = append(out, fmt.Sprintf("%g %s %s %s", t/60, at(l.EctC, i), at(l.EngineRPM, i), at(l.SpeedKmh, i)))
	}
	return out
}

func (s *sheet) want(what string, got []string, want ...string) {
	s.t.Helper()
	if !slices.Equal(got, want) {
		s.t.Errorf("%s: %q, want %q", what, got, want)
	}
}

// says reports whether words are seen anywhere on the screen, among others.
func (s *sheet) says(words string) (seen bool) {
	walk(s.v.Content(), func(o fyne.CanvasObject) {
		l, ok := o.(*widget.Label)
		seen = seen || ok && strings.Contains(l.Text, words) && l.Visible() && kit.Holds(s.v.Content(), l)
	})
	return seen
}

// turn chooses a stage, of what is written down or of the shown log.
func (s *sheet) turn(ofShown bool, to cases.Stage) {
	var stages []*kit.Select // the shown log's comes first
	walk(s.v.Content(), func(o fyne.CanvasObject) {
		if c, ok := o.(*kit.Select); ok && slices.Contains(c.Options, to.Name()) {
			stages = append(stages, c)
		}
	})
	at := 1
	if ofShown {
		at = 0
	}
	stages[at].SetSelected(to.Name())
}

// mends is the title over the list while a row is mended; empty where none is.
func (s *sheet) mends() (title string) {
	walk(s.v.Content(), func(o fyne.CanvasObject) {
		if l, ok := o.(*widget.Label); ok && strings.HasPrefix(l.Text, "Change minute ") && fyne.CurrentApp().Driver().CanvasForObject(l) != nil && kit.Holds(s.v.Content(), l) {
			title = l.Text
		}
	})
	return title
}

// What is written down is listed in the person's units, the newest first.
func TestTheRowsAreListed(t *testing.T) {
	s := newSheet(t)
	s.u = units.US()
	s.show()
	s.writes("1 50 - -", "2 68 2000 50", "4 86 - -")
	s.want("the list", s.lines(), "4 min|86 °F|2000 rpm|50 mph", "2 min|68 °F|2000 rpm|50 mph", "1 min|50 °F||")
	s.u = units.Metric()
	s.show()
	s.want("in other units", s.lines(), "4 min|30 °C|2000 rpm|80 km/h", "2 min|20 °C|2000 rpm|80 km/h", "1 min|10 °C||")
}

// A chosen row is mended in one step, and what stood in the fields comes back.
func TestARowIsMended(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -", "2 19 2000 50", "3 52 - -", "4 33 - -")
	s.typed(s.degrees, "4")
	s.choose(1)
	if s.mends() != "Change minute 3" || s.minute.Text != "3" || s.degrees.Text != "52" || s.rpm.Text != "2000" || s.w.Canvas().Focused() != s.degrees {
		t.Fatalf("%q with %q, %q, %q in the fields", s.mends(), s.minute.Text, s.degrees.Text, s.rpm.Text)
	}
	s.types("25")
	s.press(fyne.KeyReturn)
	s.want("mended", s.logged(), "1 14 - -", "2 19 2000 50", "3 25 2000 50", "4 33 2000 50")
	s.want("the steps", s.steps[4:], "minute 3 changed: 25 °C at 3 min")
	if s.mends() != "" || s.minute.Text != "5" || s.degrees.Text != "4" || s.rpm.Text != "2000" || s.w.Canvas().Focused() != s.degrees {
		t.Errorf("%q with %q, %q, %q in the fields afterwards", s.mends(), s.minute.Text, s.degrees.Text, s.rpm.Text)
	}
	s.undo()
	s.want("undone", s.logged(), "1 14 - -", "2 19 2000 50", "3 52 2000 50", "4 33 2000 50")
}

// A row's minute may be mended too: its old place is empty then. One that another row has is
// refused until that row is gone. What was emptied is unknown.
func TestAMinuteIsMended(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 900 30", "2 19 - -", "30 25 - -")
	s.choose(0)
	s.typed(s.minute, "3")
	s.press(fyne.KeyReturn)
	s.press(fyne.KeyReturn)
	s.want("moved", s.logged(), "1 14 900 30", "2 19 900 30", "3 25 900 30")
	if s.minute.Text != "4" {
		t.Errorf("minute %q is offered, want 4", s.minute.Text)
	}
	s.choose(0)
	s.typed(s.minute, "2")
	s.rpm.SetText("")
	s.speed.SetText("")
	test.Tap(button(t, s.v.Content(), "Keep"))
	s.want("over another", s.logged(), "1 14 900 30", "2 19 900 30", "3 25 900 30")
	if !s.says("Minute: 2 has a row already") || s.mends() != "Change minute 3" {
		t.Errorf("over another it is %q, without a word of it", s.mends())
	}
	s.typed(s.minute, "2.5")
	test.Tap(button(t, s.v.Content(), "Keep"))
	s.choose(1)
	test.Tap(button(t, s.v.Content(), "Delete"))
	s.want("beside it", s.logged(), "1 14 900 30", "2.5 25 - -")
	s.want("the steps", s.steps[3:], "minute 30 changed: 25 °C at 3 min", "minute 3 changed: 25 °C at 2.5 min", "minute 2 deleted")
	s.choose(1)
	s.rpm.SetText("")
	test.Tap(button(t, s.v.Content(), "Keep"))
	s.want("emptied", s.logged(), "1 14 - 30", "2.5 25 - -")
	if got := s.c.Logs[0].EngineRPM; got != nil {
		t.Errorf("of the engine speed, which nobody knows, the log keeps %v", got)
	}
}

// A minute that is typed again doesn't take the row that it has, which was lost without a word; after a row that
// was left out, no minute is offered that has one.
func TestAMinuteIsntTakenTwice(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -", "3 25 - -", "4 33 - -", "2 19 - -")
	if s.minute.Text != "5" {
		t.Errorf("after minute 2, which was left out, %q is offered, want 5", s.minute.Text)
	}
	s.writes("3 95 - -")
	s.want("typed again", s.logged(), "1 14 - -", "2 19 - -", "3 25 - -", "4 33 - -")
	if !s.says("Minute: 3 has a row already") || s.degrees.Text != "95" {
		t.Errorf("%q stays in the field, without a word why", s.degrees.Text)
	}
	s.typed(s.minute, "5")
	s.w.Canvas().Focus(s.degrees)
	s.press(fyne.KeyReturn)
	s.want("in its place", s.logged(), "1 14 - -", "2 19 - -", "3 25 - -", "4 33 - -", "5 95 - -")
	if s.says("Not kept.") {
		t.Error("it is still told of")
	}
}

// What nobody typed stays exactly as it was: the fields round it. One that can't be is refused,
// and the row is mended still.
func TestMendingChangesOnlyWhatIsTyped(t *testing.T) {
	s := newSheet(t)
	s.writes("2.25 20.4 2000 80")
	s.u = units.US()
	s.show()
	s.choose(0)
	if s.speed.Text != "50" || s.minute.Text != "2.3" {
		t.Fatalf("minute %q, speed %q", s.minute.Text, s.speed.Text)
	}
	s.press(fyne.KeyReturn)
	if len(s.steps) != 1 {
		t.Errorf("kept as it was it made a step: %q", s.steps)
	}
	s.choose(0)
	s.typed(s.rpm, "99999")
	test.Tap(button(t, s.v.Content(), "Keep"))
	if s.mends() == "" || len(s.steps) != 1 {
		t.Errorf("refused it is %q, after %q", s.mends(), s.steps)
	}
	s.typed(s.rpm, "2500")
	test.Tap(button(t, s.v.Content(), "Keep"))
	s.want("mended", s.logged(), "2.25 20.4 2500 80")
}

// A chosen row is deleted in one step, and the last one takes the log with it.
func TestARowIsDeleted(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -", "2 19 2000 -", "3 25 - -")
	s.choose(0)
	test.Tap(button(t, s.v.Content(), "Delete"))
	s.want("the last deleted", s.logged(), "1 14 - -", "2 19 2000 -")
	if s.minute.Text != "3" || s.mends() != "" || s.w.Canvas().Focused() != s.degrees {
		t.Errorf("minute %q is offered, want 3; %q", s.minute.Text, s.mends())
	}
	s.choose(1)
	test.Tap(button(t, s.v.Content(), "Delete"))
	s.want("the first deleted", s.logged(), "2 19 2000 -")
	s.want("the steps", s.steps[3:], "minute 3 deleted", "minute 1 deleted")
	s.choose(0)
	test.Tap(button(t, s.v.Content(), "Delete"))
	if len(s.c.Logs) != 0 || kit.Holds(s.v.Content(), s.list()) || s.minute.Text != "" {
		t.Errorf("with no row left there are logs %+v; minute %q is offered", s.c.Logs, s.minute.Text)
	}
	s.undo()
	s.want("undone", s.logged(), "2 19 2000 -")
	if s.minute.Text != "3" {
		t.Errorf("undone it offers minute %q, want 3", s.minute.Text)
	}
}

// Escape takes back what was typed in a field, and then leaves the row as it is, wherever the
// focus is. So does the button.
func TestTheWayBackFromMending(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -", "2 19 - -")
	s.choose(1)
	s.types("99")
	s.press(fyne.KeyEscape)
	if s.degrees.Text != "14" || s.mends() == "" {
		t.Errorf("the first Escape leaves %q, %q", s.degrees.Text, s.mends())
	}
	leave := map[string]func(){
		"a field":  func() { s.press(fyne.KeyEscape) },
		"a button": func() { s.w.Canvas().Focus(button(t, s.v.Content(), "Keep")); s.press(fyne.KeyEscape) },
		"the list": func() { s.w.Canvas().Focus(s.list()); s.press(fyne.KeyEscape) },
		"Back":     func() { test.Tap(button(t, s.v.Content(), "Back")) },
	}
	for from, leave := range leave {
		s.choose(1)
		if s.mends() != "Change minute 1" {
			t.Fatalf("%q", s.mends())
		}
		if leave(); s.mends() != "" || s.minute.Text != "3" || s.degrees.Text != "" || len(s.steps) != 2 {
			t.Errorf("from %s: %q, minute %q, %q degrees, steps %q", from, s.mends(), s.minute.Text, s.degrees.Text, s.steps)
		}
	}
}

// The minute that is offered follows the log through undoing, but not over what a person typed.
func TestTheOfferedMinuteFollowsTheLog(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -")
	for _, c := range []string{"19", "25"} {
		s.typed(s.degrees, c)
		s.press(fyne.KeyReturn)
	}
	for _, want := range []string{"3", "2", ""} {
		if s.undo(); s.minute.Text != want {
			t.Errorf("after undoing minute %q is offered, want %q", s.minute.Text, want)
		}
	}
	s.writes("1 14 - -", "2 19 - -")
	s.typed(s.minute, "12")
	s.undo()
	s.typed(s.degrees, "70")
	if s.minute.Text != "12" {
		t.Errorf("the typed minute became %q", s.minute.Text)
	}
	s.press(fyne.KeyReturn)
	s.writes("5 40 - -")
	if s.minute.Text != "13" {
		t.Errorf("after a row that was left out minute %q is offered, want 13", s.minute.Text)
	}
}

// The clock leaves a row alone that is being mended, and says the minute again afterwards.
func TestTheClockWaitsForMending(t *testing.T) {
	s := newSheet(t)
	clock := button(t, s.v.Content(), "Engine starts")
	test.Tap(clock)
	s.writes("1 14 - -", "2 19 - -")
	s.choose(1)
	s.now = s.now.Add(5 * time.Minute)
	for _, text := range []string{"1", ""} {
		s.minute.SetText(text)
		if s.v.Tick(); s.minute.Text != text {
			t.Errorf("the clock wrote %q over the row's minute", s.minute.Text)
		}
	}
	s.typed(s.minute, "1")
	s.w.Canvas().Focus(s.degrees)
	s.types("13")
	s.press(fyne.KeyReturn)
	if s.minute.Text != "5" || s.logged()[0] != "1 13 - -" {
		t.Errorf("afterwards minute %q, the log %q", s.minute.Text, s.logged())
	}
	test.Tap(clock)
}

// A row that is undone while it is mended is mended no longer, nor one of another stage.
func TestMendingEndsWithItsRow(t *testing.T) {
	s := newSheet(t)
	s.writes("1 14 - -", "2 19 - -")
	s.choose(1)
	s.undo()
	if s.mends() != "Change minute 1" {
		t.Errorf("with another row undone it is %q", s.mends())
	}
	s.press(fyne.KeyEscape)
	s.writes("2 19 - -")
	s.choose(0)
	s.undo()
	if s.mends() != "" || s.minute.Text != "2" {
		t.Errorf("with its row undone it is %q, minute %q", s.mends(), s.minute.Text)
	}
	s.choose(0)
	s.turn(false, cases.AfterRepair)
	if s.mends() != "" {
		t.Errorf("the other stage is %q", s.mends())
	}
}

// However long the list, the fields stay in sight while a row is mended, in the smallest window
// too, and with a finding over them.
func TestTheFieldsStayInSightWhileMending(t *testing.T) {
	s := newSheet(t)
	for minute := 1; minute <= 30; minute++ {
		s.writes(fmt.Sprintf("%d %d - -", minute, 10+minute))
	}
	flags := make([]evidence.Flag, 9)
	s.c.ID = "opened again"
	found := warmup.Data{Case: s.c, Log: 0, Units: s.u, Flags: flags}
	s.v.Show(found)
	s.choose(29)
	s.v.Show(found) // as the cars are computed
	screen := s.w.Canvas().Size()
	for _, f := range []*kit.Field{s.minute, s.degrees, s.rpm, s.speed} {
		at := fyne.CurrentApp().Driver().AbsolutePositionForObject(f)
		if at.Y < 60 || at.Y+f.Size().Height > screen.Height {
			t.Errorf("a field stands at %g of %g", at.Y, screen.Height)
		}
	}
	if s.minute.Text != "1" || s.list().Size().Height > 200 {
		t.Errorf("minute %q; the list is %g high", s.minute.Text, s.list().Size().Height)
	}
}
