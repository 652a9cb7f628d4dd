package command

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// call runs a command line and gives its exit code and what it wrote.
func call(t *testing.T, stdin string, args ...string) (code int, out, errs string) {
	t.Helper()
	var o, e bytes.Buffer
	code = Run(context.Background(), args, Console{In: strings.NewReader(stdin), Out: &o, Err: &e}, noWindow)
	return code, o.String(), e.String()
}

const exampleCase = "../../testdata/cases/format-example.json"

func TestAnalysePrintsALineForEachCase(t *testing.T) {
	text, err := os.ReadFile(exampleCase)
	if err != nil {
		t.Fatal(err)
	}
	code, out, errs := call(t, string(text), "analyse", exampleCase, "-")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if code != fine || len(lines) != 2 || errs != "" {
		t.Fatalf("analyse = %d, %d lines, %q", code, len(lines), errs)
	}
	for _, line := range lines {
		var answer map[string]json.RawMessage
		if err := json.Unmarshal([]byte(line), &answer); err != nil {
			t.Fatalf("not JSON: %v", err)
		}
		for _, key := range []string{"id", "deltas", "flags", "causes", "next", "boiling", "warm_up"} {
			if _, ok := answer[key]; !ok {
				t.Errorf("the answer has no %q: %s", key, line)
			}
		}
	}
}

func TestBadInputNamesThePlaceAndLeavesTheNotebook(t *testing.T) {
	dir := t.TempDir()
	notebook := filepath.Join(dir, "n.db")
	good, err := os.ReadFile(exampleCase)
	if err != nil {
		t.Fatal(err)
	}
	if code, _, errs := call(t, "", "import", exampleCase, "--notebook", notebook); code != fine {
		t.Fatalf("import = %d, %q", code, errs)
	}
	zeros := filepath.Join(dir, "zeros")
	if f, err := os.Create(zeros); err != nil {
		t.Fatal(err)
	} else if err := f.Truncate(200 << 20); err != nil {
		t.Fatal(err)
	} else if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	replaced := func(old, new string) string {
		out := strings.Replace(string(good), old, new, 1)
		if out == string(good) {
			t.Fatalf("the example no longer holds %q", old)
		}
		return out
	}
	for _, tt := range []struct{ name, text, want string }{
		{"wrong type", replaced(`"shown_c": 63.5`, `"shown_c": "63.5"`), "rounds[0].readings[0].shown_c"},
		{"4000 °C", replaced(`"shown_c": 63.5`, `"shown_c": 4000`), "rounds[0].readings[0].shown_c"},
		{"unknown layout", replaced(`"layout": "outlet-thermostat"`, `"layout": "ring"`), "loop.layout"},
		{"cut zip", "PK\x03\x04cut", "zip"},
		{"empty", "", "empty"},
	} {
		file := filepath.Join(dir, "bad")
		if err := os.WriteFile(file, []byte(tt.text), 0o600); err != nil {
			t.Fatal(err)
		}
		refused(t, tt.name, notebook, file, tt.want)
	}
	refused(t, "200 MB of zeros", notebook, zeros, "zeros")
}

func refused(t *testing.T, name, notebook, file, want string) {
	t.Helper()
	for _, command := range [][]string{{"import", exampleCase, file, "--notebook", notebook}, {"analyse", file}, {"report", file, "-o", file + ".pdf"}} {
		code, _, errs := call(t, "", command...)
		if code != wrongInput || !strings.Contains(errs, want) || !strings.Contains(errs, filepath.Base(file)) {
			t.Errorf("%s: %s = %d, %q; want %d with %q and the file's name", name, command[0], code, errs, wrongInput, want)
		}
	}
	if _, out, _ := call(t, "", "search", "--notebook", notebook); strings.Count(out, "\n") != 1 {
		t.Errorf("%s: the notebook holds %q, want the one case of before", name, out)
	}
}

