package trial

import (
	"math"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
)

// checks are n different ones, rather more often such as a person would choose
// for what the fault does.
func (v *car) checks(d dice, n int) []cases.Test {
	var list []weighted
	sensible := weights(sensible()[v.cause])
	for _, k := range cases.Words[cases.TestKind]() {
		list = append(list, weighted{string(k), 0.25})
	}
	var out []cases.Test
	done := map[string]bool{}
	for len(out) < n {
		from := list
		if d.chance(0.6) && len(sensible) > 0 {
			from = sensible
		}
		kind := draw(d, 1, from)[0]
		if done[kind] {
			sensible = nil // a small list may be used up
			continue
		}
		done[kind] = true
		out = append(out, v.check(d, cases.TestKind(kind)))
	}
	return out
}

// sensible is which checks people choose for the fault, the likeliest first.
func sensible() map[cases.Cause]string {
	const hot = "level core-scan thermostat-bench fan pump-drive coolant combustion-gas"
	return map[cases.Cause]string{
		"none":                    "level thermostat-bench sensor-resistance coolant",
		"thermostat-stuck-open":   "thermostat-bench level sensor-resistance",
		"thermostat-stuck-closed": "thermostat-bench level pump-drive",
		"thermostat-late":         "thermostat-bench level",
		"thermostat-early":        "thermostat-bench sensor-resistance",
		"radiator-restricted":     "core-scan hose-look thermostat-bench coolant",
		"radiator-airflow":        "fan core-scan level",
		"fan-not-running":         "fan level",
		"pump-weak":               "pump-drive heater-flow hose-look core-scan",
		"coolant-low-air":         "level bubbles pressure-hold heater-flow",
		"lower-hose-collapse":     "hose-look core-scan pump-drive",
		"bypass-open":             hot,
		"heater-core-restricted":  "heater-flow level coolant",
		"heater-valve-shut":       "heater-flow level",
		"combustion-leak":         "combustion-gas bubbles pressure-hold level",
		"cap-weak":                "cap pressure-hold level",
		"external-leak":           "pressure-hold level cap",
		"sensor-reads-low":        "sensor-resistance thermostat-bench",
		"sensor-reads-high":       "sensor-resistance fan",
		"coolant-mix-wrong":       "coolant core-scan heater-flow",
		"fan-always-running":      "fan sensor-resistance",
		"thermostat-heater-fault": hot,
		"cap-vacuum-stuck":        "cap level pressure-hold",
		"heater-air-side":         "heater-flow level",
	}
}

// check is what that check shows of the car, with the share of bad parts that
// pass and good ones that fail.
func (v *car) check(d dice, kind cases.TestKind) cases.Test {
	t := cases.Test{Kind: kind, Stage: cases.BeforeRepair}
	f := &v.fault
	is := func(c cases.Cause) bool { return v.cause == c }
	switch kind {
	case cases.PressureTest:
		v.pressureHold(d, &t)
	case cases.CapTest:
		v.capTest(d, &t)
	case cases.GasTest:
		t.Result = "negative"
		if d.chance(when(is("combustion-leak"), 0.85, 0.02)) {
			t.Result = "positive"
		}
	case cases.CoolantTest:
		v.sample(d, &t)
	case cases.BenchTest:
		v.heatedWater(d, &t)
	case cases.SensorTest:
		v.resistance(d, &t)
	case cases.FanTest:
		v.fanCommand(d, &t)
	case cases.LevelTest:
		t.State = f.level
		if d.chance(0.05) { // a healthy car a little under the mark, a leaky one just filled
			t.State = pick[cases.LevelState](d, "low", "full")
		}
	case cases.PumpTest:
		t.BeltOK, t.Play, t.Weep = ptr(f.drive != "belt"), ptr(f.drive == "play"), ptr(f.drive == "weep" || d.chance(0.02))
	case cases.HoseTest:
		t.LowerCollapses = ptr(d.chance(when(is("lower-hose-collapse"), 0.9, 0.02)))
	case cases.CoreTest:
		v.coreScan(d, &t)
	case cases.BubblesTest:
		t.Seen = ptr(d.chance(when(is("combustion-leak"), 0.75, when(is("coolant-low-air"), 0.15, 0.03))))
	case cases.HeaterTest:
		t.Flows = v.heaterFlow(d)
	}
	return t
}

