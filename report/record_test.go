package report_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/report"
)

func TestRecordHoldsTheWholeCase(t *testing.T) {
	c := full()
	text := flat(pdfText(t, record(t, c, report.Options{})))
	want := []string{
		"Overheats in traffic, cabin stays cool", "case CASE-0042", "Opened 2025-02-03 09:30 UTC+01:00",
		"Maker A estate", "1.6 4-cylinder", "TESTVIN0000000042", "154 200 km", "hybrid", "Customer 7 · counter",
		"Thermostat at the pump's inlet", "88 °C", "110 kPa", "ethylene glycol, 50 % by volume", "6.5 L", "300 m",
		"The gauge climbs while standing in a queue.", "overheats standing, poor cabin heat",
		"P0217", "Engine coolant too hot", "118 °C, 850 rpm, 0 km/h", "look it up in the maker's list",
		"Round 1: hot idle, fan running", "before repair", "2025-02-03 10:10", "31 min", "820 rpm", "113 °C, by the scan tool",
		"Round 2: warm idle after the repair", "after repair", "taken again", "can't reach", "bare aluminium",
		"Keep it shut", "Heater core", // words of the drawing
		"Across radiator Upper hose, radiator − Lower hose, radiator 40 K", "▲ high", "▼ 20 K under", "in range", "not judged",
		"Pressure hold, before repair", "99 kPa", "no gas found", "0.125 V", "rusty", "7.4", "2440", "62.5", "none seen", "weak",
		"radiator restricted inside", "face scan of the core", "A cold patch over the lower third.",
		"189.50", "2.4 h", "The bumper's cover comes off first.", "Boiling margin",
		"warm-up, before repair, 3 samples, 2 min", "The picture photos/1.jpg isn't here.", "Lower hose, radiator · fins full of fluff",
		"Measure both ends before the part is ordered.", "Where the expected ranges come from", "common practice",
	}
	want = append(want, said(report.Cautions(c))...)
	for _, f := range analysed(t, c).Flags {
		for _, because := range f.Because {
			if because.Key() != "because.tested" { // stands in the heading of the test
				want = append(want, because.String())
			}
		}
		want = append(want, f.Text.String())
	}
	for _, r := range c.Rounds {
		for _, reading := range r.Readings {
			want = append(want, say.PointName(reading.Point).String())
			if reading.ShownC != nil {
				want = append(want, units.Metric().Temp(*reading.ShownC))
			}
		}
	}
	for _, w := range want {
		if !strings.Contains(text, flat(w)) {
			t.Errorf("the record lacks %q", w)
		}
	}
}

func said(texts []say.Text) []string { return say.English().All(texts) }

func TestRecordIsInTheChosenUnits(t *testing.T) {
	text := flat(pdfText(t, record(t, full(), report.Options{Units: units.US(), Page: report.Letter})))
	for _, w := range []string{"235 °F", "16 psi", "95 815 mi", "Shown, °F", "73 F°", "0 mph"} {
		if !strings.Contains(text, w) {
			t.Errorf("the record in US units lacks %q", w)
		}
	}
	for _, w := range []string{" km/h", " 88 °C"} {
		if strings.Contains(text, w) {
			t.Errorf("the record in US units still speaks in%s", w)
		}
	}
}

func TestCautionsComeFirstAndNameHighVoltageOnlyWhereThereIsAny(t *testing.T) {
	c := full()
	text := flat(pdfText(t, record(t, c, report.Options{})))
	if at := strings.Index(text, "Scalding"); at < 0 || at > strings.Index(text, "Vehicle") {
		t.Error("the cautions don't stand above all else")
	}
	for motive, want := range map[cases.Motive]bool{"hybrid": true, "other": true, "": false, "petrol": false, "diesel": false} { // electric is "other"
		c.Vehicle.Motive = motive
		if told := strings.Contains(strings.Join(said(report.Cautions(c)), "\n"), "High voltage"); told != want {
			t.Errorf("driven by %q, high voltage is cautioned of: %v", motive, told)
		}
	}
	c.Vehicle.Motive = "diesel"
	without := strings.Join(said(report.Cautions(c)), "\n")
	at := -1
	// 50 °C: SF1 of testdata/trade/numbers.csv, published.
	for _, w := range []string{"50 °C (122 °F)", "Pressure testing", "fan may start", "Belt", "poisons people and pets", "Exhaust", report.Deferral().String()} {
		next := strings.Index(without, w)
		if next <= at {
			t.Errorf("caution %q is missing or out of its order", w)
		}
		at = next
	}
}

