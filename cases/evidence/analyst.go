package evidence

import (
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
)

// Analyst turns cases into findings. Build it once, use it from anywhere: it
// remembers logs it has read, and nothing else changes.
type Analyst struct {
	expecter Expecter
	codes    Codes
	memory   *warmUpMemory
}

// New is an analyst who judges by what e expects. An error names the shipped
// data that is at fault.
func New(e Expecter) (*Analyst, error) {
	if _, err := diagram.Loops(); err != nil {
		return nil, err
	}
	codes, err := ShippedCodes()
	if err != nil {
		return nil, err
	}
	return &Analyst{expecter: e, codes: codes, memory: newWarmUpMemory()}, nil
}

// Default is an analyst with the shipped table.
func Default() (*Analyst, error) {
	table, err := Shipped()
	if err != nil {
		return nil, err
	}
	return New(table)
}

// Analyse judges the case as it stands. It doesn't change the case.
func (a *Analyst) Analyse(c *cases.Case) Findings {
	c, unbelieved := Believed(c)
	all := a.moments(c)
	f := Findings{Rounds: make([]Round, len(all)), WarmUps: a.warmUps(c, all)}
	for i, m := range all {
		f.Rounds[i] = Round{Readings: m.readings, Expected: m.expected, EngineC: m.engine.c, EngineBy: m.engine.by, Regime: m.engine.regime, CapShut: lastHot(all[:i+1]) != nil}
		f.Deltas = append(f.Deltas, m.deltas...)
		f.Flags = append(f.Flags, m.flags()...)
	}
	f.Flags = append(f.Flags, a.caseFlags(c, all)...)
	for _, stage := range []cases.Stage{cases.BeforeRepair, cases.AfterRepair} {
		b, flags := boiling(c, stage, a.hottestOf(c, all, f.WarmUps, stage))
		if b != nil {
			f.Boiling = append(f.Boiling, *b)
		}
		f.Flags = append(f.Flags, flags...)
	}
	f.Flags = append(f.Flags, logFlags(c, f.WarmUps)...)
	f.Flags = append(f.Flags, outOfRange(all, f.Flags)...)
	f.Flags = append(f.Flags, unbelieved...)
	slices.SortStableFunc(f.Flags, func(a, b Flag) int { return a.rank() - b.rank() })
	return f
}

// moments are the case's rounds, each judged, each with those before it.
func (a *Analyst) moments(c *cases.Case) []*moment {
	all := make([]*moment, len(c.Rounds))
	for i := range c.Rounds {
		m := newMoment(c, i)
		for _, b := range all[:i] {
			if m.round.Stage.Holds(b.round.Stage) {
				m.before = append(m.before, b)
			}
		}
		m.judge(a.expecter.Expect(c, i))
		all[i] = m
	}
	return all
}

// flags are what one round shows by itself and by those before it.
func (m *moment) flags() []Flag {
	return slices.Concat(
		m.gaugeAgainstSensor(), m.aboveRating(), m.notOpening(), m.flowRestricted(), m.airSide(), m.fanNotRunning(), m.fanRunning(),
		m.bypassOpen(), m.passingEarly(), m.belowTarget(),
		m.heaterFlow(), m.heaterAirSide(), m.starved(), m.bleedCold(), m.sensorDisagrees(),
		m.hoseUneven(), m.impossible(), m.standsAlone(), m.airTooHot(), m.doubtful(), m.notInLayout(),
	)
}

func (a *Analyst) caseFlags(c *cases.Case, all []*moment) []Flag {
	return slices.Concat(
		stopHot(all), milkyOil(c), acrossRounds(all), testFlags(c), judgeFill(c).flags,
		a.codes.flags(c), hotCaution(all), nothingMeasured(c, all), layoutUnknown(all), misplaced(c),
	)
}

// rank puts what can hurt first, then what asks for most.
func (f Flag) rank() int {
	switch {
	case f.ID == stopHotID || f.ID == hotCautionID:
		return 0
	case f.Severity == Act:
		return 1
	case f.Severity == Look:
		return 2
	}
	return 3
}
