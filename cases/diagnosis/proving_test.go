package diagnosis_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
)

// What is as good as settled by signs is proved before parts are renewed: gas in the coolant before
// a head comes off (T23), a fan by its command, a sensor by its resistance (V15, V16); the columns
// of confirming checks in testdata/trade/signatures.csv, common practice.
func TestACauseAsGoodAsSettledIsProved(t *testing.T) {
	b := newBench(t)
	leak := idle("inlet-thermostat", 100, nil)
	leak.Complaint.Symptoms = []cases.Symptom{"coolant-loss", "white-exhaust", "bubbles-in-bottle", "hoses-hard-cold"}
	leak.Tests = []cases.Test{{Kind: "bubbles", Stage: cases.BeforeRepair, Seen: casetest.P(true)}}
	fan := idle("inlet-thermostat", 110, map[diagram.Point]float64{"engine_out": 106, "rad_in": 104, "rad_out": 96})
	fan.Complaint.Symptoms = []cases.Symptom{"overheats-idle", "fan-never-on"}
	low := idle("inlet-thermostat", 62, map[diagram.Point]float64{"engine_out": 88, "rad_in": 84, "heater_in": 85})
	low.Complaint.Symptoms = []cases.Symptom{"gauge-low"}
	for proof, c := range map[string]cases.Case{"combustion-gas": leak, "fan": fan, "sensor-resistance": low} {
		r := b.rank(t, c, diagnosis.Prior{})
		next := b.judge.Next(r)
		if len(next) == 0 || next[0].Check.Check != proof || !next[0].Proof {
			t.Errorf("%s at %.3f: %+v, want %s first", r.Causes[0].Cause, r.Causes[0].Probability, next, proof)
		}
		for _, n := range next[min(1, len(next)):] {
			if n.Proof {
				t.Errorf("%s proves it too", n.Title())
			}
		}
	}
	fan.Complaint.Symptoms = append(fan.Complaint.Symptoms, "warning-light")
	for _, n := range b.judge.Next(b.rank(t, fan, diagnosis.Prior{})) {
		if n.Proof {
			t.Errorf("with a lamp that is lit and no code read, %s is asked for as a proof", n.Title())
		}
	}
	if next := b.judge.Next(b.rank(t, idle("inlet-thermostat", 90, nil), diagnosis.Prior{})); len(next) == 0 || next[0].Proof {
		t.Errorf("with nothing settled a proof is asked for: %+v", next)
	}
}
