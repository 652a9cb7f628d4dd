package report

import (
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

func (c *customer) wrongHead() string {
	switch {
	case c.c.Verdict.Cause == "" && len(c.c.Complaint.Symptoms) > 0:
		return "customer.told"
	case c.c.Verdict.Cause == "" || c.c.Verdict.Cause == cases.Healthy:
		return "customer.found"
	case c.m.likely():
		return "customer.likely"
	case c.unrepaired():
		return "customer.is-wrong"
	}
	return "customer.was-wrong"
}

// wrong is the cause in plain words, or what the customer has told of.
func (c *customer) wrong() say.Text {
	if cause := c.c.Verdict.Cause; cause == cases.Healthy && c.m.open() {
		return say.Of("customer.found.checks", c.besideChecks())
	} else if cause != "" {
		return say.Sentences(say.Of("customer.wrong."+string(cause)), c.besides())
	}
	if len(c.c.Complaint.Symptoms) == 0 {
		return say.Of("customer.wrong.nothing")
	}
	return say.Of("customer.wrong.open", say.List(texts(c.c.Complaint.Symptoms)...))
}

// did is what was done, from the parts and the steps that are ticked.
func (c *customer) did() say.Text {
	var out []say.Text
	if parts := c.fitted(); parts != nil {
		out = append(out, say.Of("customer.did.parts", strings.Join(parts, "; ")))
	}
	if c.filledAndBled() {
		out = append(out, say.Of("customer.did.steps"))
	}
	switch {
	case c.pair.after >= 0 && len(out) > 0:
		out = append(out, say.Of("customer.did.measured"))
	case len(out) == 0:
		out = append(c.looked(), c.unnoted())
	}
	return say.Sentences(out...)
}

// looked is what was measured and checked.
func (c *customer) looked() []say.Text {
	var out []say.Text
	read := func(r cases.Reading) bool { return r.ShownC != nil }
	if slices.ContainsFunc(c.c.Rounds, func(r cases.Round) bool { return slices.ContainsFunc(r.Readings, read) }) {
		out = append(out, say.Of("customer.did.looked"))
	}
	if slices.ContainsFunc(c.c.Logs, func(l cases.Log) bool { return len(l.EctC) > 0 }) {
		out = append(out, say.Of("customer.did.warmed"))
	}
	if len(c.c.Tests) > 0 {
		out = append(out, say.Of("customer.did.checked"))
	}
	return out
}

// fitted are the names of the parts.
func (c *customer) fitted() []string {
	var parts []string
	for _, p := range c.c.Repair.Parts {
		if p.Name != "" {
			parts = append(parts, p.Name)
		}
	}
	return parts
}

// filledAndBled goes by the ticks of package cases/access: the first of its steps
// are done before a drop is filled in.
func (c *customer) filledAndBled() bool {
	bled := func(step string) bool { return strings.HasPrefix(step, "bled-") }
	done := c.c.Repair.StepsDone
	return slices.Contains(done, "filled") && slices.ContainsFunc(done, bled)
}

// unnoted is what was done where no work is noted: nothing, unless it was measured after a repair.
func (c *customer) unnoted() say.Text {
	switch {
	case c.state() == healthy:
		return say.Of("customer.did.unneeded")
	case c.measuredAfter():
		return say.Of("customer.did.repaired")
	}
	return say.Of("customer.did.nothing")
}

// state is how far the repair is shown to have worked.
type state int

const (
	notMeasured state = iota
	fixed
	unsure
	notFixed
	healthy    // nothing had to be repaired
	unrepaired // a fault was found, and nothing done about it
	open       // no cause is known, and nothing done
)

func (c *customer) state() state {
	if c.c.Verdict.Cause == cases.Healthy && !c.m.open() {
		return healthy
	}
	if c.unrepaired() {
		return unrepaired
	}
	if c.m.open() && !c.worked() {
		return open
	}
	if c.m.Proof == nil {
		return notMeasured
	}
	switch c.m.Proof.Verdict {
	case proof.Fixed:
		return fixed
	case proof.NotFixed:
		return notFixed
	case proof.NotShown:
		return unsure
	}
	return notMeasured
}

// warmC is from where on an engine's temperature is told, rather than that it was on
// its way; judgement. One reading says what it was, not that it stays there.
const warmC diagram.Celsius = 70

func (c *customer) now() say.Text {
	var engine say.Text
	if at := c.engineAfter(); at != nil && *at >= warmC {
		engine = say.Of("customer.now.engine", *at)
	}
	switch c.state() {
	case healthy:
		return say.Sentences(c.sound(), say.Of("customer.now.healthy"))
	case fixed:
		return say.Sentences(engine, say.Of("customer.now.fixed"))
	case unsure:
		if c.cameBack() {
			return say.Sentences(engine, say.Of("customer.now.code-back"), c.driving())
		}
		return say.Sentences(engine, say.Of("customer.now.unsure"), c.warned())
	case notFixed:
		return say.Sentences(engine, say.Of("customer.now.not-fixed"), c.driving())
	case unrepaired:
		return say.Sentences(say.Of("customer.now.unrepaired"), c.driving())
	case open:
		return say.Sentences(say.Of("customer.now.open"), c.warned())
	}
	return say.Sentences(say.Of("customer.now.not-measured"), c.warned())
}

// engineAfter is how warm the engine was after the repair, by the same reading as in the table: the sensor's may be
// some kelvins from it, and one page would tell two.
func (c *customer) engineAfter() *diagram.Celsius {
	for _, s := range c.spots() {
		if s.label.Key() == "customer.spot.engine" && s.after.c != nil {
			return s.after.c
		}
	}
	return c.f.Round(c.pair.after).EngineC
}

// sound is of a loop without a fault. It must not deny what the table shows.
func (c *customer) sound() say.Text {
	_, off := c.gap()
	near := false
	for _, s := range c.spots() {
		off = off || s.before.alarms() || s.after.alarms()
		near = near || s.before.quiet || s.after.quiet
	}
	switch {
	case off:
		return say.Of("customer.now.odd")
	case near:
		return say.Of("customer.now.near")
	}
	return say.Of("customer.now.good")
}

// moodCame is of how the car came; it is no alarm where nothing was wrong, or isn't known yet.
func (c *customer) moodCame() mood {
	switch {
	case c.m.open():
		return moodLook()
	case c.c.Verdict.Cause == cases.Healthy:
		return moodFine()
	}
	return moodAct()
}

// moodNow is of how it is now.
func (c *customer) moodNow() mood {
	switch s := c.state(); {
	case s == fixed || s == healthy:
		return moodFine()
	case s == notFixed, s == unrepaired && mayHarm(c.c.Verdict.Cause), c.barred(), c.stillThere() && c.cameBack():
		return moodAct()
	}
	return moodLook()
}

// watchFor is what to look at in the next weeks, by the kind of fault.
func (c *customer) watchFor() say.Text {
	level := say.Of("customer.watch.level")
	if c.mayLose() {
		level = say.Of("customer.watch.losing")
	}
	var hot say.Text
	if c.mayHeat() {
		hot = say.Of("customer.watch.hot")
	}
	switch c.c.Verdict.Cause {
	case "thermostat-stuck-open", "thermostat-early", "sensor-reads-low", "fan-always-running":
		return say.Sentences(say.Of("customer.watch.cold"), hot, level)
	case "heater-core-restricted", "heater-valve-shut", "heater-air-side":
		return say.Sentences(say.Of("customer.watch.cabin"), hot, level)
	}
	return say.Sentences(say.Of("customer.watch.hot"), level)
}