func TestImportFindExport(t *testing.T) {
	notebook, out := filepath.Join(t.TempDir(), "n.db"), filepath.Join(t.TempDir(), "out.json")
	if code, _, errs := call(t, "", "import", exampleCase, "--notebook", notebook); code != fine {
		t.Fatal(errs)
	}
	code, found, _ := call(t, "", "search", "slow", "cab", "--notebook", notebook)
	id, _, _ := strings.Cut(found, "\t")
	if code != fine || id != "01JDZK8QJ6M3T3J1W5Q2B6V9XA" {
		t.Fatalf("search = %d, %q", code, found)
	}
	if code, _, errs := call(t, "", "export", id, "-o", out, "--notebook", notebook); code != fine {
		t.Fatal(errs)
	}
	code, answer, errs := call(t, "", "analyse", out)
	_, before, _ := call(t, "", "analyse", exampleCase)
	if code != fine || answer != before {
		t.Errorf("the exported case is judged %q (%s), the imported %q", answer, errs, before)
	}
}

func TestWrongUsage(t *testing.T) {
	for _, args := range [][]string{
		{"dance"}, {"analyse"}, {"report", exampleCase}, {"report", exampleCase, "-o", "x.pdf", "--page", "a9"},
		{"simulate"}, {"simulate", "--layout", "outlet-thermostat", "--cause", "gremlins"}, {"simulate", "--layout", "x", "--csv", "--case"},
		{"export", "x"}, {"import"}, {"layouts", "x"}, {"search", "--nonsense"}, {"--notebook"}, {"tour", "x"}, {"history", "x"},
		{"simulate", "--layout", "outlet-thermostat", "--ambient-c", "80"}, {"simulate", "--layout", "outlet-thermostat", "--ambient-c", "NaN"},
		{"simulate", "--layout", "outlet-thermostat", "--altitude-m", "10000"},
		{"simulate", "--layout", "outlet-thermostat", "--severity", "5"}, {"simulate", "--layout", "outlet-thermostat", "--severity", "NaN"},
	} {
		if code, _, errs := call(t, "", args...); code != wrongUsage || errs == "" {
			t.Errorf("loopbook %v = %d, %q; want %d and a word why", args, code, errs, wrongUsage)
		}
	}
	if _, _, errs := call(t, "", exampleCase); !strings.Contains(errs, "loopbook import "+exampleCase) {
		t.Errorf("a case where a command stands = %q", errs)
	}
	notebook := filepath.Join(t.TempDir(), "n.db")
	for _, args := range [][]string{{"search", "x"}, {"export", "x", "-o", "y"}} { // a mistyped name makes no new notebook
		if code, _, errs := call(t, "", append(args, "--notebook", notebook)...); code != wrongInput || !strings.Contains(errs, notebook) {
			t.Errorf("%s of a notebook that isn't there = %d, %q", args[0], code, errs)
		}
	}
	if _, err := os.Stat(notebook); err == nil {
		t.Error("reading made a notebook")
	}
	call(t, "", "import", exampleCase, "--notebook", notebook)
	if _, _, errs := call(t, "", notebook); !strings.Contains(errs, "loopbook --notebook "+notebook) {
		t.Errorf("a notebook where a command stands = %q", errs)
	}
	if code, _, errs := call(t, "", "export", "nobody", "-o", "x", "--notebook", notebook); code != wrongInput || !strings.Contains(errs, "no such case") {
		t.Errorf("export of an unknown case = %d, %q", code, errs)
	}
}

func TestEveryCommandHelps(t *testing.T) {
	for name := range commands() {
		if code, out, _ := call(t, "", name, "--help"); code != fine || !strings.Contains(out, "loopbook "+name) {
			t.Errorf("%s --help = %d, %q", name, code, out)
		}
	}
	for _, args := range [][]string{{"--help"}, {"-h"}, {"-help"}, {"help"}, {"--notebook", "x.db", "--help"}} {
		if code, out, _ := call(t, "", args...); code != fine || !strings.Contains(out, "analyse") {
			t.Errorf("%v = %d, %q", args, code, out)
		}
	}
}

func TestReportWritesAPDF(t *testing.T) {
	out := filepath.Join(t.TempDir(), "case.pdf")
	if code, _, errs := call(t, "", "report", exampleCase, "-o", out); code != fine {
		t.Fatal(errs)
	}
	text, err := os.ReadFile(out)
	if err != nil || !bytes.HasPrefix(text, []byte("%PDF-")) {
		t.Errorf("%d bytes, %v: not a PDF", len(text), err)
	}
}