func when(yes bool, a, b float64) float64 {
	if yes {
		return a
	}
	return b
}

// pressureHold: a leak may open only hot, and gas may pass only one way.
func (v *car) pressureHold(d dice, t *cases.Test) {
	drop := max(0, d.normal(0.8))
	switch {
	case v.cause == "external-leak" && d.chance(0.8):
		drop = d.between(12, 60)
	case v.cause == "combustion-leak" && d.chance(0.5):
		drop = d.between(6, 35)
	case v.cause == "coolant-low-air" && d.chance(0.25): // what let it out
		drop = d.between(5, 25)
	}
	minutes := pick(d, 2.0, 5, 10)
	t.StartKPa, t.EndKPa = ptr(diagram.KPa(v.capKPa)), ptr(diagram.KPa(math.Round(v.capKPa-drop)))
	t.Minutes = ptr(minutes)
	if d.chance(0.5) {
		t.StartC, t.EndC = celsius(v.airC), celsius(v.airC)
	}
}

// capTest: one weak cap in ten passes on the tester and doesn't seal on its neck.
func (v *car) capTest(d dice, t *cases.Test) {
	opens, holds := v.capKPa*d.between(0.93, 1.08), true
	if v.cause == "cap-weak" && d.chance(0.9) {
		opens, holds = v.capKPa*max(v.fault.cap, 0.05), d.chance(0.3)
	} else if d.chance(0.03) {
		holds = false // a slow bleed on the tester alone
	}
	t.RatedKPa, t.OpensKPa = ptr(diagram.KPa(v.capKPa)), ptr(diagram.KPa(math.Round(opens)))
	t.Holds, t.VacuumValveOK = ptr(holds), ptr(!d.chance(when(v.cause == "cap-vacuum-stuck", 0.88, 0.02)))
}

// sample is a refractometer's strength or freezing point, pH and looks.
func (v *car) sample(d dice, t *cases.Test) {
	read := min(max(v.strength+d.normal(1.5), 0), 95)
	m := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: coolant.VolumePercent(read)}
	if freeze, err := m.FreezeC(); err == nil && d.chance(0.4) { // its scale ends where that isn't known
		t.FreezeC = celsius(float64(freeze))
	} else {
		t.VolumePercent = ptr(math.Round(read))
	}
	t.PH, t.Looks = ptr(math.Round(d.between(7.6, 9.6)*10)/10), v.fault.looks
	if v.fault.looks == "clear" && d.chance(0.05) {
		t.Looks = "rusty"
	}
}

// fanCommand: a viscous clutch has no command.
func (v *car) fanCommand(d dice, t *cases.Test) {
	runs := v.fault.fan > 0 && !(v.cause == "fan-not-running" && d.chance(0.3)) // slow counts as running, mostly
	t.Commanded = ptr(true)
	if v.fault.fanStuckOn {
		t.Commanded = ptr(false)
	}
	if d.chance(0.04) {
		runs = !runs
	}
	t.Runs = ptr(runs)
	if v.fan == "viscous" {
		t.Commanded = nil
	} else if runs && !v.fault.fanStuckOn && d.chance(0.4) {
		t.StartsC = celsius(math.Round(v.fanOnC + d.normal(1)))
	}
}

func (v *car) heaterFlow(d dice) cases.HeaterFlow {
	odds := [3]float64{0.95, 0.04, 0.01} // full, weak, none
	switch {
	case v.fault.valve != "":
		odds = [3]float64{0.03, 0.15, 0.82}
	case v.fault.core < 1:
		odds = [3]float64{0.12, 0.73, 0.15}
	case v.fault.trapped.heater > 0:
		odds = [3]float64{0.2, 0.5, 0.3}
	case v.fault.pump < 1:
		odds = [3]float64{0.35, 0.6, 0.05}
	}
	return cases.HeaterFlow(draw(d, 1, []weighted{{"full", odds[0]}, {"weak", odds[1]}, {"none", odds[2]}})[0])
}
