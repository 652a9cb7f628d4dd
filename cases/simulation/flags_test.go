package simulation_test

import (
	"slices"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/cases/simulation"
	"loopbook/diagram"
)

// faultsOf are the faults that a flag speaks of, by testdata/trade/signatures.csv (F01 to F25); what is out of range
// and what is hot speaks of none.
var faultsOf = map[string]string{
	"thermostat-not-opening":   "thermostat-stuck-closed thermostat-late",
	"thermostat-opening-late":  "thermostat-late thermostat-stuck-closed", // which the model may let hang ajar
	"thermostat-passing-early": "thermostat-stuck-open thermostat-early",
	"engine-below-target":      "thermostat-stuck-open thermostat-early fan-always-running",
	"drops-on-road":            "thermostat-stuck-open thermostat-early",
	"warm-up-no-knee":          "thermostat-stuck-open thermostat-early",
	"flow-restricted":          "radiator-restricted thermostat-stuck-closed thermostat-late lower-hose-collapse bypass-open pump-weak coolant-mix-wrong",
	"air-side":                 "radiator-airflow fan-not-running",
	"fan-not-running":          "fan-not-running",
	"fan-running":              "fan-always-running",
	"bypass-open":              "bypass-open",
	"heater-no-flow":           "heater-valve-shut coolant-low-air",
	"heater-restricted":        "heater-core-restricted pump-weak coolant-low-air external-leak coolant-mix-wrong",
	"pump-weak":                "pump-weak coolant-low-air external-leak heater-core-restricted coolant-mix-wrong",
	"heater-air-side":          "heater-air-side",
	"sensor-jumps":             "sensor-reads-low sensor-reads-high combustion-leak coolant-low-air",
	"sensor-disagrees":         "sensor-reads-low sensor-reads-high",
	"lower-hose-collapse":      "lower-hose-collapse",
	"hose-uneven":              "coolant-low-air",
	"bleed-line-cold":          "coolant-low-air",
	"engine-above-rating":      "thermostat-stuck-closed thermostat-late radiator-restricted radiator-airflow fan-not-running pump-weak bypass-open sensor-reads-low combustion-leak",
	"delta-out-of-range":       "", "boiling-margin-small": "", "stop-hot": "",
}

// besides are the other faults, or none, whose cars show a flag all the same, and why that stays so.
var besides = []struct{ flag, causes, why string }{
	{"air-side fan-not-running", "sensor-reads-low", "a fan that its sensor tells too little starts too late"},
	{"fan-running", "sensor-reads-high", "and one that it tells too much starts too early"},
	{"hose-uneven", "thermostat-stuck-closed thermostat-late pump-weak", "hardly any flow is what the flag names beside air"},
	{"thermostat-not-opening", "pump-weak", "what isn't pumped passes no thermostat; the heater tells the two apart"},
	{"thermostat-opening-late", "pump-weak", "shut by its look in one round, and open in the next that turns faster"},
	{"bypass-open", "thermostat-stuck-closed", "on an inlet loop, where the lower hose has warmed by more than 15 K before anybody has measured it"},
	{"heater-restricted pump-weak", "combustion-leak", "gas gathers in the heater's core"},
	{"thermostat-not-opening hose-uneven", "bypass-open", "what goes past the radiator leaves its hoses cold at worst, as a shut valve does"},
	{"heater-restricted", "heater-valve-shut", "a drop that large is both while the round is cold"},
	{"sensor-jumps", "thermostat-late", "on a cold day the model's engine falls by 38 K in 12 s as its valve lets go; a real sensor lags"},
	{"hose-uneven", "heater-valve-shut radiator-airflow combustion-leak", "heated thermostats that have only just opened"},
	{"bleed-line-cold", "sensor-reads-high", "an engine on its way up that its sensor calls hot"},
	{"thermostat-passing-early", "none cap-weak cap-vacuum-stuck radiator-airflow radiator-restricted lower-hose-collapse fan-not-running fan-always-running",
		"one split loop, whose heater takes the engine back under its rating at idle on a cold day, with the hose still warm"},
	{"air-side", "none cap-weak cap-vacuum-stuck external-leak combustion-leak", "two radiators that cool by 5 K where the trade's rule says 6 K; the program's own range reaches lower"},
}