// A slip after -o put a PDF in the case's place, and what a flag asks for was passed over: a record was handed out with its
// answer, though it was to be without.
func TestReportRefusesWhatItCantMean(t *testing.T) {
	text, err := os.ReadFile(exampleCase)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "case.json")
	if err := os.WriteFile(file, text, 0o600); err != nil {
		t.Fatal(err)
	}
	out := filepath.Join(t.TempDir(), "out.pdf")
	for _, args := range [][]string{{"-o", file}, {"-o", out, "--without-answer"}, {"-o", out, "--paper", "customer", "--named"}} {
		if code, _, errs := call(t, "", append([]string{"report", file}, args...)...); code != wrongUsage || errs == "" {
			t.Errorf("report %v = %d, %q", args, code, errs)
		}
	}
	if now, err := os.ReadFile(file); err != nil || !bytes.Equal(now, text) {
		t.Errorf("the case has %d bytes, %v; want its own %d", len(now), err, len(text))
	}
	if _, err := os.Stat(out); err == nil {
		t.Error("a paper was written")
	}
}

// Who stops the program gets no answers that were made without the model, as if that had been asked.
func TestAnalyseStops(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	stop()
	var out, errs bytes.Buffer
	if code := Run(ctx, []string{"analyse", exampleCase, exampleCase}, Console{Out: &out, Err: &errs}, noWindow); code != wrongInput || out.Len() > 0 || !strings.Contains(errs.String(), "stopped") {
		t.Errorf("stopped, it answers %d, %q, %q", code, out.String(), errs.String())
	}
}

func TestBehindTwoDashesNothingIsAFlag(t *testing.T) {
	for _, args := range [][]string{{"--", "-a.json", "-b.json"}, {"c.json", "--", "-a.json", "-b.json"}} {
		rest, err := parse(flag.NewFlagSet("x", flag.ContinueOnError), args)
		if err != nil || len(rest) != len(args)-1 {
			t.Errorf("%v leaves %v, %v", args, rest, err)
		}
	}
}

func TestLayoutsAreListed(t *testing.T) {
	_, out, _ := call(t, "", "layouts")
	for _, want := range []string{"outlet-thermostat\n", "inlet-thermostat\n", "inlet-thermostat-bottle\n", "bottle_bleed"} {
		if !strings.Contains(out, want) {
			t.Errorf("layouts don't hold %q: %s", want, out)
		}
	}
}

func TestTourShowsTheMainJob(t *testing.T) {
	home, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chdir(t.TempDir()); err != nil {
		t.Fatal(err)
	}
	defer os.Chdir(home) // t.Chdir needs a newer Go
	code, out, errs := call(t, "", "tour")
	for _, want := range []string{"across radiator", "out of range", "What it means", "Loopbook-demo.pdf"} {
		if code != fine || !strings.Contains(out, want) {
			t.Errorf("tour = %d, %q; %q is missing in:\n%s", code, errs, want, out)
		}
	}
	if text, err := os.ReadFile("Loopbook-demo.pdf"); err != nil || !bytes.HasPrefix(text, []byte("%PDF-")) {
		t.Errorf("the paper has %d bytes, %v", len(text), err)
	}
}

func TestSimulatedCaseIsAnalysed(t *testing.T) {
	code, text, errs := call(t, "", "simulate", "--layout", "outlet-thermostat", "--cause", "thermostat-stuck-open", "--ambient-c", "5")
	if code != fine {
		t.Fatal(errs)
	}
	if code, answer, errs := call(t, text, "analyse", "-"); code != fine || !strings.Contains(answer, "thermostat-passing-early") {
		t.Errorf("analyse = %d, %q, %s", code, errs, answer)
	}
	if code, series, _ := call(t, "", "simulate", "--layout", "inlet-thermostat", "--csv"); code != fine || !strings.HasPrefix(series, "time_s,") {
		t.Errorf("a time series = %d, %.40q", code, series)
	}
}

// noWindow is in the window's place: what is called here needs none.
func noWindow(context.Context, string) error { return errors.New("a window was asked for") }
