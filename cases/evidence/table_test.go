package evidence_test

import (
	"encoding/json"
	"errors"
	"regexp"
	"strings"
	"testing"

	"loopbook/assets"
	"loopbook/cases/evidence"
	"loopbook/diagram/published"
)

// Every row of the table cites figures that stand in testdata/trade, and none
// claims a better class of source than the figure has.
func TestTableCitesWhatStandsInTheTradeData(t *testing.T) {
	classes := map[string]string{}
	for _, r := range published.Rows(t, "trade/numbers.csv") {
		classes[r["id"]] = r["source_class"]
	}
	for _, r := range published.Rows(t, "trade/signatures.csv") {
		classes[r["fault_id"]+" "+r["condition"]] = r["delta_class"]
	}

	var table map[string][]struct {
		Class  string
		Source struct{ ID string }
	}
	var whole map[string]json.RawMessage
	if err := json.Unmarshal(assets.Expected, &whole); err != nil {
		t.Fatal(err)
	}
	delete(whole, "about")
	text, _ := json.Marshal(whole)
	if err := json.Unmarshal(text, &table); err != nil {
		t.Fatal(err)
	}
	for part, rows := range table {
		for i, r := range rows {
			memory := false
			for _, id := range strings.Split(r.Source.ID, ", ") {
				class, ok := classes[id]
				if !ok {
					t.Errorf("%s[%d]: %q stands nowhere", part, i, id)
				}
				memory = memory || strings.HasPrefix(class, "from memory")
				if r.Class == "published" && !strings.HasPrefix(class, "published") {
					t.Errorf("%s[%d]: %s is %q, not published", part, i, id, class)
				}
			}
			if memory && r.Class == "published" {
				t.Errorf("%s[%d]: from memory in part, says %q", part, i, r.Class)
			}
		}
	}
}

// Each entry is a slip that a person who edits the table can make.
func TestFaultyTableNamesRowAndKey(t *testing.T) {
	first := regexp.MustCompile(`\{"name": "across-radiator".*\n`).FindString(string(assets.Expected))
	point := regexp.MustCompile(`\{"point": "housing".*\n`).FindString(string(assets.Expected))
	for _, tt := range []struct{ in, old, new, want string }{
		{first, `"across-radiator"`, `"across-radiators"`, "deltas[0].name"},
		{first, `"low_k": 8`, `"low_k": 80`, "deltas[0].low_k"},
		{first, `"low_k": 8, "high_k": 30,`, ``, "deltas[0]: needs"},
		{first, `"at"`, `"warm"`, "deltas[0].when.regime"},
		{first, `"idle"`, `"idling"`, "deltas[0].when.pace"},
		{first, `"on"`, `"running"`, "deltas[0].when.fan"},
		{first, `"F00 HIDLE_FAN"`, `""`, "deltas[0].source"},
		{first, `"common practice"`, `"hearsay"`, "deltas[0].class"},
		{first, `"when"`, `"whenever"`, "whenever"},
		{point, `"housing"`, `"house"`, "points[0].point"},
		{point, `"from": "engine"`, `"from": "sea"`, "points[0].from"},
		{point, `"high_k": 5,`, ``, "points[0]: needs"},
	} {
		text := strings.Replace(string(assets.Expected), tt.in, strings.Replace(tt.in, tt.old, tt.new, 1), 1)
		if tt.in == "" || text == string(assets.Expected) {
			t.Fatalf("the table no longer holds %q", tt.old)
		}
		if _, err := evidence.LoadTable([]byte(text)); !errors.Is(err, evidence.ErrTable) || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s for %s: %v, want %q named", tt.new, tt.old, err, tt.want)
		}
	}
}
