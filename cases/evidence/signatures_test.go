package evidence_test

import (
	"sort"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/evidence"
	"loopbook/diagram/published"
)

// signature is a row of testdata/trade/signatures.csv: patterns with their
// published sources, numbers by common practice.
type signature struct {
	fault, condition, delta string
	low, high               float64
}

func signatures(t *testing.T) []signature {
	t.Helper()
	var out []signature
	for _, r := range published.Rows(t, "trade/signatures.csv") {
		low, errLow := strconv.ParseFloat(r["delta_low_C"], 64)
		high, errHigh := strconv.ParseFloat(r["delta_high_C"], 64)
		if errLow == nil && errHigh == nil {
			out = append(out, signature{r["fault_id"], r["condition"], r["key_delta"], low, high})
		}
	}
	return out
}

// A healthy loop raises nothing that asks for something, over the whole width
// of what the trade calls healthy: rows F00 and F00i.
func TestHealthyLoopRaisesNothing(t *testing.T) {
	a := analyst(t)
	for _, row := range signatures(t) {
		layouts := map[string][]string{"F00": {"outlet-thermostat"}, "F00i": {"inlet-thermostat", "inlet-thermostat-bottle"}}[row.fault]
		for _, layout := range layouts {
			for share := 0.0; share <= 1; share += 0.125 {
				delta := row.low + share*(row.high-row.low)
				for _, ect := range hotsOf(row.condition) {
					s := healthy(layout, row.condition)
					if row.condition == cold5 {
						s.shut(outsideC + 3 + delta)
					} else {
						s.open(ect, delta)
					}
					c := toCase(s)
					for _, flag := range append(a.Analyse(c).Flags, a.Analyse(littleNoted(c)).Flags...) {
						if flag.Severity != evidence.Note {
							t.Errorf("%s %s %s, delta %.0f K, engine %.0f °C: %s: %s %q", row.fault, row.condition, layout, delta, s.ectC, flag.ID, flag.Text, flag.Because)
						}
					}
				}
			}
		}
	}
}

// littleNoted is the case with only its temperatures noted.
func littleNoted(c *cases.Case) *cases.Case {
	bare := *c
	r := c.Rounds[0]
	bare.Rounds = []cases.Round{{Stage: r.Stage, EctC: r.EctC, Readings: r.Readings}}
	bare.Loop = cases.Loop{Layout: c.Loop.Layout}
	return &bare
}

// hotsOf is where a healthy engine stands: at its rating, and with the fan
// cycling up to 98 °C (FN1, published, V23).
func hotsOf(condition string) []float64 {
	if condition == hotFan {
		return []float64{90, 93, 98}
	}
	return []float64{87, 89, 91}
}

// broken is how a fault shows in a condition: scenes at a delta within the
// row's range, and the flags that must come, no more and no less.
type broken struct {
	at    float64 // share of the row's range; 0 is the middle
	scene func(s *scene, delta float64) []*scene
	want  string
}

// untold are rows with numbers that one can't tell a fault by, with the reason.
var untold = map[string]string{
	"F01 W2500":     "at rating a warm lower hose is healthy as well",
	"F02 COLD5":     "a shut thermostat is right in a warm-up",
	"F02i COLD5":    "a shut thermostat is right in a warm-up",
	"F03 COLD5":     "a shut thermostat is right in a warm-up",
	"F03 W2500":     "open by now: healthy",
	"F09 COLD5":     "either way of the sensor, so nothing by itself",
	"F10 WIDLE":     "only shows with revs",
	"F11 HIDLE_FAN": "needs a point behind the bypass, which no layout has",
	"F14 COLD5":     "no fault of the loop",
	"F14 WIDLE":     "no fault of the loop",
	"F14 W2500":     "no fault of the loop",
	"F14 HIDLE_FAN": "no fault of the loop",
	"F22 WIDLE":     "a heated thermostat's hot band is healthy at light load",
	"F22 W2500":     "needs the controller's command; its codes tell",
}

