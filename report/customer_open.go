package report

import (
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

// open reports whether no cause is known: none is named, or the loop is called sound and a check that came out badly,
// and wasn't done again since, says otherwise.
func (m Material) open() bool {
	shown := m.Proof != nil && m.Proof.Verdict == proof.Fixed
	return m.Case.Verdict.Cause == "" || m.Case.Verdict.Cause == cases.Healthy && m.Beside != nil && !shown
}

// withoutBelied names no cause where the one that was named is belied: nothing but its repair could have shown it, and
// after that another is likeliest. A customer isn't told of it once more as what is most likely.
func (m Material) withoutBelied() Material {
	v := m.Case.Verdict
	if v.Cause == "" || v.ConfirmedBy != "" || m.Proof == nil || m.Proof.Left == "" || m.Proof.Left == v.Cause {
		return m
	}
	c := *m.Case
	c.Verdict.Cause = ""
	m.Case = &c
	return m
}

// besides are the checks that the cause is no reason for.
func (c *customer) besides() say.Text {
	if c.m.Beside == nil {
		return say.Text{}
	}
	checks := c.besideChecks()
	fixed, more := c.state() == fixed, len(c.m.Beside.Checks) > 1
	switch {
	case fixed && more:
		return say.Of("customer.besides-fixed-more", checks)
	case fixed:
		return say.Of("customer.besides-fixed", checks)
	case more:
		return say.Of("customer.besides-more", checks)
	}
	return say.Of("customer.besides", checks)
}

// mayLose reports whether what is still open may let coolant go, which a look once a week would
// see too late: so the customer tells, a check has found, or a second fault would.
func (c *customer) mayLose() bool {
	switch s := c.state(); {
	case s == fixed || s == healthy:
		return false
	case s == open && c.loses():
		return true
	}
	return c.beside(func(of cases.Cause) bool {
		return slices.Contains([]cases.Cause{"external-leak", "combustion-leak", "cap-weak", "coolant-low-air"}, of)
	})
}

// mayHeat reports whether a second fault, still open, would let the engine get too hot, as a slipping belt does.
func (c *customer) mayHeat() bool {
	return c.state() != fixed && c.beside(func(of cases.Cause) bool { return overheats(of) != "" })
}

// beside reports whether one of the faults that a second one may be is such.
func (c *customer) beside(such func(cases.Cause) bool) bool {
	return c.m.Beside != nil && slices.ContainsFunc(c.m.Beside.Causes, func(r diagnosis.Ranked) bool { return such(r.Cause) })
}

// loses reports whether coolant was told to be lost, or was found to be.
func (c *customer) loses() bool {
	return slices.Contains(c.c.Complaint.Symptoms, "coolant-loss") || slices.ContainsFunc(c.f.Flags, func(f evidence.Flag) bool {
		return f.ID == "level-low" || f.ID == "pressure-drop" && f.Severity == evidence.Act
	})
}

// openHot reports whether an engine gets too hot and nobody knows yet why: the customer tells it, a
// code (P0217, engine coolant too hot, of assets/dtc.csv) or what was measured does, or a check found what lets any
// engine get too hot.
func (c *customer) openHot() bool {
	if !c.m.open() || c.state() == fixed {
		return false
	}
	told := slices.ContainsFunc(c.c.Complaint.Symptoms, func(s cases.Symptom) bool {
		return slices.Contains([]cases.Symptom{"overheats-idle", "overheats-road", "overheats-always"}, s)
	})
	coded := slices.ContainsFunc(c.c.Codes, func(k cases.Code) bool { return cases.InLetters(k.Code) == "P0217" })
	return told || coded || diagnosis.Overheated(c.c, c.f) || slices.ContainsFunc(proof.PairTests(c.c), letsHeat)
}

// letsHeat reports whether a check found, and not otherwise since, that there is gas in the coolant, no coolant, or a fan
// that stands still when it is told to run (F15, F09 and F07 of testdata/trade/signatures.csv, common practice).
func letsHeat(t proof.TestPair) bool {
	word := t.AfterOutcome
	if word == "" {
		word = t.BeforeOutcome
	}
	switch string(t.Kind) + "." + word {
	case "combustion-gas.positive", "level.empty", "fan.dead":
		return true
	}
	return false
}

// milky reports whether the oil may hold coolant and nothing shows yet that this was put right. The finding at the bay
// gives way sooner, when a round after the repair is begun, since that is walked with the engine running; who
// takes the car home runs it without anybody who looks.
func (c *customer) milky() bool {
	s := c.state()
	return slices.Contains(c.c.Complaint.Symptoms, "oil-milky") && s != fixed && s != healthy
}
