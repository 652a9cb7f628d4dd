package diagnosis_test

import (
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/published"
)

// tradeFault is a fault of testdata/trade/signatures.csv with the complaint that
// its symptom column begins with, in the case format's words.
type tradeFault struct {
	cause   cases.Cause
	symptom cases.Symptom
}

// tradeFaults leaves out F14, no fault of the loop, and what no temperature shows there: a wrong
// strength (F19, F20), a cap (F16, F24), a thermostat that is late once it has let go (F03),
// one whose heater is dead, on a car without load (F22).
var tradeFaults = map[string]tradeFault{
	"F00": {"none", "warning-light"}, "F00i": {"none", "warning-light"},
	"F01": {"thermostat-stuck-open", "slow-warm-up"},
	"F02": {"thermostat-stuck-closed", "overheats-always"}, "F02i": {"thermostat-stuck-closed", "overheats-always"},
	"F04": {"thermostat-early", "gauge-low"}, "F05": {"radiator-restricted", "overheats-road"},
	"F06": {"radiator-airflow", "overheats-idle"}, "F07": {"fan-not-running", "overheats-idle"},
	"F08": {"pump-weak", "overheats-road"}, "F09": {"coolant-low-air", "cabin-heat-comes-and-goes"},
	"F10": {"lower-hose-collapse", "overheats-road"}, "F11": {"bypass-open", "overheats-road"},
	"F12": {"heater-core-restricted", "cabin-heat-poor"}, "F13": {"heater-valve-shut", "cabin-heat-poor"},
	"F15": {"combustion-leak", "bubbles-in-bottle"}, "F17": {"sensor-reads-low", "fan-never-on"},
	"F18": {"sensor-reads-high", "fan-always-on"}, "F21": {"coolant-mix-wrong", "overheats-road"},
	"F23": {"fan-always-running", "fan-always-on"}, "F25": {"heater-air-side", "cabin-heat-poor"},
}

// outC is the air of the trade's cars, and opensC their thermostats' rating.
const outC, opensC = 20, 88

// degrees is what a word of the table is in degrees, as a part of the engine's
// excess over ambient and less by some kelvins (judgement). The first word that
// a cell holds counts.
type degrees struct {
	word       string
	part, less float64
}

var (
	upperWords = []degrees{{"warm to hot", 0.85, 0}, {"cool", 0.25, 0}, {"patchy", 1, 9}, {"falling along", 0.6, 0}, {"cold", 0.08, 0}, {"", 1, 3}}
	lowerWords = []degrees{{"cold to cool", 0.2, 0}, {"cold", 0.03, 0}, {"much cooler", 1, 38}, {"sucks flat", 1, 42}, {"cool to warm", 0.45, 0},
		{"warm to hot", 1, 18}, {"cool", 0.38, 0}, {"warm", 1, 24}, {"varies", 1, 24}, {"as healthy", 1, 24}, {"", 1, 5}}
	supplyWords = []degrees{{"cool or unequal", 0.5, 0}, {"unequal", 1, 6}, {"varies", 1, 6}, {"warm", 1, 5}, {"", 1, 4}}
	returnWords = []degrees{{"cold after", 0.1, 0}, {"cool or unequal", 0.3, 0}, {"unequal", 0.5, 0}, {"much cooler", 1, 34}, {"return cool", 1, 34},
		{"far apart", 1, 32}, {"return nearer", 1, 15}, {"may fall", 1, 20}, {"varies", 0.5, 0}, {"", 1, 11}}
	bypassWords = []degrees{{"cooler than", 0.75, 0}, {"hot", 1, 3}, {"warm", 0.8, 0}, {"cool", 0.55, 0}, {"mostly shut", 0.55, 0}, {"patchy", 0.7, 0}, {"", 1, 3}}
	ventWords   = []degrees{{"none", 0.05, 0}, {"weak", 0.2, 0}, {"poor", 0.2, 0}, {"fair", 0.35, 0}, {"drops", 0.3, 0}, {"", 0.57, 0}}
)

