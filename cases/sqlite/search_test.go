//go:build sqlite_fts5 || fts5

package sqlite_test

import (
	"context"
	"fmt"
	"slices"
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
		"alpha", "bravo", "charlie", "delta", "echo", "2012", "diesel", "foxtrot", "golf",
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
	for _, text := range []string{"zulu", "alpha zulu", "title:hot", "AND zulu", "hot OR zulu", "NOT hot", "NEAR(hot idle)"} {
		if n := totalOf(t, s, cases.Query{Text: text}); n != 0 {
			t.Errorf("Search(%q) finds %d, want 0: each is a word as any other", text, n)
		}
	}
}

// Who looks for a part wants the cases that tell of it, not those of a loop that is
// named after it (judgement).
func TestALayoutIsNoWordOfItsCase(t *testing.T) {
	ctx, s := context.Background(), open(t)
	for _, c := range []cases.Case{
		{ID: "A", Loop: cases.Loop{Layout: "outlet-thermostat"}},
		{ID: "B", Loop: cases.Loop{Layout: "inlet-thermostat-bottle"}, Lesson: "The thermostat was new."},
		{ID: "C", Loop: cases.Loop{Layout: "inlet-thermostat"}, Tests: []cases.Test{{Kind: "thermostat-bench"}}}, // a check that was done
		{ID: "D", Loop: cases.Loop{Layout: "heated-thermostat"}, Verdict: cases.Verdict{ConfirmedBy: "thermostat-bench"}},
		{ID: "E", Loop: cases.Loop{Layout: "heated-thermostat"}},
	} {
		put(t, s, c, "new")
	}
	page, err := s.Search(ctx, cases.Query{Text: "thermostat", Sort: cases.Oldest})
	if err != nil || page.Total != 3 || page.Items[0].ID != "B" || page.Items[1].ID != "C" || page.Items[2].ID != "D" {
		t.Errorf("Search finds %+v, %v; want B, C and D", page.Items, err)
	}
	got, err := s.Snippets(ctx, []string{"A", "B", "C", "D", "E"}, "thermostat")
	want := map[string]cases.Snippet{
		"B": {Text: "The thermostat was new.", Marks: [][2]int{{4, 14}}},
		"C": {Text: "thermostat in heated water", Marks: [][2]int{{0, 10}}},
		"D": {Text: "thermostat in heated water", Marks: [][2]int{{0, 10}}},
	}
	if err != nil || fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("Snippets = %v, %v; want %v", got, err, want)
	}
	for _, text := range []string{"outlet", "bottle", "outlte"} {
		if n := totalOf(t, s, cases.Query{Text: text}); n != 0 {
			t.Errorf("Search(%q) finds %d, want 0", text, n)
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

func is(f cases.Field, words ...string) cases.Condition {
	return cases.Condition{Field: f, Words: words}
}

func between(f cases.Field, low, high float64) cases.Condition {
	return cases.Condition{Field: f, Low: low, High: high}
}

func not(c cases.Condition) cases.Condition {
	c.Not = true
	return c
}

// TestSearchFilters holds each filter against the same thing asked of the cases in
// Go.
func TestSearchFilters(t *testing.T) {
	s := open(t)
	const n = 400
	fill(t, s, n)
	all := casetest.Notebook(n)
	at := func(hours int) time.Time { return casetest.Start.Add(time.Duration(hours) * time.Hour) }
	for _, tt := range []struct {
		q    cases.Query
		want func(cases.Case) bool
	}{
		{cases.Query{}, func(c cases.Case) bool { return true }},
		{where(is(cases.ByCause, "cap-weak")), func(c cases.Case) bool { return c.Verdict.Cause == "cap-weak" }},
		{where(is(cases.ByCause, "cap-weak", "none")), func(c cases.Case) bool { return c.Verdict.Cause == "cap-weak" || c.Verdict.Cause == "none" }},
		{where(not(is(cases.ByCause, "cap-weak"))), func(c cases.Case) bool { return c.Verdict.Cause != "cap-weak" }},
		{where(is(cases.ByLayout, "inlet-thermostat")), func(c cases.Case) bool { return c.Loop.Layout == "inlet-thermostat" }},
		{where(is(cases.ByStage, "before-repair")), func(c cases.Case) bool { return true }},
		{where(is(cases.ByStage, "after-repair")), func(c cases.Case) bool { return len(c.Rounds) > 1 }}, // as casetest builds them
		{where(is(cases.ByStage, "during-repair")), func(c cases.Case) bool { return false }},
		{where(is(cases.ByStage, "open")), func(c cases.Case) bool { return c.Verdict.Cause == "" }},
		{where(is(cases.ByStage, "closed")), func(c cases.Case) bool { return c.Verdict.Cause != "" }},
		{where(is(cases.ByStage, "open"), is(cases.ByCause, "cap-weak")), func(c cases.Case) bool { return false }},
		{where(is(cases.ByCode, "p012")), func(c cases.Case) bool { return strings.HasPrefix(c.Codes[0].Code, "P012") }},
		{where(is(cases.BySymptom, "gauge-low")), func(c cases.Case) bool { return slices.Contains(c.Complaint.Symptoms, "gauge-low") }},
		{where(is(cases.ByTag, "winter"), is(cases.ByTag, "fleet")), func(c cases.Case) bool {
			return slices.Contains(c.Tags, "winter") && slices.Contains(c.Tags, "fleet")
		}},
		{where(is(cases.ByMake, "maker a")), func(c cases.Case) bool { return c.Vehicle.Make == "Maker A" }},
		{where(is(cases.ByModel, "van")), func(c cases.Case) bool { return c.Vehicle.Model == "van" }},
		{where(is(cases.ByEngine, "1.6")), func(c cases.Case) bool { return strings.HasPrefix(c.Vehicle.Engine, "1.6") }},
		{where(is(cases.ByMotive, "diesel")), func(c cases.Case) bool { return c.Vehicle.Motive == "diesel" }},
		{where(between(cases.ByYear, 2010, 2015)), func(c cases.Case) bool { return *c.Vehicle.Year >= 2010 && *c.Vehicle.Year <= 2015 }},
		{where(between(cases.ByKm, 0, 1e5)), func(c cases.Case) bool { return *c.Vehicle.OdometerKm <= 1e5 }},
		{where(cases.Between(at(100), time.Time{})), func(c cases.Case) bool { return !c.Opened.Before(at(100)) }},
		{where(cases.Between(time.Time{}, at(100))), func(c cases.Case) bool { return c.Opened.Before(at(100)) }},
		{where(cases.Between(at(1), at(3))), func(c cases.Case) bool { return !c.Opened.Before(at(1)) && c.Opened.Before(at(3)) }},
		{cases.Query{Text: "maker", Where: []cases.Condition{is(cases.ByLayout, "inlet-thermostat"), is(cases.ByStage, "closed")}, Sort: cases.Oldest},
			func(c cases.Case) bool { return c.Loop.Layout == "inlet-thermostat" && c.Verdict.Cause != "" }}, // a word of every case
	} {
		want := 0
		for _, c := range all {
			if tt.want(c) {
				want++
			}
		}
		if got := totalOf(t, s, tt.q); got != want {
			t.Errorf("Search(%+v) finds %d, want %d", tt.q, got, want)
		}
	}
}

func where(list ...cases.Condition) cases.Query { return cases.Query{Where: list} }

func TestSearchSorts(t *testing.T) {
	s := open(t)
	fill(t, s, 60)
	changed := casetest.Invented(7)
	changed.Lesson = "changed last"
	put(t, s, changed, "lesson")
	for _, with := range []cases.Query{{}, {Text: "maker"}, where(is(cases.ByStage, "open", "closed"))} {
		for sort, want := range map[cases.Sort]string{cases.Newest: "CASE-000059", cases.Oldest: "CASE-000000", cases.Recently: "CASE-000007"} {
			q := with
			q.Sort, q.Limit = sort, 1
			page, err := s.Search(context.Background(), q)
			if err != nil || page.Total != 60 || page.Items[0].ID != want {
				t.Errorf("Search(%+v) = %+v, %v; want %s first of 60", q, page, err, want)
			}
		}
	}
	if _, err := s.Search(context.Background(), cases.Query{Sort: "sideways"}); err == nil {
		t.Error("an unknown order is no error")
	}
}

func TestSearchForgivesSlips(t *testing.T) {
	s := open(t)
	put(t, s, spoken(), "new")
	put(t, s, cases.Case{ID: "X2", Title: "Worn impeller of the thermostat housing"}, "new")
	for typed, read := range map[string]string{
		"thermsotat": "thermostat", "impellr": "impeller", "housng thermostat": "housing thermostat",
		"kuhller": "kuhler", "Impeler": "impeller", "thermosttat": "thermostat",
	} {
		page, err := s.Search(context.Background(), cases.Query{Text: typed})
		if err != nil || page.Total == 0 || page.ReadAs != read {
			t.Errorf("Search(%q) finds %d read as %q, %v; want %q", typed, page.Total, page.ReadAs, err, read)
		}
	}
	for _, typed := range []string{"zulu", "qqqq", "thremsoatt", "xyz", "P9999"} {
		if page, err := s.Search(context.Background(), cases.Query{Text: typed}); err != nil || page.Total != 0 {
			t.Errorf("Search(%q) finds %d as %q, %v; want none", typed, page.Total, page.ReadAs, err)
		}
	}
}

// A word that no case has any more doesn't stand before one that finds something.
func TestSearchForgetsWhatNoCaseHas(t *testing.T) {
	ctx, s := context.Background(), open(t)
	c := cases.Case{ID: "X1", Lesson: "gasket"}
	put(t, s, c, "new")
	put(t, s, cases.Case{ID: "X2", Lesson: "basket"}, "new")
	read := func(typed, want string) {
		t.Helper()
		if page, err := s.Search(ctx, cases.Query{Text: typed}); err != nil || page.ReadAs != want {
			t.Errorf("%q is read as %q, %v; want %q", typed, page.ReadAs, err, want)
		}
	}
	read("gaskett", "gasket")
	c.Lesson = "nothing"
	put(t, s, c, "lesson")
	read("gaskett", "basket")
	if _, err := s.Undo(ctx, c.ID); err != nil {
		t.Fatal(err)
	}
	read("gaskett", "gasket")
	for _, id := range []string{"X1", "X2"} {
		if err := s.Delete(ctx, id); err != nil {
			t.Fatal(err)
		}
	}
	read("gaskett", "")
}

func TestFacets(t *testing.T) {
	s := open(t)
	const n = 200
	fill(t, s, n)
	causes, tags := map[string]int{}, map[string]int{}
	for _, c := range casetest.Notebook(n) {
		if c.Loop.Layout == "inlet-thermostat" {
			causes[string(c.Verdict.Cause)]++
			for _, tag := range c.Tags {
				tags[tag]++
			}
		}
	}
	got, err := s.Facets(context.Background(), cases.Query{Text: "maker", Where: []cases.Condition{is(cases.ByLayout, "inlet-thermostat")}})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range got[cases.ByCause] {
		if causes[c.Word] != c.N {
			t.Errorf("%s counts %d, want %d", c.Word, c.N, causes[c.Word])
		}
	}
	for i, c := range got[cases.ByTag] {
		if tags[c.Word] != c.N || i > 0 && c.N > got[cases.ByTag][i-1].N {
			t.Errorf("%s counts %d, want %d, the most first", c.Word, c.N, tags[c.Word])
		}
	}
	if len(got[cases.ByTag]) != len(tags) {
		t.Errorf("%d tags, want %d", len(got[cases.ByTag]), len(tags))
	}
}

func TestSnippets(t *testing.T) {
	s := open(t)
	put(t, s, spoken(), "new")
	got, err := s.Snippets(context.Background(), []string{"SPOKEN", "nobody"}, "uberh KÜHL")
	want := cases.Snippet{Text: "Kühler überhitzt", Marks: [][2]int{{0, 7}, {8, 18}}}
	if err != nil || fmt.Sprint(got["SPOKEN"]) != fmt.Sprint(want) || len(got) != 1 {
		t.Errorf("Snippets = %v, %v; want %v", got, err, want)
	}
	if got, err := s.Snippets(context.Background(), []string{"SPOKEN"}, "alpha hot"); err != nil || len(got) != 0 {
		t.Errorf("Snippets of what the title holds = %v, %v", got, err)
	}
	long := spoken()
	long.Lesson = strings.Repeat("ä word ", 40) + "needle" + strings.Repeat(" ö word", 40)
	put(t, s, long, "lesson")
	got, err = s.Snippets(context.Background(), []string{"SPOKEN"}, "needl")
	one := got["SPOKEN"]
	if err != nil || len(one.Marks) != 1 || one.Text[one.Marks[0][0]:one.Marks[0][1]] != "needle" || len(one.Text) > 200 {
		t.Errorf("Snippets = %+v, %v", one, err)
	}
}

func TestSearchPages(t *testing.T) {
	s := open(t)
	const n = 120
	fill(t, s, n)
	for _, text := range []string{"", "maker"} { // a word of every case
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
	if lines, err := s.Summaries(context.Background(), []int64{got.Key + 1, got.Key}); err != nil || len(lines) != 1 || lines[0] != got {
		t.Errorf("with a row that is gone the lines are %+v, %v; want the other's, by its key", lines, err)
	}
	got.Key, got.Changed = 0, time.Time{}
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
