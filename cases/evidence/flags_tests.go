package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram"
)

// testFlags judges each workshop check by itself.
func testFlags(c *cases.Case) []Flag {
	var out []Flag
	for i := range c.Tests {
		flags := judgeTest(c, &c.Tests[i]).flags
		for j := range flags {
			if stage := c.Tests[i].Stage; stage != "" {
				flags[j].Stage = stage
				flags[j].Because = append(flags[j].Because, "tested "+stage.Name())
			}
		}
		out = append(out, flags...)
	}
	return out
}

func judgeTest(c *cases.Case, t *cases.Test) judgement {
	switch t.Kind {
	case "pressure-hold":
		return pressureHold(t)
	case "cap":
		return capTest(c, t)
	case "combustion-gas":
		return gasTest(t)
	case "coolant":
		return coolantTest(c, t)
	case "thermostat-bench":
		return benchTest(c, t)
	case "sensor-resistance":
		return sensorTest(t)
	case "fan":
		return fanTest(t)
	case "level":
		return levelTest(t)
	case "pump-drive":
		return pumpDrive(t)
	case "core-scan":
		return coreScan(c, t)
	case "hose-look":
		return hoseLook(t)
	case "bubbles":
		return bubbles(t)
	case "heater-flow":
		return heaterLook(t)
	}
	return judgement{}
}

// What a pressure may fall in the hold: nothing by most makers, 2 psi by one
// (PR1 to PR4, published). The gauge's needle is read to 2 kPa (common
// practice).
const (
	needleKPa diagram.KPa = 2
	failKPa   diagram.KPa = 13.8
)

// pressureHold takes off what the air above the coolant loses by cooling
// (ideal gas at constant volume, physics).
func pressureHold(t *cases.Test) judgement {
	if t.StartKPa == nil || t.EndKPa == nil {
		return judgement{}
	}
	cooling := coolingKPa(t)
	drop := *t.StartKPa - *t.EndKPa - cooling
	if drop <= needleKPa {
		return judgement{outcome: Pass}
	}
	because := []string{fmt.Sprintf("%.0f kPa fell to %.0f kPa", float64(*t.StartKPa), float64(*t.EndKPa))}
	if t.Minutes != nil {
		because[0] += fmt.Sprintf(" in %.0f min", *t.Minutes)
	}
	switch {
	case cooling > 0:
		because = append(because, fmt.Sprintf("%.1f kPa of it by cooling from %s to %s", float64(cooling), inC(*t.StartC), inC(*t.EndC)))
	case cooling < 0:
		because = append(because, fmt.Sprintf("%.1f kPa more hidden by warming from %s to %s", float64(-cooling), inC(*t.StartC), inC(*t.EndC)))
	}
	because = append(because, "a tight loop holds; more than 14 kPa in 2 min fails (PR1 to PR4, published, V6, V7, V8, M10)")
	if drop > failKPa {
		return found("fails", ofCase("pressure-drop", Act, fmt.Sprintf("The loop loses %.0f kPa: it leaks.", float64(drop)), because...))
	}
	return found("slight", ofCase("pressure-drop", Look, fmt.Sprintf("The loop loses %.0f kPa: look for the leak again.", float64(drop)), because...))
}

// coolingKPa is what the air in the gauge and the neck loses by cooling; below
// 0 where it warmed, which hides a leak.
func coolingKPa(t *cases.Test) diagram.KPa {
	if t.StartC == nil || t.EndC == nil || t.StartKPa == nil {
		return 0
	}
	const airKPa = 101.325
	return (*t.StartKPa + airKPa) * diagram.KPa(1-t.EndC.Kelvin()/t.StartC.Kelvin())
}

