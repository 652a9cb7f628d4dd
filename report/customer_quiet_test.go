package report_test

import (
	"regexp"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/units"
	"loopbook/report"
)

// signs counts what is painted on a page of one place that was read before and after.
func signs(t *testing.T, m report.Material, before, after evidence.Reading) int {
	t.Helper()
	return signsIn(t, units.Metric(), m, before, after)
}

func signsIn(t *testing.T, u units.Set, m report.Material, before, after evidence.Reading) int {
	t.Helper()
	m.Found.Deltas = nil
	m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: before}
	if len(m.Found.Rounds) > 1 {
		m.Found.Rounds[1].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: after}
	}
	pdf := tool(t, written(t, report.Customer, m, report.Options{Units: u}), "qpdf", "--qdf", "FILE", "-")
	return len(regexp.MustCompile(`(?m) ?[fBS]\*?$`).FindAllString(pdf, -1))
}

func of(c diagram.Celsius, low, high diagram.Celsius) evidence.Reading {
	return evidence.Reading{TrueC: c, Expected: &evidence.Range{LowC: low, HighC: high}}
}

// A hose that is as warm after the repair that helped as before it wasn't at fault (two readings of one place differ by
// up to 3 K: IR9 of testdata/trade/numbers.csv, common practice).
func TestWhatTheRepairLeftAsItWasBearsNoSign(t *testing.T) {
	m := material(t, full(), proof.Fixed)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 1}}
	in := of(86, 70, 95)
	bare := signs(t, m, evidence.Reading{TrueC: 87}, in)
	if got := signs(t, m, of(87, 60, 84), in); got != bare {
		t.Errorf("1 K from what it is after the repair: %d shapes, %d without a sign", got, bare)
	}
	if got := signs(t, m, of(92, 60, 84), in); got <= bare {
		t.Errorf("6 K from what it is after the repair: %d shapes, %d without a sign", got, bare)
	}
}

// A reading on the edge of its range stands on the same side of it in every unit, though in whole °F 0.3 K are one more.
func TestTheEdgeOfARangeIsTheSameInEveryUnit(t *testing.T) {
	c := found("radiator-restricted")
	for high, want := range map[diagram.Celsius]bool{95: false, 94.5: true} {
		for _, u := range []units.Set{units.Metric(), units.US()} {
			m := material(t, c, "")
			bare := signsIn(t, u, m, of(95.3, 60, 97), evidence.Reading{})
			if got := signsIn(t, u, m, of(95.3, 60, high), evidence.Reading{}); (got > bare) != want {
				t.Errorf("95.3 °C, at most %g, in %s: %d shapes, %d without a sign", float64(high), u.Temperature, got, bare)
			}
		}
	}
}

// What is out by too little to be told reads as within its range: "○ 92, 25–91" would be a contradiction.
func TestWhatBearsARingReadsAsWithin(t *testing.T) {
	m := material(t, found("cap-weak"), "")
	m.Found.Deltas = nil
	for _, r := range []struct {
		c, low, high diagram.Celsius
		want         string
	}{{91.7, 25, 91.3, "92 °C 25–92 °C"}, {24.4, 24.7, 91, "24 °C 24–91 °C"}, {92, 25, 91.3, "92 °C 25–91 °C"}} {
		m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: of(r.c, r.low, r.high)}
		if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, r.want) {
			t.Errorf("%g °C of %g to %g: the page doesn't say %q:\n%s", float64(r.c), float64(r.low), float64(r.high), r.want, text)
		}
	}
}

// What bears a triangle reads as out of its range, in whole degrees of either unit: "▲ 92, 25–92" would be a contradiction.
func TestWhatBearsATriangleReadsAsOut(t *testing.T) {
	m := material(t, found("cap-weak"), "")
	for _, r := range []struct {
		c, low, high diagram.Celsius
		want, wantF  string
	}{
		{92.4, 25, 91.8, "92 °C 25–91 °C", "198 °F 77–197 °F"}, {24.4, 25, 91, "24 °C 25–91 °C", "76 °F 78–196 °F"},
		{24.6, 25.4, 91, "25 °C 26–91 °C", "76 °F 78–196 °F"}, {96, 25, 91, "96 °C 25–91 °C", "205 °F 77–196 °F"},
	} {
		for u, want := range map[units.Set]string{units.Metric(): r.want, units.US(): r.wantF} {
			m.Found.Deltas = nil
			m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: of(r.c, r.low, r.high)}
			if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{Units: u}))); !strings.Contains(text, want) {
				t.Errorf("%g °C of %g to %g: the page doesn't say %q:\n%s", float64(r.c), float64(r.low), float64(r.high), want, text)
			}
			low, high := diagram.DeltaK(r.low), diagram.DeltaK(r.high)
			m.Found.Deltas = []evidence.Delta{{Name: evidence.AcrossRadiator, ValueK: diagram.DeltaK(r.c), ExpectedLowK: &low, ExpectedHighK: &high, State: evidence.High}}
			if want := strings.ReplaceAll(strings.ReplaceAll(r.want, " °C", " K"), "–", " to "); u == units.Metric() {
				if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{Units: u}))); !strings.Contains(text, want) {
					t.Errorf("%g K of %g to %g: the page doesn't say %q:\n%s", float64(r.c), float64(r.low), float64(r.high), want, text)
				}
			}
		}
	}
}

