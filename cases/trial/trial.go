// Package trial makes cases of known cause from a plain lumped model of a
// car's cooling loop, to try the diagnosis on cars of another model than its
// own. It shares no line and no parameter with that: three lumps with a heat
// balance, hoses that warm with their flow, and faults set by hand.
//
// What is measured errs as in a workshop: hose walls, a gun with a bias, a
// sensor within its tolerance, points out of reach, notes not taken, and
// checks that pass a bad part. Figures without a source are judgement.
package trial

import (
	"fmt"
	"math/rand"
	"time"

	"loopbook/cases"
	"loopbook/diagram"
)

// Level says how much of a case was gathered.
type Level int

// The levels, each holding what the one before holds.
const (
	Temperatures Level = iota // one or two rounds with the gun, nothing else
	OneSymptom                // and exactly one symptom
	Complaint                 // two to four rounds, one to three symptoms, often codes
	Checks                    // and one to three workshop checks
	Everything                // and every workshop check, for who practises
	Whole                     // and a round at every stage, for who asks for one after the other
)

// Cases are n cases of that level with the truth as the verdict's cause: six
// parts in about thirty healthy, one part for each fault that a shipped layout
// can have. The same seed gives the same cases.
func Cases(seed int64, n int, level Level) []cases.Case {
	loops, err := diagram.Loops()
	if err != nil {
		panic(fmt.Sprintf("trial: shipped layouts: %v", err))
	}
	mix := mixture(loops)
	out := make([]cases.Case, n)
	var order []int
	for i := range out {
		if i%len(mix) == 0 {
			order = rand.New(rand.NewSource(seed ^ int64(i))).Perm(len(mix))
		}
		d := dice{rand.New(rand.NewSource(seed*1_000_003 + int64(i)))}
		out[i] = one(d, loops, mix[order[i%len(mix)]], level)
		out[i].ID = fmt.Sprintf("TRIAL-%d-%d-%05d", seed, level, i)
		out[i].Title = fmt.Sprintf("Trial car %d", i+1)
	}
	return out
}

// mixture is one cycle of causes.
func mixture(loops []*diagram.Loop) []cases.Cause {
	const healthyParts = 6
	var mix []cases.Cause
	for _, cause := range cases.Words[cases.Cause]() {
		switch {
		case cause == cases.Healthy:
			for i := 0; i < healthyParts; i++ {
				mix = append(mix, cause)
			}
		case len(suited(loops, cause)) > 0:
			mix = append(mix, cause)
		}
	}
	return mix
}

// suited are the layouts that can have the fault.
func suited(loops []*diagram.Loop, cause cases.Cause) []*diagram.Loop {
	if cause != "thermostat-heater-fault" {
		return loops
	}
	var out []*diagram.Loop
	for _, l := range loops {
		if l.Heated() {
			out = append(out, l)
		}
	}
	return out
}

func one(d dice, loops []*diagram.Loop, cause cases.Cause, level Level) cases.Case {
	v := newCar(d, pick(d, suited(loops, cause)...), cause)
	c := v.record(d)
	c.Opened = time.Date(2026, 1, 5, 9, 0, 0, 0, time.UTC)
	most := 2
	if level >= Complaint {
		most = 4
	}
	planned := plan(d, max(1, most-2), most)
	if level == Whole {
		planned = []int{fromCold, warmIdle, raised, hotIdle, afterRoad}
	}
	c.Rounds = v.rounds(d, planned, c.Opened)
	switch {
	case level == OneSymptom:
		c.Complaint.Symptoms = v.symptoms(d, 1)
	case level >= Complaint:
		c.Complaint.Symptoms = v.symptoms(d, d.symptomCount(cause))
		c.Codes = v.codes(d, c.Rounds)
	}
	switch {
	case level == Checks:
		c.Tests = v.checks(d, 1+d.Intn(3))
	case level >= Everything:
		c.Tests = v.checks(d, len(cases.Words[cases.TestKind]()))
	}
	c.Verdict.Cause = cause
	return c
}