// capTest holds the cap to its rating within a tenth (PR8, published, T17).
func capTest(c *cases.Case, t *cases.Test) judgement {
	rated := t.RatedKPa
	if rated == nil {
		rated = c.Loop.CapKPa
	}
	weighed := rated != nil && t.OpensKPa != nil
	j := passIf(weighed || t.Holds != nil || t.VacuumValveOK != nil)
	const rule = "a cap opens within 10 % of its rating and holds it for a minute (PR7, PR8, published, M16, T17)"
	if weighed {
		numbers := fmt.Sprintf("opens at %.0f kPa, rated %.0f kPa", float64(*t.OpensKPa), float64(*rated))
		switch opens := *t.OpensKPa; {
		case opens < *rated*0.9:
			j.add("weak", ofCase("cap-weak", Act, "The cap opens too early: the coolant boils sooner and is lost.", numbers, rule))
		case opens > *rated*1.1:
			j.add("late", ofCase("cap-late", Look, "The cap opens too late: seams and hoses carry the pressure.", numbers, rule))
		}
	}
	if is(t.Holds, false) {
		j.add("weak", ofCase("cap-weak", Act, "The cap doesn't hold its pressure.", rule))
	}
	if is(t.VacuumValveOK, false) {
		j.add("vacuum-stuck", ofCase("cap-vacuum-stuck", Act, "The cap's vacuum valve doesn't open: the hoses go flat as the engine cools and no coolant comes back.",
			"the valve lets air or coolant in at a few kPa below the outside (PR10, published, M14)"))
	}
	return j
}

func gasTest(t *cases.Test) judgement {
	if t.Result != "positive" {
		return passIf(t.Result == "negative")
	}
	return found("positive", ofCase("gas-positive", Act, "The test finds combustion gas in the coolant.",
		"the fluid changes colour on gas (published, M16, T23)"))
}

// fanTest passes a fan that runs when it is told to, or that starts in time: one
// that merely stands has shown nothing.
func fanTest(t *cases.Test) judgement {
	switch {
	case is(t.Commanded, true) && is(t.Runs, false):
		return found("dead", ofCase("fan-not-running", Act, "The fan doesn't run when it is told to.", "commanded on, stands still"))
	case is(t.Commanded, false) && is(t.Runs, true):
		return found("runs", ofCase("fan-running", Look, "The fan runs though nothing tells it to.", "not commanded, runs"))
	case t.StartsC != nil && *t.StartsC > usualFanStartC+fanLateK:
		return found("late", ofCase("fan-late", Look, fmt.Sprintf("The fan starts only at %s.", inC(*t.StartsC)),
			"fans usually start by 98 °C (FN1, published, V23); a second speed comes at 105 to 112 °C (FN5, common practice)"))
	}
	return passIf(t.StartsC != nil || is(t.Commanded, true) && is(t.Runs, true))
}

func levelTest(t *cases.Test) judgement {
	if t.State != "low" && t.State != "empty" {
		return passIf(t.State == "full")
	}
	return found(string(t.State), ofCase("level-low", Act, fmt.Sprintf("The coolant is %s: fill and find the loss before other readings are believed.", t.State),
		"low coolant and air mimic half of the other faults (common practice)"))
}

func pumpDrive(t *cases.Test) judgement {
	var because, outcomes []string
	add := func(outcome, why string) { because, outcomes = append(because, why), append(outcomes, outcome) }
	if is(t.BeltOK, false) {
		add("belt", "the belt is not well")
	}
	if is(t.Play, true) {
		add("play", "the pump's shaft has play")
	}
	if is(t.Weep, true) {
		add("weeps", "the weep hole is wet")
	}
	if because == nil {
		return passIf(t.BeltOK != nil || t.Play != nil || t.Weep != nil)
	}
	return found(outcomes[0], ofCase("pump-drive", Act, "The pump or its drive is worn.", append(because, "common practice")...))
}

func hoseLook(t *cases.Test) judgement {
	if is(t.LowerCollapses, true) {
		return found("collapses", ofCase("lower-hose-collapse", Act, "The lower hose is sucked flat at raised speed.", "seen; the hose is on the pump's suction side (published, M17)"))
	}
	return passIf(t.LowerCollapses != nil)
}

func bubbles(t *cases.Test) judgement {
	if is(t.Seen, true) {
		return found("seen", ofCase("bubbles", Look, "Bubbles still come after the air was bled.", "combustion gas, or air that is drawn in (published, V22, V34)"))
	}
	return passIf(t.Seen != nil)
}

func heaterLook(t *cases.Test) judgement {
	switch t.Flows {
	case "none":
		return found("none", ofCase("heater-no-flow", Act, "No coolant flows through the heater core.", "seen in the flow check"))
	case "weak":
		return found("weak", ofCase("heater-restricted", Act, "Little coolant flows through the heater core.", "seen in the flow check"))
	}
	return passIf(t.Flows == "full")
}

func is(v *bool, want bool) bool { return v != nil && *v == want }
