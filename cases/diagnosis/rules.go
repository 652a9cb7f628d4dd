package diagnosis

import (
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// findings are the words of what the trade's rules found in the stage's rounds
// and logs; it is false where nothing was found and no round holds a temperature: a log by itself
// doesn't show what stands out at the hoses.
func findings(c *cases.Case, f evidence.Findings, stage cases.Stage) (words []string, measured bool) {
	for i, r := range f.Rounds {
		measured = measured || stage.Holds(c.Rounds[i].Stage) && (len(r.Readings) > 0 || c.Rounds[i].EctC != nil)
	}
	for _, flag := range f.Flags {
		ofRound := flag.Round >= 0 && stage.Holds(c.Rounds[flag.Round].Stage)
		ofLog := flag.Round == evidence.WholeCase && logFinding(flag.ID) && stage.Holds(flag.Stage)
		if flag.Severity != evidence.Note && (ofRound || ofLog) {
			words = append(words, flag.ID)
		}
	}
	return words, measured || len(words) > 0
}

// logFinding reports whether a finding that belongs to no round is of a log;
// workshop tests, which have others, weigh by their outcomes.
func logFinding(id string) bool {
	switch id {
	case "engine-above-rating", "engine-below-target", "thermostat-opening-late", "thermostat-passing-early", "drops-on-road", "warm-up-no-knee", "sensor-stuck", "sensor-jumps":
		return true
	}
	return false
}

// holding counts the stage's rounds that hold all of what a rule needs to read.
func holding(c *cases.Case, f evidence.Findings, stage cases.Stage) func(needs []string) int {
	return func(needs []string) int {
		n := 0
		for i := range f.Rounds {
			if stage.Holds(c.Rounds[i].Stage) && holds(&c.Rounds[i], f.Rounds[i], needs) {
				n++
			}
		}
		return n
	}
}

func holds(r *cases.Round, f evidence.Round, needs []string) bool {
	for _, need := range needs {
		var has bool
		switch need {
		case likelihood.EngineTemp:
			has = f.EngineC != nil || r.Gauge != ""
		case likelihood.SensorTemp:
			has = r.EctC != nil
		case likelihood.FanSeen:
			has = r.Fan == cases.FanOn || r.Fan == cases.FanOff
		default:
			reading, read := f.Readings[diagram.Point(need)]
			has = read && reading.Usable()
		}
		if !has {
			return false
		}
	}
	return true
}
