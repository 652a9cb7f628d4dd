package report_test

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/report"
)

// A cold cabin is shown on the warm engine, where the customer feels it, and not in the warm-up, which may have more
// out of its range (judgement).
func TestTheFaultIsShownOnTheWarmEngine(t *testing.T) {
	c := found("heater-valve-shut")
	warm, cold := hotIdle(), hotIdle()
	warm.Label, warm.EctC, warm.Gauge, warm.Fan = "warm idle", p(diagram.Celsius(90)), "middle", cases.FanOff
	warm.Readings = []cases.Reading{on("rubber", diagram.EngineOut, 87), on("rubber", diagram.HeaterIn, 82), on("rubber", diagram.HeaterOut, 24), on("", diagram.Vent, 21)}
	cold.Label, cold.EctC, cold.MinutesSinceStart, cold.Gauge = "from cold", p(diagram.Celsius(40)), p(5.0), "cold"
	cold.Readings = []cases.Reading{on("rubber", diagram.EngineOut, 39), on("rubber", diagram.HeaterIn, 21), on("rubber", diagram.HeaterOut, 4), on("", diagram.Vent, 3), on("rubber", diagram.RadIn, 3)}
	for _, rounds := range [][]cases.Round{{cold, warm}, {warm, cold}} {
		c.Rounds = rounds
		m := material(t, c, "")
		for i, r := range rounds {
			for at, reading := range m.Found.Rounds[i].Readings { // all of the cold round, one of the warm
				if reading.State = evidence.Low; r.Label == warm.Label && at != diagram.Vent {
					reading.State = evidence.InRange
				}
				under := evidence.Range{LowC: reading.TrueC + 10, HighC: reading.TrueC + 20}
				reading.Expected = &under
				m.Found.Rounds[i].Readings[at], m.Found.Rounds[i].Expected[at] = reading, under
			}
		}
		if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "Warm idle") || strings.Contains(text, "From cold") {
			t.Errorf("another round than the warm one:\n%s", text)
		}
	}
}

// Whoever loses coolant, and doesn't know yet by what, looks before each drive: once a week is too late for a leak
// (judgement).
func TestWhoLosesCoolantLooksBeforeEachDrive(t *testing.T) {
	for name, change := range map[string]func(*cases.Case){
		"told":     func(c *cases.Case) { c.Complaint.Symptoms = []cases.Symptom{"coolant-loss"} },
		"low":      func(c *cases.Case) { c.Tests = []cases.Test{{Kind: "level", State: "low", Stage: cases.BeforeRepair}} },
		"it leaks": func(c *cases.Case) { c.Tests = leaking().Tests[:1] },
	} {
		c := found("")
		c.Complaint.Symptoms, c.Codes, c.Rounds, c.Tests = nil, nil, nil, nil
		change(c)
		if text := flat(pdfText(t, written(t, report.Customer, material(t, c, ""), report.Options{}))); !strings.Contains(text, "before each drive") || strings.Contains(text, "once a week") {
			t.Errorf("%s:\n%s", name, text)
		}
	}
}

// After a repair that left another fault the page shows what isn't right now, beside what was.
func TestWhatIsStillWrongIsShown(t *testing.T) {
	c := full()
	for i := range c.Rounds[1].Readings {
		if c.Rounds[1].Readings[i].Point == diagram.HeaterOut {
			c.Rounds[1].Readings[i].ShownC = p(diagram.Celsius(35))
		}
	}
	text := flat(pdfText(t, written(t, report.Customer, material(t, c, proof.NotFixed), report.Options{})))
	if !strings.Contains(text, "Difference over the heater") || strings.Contains(text, "Difference over the radiator") {
		t.Errorf("the heater's drop after the repair isn't told:\n%s", text)
	}
}

// A page that says that the car isn't fixed shows the round after the repair by which it isn't, though another one that
// is in its ranges was read later and is a pair.
func TestWhatIsNotFixedIsShown(t *testing.T) {
	c := full()
	before, road := hotIdle(), hotIdle()
	still, again := hotIdle(), hotIdle()
	before.Label, still.Label = "in the queue", "in the queue again"
	road.Label, again.Label = "on the road", "on the road again"
	still.Stage, again.Stage = cases.AfterRepair, cases.AfterRepair
	well := hotIdle()
	well.Label = "was well"
	c.Rounds = []cases.Round{before, road, still, again, well}
	m := material(t, c, proof.NotFixed)
	for i := range c.Rounds {
		for at, r := range m.Found.Rounds[i].Readings {
			within := evidence.Range{LowC: r.TrueC - 10, HighC: r.TrueC + 10}
			if r.State = evidence.InRange; i == 0 || i == 2 || i == 1 && at == diagram.RadIn {
				r.State, within.HighC = evidence.High, r.TrueC-5
			}
			r.Expected, m.Found.Rounds[i].Expected[at] = &within, within
			m.Found.Rounds[i].Readings[at] = r
		}
	}
	onRoad := proof.Pair{Before: 1, After: 3}
	for name, pairs := range map[string][]proof.Pair{"unlike": nil, "the road alike": {onRoad}, "the queue beside the road": {{Before: 1, After: 2}}} {
		m.Proof.Pairs = pairs
		text := flat(pdfText(t, written(t, report.Customer, m, report.Options{})))
		if !strings.Contains(text, "in the queue again") || strings.Contains(text, "on the road again") {
			t.Errorf("%s: a sound round is shown as not fixed:\n%s", name, text)
		}
	}
	m.Proof.Pairs = []proof.Pair{onRoad, {Before: 0, After: 2}}
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "in the queue again") || strings.Contains(text, "not measured under the same") {
		t.Errorf("a pair is told as unlike:\n%s", text)
	}
	m.Proof.Pairs = []proof.Pair{onRoad, {Before: 4, After: 2}} // a warm idle that was well
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "in the queue again") || strings.Contains(text, "was well") {
		t.Errorf("a round that tells nothing stands beside what is still wrong:\n%s", text)
	}
	m.Proof.Pairs = []proof.Pair{onRoad}
	m.Proof.Verdict = proof.Fixed
	if text := flat(pdfText(t, written(t, report.Customer, m, report.Options{}))); !strings.Contains(text, "on the road again") {
		t.Errorf("a pair isn't shown:\n%s", text)
	}
}
