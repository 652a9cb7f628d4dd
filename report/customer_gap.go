package report

import (
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// gap is the difference that tells most in the customer's table, over the radiator, the thermostat or the heater: in
// the round before, or in the one after where that shows why it isn't fixed. Each side has the range of its own round.
type gap struct {
	label say.Text
	sides[*evidence.Delta]
}

func (c *customer) gap() (gap, bool) {
	if c.state() == notFixed {
		if g, ok := c.gapOf(c.pair.after); ok {
			return g, true
		}
	}
	return c.gapOf(c.pair.before)
}

// gapOf is the difference that is out by most in a round.
func (c *customer) gapOf(round int) (gap, bool) {
	var out gap
	worst := diagram.DeltaK(0)
	for _, name := range []string{evidence.AcrossRadiator, evidence.ThermostatStep, evidence.HeaterDrop} {
		d := c.deltaAt(round, name)
		if d == nil || !d.State.Out() {
			continue
		}
		if off := outBy(d); off > worst {
			worst, out = off, gap{say.Of("customer.gap." + name), sides[*evidence.Delta]{c.deltaAt(c.pair.before, name), c.deltaAt(c.pair.after, name)}}
		}
	}
	return out, worst > 0
}

func (c *customer) deltaAt(round int, name string) *evidence.Delta {
	for i := range c.f.Deltas {
		if d := &c.f.Deltas[i]; d.Round == round && d.Name == name {
			return d
		}
	}
	return nil
}

// outBy is how far a difference is out of its range.
func outBy(d *evidence.Delta) diagram.DeltaK {
	off := diagram.DeltaK(0)
	if d.ExpectedLowK != nil {
		off = max(off, *d.ExpectedLowK-d.ValueK)
	}
	if d.ExpectedHighK != nil {
		off = max(off, d.ValueK-*d.ExpectedHighK)
	}
	return off
}

// leastOut is by how much a reading or a difference has to be out for a customer to be told: less may read the same as
// the end of its range. It is of what was measured, not of the numbers as they are read, which would be out in one unit
// and within in the other.
const leastOut diagram.DeltaK = 0.5

// leastApart is how far at least what is out is read from the end of its range: numbers are whole, and 0.6 K may stand
// between two that read the same, in °C or in °F.
const leastApart diagram.DeltaK = 1

func (c *customer) gapRow(x [4]float64) {
	g, ok := c.gap()
	if !ok {
		return
	}
	c.label(g.label, x[0])
	for i, p := range c.stages() {
		d := g.of(p)
		if d == nil {
			c.put(x[2*i]+14, c.y, "–", c.words)
			continue
		}
		text := c.by.Say(say.Value(d.ValueK))
		if should := c.by.Say(plainSpan(*d)); should == "" {
			c.put(x[2*i]+14, c.y, text, c.figures)
		} else {
			c.signed(x[2*i], outBy(d) >= leastOut, text)
			c.put(x[2*i+1], c.y, should, c.words)
		}
	}
	c.y += c.row
}

// plainSpan is what a difference should be, without a lower bound below nothing, which a measurement may fall
// to but a customer can't see the sense of, with what is as good as within it, and clear of what is out.
func plainSpan(d evidence.Delta) say.Text {
	switch {
	case outBy(&d) < leastOut:
		d.ExpectedLowK, d.ExpectedHighK = atMost(d.ExpectedLowK, d.ValueK), atLeast(d.ExpectedHighK, d.ValueK)
	case d.ExpectedHighK != nil && d.ValueK > *d.ExpectedHighK:
		d.ExpectedHighK = atMost(d.ExpectedHighK, d.ValueK-leastApart)
	default:
		d.ExpectedLowK = atLeast(d.ExpectedLowK, d.ValueK+leastApart)
	}
	if d.ExpectedHighK != nil && d.ExpectedLowK != nil && *d.ExpectedLowK <= 0 && d.ValueK >= *d.ExpectedLowK {
		d.ExpectedLowK = nil
	}
	return span(d)
}

// atMost and atLeast move a bound, if there is one, as far as the value.
func atMost(bound *diagram.DeltaK, value diagram.DeltaK) *diagram.DeltaK {
	if bound == nil || *bound <= value {
		return bound
	}
	return &value
}

func atLeast(bound *diagram.DeltaK, value diagram.DeltaK) *diagram.DeltaK {
	if bound == nil || *bound >= value {
		return bound
	}
	return &value
}
