//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
)

// spoken has a text in every field that a search looks into.
func spoken() cases.Case {
	return cases.Case{
		ID: "SPOKEN", Title: "Alpha's hot-idle trouble", Opened: casetest.Start,
		Vehicle:   cases.Vehicle{Make: "bravo", Model: "charlie", Engine: "delta", VIN: "echo", Year: casetest.P(2012), Motive: "diesel"},
		Customer:  cases.Customer{Name: "foxtrot", Contact: "golf"},
		Loop:      cases.Loop{Layout: "inlet-thermostat-bottle"},
		Complaint: cases.Complaint{Text: "Kühler überhitzt", Symptoms: []cases.Symptom{"coolant-loss"}},
		Codes:     []cases.Code{{Code: "P0128", State: "stored"}},
		Rounds:    []cases.Round{{Label: "hotel", Stage: cases.AfterRepair}},
		Logs:      []cases.Log{{Name: "india"}},
		Tests:     []cases.Test{{Kind: "thermostat-bench"}},
		Verdict:   cases.Verdict{Cause: "combustion-leak", ConfirmedBy: "juliett", Note: "kilo"},
		Repair:    cases.Repair{Parts: []cases.Part{{Name: "lima"}}, AccessNote: "mike"},
		Photos:    []cases.Photo{{File: "photos/1.jpg", Caption: "november"}},
		Tags:      []string{"oscar"}, Lesson: "papa 日本語 Ёлка",
	}
}

func totalOf(t testing.TB, s *sqlite.Store, q cases.Query) int {
	t.Helper()
	page, err := s.Search(context.Background(), q)
	if err != nil {
		t.Fatalf("Search(%+v): %v", q, err)
	}
	if q.Limit == 0 && q.Offset == 0 && len(page.Items) != min(page.Total, 50) {
		t.Errorf("Search(%+v) shows %d of %d", q, len(page.Items), page.Total)
	}
	return page.Total
}

func TestSearchLooksEverywhere(t *testing.T) {
	s := open(t)
	put(t, s, spoken(), "new")
	put(t, s, cases.Case{ID: "X2", Title: "something else"}, "new")
	for _, text := range []string{
		"alpha", "bravo", "charlie", "delta", "echo", "2012", "diesel", "foxtrot", "golf", "inlet-thermostat-bottle",
		"coolant-loss", "loses coolant", "P0128", "p012", "stored", "hotel", "india", "thermostat-bench", "heated water",
		"combustion-leak", "combustion gas in coolant", "juliett", "kilo", "lima", "mike", "november", "oscar", "papa",
		"spok", "KUHLER", "überhitzt", "uberhitzt", "日本", "ёлк",
		"papa alpha", "al br ch", `"hot-idle"`, "idle hot", "alpha's", "kilo, mike", "(hot", "hot*", "-hot",
		"hot\x00idle", "hot\xffidle", "hot 🙂 idle",
	} {
		if n := totalOf(t, s, cases.Query{Text: text}); n != 1 {
			t.Errorf("Search(%q) finds %d, want 1", text, n)
		}
	}
	for _, text := range []string{"zulu", "alpha zulu", "lpha", "title:hot", "AND zulu", "hot OR zulu", "NOT hot", "NEAR(hot idle)"} {
		if n := totalOf(t, s, cases.Query{Text: text}); n != 0 {
			t.Errorf("Search(%q) finds %d, want 0: each is a word as any other", text, n)
		}
	}
}

func TestSearchTakesAnyText(t *testing.T) {
	s := open(t)
	put(t, s, spoken(), "new")
	for _, text := range []string{"", " ", `"`, `""`, "'", "(", ")(", "*", "-", "- -", "^", "{", ":", "\x00", "🙂", "…", "?!", "\xff"} {
		if n := totalOf(t, s, cases.Query{Text: text}); n != 1 {
			t.Errorf("Search(%q) finds %d, want all (1): no word was typed yet", text, n)
		}
	}
	for _, text := range []string{
		strings.Repeat("hot ", 2500), strings.Repeat("h", 10000), strings.Repeat(`"(`, 5000), strings.Repeat("ü", 10000),
		strings.Repeat("日", 20000), strings.Repeat("a-b c2 ", 1500), "AND", "NEAR(", "NOT NOT", "a OR", "\u0301", "x\u0301",
	} {
		totalOf(t, s, cases.Query{Text: text})
	}
}