// A sound loop isn't belied by what the gun may be off (2 K itself, 3 K from one reading to the next; common practice).
func TestASoundLoopIsNotBeliedByTheGun(t *testing.T) {
	c := found(cases.Healthy)
	for high, word := range map[diagram.Celsius]string{95: "All that we measured is as it should be", 88: "As near as we can measure, all is as it should be", 82: "with a triangle is a bit out"} {
		m := material(t, c, "")
		m.Found.Deltas = nil
		m.Found.Rounds[0].Readings = map[diagram.Point]evidence.Reading{diagram.RadIn: of(91, 60, high)}
		if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, word) {
			t.Errorf("91 °C, at most %.0f: the page doesn't say %q:\n%s", float64(high), word, text)
		}
	}
}

// Where the sensor was at fault the coolant was as warm as it should be, and no sign beside it says otherwise.
func TestAFaultySensorMakesNoHoseFaulty(t *testing.T) {
	c := found("sensor-reads-high")
	c.Codes, c.Complaint.Symptoms = nil, nil
	c.Rounds[0].EctC, c.Rounds[0].Gauge = nil, ""
	c.Rounds[0].Readings = c.Rounds[0].Readings[7:8] // the heater's supply, at 97 °C
	m := material(t, c, "")
	bare := signs(t, m, evidence.Reading{TrueC: 45}, evidence.Reading{})
	if got := signs(t, m, of(45, 52, 78), evidence.Reading{}); got != bare {
		t.Errorf("%d shapes, %d without a sign", got, bare)
	}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "see steam") || strings.Contains(text, "nears the red") {
		t.Errorf("whose gauge is in the red anyway is told to stop by it:\n%s", text)
	}
}

// One reading doesn't stand for two places.
func TestAReadingStandsForOnePlace(t *testing.T) {
	c := found("coolant-mix-wrong")
	c.Rounds[0].Readings = []cases.Reading{on("rubber", diagram.EngineOut, 84)}
	if text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{}))); !strings.Contains(text, "Engine 84 °C") || strings.Contains(text, "Upper hose 84 °C") {
		t.Errorf("the engine's hose is told as two:\n%s", text)
	}
}

// A place where the gun can't tell has another beside it that shows as much: bare aluminium mirrors its surroundings
// (published, testdata/reference/emissivity.csv), the hose's other end is rubber. What can't be reached wasn't measured.
func TestThePageGoesByWhatCouldBeRead(t *testing.T) {
	c := found("coolant-mix-wrong")
	c.Rounds[0].Readings = []cases.Reading{on("aluminium-bare", diagram.RadOut, 40), on("rubber", diagram.PumpIn, 61)}
	if text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{}))); !strings.Contains(text, "Lower hose 61 °C") {
		t.Errorf("the lower hose's other end isn't told:\n%s", text)
	}
	const looked = "We measured the temperatures of the hoses"
	c.Tests, c.Logs = nil, nil
	for _, want := range []bool{true, false} {
		if text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{}))); strings.Contains(text, looked) != want {
			t.Errorf("said to have been measured %t, want %t:\n%s", !want, want, text)
		}
		c.Rounds[0].Readings = []cases.Reading{{Point: diagram.RadOut}}
	}
}

// Two days have two temperatures, each beside its drawing.
func TestThePageTellsTheAirOfBothItsDays(t *testing.T) {
	for after, want := range map[diagram.Celsius][]string{4: {"Before outside 21 °C", "After outside 4 °C"}, 21.2: {"What we measured, outside 21 °C"}} {
		c := full()
		c.Rounds[1].AmbientC = &after
		text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.Fixed), report.Options{})))
		for _, want := range want {
			if !strings.Contains(text, want) {
				t.Errorf("21 °C before and %g °C after: the page doesn't say %q:\n%s", float64(after), want, text)
			}
		}
	}
}

// Of rounds in which as little stands out the one with the warmer engine is shown: a cold one tells a customer nothing.
func TestTheWarmerRoundIsShown(t *testing.T) {
	c := full()
	cold, coldAfter := hotIdle(), repaired()
	cold.Label, coldAfter.Label = "just started", "just started"
	c.Rounds = []cases.Round{cold, hotIdle(), coldAfter, repaired()}
	m := material(t, c, proof.NotShown)
	m.Proof.Pairs = []proof.Pair{{Before: 0, After: 2}, {Before: 1, After: 3}}
	for i, engine := range []diagram.Celsius{40, 92, 40, 91} {
		m.Found.Rounds[i].EngineC, m.Found.Rounds[i].Readings = p(engine), map[diagram.Point]evidence.Reading{diagram.RadIn: of(engine, 0, 100)}
	}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); strings.Contains(text, "just started") || !strings.Contains(text, "92 °C") {
		t.Errorf("the cold engine is shown:\n%s", text)
	}
}

// Long names are cut by whole words, and leave the day of the visit on the page.
func TestLongNamesLeaveTheDay(t *testing.T) {
	c := full()
	c.Vehicle.Model, c.Customer.Name = strings.Repeat("Kormoran Langstrecke ", 9), strings.Repeat("Hohenwaldburg ", 12)
	c.Repair.Parts[0].Name = strings.Repeat("thermostat housing ", 40)
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.Fixed), report.Options{})))
	if !strings.Contains(text, "2014") || !strings.Contains(text, "154 200 km") || !strings.Contains(text, "2025-02-03 What was wrong") {
		t.Errorf("the year, the distance or the day is cut off:\n%s", text)
	}
	if m := regexp.MustCompile(`(\p{L}+) …`).FindAllStringSubmatch(text, -1); len(m) == 0 {
		t.Error("nothing is cut")
	} else {
		for _, cut := range m {
			if word := cut[1]; word != "Kormoran" && word != "Langstrecke" && word != "Hohenwaldburg" && word != "thermostat" && word != "housing" {
				t.Errorf("%q is cut in its midst", word)
			}
		}
	}
}