func inDegrees(words []degrees, cell string, engineC float64) float64 {
	for _, w := range words {
		if strings.Contains(cell, w.word) {
			return outC + w.part*(engineC-outC) - w.less
		}
	}
	return engineC
}

// difference is the one that a row gives in kelvins, in the middle of its range; a row that says "same" has the words of the one before.
type difference struct {
	between string
	k       float64
}

func differences(rows []published.Row) []difference {
	out := make([]difference, len(rows))
	for i, row := range rows {
		low, err := strconv.ParseFloat(row["delta_low_C"], 64)
		high, err2 := strconv.ParseFloat(row["delta_high_C"], 64)
		if err != nil || err2 != nil {
			continue
		}
		out[i] = difference{row["key_delta"], (low + high) / 2}
		if strings.HasPrefix(row["key_delta"], "same") && i > 0 {
			out[i].between = out[i-1].between
		}
	}
	return out
}

// is reports whether the difference is of these words, or begins with them.
func (d difference) is(words string) bool { return strings.HasPrefix(d.between, words) }

// engineC is how warm the table has the engine in a condition: by the row's difference from the rating, or by its first word
// that tells (judgement): 3 K over the rating where it is as it should be.
func engineC(row published.Row, d difference) float64 {
	usual := map[string]float64{"WIDLE": opensC + 3, "W2500": opensC + 2, "HIDLE_FAN": opensC + 9}[row["condition"]]
	switch {
	case row["fault_id"] == "F17" || row["fault_id"] == "F18":
		return usual // what the cell tells of is the sensor
	case d.is("rating minus ECT"):
		return opensC - d.k
	case d.is("plateau minus vehicle rating"):
		return opensC + d.k
	}
	cell := row["ect_or_gauge"]
	for _, w := range []struct {
		word string
		c    float64
	}{
		{"below", opensC - 15}, {"same steady", opensC - 15}, {"never run", opensC - 15}, {"near rating", usual}, {"red", 116}, {"slightly", opensC + 9},
		{"passes the fan-on", 106}, {"climb", 104}, {"above", 101}, {"does not fall", 107}, {"high", 105}, {"worse", 103}, {"jumps", 97}, {"spikes", 100},
	} {
		if strings.Contains(cell, w.word) {
			return w.c
		}
	}
	return usual
}

// tradeRound is a row of the table walked with the gun. What goes into the engine is read on the housing of
// an inlet thermostat; elsewhere no point lies behind the bypass.
func tradeRound(row published.Row, d difference, layout string) cases.Round {
	mixed := layout == "inlet-thermostat"
	engine := engineC(row, d)
	upper := inDegrees(upperWords, row["upper_hose"], engine)
	at := map[diagram.Point]float64{
		diagram.EngineOut: upper, diagram.RadIn: upper - 1, diagram.RadOut: inDegrees(lowerWords, row["lower_hose"], engine),
		diagram.HeaterIn: inDegrees(supplyWords, row["heater_hoses"], engine), diagram.HeaterOut: inDegrees(returnWords, row["heater_hoses"], engine),
		diagram.Bypass: inDegrees(bypassWords, row["bypass"], engine), diagram.Vent: inDegrees(ventWords, row["cabin_heat"], engine),
	}
	ect := engine
	switch {
	case d.is("upper minus lower"):
		at[diagram.RadOut] = upper - d.k
	case d.is("engine out minus in") && mixed:
		at[diagram.Housing] = upper - d.k
	case d.is("engine outlet minus bypass"):
		at[diagram.Bypass] = upper - d.k
	case d.is("pump inlet minus lower hose") && mixed:
		at[diagram.Housing] = at[diagram.RadOut] + d.k
	case d.is("supply minus return small"): // and the vent's large
		at[diagram.Vent] = at[diagram.HeaterIn] - d.k
	case d.is("supply minus return"):
		at[diagram.HeaterOut] = at[diagram.HeaterIn] - d.k
	case d.is("scan ECT minus taped boss"):
		ect += d.k
	}
	if row["fault_id"] == "F09" {
		ect -= 8 // the sensor stands in vapour
	}
	rpm := 800.0
	if row["condition"] == "W2500" {
		rpm = 2500
	}
	fan := cases.FanOff
	if (engine > 97 || row["condition"] == "HIDLE_FAN" || ect > 97) && row["fault_id"] != "F07" || row["fault_id"] == "F23" {
		fan = cases.FanOn
	}
	r := cases.Round{
		Label: row["condition"], Stage: cases.BeforeRepair, EngineRPM: &rpm, SpeedKmh: casetest.P(0.0), Heater: cases.HeaterFull, Fan: fan,
		MinutesSinceStart: casetest.P(map[string]float64{"WIDLE": 22, "W2500": 28, "HIDLE_FAN": 42}[row["condition"]]),
		EctC:              casetest.P(diagram.Celsius(ect)),
	}
	for _, p := range diagram.Points() {
		c, told := at[p]
		if !told {
			continue
		}
		if !p.Air() {
			c -= 0.05 * (c - outC) // the wall
		}
		r.Readings = append(r.Readings, cases.Reading{Point: p, ShownC: casetest.P(diagram.Celsius(c))})
	}
	return r
}