func TestRecordOfATitleAloneIsOnePage(t *testing.T) {
	for _, c := range []*cases.Case{{Title: "Only a title"}, {}} {
		pdf := record(t, c, report.Options{})
		pages := pdfPages(t, pdf)
		if len(pages) != 1 {
			t.Errorf("the record of %q has %d pages", c.Title, len(pages))
		}
		text := flat(pages[0])
		for _, w := range []string{"Scalding", "Nothing is noted for: Vehicle, Loop as fitted, Complaint", "page 1 of 1"} {
			if !strings.Contains(text, w) {
				t.Errorf("the record of %q lacks %q", c.Title, w)
			}
		}
	}
}

func TestSameCaseMakesSameBytes(t *testing.T) {
	for name, make := range builders() {
		first, second := record(t, make(), report.Options{}), record(t, make(), report.Options{})
		if !bytes.Equal(first, second) {
			t.Errorf("%s: two records of one case differ", name)
		}
	}
	if pdf := record(t, full(), report.Options{}); !bytes.Contains(pdf, []byte("(D:20250203083000)")) || !bytes.Contains(pdf, []byte("(D:20250205103000)")) {
		t.Error("the document's dates aren't the case's own: opened, and last measured")
	}
}

func TestRecordWithoutFindingsIsWrittenWithoutVerdicts(t *testing.T) {
	var out bytes.Buffer
	if err := report.Write(&out, report.Record, report.Material{Case: full(), Found: evidence.Findings{}}, report.Options{}); err != nil {
		t.Fatal(err)
	}
	if text := flat(pdfText(t, out.Bytes())); !strings.Contains(text, "103.5") || !strings.Contains(text, "not judged") || strings.Contains(text, "in range") {
		t.Error("a record without findings must show the readings and judge none")
	}
}

func TestRecordRefusesWhatItCantDo(t *testing.T) {
	err := report.Write(io.Discard, report.Record, report.Material{Case: full(), Found: evidence.Findings{}}, report.Options{Page: "napkin"})
	if !errors.Is(err, report.ErrPage) || !strings.Contains(err.Error(), "napkin") {
		t.Errorf("Record on a napkin: %v, want ErrPage that names it", err)
	}
	full := errors.New("disk full")
	if err := report.Write(brokenWriter{full}, report.Record, report.Material{Case: &cases.Case{}, Found: evidence.Findings{}}, report.Options{}); !errors.Is(err, full) {
		t.Errorf("Record to a full disk: %v, want %v", err, full)
	}
}

type brokenWriter struct{ err error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.err }

func TestInventedCasesAllMakeARecord(t *testing.T) {
	a, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	for n := range 40 {
		c := casetest.Invented(n)
		if err := report.Write(io.Discard, report.Record, report.Material{Case: &c, Found: a.Analyse(&c)}, report.Options{}); err != nil {
			t.Errorf("Invented(%d): %v", n, err)
		}
	}
}

