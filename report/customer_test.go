package report_test

import (
	"bytes"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/report"
	"loopbook/report/picture"
)

func written(t testing.TB, k report.Kind, m report.Material, o report.Options) []byte {
	t.Helper()
	var out bytes.Buffer
	if err := report.Write(&out, k, m, o); err != nil {
		t.Fatalf("Write(%s, %q): %v", k, m.Case.Title, err)
	}
	return out.Bytes()
}

// shop is invented.
func shop() report.Shop {
	return report.Shop{Name: "Nordhang Garage", Address: "Hill Lane 4\nLower Ambry"}
}

func material(t testing.TB, c *cases.Case, v proof.Verdict) report.Material {
	t.Helper()
	m := report.Material{Case: c, Found: analysed(t, c), Shop: shop()}
	if v != "" {
		m.Proof = &proof.Proof{Measured: v != proof.NotMeasured, Verdict: v}
	}
	return m
}

// Every cause has its page in every language, and it is one page.
func TestCustomersPageIsOnePage(t *testing.T) {
	for _, l := range say.Langs() {
		for _, page := range []report.Page{report.A4, report.Letter} {
			for i, cause := range append(cases.Words[cases.Cause](), "") {
				c := full()
				c.Verdict.Cause = cause
				if i%3 == 0 { // what has no room is cut
					c.Repair.Parts[0].Name = strings.Repeat("a part with a long name ", 40)
					c.Rounds[0].Label, c.Customer.Name = strings.Repeat("label ", 90), strings.Repeat("Name ", 80)
				}
				pdf := written(t, report.Customer, material(t, c, proof.Fixed), report.Options{Lang: l, Page: page})
				if n := pageCount(pdf); n != 1 {
					t.Errorf("%s, %s, %s: %d pages", l, page, cause, n)
				}
			}
		}
	}
}

var onePage = regexp.MustCompile(`/Type /Page\b[^s]`)

func pageCount(pdf []byte) int { return len(onePage.FindAll(pdf, -1)) }

// What is said of the repair is what was shown, and no more.
func TestCustomersPageSaysHowTheRepairStands(t *testing.T) {
	for verdict, want := range map[proof.Verdict]string{
		proof.Fixed:       "The fault is gone, as far as we can measure.",
		proof.NotShown:    "We are not sure yet",
		proof.NotFixed:    "It is not fixed yet.",
		proof.NotMeasured: "We have not measured again yet.",
		"":                "We have not measured again yet.",
	} {
		text := flat(pdfText(t, written(t, report.Customer, material(t, full(), verdict), report.Options{})))
		if !strings.Contains(text, want) {
			t.Errorf("%q: the page doesn't say %q:\n%s", verdict, want, text)
		}
	}
}

func TestCustomersPageHasNoJargon(t *testing.T) {
	text := flat(pdfText(t, written(t, report.Customer, material(t, full(), proof.Fixed), report.Options{})))
	for _, code := range []string{"P0217", "rad_out", "radiator-restricted", "emissivity", "Act "} {
		if strings.Contains(text, code) {
			t.Errorf("the page says %q", code)
		}
	}
	for _, want := range []string{"Nordhang Garage", "Lower Ambry", "Never open the cap while the engine is hot", "orange cables", "Switch the car off before you open the bonnet", "page 1 of 1", "Customer 7"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}

// Rounds of unlike conditions stand side by side only with a word about it.
func TestUnlikeRoundsAreSaidToBe(t *testing.T) {
	m := material(t, full(), proof.NotShown)
	const unlike = "not measured under the same conditions"
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, unlike) {
		t.Errorf("no word of it:\n%s", text)
	}
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); strings.Contains(text, unlike) {
		t.Errorf("a pair is said to be unlike:\n%s", text)
	}
}