// Cars made from the trade's own table, the warm rows of each fault (patterns
// published with their sources there, their degrees our reading of its words), on
// both sides of the engine: the fault should come first or nearly. Bypass (F11) and sludge
// (F21) stand behind a choked radiator, a late thermostat and a weak pump, which show much the same.
func TestTradeSignatures(t *testing.T) {
	rows := map[string][]published.Row{}
	for _, r := range published.Rows(t, "trade/signatures.csv") {
		rows[r["fault_id"]] = append(rows[r["fault_id"]], r) // COLD5 first
	}
	for _, tt := range []struct {
		conditions   int
		first, three float64 // per cent, at least
	}{{1, 60, 80}, {2, 65, 85}, {3, 65, 85}} {
		if tt.conditions != 2 && *splitCases < 50 {
			continue
		}
		var all []answered
		var made []cases.Case
		for id, f := range tradeFaults {
			told := differences(rows[id])
			for _, layout := range sidesOf(rows[id][0]["layout"]) {
				c := cases.Case{
					Loop:      cases.Loop{Layout: layout, ThermostatOpensC: casetest.P(diagram.Celsius(opensC)), CapKPa: casetest.P(diagram.KPa(110)), Fan: "electric"},
					Site:      cases.Site{AmbientC: casetest.P(diagram.Celsius(outC))},
					Complaint: cases.Complaint{Symptoms: []cases.Symptom{f.symptom}},
				}
				for i, r := range rows[id][1:][:tt.conditions] {
					c.Rounds = append(c.Rounds, tradeRound(r, told[1+i], layout))
				}
				b := newBench(t)
				b.crowds.Draws = *splitDraws
				a := answered{f.cause, b.rank(t, c, diagnosis.Prior{})}
				if place, p := placeOf(a); place > 0 {
					t.Logf("%d rounds, %s %s: place %d (%.2f), first %s (%.2f)", tt.conditions, id, layout, place+1, p, a.rank.Causes[0].Cause, a.rank.Causes[0].Probability)
				}
				all = append(all, a)
				c.Verdict.Cause = f.cause
				made = append(made, c)
			}
		}
		s := scored(all)
		thumbFirst, thumbThree := byThumb(made)
		t.Logf("%d rounds and one symptom: %v; by rules of thumb: first %.0f %%, among three %.0f %%", tt.conditions, s, thumbFirst, thumbThree)
		if s.part(s.first) <= thumbFirst || s.part(s.three) <= thumbThree {
			t.Errorf("%d rounds: %v; rules of thumb do as well", tt.conditions, s)
		}
		if s.part(s.first) < tt.first || s.part(s.three) < tt.three {
			t.Errorf("%d rounds: %v; want first %g %%, among three %g %%", tt.conditions, s, tt.first, tt.three)
		}
	}
}

func sidesOf(layout string) []string {
	switch layout {
	case "outlet-side":
		return []string{"outlet-thermostat"}
	case "inlet-side":
		return []string{"inlet-thermostat"}
	}
	return []string{"outlet-thermostat", "inlet-thermostat"}
}
