package trial

import (
	"math"
	"strings"

	"loopbook/cases"
)

// symptomCount is one to three; people with a healthy car may have none left
// to tell.
func (d dice) symptomCount(cause cases.Cause) int {
	if cause == cases.Healthy && d.chance(0.25) {
		return 0
	}
	return 1 + d.Intn(3)
}

// symptoms are what the customer tells: mostly what the fault does, now and
// then something that has nothing to do with it.
func (v *car) symptoms(d dice, n int) []cases.Symptom {
	told := weights(felt()[v.cause])
	for _, s := range cases.Words[cases.Symptom]() {
		if !strings.Contains(felt()[v.cause], string(s)) {
			told = append(told, weighted{string(s), 0.05})
		}
	}
	var out []cases.Symptom
	for _, w := range draw(d, n, told) {
		out = append(out, cases.Symptom(w))
	}
	return out
}

// weights reads "word word …", the likeliest first.
func weights(line string) []weighted {
	words := strings.Fields(line)
	var out []weighted
	for i, w := range words {
		out = append(out, weighted{w, 1 - 0.7*float64(i)/float64(len(words))})
	}
	return out
}

// felt is what people come with, the likeliest first: the symptom column of
// signatures.csv in the words of the format, with what a workshop hears.
func felt() map[cases.Cause]string {
	return map[cases.Cause]string{
		"none":                    "warning-light slow-warm-up gauge-swings cabin-heat-poor fuel-use-up coolant-smell fan-always-on coolant-loss white-exhaust",
		"thermostat-stuck-open":   "slow-warm-up warning-light gauge-low cabin-heat-poor fuel-use-up",
		"thermostat-stuck-closed": "overheats-always warning-light overheats-road overheats-idle coolant-loss",
		"thermostat-late":         "gauge-swings overheats-road warning-light overheats-always coolant-loss",
		"thermostat-early":        "gauge-low slow-warm-up cabin-heat-poor warning-light fuel-use-up",
		"radiator-restricted":     "overheats-road overheats-always warning-light coolant-loss",
		"radiator-airflow":        "overheats-idle overheats-road overheats-always fan-always-on warning-light",
		"fan-not-running":         "overheats-idle fan-never-on warning-light coolant-loss",
		"pump-weak":               "cabin-heat-poor overheats-road overheats-always cabin-heat-comes-and-goes warning-light coolant-loss",
		"coolant-low-air":         "cabin-heat-comes-and-goes gauge-swings cabin-heat-poor coolant-loss warning-light overheats-always bubbles-in-bottle",
		"lower-hose-collapse":     "overheats-road warning-light gauge-swings overheats-always",
		"bypass-open":             "overheats-road overheats-always slow-warm-up warning-light gauge-low",
		"heater-core-restricted":  "cabin-heat-poor cabin-heat-comes-and-goes slow-warm-up",
		"heater-valve-shut":       "cabin-heat-poor cabin-heat-comes-and-goes",
		"combustion-leak":         "coolant-loss bubbles-in-bottle white-exhaust hoses-hard-cold overheats-road overheats-always cabin-heat-comes-and-goes oil-milky gauge-swings",
		"cap-weak":                "coolant-loss coolant-smell overheats-road bubbles-in-bottle",
		"external-leak":           "coolant-loss coolant-smell warning-light cabin-heat-comes-and-goes overheats-always",
		"sensor-reads-low":        "warning-light gauge-low fuel-use-up fan-never-on fan-always-on",
		"sensor-reads-high":       "warning-light fan-always-on overheats-always gauge-swings",
		"coolant-mix-wrong":       "overheats-road cabin-heat-poor coolant-loss warning-light overheats-always",
		"fan-always-running":      "fan-always-on slow-warm-up fuel-use-up warning-light cabin-heat-poor",
		"thermostat-heater-fault": "warning-light overheats-road fuel-use-up",
		"cap-vacuum-stuck":        "coolant-loss coolant-smell hoses-hard-cold bubbles-in-bottle",
		"heater-air-side":         "cabin-heat-poor cabin-heat-comes-and-goes",
	}
}

// stored is which codes the fault may leave: dtc.csv.
func stored() map[cases.Cause]string {
	return map[cases.Cause]string{
		"none":                    "P0128 P0116 P0113 P0071 P0217",
		"thermostat-stuck-open":   "P0128 P0126 P0125 P026F P01F0 P00B6",
		"thermostat-stuck-closed": "P0217 P026F P2181 P00B7",
		"thermostat-late":         "P0217 P026F",
		"thermostat-early":        "P0128 P026F P0126",
		"radiator-restricted":     "P0217 P2181 P0218",
		"radiator-airflow":        "P0217 P0218 P059F",
		"fan-not-running":         "P0480 P0217 P0483 P0485 P0494 P0691",
		"pump-weak":               "P0217 P00B7 P2181",
		"coolant-low-air":         "P0128 P0116 P0217 P2560 P0119",
		"lower-hose-collapse":     "P0217 P00B7",
		"bypass-open":             "P0217 P0128",
		"combustion-leak":         "P0217 P0300 P0301",
		"cap-weak":                "P0217",
		"external-leak":           "P2560 P0217 P0128",
		"sensor-reads-low":        "P0128 P0118 P0116 P0125 P011A",
		"sensor-reads-high":       "P0117 P0116 P0217 P011A",
		"coolant-mix-wrong":       "P0217 P2181",
		"fan-always-running":      "P0128 P0483 P0692 P0495",
		"thermostat-heater-fault": "P0597 P0598 P0599",
	}
}

// codes are read from about half of the cars, with a freeze frame from half of
// those; a healthy car's or an unmarked fault's come from something else.
func (v *car) codes(d dice, rounds []cases.Round) []cases.Code {
	line, often := stored()[v.cause], 0.65
	if v.cause == cases.Healthy {
		often = 0.25
	}
	if line == "" {
		line, often = "P0113 P0071 P0420", 0.08
	}
	if !d.chance(often) {
		return nil
	}
	var out []cases.Code
	for _, w := range draw(d, 1+d.Intn(2), weights(line)) {
		c := cases.Code{Code: w, State: pick(d, "stored", "stored", "pending")}
		if last := rounds[len(rounds)-1]; d.chance(0.5) && last.EctC != nil {
			c.FreezeFrame = v.frame(d, w, last)
		}
		out = append(out, c)
	}
	return out
}

// frame is what a code freezes: of an engine too hot, where it was; of another code, what the last round has.
func (v *car) frame(d dice, code string, last cases.Round) cases.FreezeFrame {
	if code == "P0217" || code == "P0218" {
		if ectC, kmh, ok := v.overheats(d); ok {
			return cases.FreezeFrame{EctC: celsius(math.Round(ectC)), SpeedKmh: ptr(kmh)}
		}
	}
	return cases.FreezeFrame{EctC: last.EctC, RPM: last.EngineRPM, SpeedKmh: last.SpeedKmh}
}
