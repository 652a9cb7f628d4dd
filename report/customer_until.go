package report

import (
	"loopbook/cases"
	"loopbook/diagram/say"
)

// unrepaired reports whether a fault was found and nothing is noted to have been
// done about it.
func (c *customer) unrepaired() bool {
	cause := c.c.Verdict.Cause
	return cause != "" && cause != cases.Healthy && !c.worked()
}

// worked reports whether anything is noted that is done to repair a car.
func (c *customer) worked() bool {
	return c.measuredAfter() || c.fitted() != nil || c.filledAndBled()
}

// measuredAfter reports whether anything was measured after a repair.
func (c *customer) measuredAfter() bool {
	return c.pair.after >= 0 || c.m.Proof != nil && c.m.Proof.Measured
}

// stillThere reports whether the car has its fault as far as is known.
func (c *customer) stillThere() bool {
	s := c.state()
	return s == unrepaired || s == notFixed || s == unsure && c.cameBack()
}

// cameBack reports whether a code of the complaint was read again after the repair.
func (c *customer) cameBack() bool {
	return c.m.Proof != nil && len(c.m.Proof.Codes.Back) > 0
}

// overheats says where a fault shows most that lets the engine get too hot: in
// customers' words the symptoms of testdata/trade/signatures.csv, F02 to F15
// (common practice); "" for other faults.
func overheats(cause cases.Cause) string {
	switch cause {
	case "fan-not-running":
		return "traffic"
	case "radiator-airflow":
		return "slow"
	case "radiator-restricted", "thermostat-late", "thermostat-heater-fault", "pump-weak", "bypass-open":
		return "load"
	case "lower-hose-collapse":
		return "fast"
	case "thermostat-stuck-closed":
		return "soon"
	case "coolant-low-air", "external-leak", "combustion-leak":
		return "little"
	case "cap-weak":
		return "boils"
	}
	return ""
}

// mayHarm reports whether the engine may come to harm when the car is driven on
// with the fault: it gets too hot, or nobody would see that it does.
func mayHarm(cause cases.Cause) bool {
	return cause.OfSensor() || cause == "coolant-mix-wrong" || overheats(cause) != ""
}

// until is what the fault means as long as it is there. Where to stop is the
// caution of an army manual (M15 of testdata/trade/sources.md): boiling on
// destroys the engine. What the milder faults do is common practice.
func (c *customer) until() say.Text {
	cause, stop := c.c.Verdict.Cause, say.Of("customer.until.stop")
	where := overheats(cause)
	if where != "" && c.state() == notFixed && c.m.Beside != nil { // what was renewed may not be what is still wrong
		return say.Sentences(say.Of("customer.until.hot"), stop)
	}
	if where != "" {
		return say.Sentences(say.Of("customer.until.hot"), say.Of("customer.until."+where), stop)
	}
	switch cause {
	case "sensor-reads-low":
		return say.Sentences(say.Of("customer.until.blind"), stop)
	case "sensor-reads-high": // its gauge is in the red on a cool engine
		return say.Sentences(say.Of("customer.until.blind"), say.Of("customer.until.steam"))
	case "coolant-mix-wrong":
		return say.Sentences(say.Of("customer.until.mix"), stop)
	case "cap-vacuum-stuck":
		return say.Sentences(say.Of("customer.until.level"), stop)
	case "fan-always-running":
		return say.Sentences(say.Of("customer.until.fan"), c.second())
	case "heater-core-restricted", "heater-valve-shut", "heater-air-side":
		return say.Sentences(say.Of("customer.until.cabin"), c.second())
	}
	return say.Sentences(say.Of("customer.until.cold"), c.second())
}

// second is what a second fault may do to an engine that a mild one leaves fit to drive.
func (c *customer) second() say.Text {
	var out []say.Text
	if c.mayHeat() {
		out = append(out, say.Of("customer.watch.hot"))
	}
	if c.mayLose() {
		out = append(out, say.Of("customer.watch.losing"))
	}
	return say.Sentences(out...)
}

// driving is whether the car may be driven with its fault, in one sentence.
func (c *customer) driving() say.Text {
	if overheats(c.c.Verdict.Cause) != "" {
		return say.Of("customer.now.no-driving")
	}
	if warned := c.warned(); !warned.Empty() {
		return warned
	}
	return say.Of("customer.now.talk")
}

// barred reports whether the car isn't to be driven, whatever its cause is.
func (c *customer) barred() bool { return c.openHot() || c.milky() }

// warned is that the car isn't to be driven for what else is known of it; else nothing.
func (c *customer) warned() say.Text {
	if c.barred() {
		return say.Of("customer.now.no-driving")
	}
	return say.Text{}
}
