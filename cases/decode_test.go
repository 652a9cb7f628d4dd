package cases_test

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"

	"loopbook/cases"
)

func example(t testing.TB) []byte {
	t.Helper()
	text, err := os.ReadFile("../testdata/cases/format-example.json")
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func TestDecodeExample(t *testing.T) {
	c, err := cases.Decode(example(t))
	if err != nil {
		t.Fatal(err)
	}
	r := c.Rounds[0].Readings[0]
	if r.Point != "rad_in" || *r.ShownC != 63.5 || r.Surface.Word != "rubber" {
		t.Errorf("first reading = %+v", r)
	}
	if *c.Loop.CapKPa != 110 || *c.Tests[0].StartKPa != 100 || c.Logs[0].EctC[1] != 12 {
		t.Errorf("cap, pressure or log not read: %+v", c)
	}
}

func TestRoundTripKeepsWhatItDoesNotKnow(t *testing.T) {
	text := strings.Replace(string(example(t)), `"lesson": ""`, `"lesson": "a < b", "newer": {"x": [1, null, "ü"]}`, 1)
	text = strings.Replace(text, `"point": "rad_in",`, `"point": "rad_in", "angle_deg": 12,`, 1)
	first, err := cases.Decode([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	once, err := cases.Encode(first)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{`"newer":{"x": [1, null, "ü"]}`, `"angle_deg":12`, `"a < b"`} {
		if !bytes.Contains(once, []byte(want)) {
			t.Errorf("written case lost %s:\n%s", want, once)
		}
	}
	second, err := cases.Decode(once)
	if err != nil {
		t.Fatalf("Decode of our own text: %v", err)
	}
	twice, err := cases.Encode(second)
	if err != nil || !bytes.Equal(once, twice) {
		t.Errorf("second writing differs (%v):\n%s\n%s", err, once, twice)
	}
}

func TestDecodeNamesThePlace(t *testing.T) {
	for _, tt := range []struct{ name, old, new, want string }{
		{"wrong type", `"shown_c": 63.5`, `"shown_c": "63.5"`, "rounds[0].readings[0].shown_c: must be a number, not text"},
		{"too hot", `"shown_c": 63.5`, `"shown_c": 4000`, "rounds[0].readings[0].shown_c"},
		{"too cold in a log", `"ect_c": [12.0, 12.0]`, `"ect_c": [12.0, -400]`, "logs[0].ect_c[1]"},
		{"unknown layout", `"layout": "outlet-thermostat"`, `"layout": "ring"`, "loop.layout: unknown layout"},
		{"unknown symptom", `"cabin-heat-poor"`, `"cold feet"`, "complaint.symptoms[1]"},
		{"unknown point", `"point": "rad_in"`, `"point": "somewhere"`, "rounds[0].readings[0].point"},
		{"unknown surface", `"surface": "rubber"`, `"surface": "felt"`, "rounds[0].readings[0].surface"},
		{"emissivity over 1", `"surface": "rubber"`, `"surface": 1.2`, "rounds[0].readings[0].surface"},
		{"other format", `"loopbook-case"`, `"shopping-list"`, "format"},
		{"newer version", `"version": 1`, `"version": 2`, "version"},
		{"no time", `"2026-11-25T09:30:00Z"`, `"yesterday"`, "opened"},
		{"ragged log", `"time_s": [0, 1]`, `"time_s": [0, 1, 2]`, "logs[0].ect_c"},
		{"list for object", `"site": {"ambient_c": 21, "altitude_m": 300}`, `"site": []`, "site: must be an object, not a list"},
		{"part year", `"year": 2012`, `"year": 2012.5`, "vehicle.year"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			text := strings.Replace(string(example(t)), tt.old, tt.new, 1)
			if text == string(example(t)) {
				t.Fatalf("the example no longer holds %q", tt.old)
			}
			_, err := cases.Decode([]byte(text))
			var invalid cases.Invalid
			if !errors.As(err, &invalid) || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("Decode: %v, want %q", err, tt.want)
			}
		})
	}
}

// The ends of a range belong to it (plain water is 0 % of glycol, a perfect emitter 1), what lies beyond doesn't.
func TestEndsOfRangesAreRead(t *testing.T) {
	for _, tt := range []struct{ old, with, beyond string }{
		{`"volume_percent": 50`, `"volume_percent": 0`, `"volume_percent": -1`},
		{`"volume_percent": 50`, `"volume_percent": 100`, `"volume_percent": 101`},
		{`"cap_kpa": 110`, `"cap_kpa": 0`, `"cap_kpa": -1`},
		{`"altitude_m": 300`, `"altitude_m": -500`, `"altitude_m": -501`},
		{`"surface": "rubber"`, `"surface": 1`, `"surface": 1.01`},
		{`"surface": "rubber"`, `"surface": 0.01`, `"surface": 0`},
		{`"kind": "pressure-hold",`, `"kind": "pressure-hold", "volume_percent": 0, "ph": 0, "minutes": 0,`, `"kind": "pressure-hold", "ph": -0.1,`},
		{`"kind": "pressure-hold",`, `"kind": "pressure-hold", "volume_percent": 100, "ph": 14,`, `"kind": "pressure-hold", "ph": 14.1,`},
	} {
		text := func(with string) []byte {
			out := strings.Replace(string(example(t)), tt.old, with, 1)
			if out == string(example(t)) {
				t.Fatalf("the example no longer holds %q", tt.old)
			}
			return []byte(out)
		}
		if _, err := cases.Decode(text(tt.with)); err != nil {
			t.Errorf("%s: %v", tt.with, err)
		}
		if _, err := cases.Decode(text(tt.beyond)); err == nil {
			t.Errorf("%s is read", tt.beyond)
		}
	}
}

func TestDecodeRefusesWhatIsNoCase(t *testing.T) {
	for name, text := range map[string][]byte{
		"empty":     nil,
		"blank":     []byte(" \n"),
		"zeros":     make([]byte, 1000),
		"cut short": example(t)[:200],
		"binary":    {0xff, 0xfe, 0x00},
		"a list":    []byte("[]"),
		"two cases": append(example(t), example(t)...),
		"too large": make([]byte, cases.MaxBytes+1),
	} {
		if _, err := cases.Decode(text); err == nil {
			t.Errorf("Decode of %s: no error", name)
		}
	}
}

func TestDecodeBoundsLists(t *testing.T) {
	const head = `{"format":"loopbook-case","version":1,`
	many := func(item string, n int) string { return "[" + strings.Repeat(item+",", n-1) + item + "]" }
	for _, tt := range []struct{ name, text, want string }{
		{"rounds", `"rounds":` + many("{}", 100_001), "rounds: has too many"},
		{"readings", `"rounds":` + many(`{"readings":`+many(`{"point":"vent"}`, 1000)+`}`, 100), "readings: has too many"},
		{"numbers for rounds", `"rounds":` + many("0", 100_001), "rounds: has too many"},
		{"a series", `"logs":[{"time_s":` + many("0", 1_000_001) + `}]`, "logs[0].time_s: has too many"},
		{"more rounds than anybody measures", `"rounds":` + many("{}", 1001), "rounds: are 1001"},
		{"as many rounds as may be", `"rounds":` + many("{}", 1000), ""},
		{"more tests", `"tests":` + many(`{"kind":"cap"}`, 1001), "tests: are 1001"},
		{"an id of two lines", `"id":"A\nB"`, "id: must"},
		{"faults", `"rounds":` + many("0", 50_000), "and 995 more"},
		{"a long series", `"logs":[{"time_s":` + many("0", 1_000_000) + `}]`, ""},
	} {
		_, err := cases.Decode([]byte(head + tt.text + "}"))
		if tt.want == "" && err != nil || tt.want != "" && (err == nil || !strings.Contains(err.Error(), tt.want)) {
			t.Errorf("%s: Decode = %v, want %q", tt.name, err, tt.want)
		}
	}
}

func TestNullReadsAsNotKnown(t *testing.T) {
	c, err := cases.Decode([]byte(`{"format":"loopbook-case","version":1,"title":null,"site":null,"rounds":null,"loop":{"cap_kpa":null}}`))
	if err != nil || c.Title != "" || c.Loop.CapKPa != nil || c.Rounds != nil {
		t.Errorf("Decode = %+v, %v", c, err)
	}
}

func FuzzDecode(f *testing.F) {
	f.Add(example(f))
	f.Add([]byte(`{"format":"loopbook-case","version":1,"x":{"y":[]}}`))
	f.Fuzz(func(t *testing.T, in []byte) {
		got, err := cases.Decode(in)
		if err != nil {
			return // refused
		}
		out, err := cases.Encode(got)
		if err != nil {
			t.Fatalf("Encode of a decoded case: %v", err)
		}
		again, err := cases.Decode(out)
		if err != nil {
			t.Fatalf("Decode of our own text: %v\n%s", err, out)
		}
		if twice, err := cases.Encode(again); err != nil || !bytes.Equal(out, twice) {
			t.Fatalf("second writing differs: %v", err)
		}
	})
}
