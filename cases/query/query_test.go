package query_test

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/query"
)

func TestParse(t *testing.T) {
	inf := math.Inf(1)
	unix := func(y, m int) float64 { return float64(time.Date(y, time.Month(m), 1, 0, 0, 0, 0, time.UTC).Unix()) }
	is := func(f cases.Field, words ...string) cases.Condition { return cases.Condition{Field: f, Words: words} }
	for _, tt := range []struct {
		text, words string
		where       []cases.Condition
		sort        cases.Sort
	}{
		{"", "", nil, ""},
		{"  cold   feet ", "cold feet", nil, ""},
		{"hose cause:pump-weak cold", "hose cold", []cases.Condition{is(cases.ByCause, "pump-weak")}, ""},
		{"cause:pump", "", []cases.Condition{is(cases.ByCause, "pump-weak")}, ""},
		{`cause:"pump weak"`, "", []cases.Condition{is(cases.ByCause, "pump-weak")}, ""},
		{"CAUSE:Pump-Weak,cap-weak", "", []cases.Condition{is(cases.ByCause, "pump-weak", "cap-weak")}, ""},
		{"-tag:fleet", "", []cases.Condition{{Field: cases.ByTag, Not: true, Words: []string{"fleet"}}}, ""},
		{`tag:"two words" tag:one`, "", []cases.Condition{is(cases.ByTag, "two words"), is(cases.ByTag, "one")}, ""},
		{"code:p0128 stage:open", "", []cases.Condition{is(cases.ByCode, "p0128"), is(cases.ByStage, "open")}, ""},
		{"layout:split-head-block", "", []cases.Condition{is(cases.ByLayout, "split-head-block")}, ""},
		{"year:2010..2015", "", []cases.Condition{{Field: cases.ByYear, Low: 2010, High: 2015}}, ""},
		{"year:2012 km:..150000", "", []cases.Condition{{Field: cases.ByYear, Low: 2012, High: 2012}, {Field: cases.ByKm, Low: -inf, High: 150000}}, ""},
		{"km:1e5..", "", []cases.Condition{{Field: cases.ByKm, Low: 1e5, High: inf}}, ""},
		{"opened:2014-03..2014-05", "", []cases.Condition{{Field: cases.ByOpened, Low: unix(2014, 3), High: unix(2014, 6)}}, ""},
		{"opened:2014..", "", []cases.Condition{{Field: cases.ByOpened, Low: unix(2014, 1), High: inf}}, ""},
		{"sort:oldest x", "x", nil, cases.Oldest},
		{"title:hot a:b http://x", "title:hot a:b http://x", nil, ""}, // no such fields: words as any
	} {
		got := query.Parse(tt.text, time.UTC)
		if len(got.Problems) > 0 || got.Query.Text != tt.words || got.Query.Sort != tt.sort || fmt.Sprint(got.Query.Where) != fmt.Sprint(tt.where) {
			t.Errorf("Parse(%q) = %+v, %v", tt.text, got.Query, got.Problems)
		}
	}
}

func TestProblemsAreToldAndLeftOut(t *testing.T) {
	for text, why := range map[string]query.Why{
		"cause:gremlins": query.NoSuchWord, "cause:thermostat": query.ManyWords, "cause:": query.Empty, "cause:,": query.Empty,
		"year:old": query.NoRange, "year:2015..2010": query.NoRange, "km:..": query.NoRange, "opened:14": query.NoDate,
		"symptm:gauge-low": query.NoField, "casue:pump-weak": query.NoField, "-Tags:fleet": query.NoField, "opned:2014": query.NoField,
		"opened:2014-13": query.NoDate, "opened:2015..2014": query.NoDate, `tag:""`: query.Empty, "sort:sideways": query.NoSuchWord, "layout:ring": query.NoSuchWord,
	} {
		got := query.Parse("cold "+text, time.UTC)
		if len(got.Problems) != 1 || got.Problems[0].Why != why || got.Problems[0].Token != text || got.Query.Text != "cold" || len(got.Query.Where) != 0 {
			t.Errorf("Parse(%q) = %+v, want %s", text, got, why)
		}
	}
	for typed, want := range map[string]string{"cause:pmup-weak": "pump-weak", "cause:pmup": "pump-weak", "stage:opn": "open"} { // a slip, typed in full or not
		if near := query.Parse(typed, time.UTC).Problems[0].Near; !slices.Equal(near, []string{want}) {
			t.Errorf("near to %s is %v, want %s", typed, near, want)
		}
	}
	if near := query.Parse("cause:heater-box", time.UTC).Problems[0].Near; len(near) == 0 {
		t.Error("no word near heater-box")
	}
}

