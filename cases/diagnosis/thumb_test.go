package diagnosis_test

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// points are what rules of thumb give to each cause.
type points map[cases.Cause]float64

// give reads "cause points cause points …".
func (p points) give(line string) {
	words := strings.Fields(line)
	for i := 0; i+1 < len(words); i += 2 {
		var n float64
		if _, err := fmt.Sscan(words[i+1], &n); err != nil {
			panic(fmt.Sprintf("rules of thumb: %q: %v", line, err))
		}
		p[cases.Cause(words[i])] += n
	}
}

// thumb ranks a case's causes as fixed thresholds and a list of usual suspects do: the yardstick that
// the model has to beat, and a measure of how hard a set of cars is. The thresholds are those of testdata/trade/numbers.csv
// (common practice), the points judgement.
func thumb(c *cases.Case) []cases.Cause {
	p := points{}
	p.give("none 2")
	for _, s := range c.Complaint.Symptoms {
		p.give(suspects()[s])
	}
	for _, code := range c.Codes {
		p.give(coded()[code.Code])
	}
	for i := range c.Rounds {
		p.round(c, &c.Rounds[i])
	}
	for i := range c.Tests {
		p.give(shown()[string(c.Tests[i].Kind)+" "+evidence.Outcome(c, &c.Tests[i])])
	}
	all := cases.Words[cases.Cause]()
	slices.SortStableFunc(all, func(a, b cases.Cause) int { return cmp.Compare(p[b], p[a]) })
	return all
}

// byThumb is how rules of thumb do on cases whose truth is the verdict, in per cent: named first, among
// the first three.
func byThumb(all []cases.Case) (first, three float64) {
	for _, c := range all {
		ranked := thumb(&c)
		if ranked[0] == c.Verdict.Cause {
			first += 100 / float64(len(all))
		}
		if slices.Contains(ranked[:3], c.Verdict.Cause) {
			three += 100 / float64(len(all))
		}
	}
	return first, three
}

// round gives the points of one walk round the loop.
func (p points) round(c *cases.Case, r *cases.Round) {
	opens, air := 88.0, 20.0
	if c.Loop.ThermostatOpensC != nil {
		opens = float64(*c.Loop.ThermostatOpensC)
	}
	if c.Site.AmbientC != nil {
		air = float64(*c.Site.AmbientC)
	}
	at := func(point diagram.Point) float64 {
		for _, x := range r.Readings {
			if x.Point == point && x.ShownC != nil {
				if point.Air() {
					return float64(*x.ShownC)
				}
				return float64(*x.ShownC) + 3 // IR8: rubber reads under the coolant
			}
		}
		return math.NaN() // no rule holds
	}
	ect := math.NaN()
	if r.EctC != nil {
		ect = float64(*r.EctC)
	}
	engine := air
	for _, c := range []float64{ect, at(diagram.EngineOut), at(diagram.RadIn), at(diagram.Housing), at(diagram.HeaterIn)} {
		if c > engine {
			engine = c
		}
	}
	warm := r.MinutesSinceStart == nil || *r.MinutesSinceStart >= 9
	upper, lower := at(diagram.RadIn), at(diagram.RadOut)
	for _, rule := range []struct {
		holds bool
		gives string
	}{
		{warm && engine < opens-11, "thermostat-stuck-open 2 thermostat-early 1"}, // REG1
		{warm && engine >= opens-11 && engine < opens-4, "thermostat-early 1.2 thermostat-stuck-open 0.6"},
		{!warm && engine < opens-11 && engine-upper < 15, "thermostat-stuck-open 1.5"}, // DT9
		{ect-at(diagram.Housing) > 10, "sensor-reads-high 2"},                          // DT16
		{at(diagram.Housing)-ect > 10, "sensor-reads-low 2.5"},
		{engine > opens+10 && engine-upper > 25, "thermostat-stuck-closed 3"},                                                       // DT6
		{engine > opens+10 && lower-air < 15, "thermostat-stuck-closed 2"},                                                          // DT7
		{engine > opens+8 && engine-upper <= 25 && upper-lower > 20, "radiator-restricted 2 lower-hose-collapse 0.8 pump-weak 0.8"}, // DT4
		{engine > opens+8 && upper-lower < 6, "radiator-airflow 1.5 fan-not-running 1"},                                             // DT5
		{engine > opens+8 && r.Fan == cases.FanOff, "fan-not-running 1"},
		{engine > opens+8 && engine-at(diagram.Bypass) < 4, "bypass-open 1"}, // DT13
		{warm && r.Heater != cases.HeaterOff && engine-at(diagram.HeaterIn) > 25, "heater-valve-shut 2 coolant-low-air 1"},
		{warm && r.Heater != cases.HeaterOff && at(diagram.HeaterIn)-at(diagram.HeaterOut) > 20, "heater-core-restricted 2.5"}, // DT11
		{warm && engine > 70 && at(diagram.HeaterIn)-at(diagram.HeaterOut) <= 20 && at(diagram.Vent)-air < 15, "heater-air-side 2.5"},
		{r.Fan == cases.FanOn && engine < opens+2 && c.Loop.Fan == "electric", "fan-always-running 2"}, // FN1
	} {
		if rule.holds {
			p.give(rule.gives)
		}
	}
}