// A difference before and after the repair is each held to its own round's range: the engine
// needn't be as warm in both.
func TestADifferenceHasTheRangeOfItsRound(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	k := func(v diagram.DeltaK) *diagram.DeltaK { return &v }
	m.Found.Deltas = []evidence.Delta{
		{Name: evidence.AcrossRadiator, Round: 0, ValueK: 46, ExpectedLowK: k(6), ExpectedHighK: k(20), State: evidence.High},
		{Name: evidence.AcrossRadiator, Round: 1, ValueK: 31, ExpectedLowK: k(5), ExpectedHighK: k(75), State: evidence.InRange},
	}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "46 K 6 to 20 K 31 K 5 to 75 K") {
		t.Errorf("the two ranges aren't told:\n%s", text)
	}
	record := flat(pdfText(t, written(t, report.Record, m, report.Options{})))
	for i, want := range []struct{ record, value, span string }{{"46 K 6 to 20 K", "46 K", "6–20 K"}, {"31 K 5 to 75 K", "31 K", "5–75 K"}} {
		if d := picture.State(&diagram.Loop{}, m.Case, m.Found, i, say.English()).Deltas[evidence.AcrossRadiator]; d.Text != want.value || d.Range != want.span || !strings.Contains(record, want.record) {
			t.Errorf("round %d: the screens say %s in %s, want %s in %s, as the record:\n%s", i+1, d.Text, d.Range, want.value, want.span, record)
		}
	}
	m.Found.Deltas[1].ExpectedLowK, m.Found.Deltas[1].ExpectedHighK, m.Found.Deltas[1].State = nil, nil, evidence.Unknown
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "46 K 6 to 20 K 31 K Heat across the radiator") {
		t.Errorf("a difference of which nothing is expected has a range:\n%s", text)
	}
}

// Where the hoses were read only after a repair that didn't help, the difference stands in the one column that there is.
func TestADifferenceIsTellableAfterARepairAlone(t *testing.T) {
	c := full()
	c.Rounds, c.Tests = c.Rounds[1:], nil
	m := material(t, c, proof.NotFixed)
	k := func(v diagram.DeltaK) *diagram.DeltaK { return &v }
	m.Found.Deltas = []evidence.Delta{{Name: evidence.AcrossRadiator, ValueK: 46, ExpectedLowK: k(6), ExpectedHighK: k(20), State: evidence.High}}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "Difference over the radiator 46 K 6 to 20 K") {
		t.Errorf("the difference isn't told:\n%s", text)
	}
}

// A place has its value before beside what it should have been before, and so after.
func TestAPlaceHasTheRangeOfEachRound(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	m.Found.Deltas = nil
	for i, read := range []evidence.Reading{
		{TrueC: 31, Expected: &evidence.Range{LowC: 12, HighC: 26}, State: evidence.High},
		{TrueC: 79, Expected: &evidence.Range{LowC: 68, HighC: 89}, State: evidence.InRange},
	} {
		m.Found.Rounds[i].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: read}
	}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "Upper hose 31 °C 12–26 °C 79 °C 68–89 °C") {
		t.Errorf("the upper hose isn't told with both ranges:\n%s", text)
	}
}

var wordBox = regexp.MustCompile(`<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">`)

// The danger's frame ends above the foot's line, on the shorter paper too: from
// the last word in it to the foot's words there are the frame's pad, the gap to
// the line and the line's own to the words, 20 points at least.
func TestDangerStandsAboveTheFoot(t *testing.T) {
	for _, l := range say.Langs() {
		for _, page := range []report.Page{report.A4, report.Letter} {
			pdf := written(t, report.Customer, material(t, full(), proof.Fixed), report.Options{Page: page, Lang: l})
			words := wordBox.FindAllStringSubmatch(tool(t, pdf, "pdftotext", "-bbox", "FILE", "-"), -1)
			lowest, last := 0.0, 0.0 // the foot's upper edge, and the lower one of what is above it
			for _, m := range words {
				lowest = max(lowest, number(t, m[1]))
			}
			for _, m := range words {
				if number(t, m[1]) < lowest-2 {
					last = max(last, number(t, m[2]))
				}
			}
			if last == 0 || lowest-last < 20 {
				t.Errorf("%s on %s: text down to %.0f, foot at %.0f", l, page, last, lowest)
			}
		}
	}
}

