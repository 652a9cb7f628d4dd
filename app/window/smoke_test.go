package window

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
)

// The real window, on a display of its own: a temperature is typed and found
// in the database. The program is built without the tag migrated_fynedo, so
// that the toolkit tells of any widget that is touched from a wrong goroutine.
func TestARealWindowKeepsWhatIsTyped(t *testing.T) {
	for _, tool := range []string{"Xvfb", "xdotool"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Skipf("%s is not installed; app/test.sh installs it", tool)
		}
	}
	dir := t.TempDir()
	binary, notebook := filepath.Join(dir, "loopbook"), filepath.Join(dir, "n.db")
	if out, err := exec.Command("go", "build", "-tags", "sqlite_fts5", "-o", binary, "..").CombinedOutput(); err != nil {
		t.Fatalf("building: %v\n%s", err, out)
	}
	id := keepEmptyCase(t, notebook)
	s := &screen{t: t, display: newDisplay(t), env: append(os.Environ(), "HOME="+dir, "XDG_CONFIG_HOME="+dir, "LANG=en_US.UTF-8", "DBUS_SESSION_BUS_ADDRESS=disabled:")}
	said := s.start(binary, "--notebook", notebook)
	window := s.await("the window", "search", "--onlyvisible", "--name", "^Loopbook$")
	s.do("windowsize", window, "1280", "800")
	s.do("windowfocus", "--sync", window)
	typed := time.Now().Add(30 * time.Second)
	for shown := (*diagram.Celsius)(nil); shown == nil || *shown != 88.5; shown = onDisk(t, notebook, id) {
		if time.Now().After(typed) {
			t.Fatalf("88.5 never reached the database, which has %v; the program said:\n%s", shown, said())
		}
		// The thermostat housing's box at 1280×800.
		s.do("mousemove", "--window", window, "535", "318", "click", "1")
		s.do("type", "--delay", "30", "88.5")
		s.do("key", "Return")
		time.Sleep(200 * time.Millisecond) // the next look at the disk
	}
	if strings.Contains(said(), "Error in Fyne call thread") {
		t.Errorf("a widget was touched from a wrong goroutine:\n%s", said())
	}
	// Half-way in a field, the session ends.
	s.do("mousemove", "--window", window, "535", "318", "click", "1")
	time.Sleep(500 * time.Millisecond) // a key that comes before the field has the focus is nobody's
	s.do("type", "--delay", "30", "61")
	time.Sleep(500 * time.Millisecond) // the keys are read at the toolkit's own pace
	told, ended := time.Now(), make(chan time.Time, 1)
	if err := s.program.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	go func() {
		_ = s.program.Wait()
		ended <- time.Now()
	}()
	select {
	case at := <-ended:
		if took := at.Sub(told); took > 3*endPatience { // a busy machine is slow to notice
			t.Errorf("told to end, the program took %v", took)
		}
	case <-time.After(20 * time.Second):
		t.Fatalf("told to end, the program goes on; it said:\n%s", said())
	}
	if got := onDisk(t, notebook, id); *got != 61 {
		t.Fatalf("61 was typed as the program was told to end, and %v °C was kept; it said:\n%s", *got, said())
	}
}

func keepEmptyCase(t *testing.T, notebook string) (id string) {
	t.Helper()
	store, err := sqlite.Open(context.Background(), notebook, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	id, err = store.Put(context.Background(), cases.Case{
		Title: "Smoke test", Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{Label: "warm idle"}},
	}, "new case")
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func onDisk(t *testing.T, notebook, id string) *diagram.Celsius {
	t.Helper()
	store, err := sqlite.Open(context.Background(), notebook, time.Now)
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	c, err := store.Get(context.Background(), id)
	if err != nil {
		t.Fatal(err)
	}
	if r := c.Rounds[0].Reading(diagram.Housing); r != nil {
		return r.ShownC
	}
	return nil
}

// screen is a display of its own with a program on it.
type screen struct {
	t       *testing.T
	display string
	env     []string
	program *exec.Cmd
}

// newDisplay starts an X server that picks a free number by itself.
func newDisplay(t *testing.T) string {
	t.Helper()
	read, write, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	server := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1400x900x24", "-nolisten", "tcp")
	server.ExtraFiles = []*os.File{write}
	if err := server.Start(); err != nil {
		t.Fatal(err)
	}
	write.Close()
	t.Cleanup(func() { _ = server.Process.Kill(); _ = server.Wait() })
	var number int
	if _, err := fmt.Fscan(read, &number); err != nil {
		t.Fatalf("Xvfb names no display: %v", err)
	}
	return fmt.Sprintf(":%d", number)
}

// start runs a program and answers a look at what it has said so far.
func (s *screen) start(binary string, args ...string) (said func() string) {
	s.t.Helper()
	log, err := os.Create(binary + ".log")
	if err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() { log.Close() })
	program := exec.Command(binary, args...)
	s.program = program
	program.Env, program.Stdout, program.Stderr = append(s.env, "DISPLAY="+s.display), log, log
	if err := program.Start(); err != nil {
		s.t.Fatal(err)
	}
	s.t.Cleanup(func() { _ = program.Process.Kill(); _, _ = program.Process.Wait() })
	return func() string {
		text, err := os.ReadFile(log.Name())
		if err != nil {
			s.t.Fatal(err)
		}
		return string(text)
	}
}

func (s *screen) xdotool(args ...string) (string, error) {
	tool := exec.Command("xdotool", args...)
	tool.Env = append(s.env, "DISPLAY="+s.display)
	out, err := tool.Output()
	return strings.TrimSpace(string(out)), err
}

func (s *screen) do(args ...string) {
	s.t.Helper()
	if out, err := s.xdotool(args...); err != nil {
		s.t.Fatalf("xdotool %v: %v %s", args, err, out)
	}
}

// await asks until there is an answer.
func (s *screen) await(what string, args ...string) string {
	s.t.Helper()
	for end := time.Now().Add(60 * time.Second); time.Now().Before(end); time.Sleep(200 * time.Millisecond) {
		if out, err := s.xdotool(args...); err == nil && out != "" {
			return strings.Fields(out)[0]
		}
	}
	s.t.Fatalf("waited in vain for %s", what)
	return ""
}
