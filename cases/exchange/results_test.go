package exchange_test

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/exchange"
)

func results() []cases.Result {
	at := time.Date(2026, 3, 4, 18, 30, 9, 0, time.UTC)
	return []cases.Result{
		{Trainee: "Liv", Class: "=Tuesday", CaseID: "a", Title: "No heat, \"cold\"", Finished: at, Named: "cap-weak", Truth: "pump-weak", Confidence: 0.7, Bits: -1.5, Minutes: 12, BestMinutes: 8.5, Bought: []string{"cap", "rad_in in round 1"}},
		{Trainee: "'Ada", CaseID: "b", Finished: at, Truth: "pump-weak"},
	}
}

// Results come back from their table as they left, what a spreadsheet would take for a formula too.
func TestResultsTravel(t *testing.T) {
	var file bytes.Buffer
	if err := exchange.WriteResults(&file, results()); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(file.String(), ",=Tuesday") {
		t.Errorf("a formula stands in\n%s", file.String())
	}
	got, err := exchange.ReadResults("r.csv", &file)
	if err != nil || fmt.Sprintf("%+v", got) != fmt.Sprintf("%+v", results()) {
		t.Errorf("came back as %+v, %v", got, err)
	}
}

// A table that is something else, or was changed on its way, is refused whole with the place.
func TestOddResultsAreRefused(t *testing.T) {
	var file bytes.Buffer
	if err := exchange.WriteResults(&file, results()); err != nil {
		t.Fatal(err)
	}
	good := file.String()
	for bad, want := range map[string]string{
		"":                                  "isn't a table of results",
		"time_s,ect_c\n1,2\n":               "isn't a table of results",
		good + "x":                          "isn't a table of results",
		swap(good, "2026-03-04", "4/3/"):    "row 2: finished",
		swap(good, "cap-weak", "capweak"):   "row 2: named",
		swap(good, "12.0", "NaN"):           "row 2: minutes",
		swap(good, "0.70", "1e300"):         "row 2: confidence",
		swap(good, "b,,,pump-weak", "b,,,"): "row 3: truth",

		good + strings.Repeat("\n", 16<<20): "is larger than",
	} {
		if got, err := exchange.ReadResults("r.csv", strings.NewReader(bad)); err == nil || len(got) > 0 || !strings.Contains(err.Error(), want) {
			t.Errorf("%.400q: %d results, %v; want %q", bad, len(got), err, want)
		}
	}
}

// A table of results is told from a log by its heads, also once a spreadsheet has saved it its own way; a log is none.
func TestResultsAreToldFromLogs(t *testing.T) {
	var file bytes.Buffer
	if err := exchange.WriteResults(&file, results()); err != nil {
		t.Fatal(err)
	}
	good := file.String()
	saved := "\ufeff" + strings.ReplaceAll(strings.ReplaceAll(good, ",", ";"), "\n", "\r\n")
	for text, want := range map[string]bool{good: true, saved: true, "": false, "time_s,ect_c\n1,2\n": false, good[20:]: false, strings.Repeat("finished,", 1000): false} {
		if got := exchange.IsResults(strings.NewReader(text)); got != want {
			t.Errorf("%.60q is one: %t", text, got)
		}
	}
}

func swap(text, old, now string) string { return strings.Replace(text, old, now, 1) }
