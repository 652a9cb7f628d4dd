package report

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// confirming is the check that confirmed the cause, as it came out before and after the repair, last of
// each. Where the hoses show little, as with gas in the coolant, it is what was found.
type confirming struct {
	label say.Text
	sides[outcome]
}

// outcome is how a check came out; the empty one: it wasn't done, or tells nothing.
type outcome struct {
	text say.Text
	out  bool // not as it should be
}

// confirming is false where no check of a kind that is known confirmed the cause.
func (c *customer) confirming() (confirming, bool) {
	for _, t := range proof.PairTests(c.c) {
		if string(t.Kind) == c.c.Verdict.ConfirmedBy {
			return confirming{say.Of("customer.check." + string(t.Kind)), sides[outcome]{came(t.Kind, t.BeforeOutcome), came(t.Kind, t.AfterOutcome)}}, true
		}
	}
	return confirming{}, false
}

func came(kind cases.TestKind, word string) outcome {
	if word == "" {
		return outcome{}
	}
	return outcome{plainly(kind, word), !evidence.Passed(word)}
}

// plainly is how a check came out, without the shop's terms.
func plainly(kind cases.TestKind, word string) say.Text {
	switch key := string(kind) + "." + word; key {
	case "cap.vacuum-stuck", "cap.pass", "coolant.ph-out", "coolant.stray", "pump-drive.play", "pump-drive.weeps",
		"sensor-resistance.pass", "thermostat-bench.small-lift":
		return say.Of("customer.outcome." + key)
	default:
		return evidence.OutcomeText(kind, word)
	}
}

// besideChecks are the checks that the cause is no reason for in the customer's words.
func (c *customer) besideChecks() say.Text {
	out := make([]say.Text, len(c.m.Beside.Checks))
	for i, o := range c.m.Beside.Checks {
		out[i] = say.Of("reason.test", say.Of("customer.check."+string(o.Kind)), plainly(o.Kind, o.Word))
	}
	return say.Items(out...)
}

// stages are the table's columns: those of the drawings, and of a check that was done when no hose was read.
func (c *customer) stages() []panel {
	row, _ := c.confirming()
	return c.panelsOf(c.pair.before >= 0 || !row.before.text.Empty(), c.pair.after >= 0 || !row.after.text.Empty())
}

// checkLines is how the check came out under each panel, in two lines at most: an outcome has more words
// than a temperature.
func (c *customer) checkLines(row confirming) [][]string {
	x, panels := c.columns(), c.stages()
	out := make([][]string, len(panels))
	for i, p := range panels {
		end := margin + c.inner()
		if i+1 < len(panels) {
			end = x[2*i+2] - 10 // or it would run into the next sign
		}
		if came := row.of(p); !came.text.Empty() {
			out[i] = c.cut(c.by.Say(came.text), end-x[2*i]-14, c.figures, 2)
		}
	}
	return out
}

// checkHeight is that of the check's row.
func (c *customer) checkHeight(lines [][]string) float64 {
	most := 1
	for _, of := range lines {
		most = max(most, len(of))
	}
	return c.row + float64(most-1)*c.figures.lead()
}

func (c *customer) checkRow(x [4]float64) {
	row, ok := c.confirming()
	if !ok {
		return
	}
	c.label(row.label, x[0])
	lines := c.checkLines(row)
	for i, p := range c.stages() {
		if lines[i] == nil {
			c.put(x[2*i]+14, c.y, "–", c.words)
			continue
		}
		c.signed(x[2*i], row.of(p).out, lines[i][0])
		for n, more := range lines[i][1:] {
			c.put(x[2*i]+14, c.y+float64(n+1)*c.figures.lead(), more, c.figures)
		}
	}
	c.y += c.checkHeight(lines)
}
