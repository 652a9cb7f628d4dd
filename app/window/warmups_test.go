package window

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/cases/logfile"
)

// A dropped CSV goes into the open case as a log; a faulty one leaves the case
// as it was; without a case it is refused.
func TestDroppedLogGoesIntoTheCase(t *testing.T) {
	w, _ := shown(t)
	path := filepath.Join(t.TempDir(), "drive.csv")
	text := "Time,Coolant temperature (°C)\n"
	for i := 0; i < 60; i++ {
		text += fmt.Sprintf("%d,%d\n", i*10, 12+i)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	w.newCase()
	w.readLog(path)
	if logs := w.at.Desk.Case.Logs; len(logs) != 1 || logs[0].Name != "drive" || len(logs[0].EctC) != 60 || w.tabs.SelectedIndex() != warmUpTab {
		t.Fatalf("%d logs: %+v", len(logs), logs)
	}
	if files, err := w.at.Desk.Store.Attachments(w.at.Ctx, w.at.Desk.Case.ID); err != nil || len(files) != 1 || files[0].Name != "logs/drive.csv" {
		t.Errorf("kept as it came: %+v, %v", files, err)
	}
	if err := os.WriteFile(path, []byte("no numbers at all"), 0o644); err != nil {
		t.Fatal(err)
	}
	w.readLog(path)
	if len(w.at.Desk.Case.Logs) != 1 {
		t.Errorf("a faulty file left %d logs", len(w.at.Desk.Case.Logs))
	}
	if isLog("case.json") || !isLog("A.CSV") {
		t.Error("files are taken for what they aren't")
	}
}

// A log that is read again replaces itself, and what was said of its columns is
// remembered for files with the same heading.
func TestColumnsAreRememberedByHeading(t *testing.T) {
	w, _ := shown(t)
	path := filepath.Join(t.TempDir(), "odd.csv")
	text := "Time,A,B\n"
	for i := 0; i < 60; i++ {
		text += fmt.Sprintf("%d,%d,%d\n", i*10, 12+i, 70-i/2)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	w.newCase()
	chosen := map[string]string{"time": "Time", "ect": "B"}
	w.readLogAs(path, chosen)
	if logs := w.at.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 70 {
		t.Fatalf("by hand: %+v", logs)
	}
	w.prefs.setColumns(logfile.Fingerprint([]string{"Time", "A", "B"}), chosen)
	w.readLog(path)
	if logs := w.at.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 70 {
		t.Errorf("read again: %d logs, the first begins at %g", len(logs), logs[0].EctC[0])
	}
}

// A scan tool may give each log the same name: what is read once a repair is noted
// stands beside the log from before it, and is of after it, as is a check that is
// begun then.
func TestALogAfterTheRepairStandsBesideTheFirst(t *testing.T) {
	w, _ := shown(t)
	path := filepath.Join(t.TempDir(), "export.csv")
	save := func(from int) {
		text := "Time,Coolant temperature (°C)\n"
		for i := 0; i < 60; i++ {
			text += fmt.Sprintf("%d,%d\n", i*10, from+i)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		w.readLog(path)
	}
	w.newCase()
	save(10)
	save(12) // read again
	if logs := w.at.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 12 || logs[0].Stage != cases.BeforeRepair {
		t.Fatalf("before the repair: %d logs, %+v", len(logs), logs)
	}
	w.at.Desk.Edit("repair", func(c *cases.Case) {
		c.Verdict.Cause, c.Repair.Parts = "thermostat-stuck-open", []cases.Part{{Name: "thermostat"}}
	})
	save(20)
	logs := w.at.Desk.Case.Logs
	if len(logs) != 2 || logs[0].EctC[0] != 12 || logs[1].EctC[0] != 20 || logs[1].Stage != cases.AfterRepair {
		t.Errorf("after the repair: %d logs, %+v", len(logs), logs)
	}
	if stage := stageNow(&w.at.Desk.Case); stage != cases.AfterRepair {
		t.Errorf("a check is begun %q", stage)
	}
}

// What a log is found to say stands on its own screen, before what is written down: a
// reader of the log needn't look for it on the hose map.
func TestTheLogsFindingsStandBesideIt(t *testing.T) {
	w, _ := shown(t)
	demoCase(t, w, "Cold cabin on frosty mornings, P0128")
	w.tabs.SelectIndex(warmUpTab)
	for i, want := range []bool{true, false} { // before the repair, and after it
		w.logs.shown = i
		w.showWarmUp()
		found := w.at.Desk.Found.WarmUps[i].Flags
		if len(found) > 0 != want {
			t.Fatalf("log %d: %d findings", i, len(found))
		}
		for _, f := range found {
			if text := w.at.Desk.By().Say(f.Text); !strings.Contains(kittest.Texts(w.warmup.Content()), text) {
				t.Errorf("log %d: %q isn't told", i, text)
			}
		}
	}
}

// A row of a warm-up that was chosen is left by Escape in the window too, from any place; what is
// kept or deleted is one step to undo.
func TestARowIsMendedInTheWindow(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	w.tabs.SelectIndex(warmUpTab)
	c := w.window.Canvas()
	types := func(text string) {
		for _, r := range text {
			c.Focused().TypedRune(r)
		}
	}
	press := func(k fyne.KeyName) { c.Focused().TypedKey(&fyne.KeyEvent{Name: k}) }
	kit.Focus(w.warmup.First())
	c.FocusPrevious()
	types("1")
	for _, degrees := range []string{"14", "91", "25"} {
		kit.Focus(w.warmup.First())
		types(degrees)
		press(fyne.KeyReturn)
	}
	var list *kit.List
	for _, o := range test.LaidOutObjects(w.warmup.Content()) {
		if l, ok := o.(*kit.List); ok {
			list = l
		}
	}
	choose := func() {
		kit.Focus(list)
		press(fyne.KeyUp)
		press(fyne.KeyUp)
		press(fyne.KeyDown)
		press(fyne.KeySpace)
	}
	degrees := w.warmup.First().(*kit.Field)
	choose()
	if degrees.Text != "91" {
		t.Fatalf("chosen %q stands in the field, want 91", degrees.Text)
	}
	c.FocusNext()
	if press(fyne.KeyEscape); degrees.Text != "" || w.rooms.now != caseRoom {
		t.Errorf("after Escape %q stands in the field", degrees.Text)
	}
	choose()
	types("19")
	press(fyne.KeyReturn)
	if got := w.at.Desk.Case.Logs[0].EctC; !slices.Equal(got, []float64{14, 19, 25}) {
		t.Errorf("mended: %v", got)
	}
	w.at.Desk.Undo()
	if got := w.at.Desk.Case.Logs[0].EctC; !slices.Equal(got, []float64{14, 91, 25}) {
		t.Errorf("undone: %v", got)
	}
	for range 3 {
		w.at.Desk.Undo()
	}
	if len(w.at.Desk.Case.Logs) != 0 {
		t.Errorf("with every row undone there are logs %+v", w.at.Desk.Case.Logs)
	}
}

// A temperature that is typed and not entered is kept as another page, or another case, is opened,
// or the window closed, and in the case that it was typed in.
func TestATypedWarmUpRowIsKeptOnLeaving(t *testing.T) {
	w, _ := shown(t)
	w.newCase()
	first := w.at.Desk.Case.ID
	writes := func(minute, c string) {
		w.tabs.SelectIndex(warmUpTab)
		kit.Focus(w.warmup.First())
		w.window.Canvas().FocusPrevious()
		w.window.Canvas().Focused().(*kit.Field).SetText(minute)
		w.warmup.First().(*kit.Field).SetText(c)
	}
	writes("1", "20")
	w.tabs.SelectIndex(causesTab)
	writes("2", "30")
	w.newCase()
	if n := len(w.at.Desk.Case.Logs); n != 0 {
		t.Errorf("the new case has %d logs", n)
	}
	w.openCase(first)
	writes("3", "40")
	w.leave() // as the window closes
	writes("4", "hot")
	w.newCase()
	c, err := w.at.Desk.Store.Get(w.at.Ctx, first)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Logs) != 1 || !slices.Equal(c.Logs[0].EctC, []float64{20, 30, 40}) || w.at.Desk.Case.ID == first {
		t.Errorf("kept are %+v, and %q is open", c.Logs, w.at.Desk.Case.ID)
	}
}