func BenchmarkRecord(b *testing.B) {
	for name, c := range map[string]*cases.Case{"two rounds": full(), "six rounds": long(6, 15)} {
		found := analysed(b, c)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				if err := report.Write(io.Discard, report.Record, report.Material{Case: c, Found: found}, report.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// A log stands as a curve of vectors with its words, in the units chosen, and
// one without any temperature says so.
func TestWarmUpIsACurve(t *testing.T) {
	l := cases.Log{Name: "cold drive", Stage: cases.BeforeRepair}
	for s := 0.0; s <= 1500; s += 10 {
		l.TimeS, l.EctC = append(l.TimeS, s), append(l.EctC, min(10+s*0.12, 88))
	}
	opens := diagram.Celsius(88)
	c := &cases.Case{ID: "L", Title: "Log", Loop: cases.Loop{ThermostatOpensC: &opens}, Logs: []cases.Log{l, {Name: "nothing"}}}
	text := flat(pdfText(t, record(t, c, report.Options{})))
	for _, want := range []string{"Warm-up: cold drive, before repair", "minutes", "coolant, °C", "thermostat's rating", "To 80 °C", "Warm-up: nothing", "It holds no coolant temperature."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}

// A paper that asks for one more hose says which, and whether the engine has to be warm for it: who reads it has no
// drawing to look at.
func TestTheRecordNamesTheHoseToRead(t *testing.T) {
	c := full()
	c.Verdict = cases.Verdict{}
	m := material(t, c, "")
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range tables.Checks() {
		if row.Check == likelihood.HosePoint {
			m.Next = []diagnosis.Check{{Check: row, Point: diagram.Bypass}}
		}
	}
	text := flat(pdfText(t, written(t, report.Record, m, report.Options{})))
	for _, want := range []string{"One more hose point: bypass (1 min):", "Engine warm."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in:\n%s", want, text)
		}
	}
}

// A difference that is out by less than its number shows is just out, not high beside the same number.
func TestADifferenceBesideItsRangesEndIsJustOut(t *testing.T) {
	m := material(t, full(), "")
	for over, want := range map[diagram.DeltaK]string{0.4: "▲ just over", 3: "▲ high", -34.3: "▼ just under", -38: "▼ low"} {
		low, high := diagram.DeltaK(-14), diagram.DeltaK(20)
		m.Found.Deltas = []evidence.Delta{{Name: "heater", Round: 0, From: string(diagram.HeaterIn), To: string(diagram.HeaterOut), ValueK: high + over,
			ExpectedLowK: &low, ExpectedHighK: &high, State: evidence.High}}
		if over < 0 {
			m.Found.Deltas[0].State = evidence.Low
		}
		text := flat(pdfText(t, written(t, report.Record, m, report.Options{})))
		if _, row, _ := strings.Cut(text, "Heater supply − Heater return"); !strings.Contains(row[:min(len(row), 60)], want) {
			t.Errorf("%v K over the range: the record doesn't say %q: %.80s", over, want, row)
		}
	}
}

// Once anything was done to the car, the record says that the proof is missing: with the filling's steps or an hour's work
// alone it was silent. The hours in which a loop was found sound repaired nothing.
func TestTheRecordAsksForTheProofOnceAnythingWasDone(t *testing.T) {
	hours := 1.5
	for name, done := range map[string]cases.Repair{"nothing": {}, "steps": {StepsDone: []string{"drained"}}, "work": {LabourHours: &hours}, "sound": {LabourHours: &hours}} {
		c := full()
		if name == "sound" {
			c.Verdict.Cause = cases.Healthy
		}
		c.Rounds, c.Tests, c.Logs, c.Repair = c.Rounds[:1], nil, nil, done
		text := flat(pdfText(t, written(t, report.Record, judged(t, c), report.Options{})))
		for _, want := range []string{"Proof of the repair", "nothing was measured after the repair"} {
			if strings.Contains(text, flat(want)) != (name == "steps" || name == "work") {
				t.Errorf("with %s done the record says %q: %v", name, want, name == "nothing" || name == "sound")
			}
		}
	}
}

// A ranking without simulated cars isn't one without readings: without a layout there are no cars, whatever was read.
func TestReadHosesAreNotDenied(t *testing.T) {
	text := flat(pdfText(t, written(t, report.Record, judged(t, full()), report.Options{})))
	if want := "no hose was held against simulated cars"; !strings.Contains(text, want) {
		t.Errorf("no %q in:\n%s", want, text)
	}
}
