package report_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/report"
)

// found is a case with a fault that nothing was done about.
func found(cause cases.Cause) *cases.Case {
	c := full()
	c.Verdict.Cause, c.Repair, c.Rounds = cause, cases.Repair{}, c.Rounds[:1]
	return c
}

// What a fault means until it is repaired. Where the heat shows most is the
// symptom of the fault in testdata/trade/signatures.csv (F02, F05 to F08, F10;
// common practice); stopping at the red is M15, the shut cap T18 (published);
// what the others mean is judgement.
func TestUnrepairedFaultIsSaidToBe(t *testing.T) {
	const notOn, stop = "Do not drive on with this fault", "switch the engine off as soon as the temperature gauge nears the red"
	for _, tt := range []struct {
		cause cases.Cause
		wants []string
	}{
		{"fan-not-running", []string{notOn, "Above all not in slow traffic", stop, "Leave the cap shut"}},
		{"radiator-airflow", []string{notOn, "slow traffic or with a trailer", stop}},
		{"radiator-restricted", []string{notOn, "not fast, uphill", stop}},
		{"pump-weak", []string{notOn, "not fast, uphill", stop}},
		{"thermostat-stuck-closed", []string{notOn, "Not even a short way", stop}},
		{"external-leak", []string{notOn, "too little coolant", stop}},
		{"sensor-reads-low", []string{"Do not trust the temperature gauge", stop}},
		{"thermostat-stuck-open", []string{"You can drive the car", "stays too cool"}},
		{"heater-core-restricted", []string{"You can drive the car", "a clear view"}},
	} {
		text := flat(pdfText(t, written(t, report.Customer, material(t, found(tt.cause), proof.NotMeasured), report.Options{})))
		for _, want := range append(tt.wants, "What is wrong", "Nothing is repaired yet", "Until it is repaired") {
			if !strings.Contains(text, want) {
				t.Errorf("%s: the page doesn't say %q:\n%s", tt.cause, want, text)
			}
		}
		for _, mild := range []string{"now and then", "once a week", "not measured again"} {
			if strings.Contains(text, mild) {
				t.Errorf("%s: the page says %q of a fault that is there:\n%s", tt.cause, mild, text)
			}
		}
	}
}

// Whoever measured after a repair repaired, whether the work is noted or not.
func TestRepairThatIsNotNotedWasMadeAllTheSame(t *testing.T) {
	c := full()
	c.Repair = cases.Repair{}
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.Fixed), report.Options{})))
	if !strings.Contains(text, "We made the repair and measured again") || strings.Contains(text, "not changed anything") {
		t.Errorf("the page denies the repair:\n%s", text)
	}
}

// After a repair that didn't help the fault is there as before.
func TestRepairThatFailedIsNoLeaveToDrive(t *testing.T) {
	c := full()
	c.Verdict.Cause = "fan-not-running"
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotFixed), report.Options{})))
	for _, want := range []string{"It is not fixed yet.", "Do not drive on with this fault", "Above all not in slow traffic"} {
		if !strings.Contains(text, want) {
			t.Errorf("the page doesn't say %q:\n%s", want, text)
		}
	}
}

// The cautions are whole, and the page is one, in every language.
func TestUnrepairedPageIsOneUncut(t *testing.T) {
	for _, l := range say.Langs() {
		for _, page := range []report.Page{report.A4, report.Letter} {
			for _, cause := range cases.Words[cases.Cause]() {
				pdf := written(t, report.Customer, material(t, found(cause), ""), report.Options{Lang: l, Page: page})
				if n := pageCount(pdf); n != 1 {
					t.Errorf("%s, %s, %s: %d pages", l, page, cause, n)
				}
				if text := flat(pdfText(t, pdf)); strings.Contains(text, "…") {
					t.Errorf("%s, %s, %s: cut:\n%s", l, page, cause, text)
				}
			}
		}
	}
}

// A place has the same range on the page as in the record: those of the findings.
func TestCustomersRangeIsTheRecords(t *testing.T) {
	m := material(t, found("radiator-restricted"), "")
	at := m.Found.Rounds[0].Readings[diagram.RadIn]
	at.TrueC, at.Expected, at.State = 97.2, &evidence.Range{LowC: 76, HighC: 96}, evidence.High
	m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: at}
	m.Found.Deltas = nil
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "Upper hose 97 °C 76–96 °C") {
		t.Errorf("another range than 76 to 96 °C:\n%s", text)
	}
}

// A repair that is shown says why a number in its table bears no sign.
func TestNumberWithoutASignIsExplained(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	const quiet = "A number with a range but no sign is outside that range"
	at := m.Found.Rounds[1].Readings[diagram.RadIn]
	for high, want := range map[diagram.Celsius]bool{95: false, 80: true} {
		at.Expected = &evidence.Range{LowC: 70, HighC: high}
		m.Found.Rounds[1].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: at}
		if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); strings.Contains(text, quiet) != want {
			t.Errorf("%.0f °C, at most %.0f:\n%s", float64(at.TrueC), float64(high), text)
		}
	}
}

// Where no layout is chosen a housing may be the one that the cold coolant comes to, which is far from as hot as the
// engine: the page then has the engine by the record's own witness.
func TestAHousingIsNoEngineWhereNoLayoutIsChosen(t *testing.T) {
	c := found("pump-weak")
	c.Loop.Layout = ""
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{})))
	if !strings.Contains(text, "Engine 113 °C") {
		t.Errorf("the engine isn't at the sensor's 113 °C:\n%s", text)
	}
}

// What neither a check nor the repair has shown is said to be likely where it is explained too, not in the title alone.
func TestALikelyCauseIsNoFactInItsBox(t *testing.T) {
	for confirmed, want := range map[string]string{"core-scan": "What is wrong", "": "Most likely "} {
		c := found("radiator-restricted")
		c.Verdict.ConfirmedBy = confirmed
		text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotMeasured), report.Options{})))
		if strings.Contains(text, "What is wrong") != (confirmed != "") || !strings.Contains(text, want) {
			t.Errorf("confirmed by %q, the box isn't headed %q:\n%s", confirmed, want, text)
		}
	}
}

// What was a guess and was repaired without a change isn't told as likeliest once more, where something else is: unless a
// check had confirmed it, or it still is the likeliest.
func TestAGuessThatTheRepairBeliedIsNotTold(t *testing.T) {
	const guess, looking = "radiator was blocked", "We are still looking for the cause."
	for name, tt := range map[string]struct {
		left   cases.Cause
		by     string
		belied bool
	}{
		"another is likeliest": {"thermostat-stuck-closed", "", true},
		"a check confirmed it": {"thermostat-stuck-closed", "core-scan", false},
		"it is likeliest yet":  {"radiator-restricted", "", false},
		"nothing is named":     {"", "", false},
	} {
		c := full()
		c.Verdict = cases.Verdict{Cause: "radiator-restricted", ConfirmedBy: tt.by}
		m := material(t, c, proof.NotFixed)
		m.Proof.Left = tt.left
		text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
		if strings.Contains(text, looking) != tt.belied || strings.Contains(text, guess) == tt.belied || !strings.Contains(text, "It is not fixed yet.") || !strings.Contains(text, "Radiator") {
			t.Errorf("%s:\n%s", name, text)
		}
		if c.Verdict.Cause != "radiator-restricted" {
			t.Fatal("the case is changed")
		}
	}
}