func number(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// A healthy loop's page doesn't deny a triangle in its own table.
func TestHealthyPageDoesNotDenyItsTable(t *testing.T) {
	m := material(t, full(), "")
	m.Case.Verdict.Cause = cases.Healthy
	m.Case.Repair = cases.Repair{}
	text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
	if strings.Contains(text, "All that we measured is as it should be") || !strings.Contains(text, "with a triangle is a bit out") {
		t.Errorf("the page says otherwise:\n%s", text)
	}
	if !strings.Contains(text, "Nothing had to be changed") || strings.Contains(text, "changed anything yet") {
		t.Errorf("what was done:\n%s", text)
	}
}

func TestCustomersPageOfLittle(t *testing.T) {
	for name, c := range map[string]*cases.Case{
		"nothing":      {},
		"no layout":    {Rounds: []cases.Round{{Readings: []cases.Reading{on("rubber", diagram.RadIn, 80)}}}},
		"hostile":      hostile(),
		"no readings":  {Loop: cases.Loop{Layout: "split-head-block"}, Rounds: []cases.Round{{}}},
		"told of only": {Complaint: cases.Complaint{Symptoms: []cases.Symptom{"gauge-swings"}}},
	} {
		if n := pageCount(written(t, report.Customer, material(t, c, ""), report.Options{})); n != 1 {
			t.Errorf("%s: %d pages", name, n)
		}
	}
}

// A child of 12 can read it. English: the grade of Kincaid and others (1975),
// 0.39 words a sentence + 11.8 syllables a word − 15.59, at most the seventh.
// German: Björnsson's LIX (1968), words a sentence + the percentage of words of
// more than six letters, under 40 as in books for children. Spanish: Fernández
// Huerta (1959), 206.84 − 60 syllables a word − 1.02 words a sentence, at least
// 70, "rather easy". Formulas and limits from memory.
func TestCustomersWordsAreEasy(t *testing.T) {
	for _, tt := range []struct {
		lang  say.Lang
		score func(measured) float64
		fine  func(float64) bool
	}{
		{say.EN, func(m measured) float64 { return 0.39*m.perSentence + 11.8*m.syllables - 15.59 }, func(v float64) bool { return v <= 7 }},
		{say.DE, func(m measured) float64 { return m.perSentence + 100*m.long }, func(v float64) bool { return v < 40 }},
		{say.ES, func(m measured) float64 { return 206.84 - 60*m.syllables - 1.02*m.perSentence }, func(v float64) bool { return v >= 70 }},
	} {
		words, err := say.Catalogue(tt.lang)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for key, text := range words {
			if sentence := strings.HasPrefix(key, "customer.") && strings.HasSuffix(text, "."); sentence {
				all = append(all, text)
			}
		}
		m := measure(strings.Join(all, " "), tt.lang == say.EN)
		t.Logf("%s: %.1f", tt.lang, tt.score(m))
		if got := tt.score(m); !tt.fine(got) {
			t.Errorf("%s: %.1f (%+v)", tt.lang, got, m)
		}
	}
}

type measured struct{ perSentence, syllables, long float64 }

var (
	wordRE     = regexp.MustCompile(`\p{L}+`)
	sentenceRE = regexp.MustCompile(`[.!?:]`)
	vowelsRE   = regexp.MustCompile(`[aeiouyáéíóúäöü]+`)
)

func measure(text string, silentE bool) measured {
	words := wordRE.FindAllString(strings.ToLower(text), -1)
	n := float64(len(words))
	var m measured
	for _, w := range words {
		syllables := len(vowelsRE.FindAllString(w, -1))
		if silentE && strings.HasSuffix(w, "e") && syllables > 1 && !strings.HasSuffix(w, "le") {
			syllables--
		}
		m.syllables += float64(max(1, syllables)) / n
		if len([]rune(w)) > 6 {
			m.long += 1 / n
		}
	}
	m.perSentence = n / float64(len(sentenceRE.FindAllString(text, -1)))
	return m
}

func TestUnknownPaperIsRefused(t *testing.T) {
	err := report.Write(&bytes.Buffer{}, "poster", report.Material{Case: full()}, report.Options{})
	if err == nil || !strings.Contains(err.Error(), "poster") {
		t.Errorf("Write: %v, want a refusal that names it", err)
	}
	if err := report.Write(&bytes.Buffer{}, report.Customer, report.Material{Case: full()}, report.Options{Lang: "xx"}); err == nil {
		t.Error("a language that isn't there is taken")
	}
}

// Nothing on the page is smaller than 6 points, on the shorter paper too with a
// shop's head, a title of two lines and all four places, or the five of a heater's fault: a judgement. A box of
// pdftotext is as high as the font's ascent and descent, 1.16 of its size.
func TestNothingIsTooSmallToRead(t *testing.T) {
	for _, cause := range []cases.Cause{"radiator-restricted", "heater-air-side"} {
		nothingTooSmall(t, cause)
	}
}

func nothingTooSmall(t *testing.T, cause cases.Cause) {
	for _, l := range say.Langs() {
		c := full()
		c.Verdict.Cause = cause
		m := material(t, c, proof.Fixed)
		m.Shop.Address += "\n+00 555 01 02"
		for i, p := range boxes(t, written(t, report.Customer, m, report.Options{Lang: l, Page: report.Letter})).Pages {
			for _, w := range p.Words {
				if size := (w.YMax - w.YMin) / 1.16; size < 6 {
					t.Errorf("%s, %s, page %d: %q is %.1f points high", cause, l, i+1, w.Text, size)
				}
			}
		}
	}
}

// Who was cold by the heater's fault is told how warm the air was that came in, before and after; with another fault,
// or the heater off, it would only puzzle.
func TestWhoWasColdIsToldOfTheAir(t *testing.T) {
	for _, tt := range []struct {
		what   string
		cause  cases.Cause
		heater cases.Heater
		told   bool
		feels  []cases.Symptom
	}{
		{"a flap", "heater-air-side", cases.HeaterFull, true, nil},
		{"a heater's core", "heater-core-restricted", cases.HeaterFull, true, nil},
		{"the heater off", "heater-air-side", cases.HeaterOff, false, nil},
		{"a fan", "fan-not-running", cases.HeaterFull, false, []cases.Symptom{"cabin-heat-poor"}},
		{"no cause yet", "", cases.HeaterFull, true, []cases.Symptom{"cabin-heat-poor"}},
		{"no cause yet, and nobody cold", "", cases.HeaterFull, false, []cases.Symptom{"gauge-swings"}},
	} {
		c := full()
		c.Verdict.Cause, c.Rounds[0].Heater, c.Complaint.Symptoms = tt.cause, tt.heater, tt.feels
		text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.Fixed), report.Options{})))
		row := regexp.MustCompile(`Air from heater\D+3[12] °C.*56 °C`)
		if row.MatchString(text) != tt.told {
			t.Errorf("%s: the air is told %v, want %v:\n%s", tt.what, !tt.told, tt.told, text)
		}
	}
}

// The page tells one temperature of the engine: the box beside it told the sensor's 91 °C, the table the hose's 86.
func TestOnePageTellsOneTemperatureOfTheEngine(t *testing.T) {
	text := flat(pdfText(t, written(t, report.Customer, material(t, full(), proof.Fixed), report.Options{})))
	told := regexp.MustCompile(`The engine was at (\d+ °C) when`).FindStringSubmatch(text)
	row := regexp.MustCompile(`Should be Engine \d+ °C [\d–]+ °C (\d+ °C)`).FindStringSubmatch(text)
	if told == nil || row == nil || told[1] != row[1] {
		t.Errorf("the engine is told at %v and in the table at %v:\n%s", told, row, text)
	}
}