func one(f func(s *scene, delta float64)) func(*scene, float64) []*scene {
	return func(s *scene, delta float64) []*scene {
		f(s, delta)
		return []*scene{s}
	}
}

func heaterDrop(ect float64) func(*scene, float64) []*scene {
	return one(func(s *scene, d float64) {
		if ect > 0 {
			s.shut(ect)
		}
		in := s.t["heater_in"]
		s.heat(in, in-d)
	})
}

func starvedRadiator(ect float64) func(*scene, float64) []*scene {
	return one(func(s *scene, d float64) { s.open(ect, d) })
}

func airless(fan cases.FanState) func(*scene, float64) []*scene {
	return one(func(s *scene, d float64) {
		s.open(108, d)
		s.round.Fan = fan
	})
}

func sensorOff(s *scene, d float64) { s.ectC += d }

func shutAbove(s *scene, ect float64) {
	s.shut(ect).heat(ect-5, ect-12)
}

func patchy(s *scene, d float64) {
	s.tests = []cases.Test{{Kind: "core-scan", ShownC: [][]float64{{80, 80, 80}, {65, 65 - d, 65}, {50, 50, 50}}}}
}

var faults = map[string]broken{
	"F01 COLD5": {want: "thermostat-passing-early", scene: one(func(s *scene, d float64) {
		s.open(50, 0).set("rad_in", 50-d).set("rad_out", 50-d).set("pump_in", 50-d).set("engine_out", 50-d)
	})},
	"F01 WIDLE": {want: "thermostat-passing-early", scene: one(func(s *scene, d float64) { s.open(ratedC-d, 6) })},
	"F01 HIDLE_FAN": {want: "engine-below-target thermostat-passing-early", scene: one(func(s *scene, d float64) {
		s.open(ratedC-d, 8)
		s.round.Fan, s.round.SpeedKmh, s.round.EngineRPM = cases.FanOff, casetest.P(80.0), casetest.P(2200.0)
	})},
	"F02 WIDLE": {want: "engine-above-rating thermostat-not-opening", scene: one(func(s *scene, d float64) {
		shutAbove(s, 108)
		s.set("engine_out", s.t["housing"]-d)
	})},
	"F02 W2500": {want: "engine-above-rating thermostat-not-opening", scene: one(func(s *scene, d float64) {
		shutAbove(s, 108)
		s.set("engine_out", s.t["housing"]-d)
	})},
	"F02 HIDLE_FAN": {want: "engine-above-rating stop-hot thermostat-not-opening", scene: one(func(s *scene, d float64) {
		shutAbove(s, 115)
		s.set("engine_out", 60).set("rad_in", 115-d).set("rad_out", 30)
	})},
	"F02i WIDLE":     {at: 0.8, want: "engine-above-rating thermostat-not-opening", scene: one(func(s *scene, d float64) { shutAbove(s, outsideC+8+d); s.set("rad_out", outsideC+8) })},
	"F02i W2500":     {at: 0.8, want: "engine-above-rating thermostat-not-opening", scene: one(func(s *scene, d float64) { shutAbove(s, outsideC+8+d); s.set("rad_out", outsideC+8) })},
	"F02i HIDLE_FAN": {at: 0.8, want: "engine-above-rating thermostat-not-opening", scene: one(func(s *scene, d float64) { shutAbove(s, outsideC+8+d); s.set("rad_out", outsideC+8) })},
	"F03 WIDLE": {want: "engine-above-rating thermostat-not-opening thermostat-opening-late", scene: func(s *scene, d float64) []*scene {
		late := healthy(s.layout, warmIdle)
		shutAbove(s, ratedC+d)
		return []*scene{s, late}
	}},
	"F04 COLD5": {want: "thermostat-passing-early", scene: one(func(s *scene, d float64) { s.open(ratedC+d, 8) })},
	"F04 WIDLE": {want: "engine-below-target thermostat-passing-early", scene: one(func(s *scene, d float64) { s.open(ratedC+d, 8) })},
	"F04 W2500": {want: "engine-below-target thermostat-passing-early", scene: func(s *scene, d float64) []*scene {
		s.open(70, 8)
		s.round.EngineRPM = casetest.P(800.0)
		fast := healthy(s.layout, warm2500).open(70+d, 8)
		fast.round.SpeedKmh = casetest.P(90.0)
		return []*scene{s, fast}
	}},
	"F05 WIDLE":     {want: "core-patch", scene: one(patchy)},
	"F05 W2500":     {want: "engine-above-rating flow-restricted", scene: starvedRadiator(104)},
	"F05 HIDLE_FAN": {at: 0.8, want: "engine-above-rating flow-restricted", scene: starvedRadiator(106)},
	"F06 WIDLE":     {want: "air-side engine-above-rating", scene: airless(cases.FanOn)},
	"F06 W2500":     {want: "air-side engine-above-rating", scene: airless(cases.FanOn)},
	"F06 HIDLE_FAN": {want: "air-side engine-above-rating", scene: airless(cases.FanOn)},
	"F07 WIDLE": {want: "air-side engine-above-rating fan-not-running", scene: one(func(s *scene, d float64) {
		s.open(95+d, 3)
		s.round.Fan = cases.FanOff
	})},
	"F07 W2500":     {want: "air-side engine-above-rating fan-not-running", scene: airless(cases.FanOff)},
	"F07 HIDLE_FAN": {want: "air-side engine-above-rating fan-not-running", scene: airless(cases.FanOff)},
	"F08 COLD5":     {want: "heater-restricted", scene: heaterDrop(66)},
	"F08 WIDLE": {at: 0.8, want: "engine-above-rating flow-restricted heater-restricted pump-weak", scene: one(func(s *scene, d float64) {
		s.open(105, d).heat(98, 70)
	})},
	"F08 W2500": {want: "heater-restricted pump-weak", scene: func(s *scene, d float64) []*scene {
		slow := healthy(s.layout, warmIdle).heat(84, 54)
		s.heat(84, 54-d)
		return []*scene{slow, s}
	}},
	"F08 HIDLE_FAN": {at: 0.8, want: "engine-above-rating flow-restricted", scene: starvedRadiator(106)},
	"F09 WIDLE":     {want: "hose-uneven", scene: one(func(s *scene, d float64) { s.open(95, 15).set("rad_in", s.t["engine_out"]+d) })},
	"F09 W2500": {want: "pump-weak", scene: func(s *scene, d float64) []*scene {
		slow := healthy(s.layout, warmIdle).set("vent", 36).set("heater_out", 66)
		s.set("vent", 36+d)
		return []*scene{slow, s}
	}},
	"F10 W2500": {want: "engine-above-rating flow-restricted lower-hose-collapse", scene: func(s *scene, d float64) []*scene {
		slow := healthy(s.layout, warmIdle).open(90, 15)
		s.open(104, 15+d)
		return []*scene{slow, s}
	}},
	"F11 WIDLE": {want: "bypass-open engine-above-rating", scene: one(func(s *scene, d float64) {
		hot := s.open(112, 18).t["engine_out"]
		if !s.inlet() {
			hot = s.t["housing"]
		} else {
			s.set("housing", hot-3) // as hot as W2500 and HIDLE_FAN have the mix
		}
		s.set("bypass", hot-d)
	})},
	"F11 W2500": {want: "bypass-open engine-above-rating", scene: one(func(s *scene, d float64) {
		s.layout = "inlet-thermostat" // where the mix can be read
		s.open(112, 18).set("housing", s.t["pump_in"]+d)
	})},
	"F12 COLD5":     {want: "heater-restricted", scene: heaterDrop(66)},
	"F12 WIDLE":     {want: "heater-restricted", scene: heaterDrop(0)},
	"F12 W2500":     {want: "heater-restricted", scene: heaterDrop(0)},
	"F12 HIDLE_FAN": {want: "heater-restricted", scene: heaterDrop(0)},
	"F13 COLD5":     {want: "heater-no-flow", scene: heaterDrop(70)},
	"F13 WIDLE":     {want: "heater-no-flow", scene: heaterDrop(0)},
	"F13 W2500":     {at: 0.7, want: "heater-no-flow", scene: heaterDrop(0)},
	"F13 HIDLE_FAN": {at: 0.7, want: "heater-no-flow", scene: heaterDrop(0)},
	"F17 COLD5":     {want: "sensor-disagrees", scene: one(sensorOff)},
	"F17 WIDLE":     {want: "sensor-disagrees", scene: one(sensorOff)},
	"F17 W2500":     {want: "sensor-disagrees", scene: one(sensorOff)},
	"F17 HIDLE_FAN": {want: "sensor-disagrees", scene: one(sensorOff)},
	"F18 COLD5": {want: "sensor-disagrees", scene: one(func(s *scene, d float64) {
		s.layout = "outlet-thermostat" // while the upper hose creeps, an inlet loop has no witness
		s.shut(55)
		sensorOff(s, d)
	})},
	"F18 WIDLE":     {want: "sensor-disagrees", scene: one(sensorOff)},
	"F18 W2500":     {want: "sensor-disagrees", scene: one(sensorOff)},
	"F18 HIDLE_FAN": {want: "sensor-disagrees", scene: one(sensorOff)},
	"F21 COLD5":     {want: "heater-restricted", scene: heaterDrop(66)},
	"F21 WIDLE":     {want: "core-patch", scene: one(patchy)},
	"F21 W2500":     {want: "engine-above-rating flow-restricted", scene: starvedRadiator(104)},
	"F23 COLD5": {want: "fan-running", scene: one(func(s *scene, d float64) {
		s.shut(outsideC + 3 + d)
		s.round.Fan = cases.FanOn
	})},
	"F23 WIDLE":     {want: "", scene: alwaysBlown},
	"F23 W2500":     {want: "", scene: alwaysBlown},
	"F23 HIDLE_FAN": {want: "", scene: alwaysBlown},
	"F25 WIDLE":     {want: "heater-air-side", scene: one(coldVent)},
	"F25 W2500":     {want: "heater-air-side", scene: one(coldVent)},
	"F25 HIDLE_FAN": {want: "heater-air-side", scene: one(coldVent)},
}