func TestToggle(t *testing.T) {
	text := "cold  feet"
	text = query.Toggle(text, cases.ByCause, "pump-weak")
	text = query.Toggle(text, cases.ByTag, "two words")
	if want := `cold feet cause:pump-weak tag:"two words"`; text != want {
		t.Fatalf("Toggle = %q, want %q", text, want)
	}
	if !query.Has(text, cases.ByTag, "Two words") || query.Has(text, cases.ByTag, "two") {
		t.Error("Has is wrong")
	}
	if both := query.Toggle(text, cases.ByTag, "fleet"); both != text+" tag:fleet" || query.Toggle(both, cases.ByTag, "fleet") != text {
		t.Errorf("with another tag %q", both)
	}
	if one := query.Toggle("", cases.ByTag, "fleet"); one != "tag:fleet" || query.Toggle(one, cases.ByTag, "fleet") != "" {
		t.Errorf("one filter alone %q, toggled again %q", one, query.Toggle(one, cases.ByTag, "fleet"))
	}
	text = query.SortBy(query.SortBy(text, cases.Oldest), cases.Newest)
	if text = query.Toggle(text, cases.ByTag, "two words"); text != "cold feet cause:pump-weak sort:newest" {
		t.Errorf("taken out again %q", text)
	}
	if got := query.SortBy(text, ""); got != "cold feet cause:pump-weak" {
		t.Errorf("without an order %q", got)
	}
}

func FuzzParse(f *testing.F) {
	f.Add(`a "b c" -tag:"x y" cause:pump year:1..2 opened:2014 sort:`)
	f.Add("\xff:\x00 cause:\xff")
	f.Fuzz(func(t *testing.T, text string) {
		got := query.Parse(text, time.UTC)
		if again := query.Parse(text, time.UTC); fmt.Sprint(again) != fmt.Sprint(got) {
			t.Fatal("the same text is read in two ways")
		}
		added := query.Toggle(text, cases.ByTag, "fuzz")
		if query.Has(added, cases.ByTag, "fuzz") == query.Has(text, cases.ByTag, "fuzz") {
			t.Fatalf("%q toggled is %q", text, added)
		}
	})
}

// What is written is read as the same conditions.
func TestWrite(t *testing.T) {
	for _, text := range []string{
		"cause:pump-weak,cap-weak -tag:fleet", `tag:"two words" code:P0128`, "year:2010..2015 km:..150000", "month:11 guess:wrong sure:20..39.99",
		"opened:2014-03-01..2014-05-31",
	} {
		want := query.Parse(text, time.UTC)
		got := query.Parse(query.Write(want.Query.Where), time.UTC)
		if len(want.Problems) > 0 || fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("%q written as %q is %+v", text, query.Write(want.Query.Where), got)
		}
	}
}

// A word with a comma in it is one word where it stands in quotation marks: a number of the history led to the cases of every
// engine that begins as a part of its name does.
func TestAWordMayHoldAComma(t *testing.T) {
	where := []cases.Condition{{Field: cases.ByEngine, Words: []string{"2.0, 16V"}}, {Field: cases.ByTag, Words: []string{"a,b", "c d", "e"}}}
	text := query.Write(where)
	if got := query.Parse(text, time.UTC); len(got.Problems) > 0 || fmt.Sprint(got.Query.Where) != fmt.Sprint(where) {
		t.Errorf("%q is read as %v", text, got.Query.Where)
	}
	clicked := query.Toggle("", cases.ByMake, "Halvren, Sons")
	if got := query.Parse(clicked, time.UTC).Query.Where; len(got) != 1 || len(got[0].Words) != 1 || got[0].Words[0] != "Halvren, Sons" || !query.Has(clicked, cases.ByMake, "Halvren, Sons") {
		t.Errorf("clicked, %q is read as %v", clicked, got)
	}
}