// suspects are who is thought of first: common practice, no source.
func suspects() map[cases.Symptom]string {
	return map[cases.Symptom]string{
		"warning-light": "thermostat-stuck-open 1 sensor-reads-low 1", "gauge-low": "thermostat-stuck-open 2 thermostat-early 1 sensor-reads-low 1",
		"gauge-swings": "coolant-low-air 2 thermostat-late 1", "overheats-idle": "fan-not-running 2.5 radiator-airflow 1.5",
		"overheats-road":   "radiator-restricted 2.5 lower-hose-collapse 1.5 pump-weak 1",
		"overheats-always": "thermostat-stuck-closed 2 pump-weak 1.2 radiator-restricted 1",
		"cabin-heat-poor":  "heater-core-restricted 1.8 heater-air-side 1.2 thermostat-stuck-open 1 coolant-low-air 1", "cabin-heat-comes-and-goes": "coolant-low-air 2.5 pump-weak 1",
		"slow-warm-up": "thermostat-stuck-open 2.5 thermostat-early 1", "coolant-loss": "external-leak 2 cap-weak 1.5 combustion-leak 1",
		"coolant-smell": "external-leak 2 cap-weak 1.5", "white-exhaust": "combustion-leak 3", "bubbles-in-bottle": "combustion-leak 3 cap-weak 1",
		"hoses-hard-cold": "combustion-leak 2 cap-vacuum-stuck 1.8", "oil-milky": "combustion-leak 3", "fan-always-on": "fan-always-running 2.5 sensor-reads-high 1.5",
		"fan-never-on": "fan-not-running 3", "fuel-use-up": "thermostat-stuck-open 1.5 sensor-reads-low 1",
	}
}

// coded is what a code is read as (testdata/trade/dtc.csv).
func coded() map[string]string {
	return map[string]string{
		"P0128": "thermostat-stuck-open 2 thermostat-early 0.8", "P0126": "thermostat-stuck-open 2", "P0125": "thermostat-stuck-open 1.5",
		"P0217": "thermostat-stuck-closed 0.7 fan-not-running 0.7", "P0480": "fan-not-running 3", "P0116": "sensor-reads-low 1 sensor-reads-high 1",
		"P0117": "sensor-reads-high 2.5", "P0118": "sensor-reads-low 2.5", "P2560": "coolant-low-air 1.5 external-leak 1.5",
		"P0597": "thermostat-heater-fault 4", "P0598": "thermostat-heater-fault 4", "P0599": "thermostat-heater-fault 4", "P0495": "fan-always-running 2",
	}
}

// shown is what a check's outcome proves.
func shown() map[string]string {
	healthyThermostat := "thermostat-stuck-open -1.5 thermostat-stuck-closed -1.5 thermostat-early -1.5 thermostat-late -1.5"
	return map[string]string{
		"pressure-hold fails": "external-leak 2.5 combustion-leak 1", "cap weak": "cap-weak 4", "cap vacuum-stuck": "cap-vacuum-stuck 4",
		"combustion-gas positive": "combustion-leak 4", "combustion-gas pass": "combustion-leak -1.5",
		"coolant too-strong": "coolant-mix-wrong 3", "coolant too-weak": "coolant-mix-wrong 3",
		"coolant far-too-strong": "coolant-mix-wrong 3", "coolant far-too-weak": "coolant-mix-wrong 3", "coolant fouled": "coolant-mix-wrong 3",
		"thermostat-bench shut": "thermostat-stuck-closed 4", "thermostat-bench open": "thermostat-stuck-open 4", "thermostat-bench early": "thermostat-early 4",
		"thermostat-bench late": "thermostat-late 4", "thermostat-bench small-lift": "thermostat-late 3", "thermostat-bench pass": healthyThermostat,
		"sensor-resistance low": "sensor-reads-low 4", "sensor-resistance high": "sensor-reads-high 4",
		"fan dead": "fan-not-running 4", "fan runs": "fan-always-running 4", "level low": "coolant-low-air 2 external-leak 1.5", "level empty": "coolant-low-air 2 external-leak 2",
		"pump-drive belt": "pump-weak 3", "pump-drive play": "pump-weak 3", "hose-look collapses": "lower-hose-collapse 4",
		"core-scan patch": "radiator-restricted 3", "core-scan hot-through": "radiator-airflow 2", "bubbles seen": "combustion-leak 2.5",
		"heater-flow none": "heater-valve-shut 2.5 heater-core-restricted 1", "heater-flow weak": "heater-core-restricted 2.5",
	}
}