// alwaysBlown only earns a remark at rating: the thermostat copes.
func alwaysBlown(s *scene, d float64) []*scene {
	s.open(86, d)
	s.round.Fan = cases.FanOn
	return []*scene{s}
}

func coldVent(s *scene, d float64) { s.set("vent", s.t["heater_in"]-d) }

func TestFaultsRaiseTheirFlags(t *testing.T) {
	a := analyst(t)
	for _, row := range signatures(t) {
		key := row.fault + " " + row.condition
		if row.fault == "F00" || row.fault == "F00i" || untold[key] != "" {
			continue
		}
		fault, ok := faults[key]
		if !ok {
			t.Errorf("%s (%s) is neither tested nor told to be untold", key, row.delta)
			continue
		}
		layouts := []string{"outlet-thermostat", "inlet-thermostat"}
		switch row.fault {
		case "F02":
			layouts = layouts[:1]
		case "F02i":
			layouts = layouts[1:]
		}
		if fault.at == 0 {
			fault.at = 0.5
		}
		for _, layout := range layouts {
			delta := row.low + fault.at*(row.high-row.low)
			f := a.Analyse(toCase(fault.scene(healthy(layout, row.condition), delta)...))
			ids := pressing(f)
			sort.Strings(ids)
			if got := strings.Join(ids, " "); got != fault.want {
				t.Errorf("%s, %s, %s %.0f K:\n got %s\nwant %s", key, layout, row.delta, delta, got, fault.want)
			}
		}
	}
}