func TestSearchRanksTheTitleFirst(t *testing.T) {
	s := open(t)
	put(t, s, cases.Case{ID: "BODY", Lesson: "impeller, impeller and impeller", Opened: casetest.Start.AddDate(1, 0, 0)}, "new")
	put(t, s, cases.Case{ID: "TITLE", Title: "Worn impeller of the pump", Lesson: "a long story about something else", Opened: casetest.Start}, "new")
	put(t, s, cases.Case{ID: "NEITHER", Title: "Cap"}, "new")
	page, err := s.Search(context.Background(), cases.Query{Text: "impel"})
	if err != nil || len(page.Items) != 2 || page.Items[0].ID != "TITLE" {
		t.Errorf("Search = %+v, %v; want TITLE first of two", page, err)
	}
}

// TestSearchFilters holds the SQL against the same filters in Go.
func TestSearchFilters(t *testing.T) {
	s := open(t)
	const n = 400
	fill(t, s, n)
	yes, no := true, false
	for _, q := range []cases.Query{
		{}, {Cause: "cap-weak"}, {Cause: cases.Healthy}, {Layout: "inlet-thermostat"}, {Stage: cases.BeforeRepair},
		{Stage: cases.AfterRepair}, {Stage: "during-repair"}, {Open: &yes}, {Open: &no}, {Open: &yes, Cause: "cap-weak"},
		{From: casetest.Start.Add(100 * time.Hour)}, {To: casetest.Start.Add(100 * time.Hour)},
		{From: casetest.Start.Add(time.Hour), To: casetest.Start.Add(3 * time.Hour)},
		{Text: "thermostat", Layout: "inlet-thermostat", Open: &no, Stage: cases.AfterRepair, From: casetest.Start.Add(50 * time.Hour)},
	} {
		want := 0
		for _, c := range casetest.Notebook(n) {
			if meets(c, q) {
				want++
			}
		}
		if got := totalOf(t, s, q); got != want {
			t.Errorf("Search(%+v) finds %d, want %d", q, got, want)
		}
	}
}

// meets is q's filters in Go; its text is taken to be in every case.
func meets(c cases.Case, q cases.Query) bool {
	after := len(c.Rounds) > 1 // as casetest builds them
	return (q.Cause == "" || q.Cause == c.Verdict.Cause) && (q.Layout == "" || q.Layout == c.Loop.Layout) &&
		(q.Stage == "" || q.Stage == cases.BeforeRepair || q.Stage == cases.AfterRepair && after) &&
		(q.Open == nil || *q.Open == (c.Verdict.Cause == "")) &&
		(q.From.IsZero() || !c.Opened.Before(q.From)) && (q.To.IsZero() || c.Opened.Before(q.To))
}

func TestSearchPages(t *testing.T) {
	s := open(t)
	const n = 120
	fill(t, s, n)
	for _, text := range []string{"", "thermostat"} { // a word of every case
		seen := map[string]bool{}
		for offset := 0; offset < n+50; offset += 50 {
			page, err := s.Search(context.Background(), cases.Query{Text: text, Offset: offset})
			if err != nil || page.Total != n {
				t.Fatalf("page from %d: total %d, %v; want %d", offset, page.Total, err, n)
			}
			for _, item := range page.Items {
				seen[item.ID] = true
			}
		}
		if len(seen) != n {
			t.Errorf("pages of %q show %d cases, want each of %d once", text, len(seen), n)
		}
	}
	page, err := s.Search(context.Background(), cases.Query{Limit: 1})
	want := casetest.Invented(n - 1)
	if err != nil || len(page.Items) != 1 || page.Items[0].ID != want.ID || !page.Items[0].Opened.Equal(want.Opened) {
		t.Errorf("first = %+v, %v; want the newest, %s", page, err, want.ID)
	}
}

func TestSummary(t *testing.T) {
	s := open(t)
	put(t, s, spoken(), "new")
	page, err := s.Search(context.Background(), cases.Query{})
	if err != nil {
		t.Fatal(err)
	}
	got := page.Items[0]
	if got.Changed.Before(casetest.Start) || got.Changed.After(casetest.Start.Add(time.Minute)) {
		t.Errorf("Changed = %v, not by the given clock", got.Changed)
	}
	got.Changed = time.Time{}
	want := cases.Summary{
		ID: "SPOKEN", Title: "Alpha's hot-idle trouble", Vehicle: "bravo charlie delta 2012",
		Layout: "inlet-thermostat-bottle", Cause: "combustion-leak", Opened: casetest.Start,
	}
	if got != want {
		t.Errorf("Summary = %+v, want %+v", got, want)
	}
}

func FuzzSearch(f *testing.F) {
	s := open(f)
	put(f, s, spoken(), "new")
	for _, text := range []string{"hot", `"hot`, "a AND b", "NEAR(x", "ü*", "title:x", "-", "日本", "\x00", strings.Repeat("x y", 99)} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if _, err := s.Search(context.Background(), cases.Query{Text: text}); err != nil {
			t.Errorf("Search(%q): %v", text, err)
		}
	})
}