// told are flags that a fault's cars show, and in how many of ten at least.
var told = []struct {
	cause cases.Cause
	flag  string
	often int
}{
	{"thermostat-stuck-open", "engine-below-target", 10}, {"thermostat-early", "engine-below-target", 10},
	{"thermostat-stuck-closed", "engine-above-rating", 10}, {"thermostat-stuck-closed", "thermostat-not-opening", 7}, {"thermostat-late", "thermostat-opening-late", 6},
	{"radiator-restricted", "flow-restricted", 4}, {"pump-weak", "heater-restricted", 5}, {"fan-always-running", "fan-running", 10},
	{"heater-core-restricted", "heater-restricted", 10}, {"heater-valve-shut", "heater-no-flow", 10}, {"heater-air-side", "heater-air-side", 10},
	{"coolant-low-air", "heater-restricted", 10}, {"sensor-reads-low", "sensor-disagrees", 10}, {"sensor-reads-high", "sensor-disagrees", 10},
}

// Simulated cars of every fault on every layout, measured but not tested, show no flag that speaks of another fault but for
// those that are listed with why.
func TestNoFlagBlamesAnotherFault(t *testing.T) {
	analyst, err := evidence.Default()
	if err != nil {
		t.Fatal(err)
	}
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	cars, shown, needed := map[cases.Cause]int{}, map[cases.Cause]map[string]int{}, map[int]bool{}
	for _, l := range loops {
		for _, cause := range cases.Words[cases.Cause]() {
			if cause == "thermostat-heater-fault" && !l.Heated() {
				continue
			}
			for _, car := range alike(l.ID, cause) {
				k := simulated(t, car)
				k.Tests, k.Codes = nil, nil
				if cars[cause]++; shown[cause] == nil {
					shown[cause] = map[string]int{}
				}
				for _, flag := range pressing(analyst.Analyse(&k)) {
					shown[cause][flag]++
					if ofFault(t, flag, cause) {
						continue
					}
					at := slices.IndexFunc(besides, func(b struct{ flag, causes, why string }) bool {
						return slices.Contains(strings.Fields(b.flag), flag) && slices.Contains(strings.Fields(b.causes), string(cause))
					})
					if needed[at] = true; at < 0 {
						t.Errorf("%s, %s, %g °C, seed %d: %s", l.ID, cause, float64(car.AmbientC), car.Seed, flag)
					}
				}
			}
		}
	}
	for i, b := range besides {
		if !needed[i] {
			t.Errorf("no car shows %s of %s any more", b.flag, b.causes)
		}
	}
	for _, want := range told {
		if n, of := shown[want.cause][want.flag], cars[want.cause]; 10*n < want.often*of {
			t.Errorf("%s: %d of %d show %s, want %d in ten", want.cause, n, of, want.flag, want.often)
		}
	}
}

// alike are two cars of a fault on a cold day and on a hot one.
func alike(layout string, cause cases.Cause) []simulation.Car {
	var out []simulation.Car
	for _, air := range []diagram.Celsius{5, 30} {
		for seed := int64(1); seed <= 2; seed++ {
			out = append(out, simulation.Car{Layout: layout, Cause: cause, Severity: 0.7, AmbientC: air, Seed: seed})
		}
	}
	return out
}

// pressing are the flags that ask for something, each once.
func pressing(f evidence.Findings) []string {
	var out []string
	for _, flag := range f.Flags {
		if flag.Severity != evidence.Note && !slices.Contains(out, flag.ID) {
			out = append(out, flag.ID)
		}
	}
	return out
}

func ofFault(t *testing.T, flag string, cause cases.Cause) bool {
	faults, known := faultsOf[flag]
	if !known {
		t.Errorf("of which faults does %s speak?", flag)
	}
	return faults == "" || slices.Contains(strings.Fields(faults), string(cause))
}
