package warmup

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/logfile"
	"loopbook/report/chart"
)

// shown is the screen of warm-ups of what is open; it comes into sight when it is asked for.
func shown(t *testing.T) (*Screen, *benchtest.Made) {
	t.Helper()
	m, seen := benchtest.New(t), false
	tab := bench.Tab{Open: func() { seen = true }, InSight: func() bool { return seen }}
	s := New(m.Bench, tab, m.App.Preferences(), func(chart.Chart, string, string) {})
	m.Desk.Changed = s.Show
	return s, m
}

// A dropped CSV goes into the open case as a log; a faulty one leaves the case
// as it was; without a case it is refused.
func TestDroppedLogGoesIntoTheCase(t *testing.T) {
	s, m := shown(t)
	path := filepath.Join(t.TempDir(), "drive.csv")
	text := "Time,Coolant temperature (°C)\n"
	for i := 0; i < 60; i++ {
		text += fmt.Sprintf("%d,%d\n", i*10, 12+i)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	m.Desk.Begin()
	s.Read(path)
	if logs := m.Desk.Case.Logs; len(logs) != 1 || logs[0].Name != "drive" || len(logs[0].EctC) != 60 || !s.tab.InSight() {
		t.Fatalf("%d logs: %+v", len(logs), logs)
	}
	if files, err := m.Desk.Store.Attachments(m.Ctx, m.Desk.Case.ID); err != nil || len(files) != 1 || files[0].Name != "logs/drive.csv" {
		t.Errorf("kept as it came: %+v, %v", files, err)
	}
	if err := os.WriteFile(path, []byte("no numbers at all"), 0o644); err != nil {
		t.Fatal(err)
	}
	s.Read(path)
	if len(m.Desk.Case.Logs) != 1 {
		t.Errorf("a faulty file left %d logs", len(m.Desk.Case.Logs))
	}
	if IsLog("case.json") || !IsLog("A.CSV") {
		t.Error("files are taken for what they aren't")
	}
}

// A log that is read again replaces itself, and what was said of its columns is
// remembered for files with the same heading.
func TestColumnsAreRememberedByHeading(t *testing.T) {
	s, m := shown(t)
	path := filepath.Join(t.TempDir(), "odd.csv")
	text := "Time,A,B\n"
	for i := 0; i < 60; i++ {
		text += fmt.Sprintf("%d,%d,%d\n", i*10, 12+i, 70-i/2)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	m.Desk.Begin()
	chosen := map[string]string{"time": "Time", "ect": "B"}
	s.readAs(path, chosen)
	if logs := m.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 70 {
		t.Fatalf("by hand: %+v", logs)
	}
	s.kept.setColumns(logfile.Fingerprint([]string{"Time", "A", "B"}), chosen)
	s.Read(path)
	if logs := m.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 70 {
		t.Errorf("read again: %d logs, the first begins at %g", len(logs), logs[0].EctC[0])
	}
}

// A scan tool may give each log the same name: what is read once a repair is noted
// stands beside the log from before it, and is of after it.
func TestALogAfterTheRepairStandsBesideTheFirst(t *testing.T) {
	s, m := shown(t)
	path := filepath.Join(t.TempDir(), "export.csv")
	save := func(from int) {
		text := "Time,Coolant temperature (°C)\n"
		for i := 0; i < 60; i++ {
			text += fmt.Sprintf("%d,%d\n", i*10, from+i)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		s.Read(path)
	}
	m.Desk.Begin()
	save(10)
	save(12) // read again
	if logs := m.Desk.Case.Logs; len(logs) != 1 || logs[0].EctC[0] != 12 || logs[0].Stage != cases.BeforeRepair {
		t.Fatalf("before the repair: %d logs, %+v", len(logs), logs)
	}
	m.Desk.Edit("repair", func(c *cases.Case) {
		c.Verdict.Cause, c.Repair.Parts = "thermostat-stuck-open", []cases.Part{{Name: "thermostat"}}
	})
	save(20)
	logs := m.Desk.Case.Logs
	if len(logs) != 2 || logs[0].EctC[0] != 12 || logs[1].EctC[0] != 20 || logs[1].Stage != cases.AfterRepair {
		t.Errorf("after the repair: %d logs, %+v", len(logs), logs)
	}
}

// Of several logs that came together, one whose columns nobody knows is asked about; those after it are read, whether the
// question is answered or left.
func TestAQuestionHoldsNoOtherLogUp(t *testing.T) {
	for words, want := range map[string]int{"window.columns.leave": 1, "window.columns.read": 2} {
		s, m := shown(t)
		odd, plain := filepath.Join(t.TempDir(), "odd.csv"), filepath.Join(t.TempDir(), "plain.csv")
		text := ""
		for i := 0; i < 60; i++ {
			text += fmt.Sprintf("%d,%d\n", i*10, 12+i)
		}
		for path, head := range map[string]string{odd: "Time,fan\n", plain: "Time,ECT\n"} {
			if err := os.WriteFile(path, []byte(head+text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		m.Desk.Begin()
		s.Read(odd, plain)
		if words == "window.columns.read" {
			for _, o := range test.LaidOutObjects(m.Window.Canvas().Overlays().Top()) {
				if pick, is := o.(*kit.Select); is && pick.Selected == kit.L("window.columns.none") {
					pick.SetSelected("fan")
					break
				}
			}
		}
		test.Tap(benchtest.Button(t, m.Window, kit.L(words)))
		if logs := m.Desk.Case.Logs; len(logs) != want || logs[want-1].Name != "plain" || len(s.waiting) > 0 {
			t.Errorf("%s: %d logs, waiting %q", words, len(logs), s.waiting)
		}
	}
}

// What was taken from a file stands beside its log alone.
func TestColumnsAreToldOfTheirLog(t *testing.T) {
	s, m := shown(t)
	var paths []string
	for _, name := range []string{"Coolant temperature (°C)", "ECT"} {
		path := filepath.Join(t.TempDir(), name[:3]+".csv")
		text := "Time," + name + "\n"
		for i := 0; i < 60; i++ {
			text += fmt.Sprintf("%d,%d\n", i*10, 12+i)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		paths = append(paths, path)
	}
	m.Desk.Begin()
	s.Read(paths...)
	for i, want := range []bool{false, true} {
		s.shown = i
		s.Show()
		if said := strings.Contains(kittest.Texts(s.Content()), "Taken from the file: time: Time; coolant temperature: ECT"); said != want {
			t.Errorf("beside log %d the second file's columns are told: %v", i+1, said)
		}
	}
}

// What a log is found to say stands on its own screen, before what is written down: a
// reader of the log needn't look for it on the hose map.
func TestTheLogsFindingsStandBesideIt(t *testing.T) {
	s, m := shown(t)
	m.OpenDemo(t, "Cold cabin on frosty mornings, P0128")
	for i, want := range []bool{true, false} { // before the repair, and after it
		s.shown = i
		s.Show()
		found := m.Desk.Found.WarmUps[i].Flags
		if len(found) > 0 != want {
			t.Fatalf("log %d: %d findings", i, len(found))
		}
		for _, f := range found {
			if text := m.Desk.By().Say(f.Text); !strings.Contains(kittest.Texts(s.Content()), text) {
				t.Errorf("log %d: %q isn't told", i, text)
			}
		}
	}
}

// logOf writes a log that begins so warm, under the name that a scan tool gives to every one.
func logOf(t *testing.T, begins int) string {
	t.Helper()
	text := "Time,Coolant temperature (°C)\n"
	for i := range 60 {
		text += fmt.Sprintf("%d,%d\n", i*10, begins+i)
	}
	path := filepath.Join(t.TempDir(), "log.csv")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// The log after the repair, of the same name, was kept over the file of the one before it.
func TestEachLogIsKeptAsItCame(t *testing.T) {
	s, m := shown(t)
	m.Desk.Begin()
	first, second := logOf(t, 12), logOf(t, 20)
	for _, path := range []string{first, second, first} {
		s.Read(path)
	}
	b, err := m.Desk.Store.Bundle(m.Ctx, m.Desk.Case.ID)
	if err != nil || len(b.Files) != 2 {
		t.Fatalf("%d files, %v; want two", len(b.Files), err)
	}
	for name, path := range map[string]string{"logs/log.csv": first, "logs/log-2.csv": second} {
		if want, err := os.ReadFile(path); err != nil || string(b.Files[name]) != string(want) {
			t.Errorf("%s has %d bytes, %v", name, len(b.Files[name]), err)
		}
	}
}

// A log that can be read but not kept was answered with the question which of its columns is what.
func TestALogThatCantBeKeptIsToldSo(t *testing.T) {
	s, m := shown(t)
	m.Desk.Begin()
	if err := os.Rename(m.Desk.Store.Path(), m.Desk.Store.Path()+".moved"); err != nil {
		t.Fatal(err)
	}
	s.Read(logOf(t, 12))
	if says := benchtest.Says(m.Window); !strings.Contains(says, cases.ErrGone.Error()) || len(m.Desk.Case.Logs) != 0 {
		t.Errorf("it says %q, with %d logs", says, len(m.Desk.Case.Logs))
	}
}

// The curve that is looked at is the one that is saved: also of a warm-up that was written down in a case without one, and of
// what is left once a log was taken out.
func TestTheLogThatIsLookedAtIsSaved(t *testing.T) {
	s, m := shown(t)
	saved := ""
	s.save = func(_ chart.Chart, name, kind string) { saved = name + " as " + kind }
	m.Desk.Begin()
	log := cases.Log{TimeS: []float64{0, 60}, EctC: []float64{20, 30}}
	m.Desk.Edit("log", func(c *cases.Case) { c.Logs = []cases.Log{log} })
	if s.saveShown("png"); saved != kit.L("window.warmup.file", 1)+" as png" {
		t.Errorf("saved is %q", saved)
	}
	m.Desk.Edit("logs", func(c *cases.Case) { c.Logs = []cases.Log{log, log} })
	s.view.OnLog(1)
	m.Desk.Edit("log", func(c *cases.Case) { c.Logs = c.Logs[:1] })
	saved = ""
	if s.saveShown("svg"); saved != kit.L("window.warmup.file", 1)+" as svg" {
		t.Errorf("with one left, saved is %q", saved)
	}
}
