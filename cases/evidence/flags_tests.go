package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// testFlags judges each workshop check by itself.
func testFlags(c *cases.Case) []Flag {
	var out []Flag
	for i := range c.Tests {
		flags := judgeTest(c, &c.Tests[i]).flags
		for j := range flags {
			if stage := c.Tests[i].Stage; stage != "" {
				flags[j].Stage = stage
				flags[j].Because = append(flags[j].Because, say.Of("because.tested", stage.Text()))
			}
		}
		out = append(out, flags...)
	}
	return out
}

func judgeTest(c *cases.Case, t *cases.Test) judgement {
	switch t.Kind {
	case cases.PressureTest:
		return pressureHold(t)
	case cases.CapTest:
		return capTest(c, t)
	case cases.GasTest:
		return gasTest(t)
	case cases.CoolantTest:
		return coolantTest(c, t)
	case cases.BenchTest:
		return benchTest(c, t)
	case cases.SensorTest:
		return sensorTest(t)
	case cases.FanTest:
		return fanTest(c, t)
	case cases.LevelTest:
		return levelTest(t)
	case cases.PumpTest:
		return pumpDrive(t)
	case cases.CoreTest:
		return coreScan(c, t)
	case cases.HoseTest:
		return hoseLook(t)
	case cases.BubblesTest:
		return bubbles(t)
	case cases.HeaterTest:
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
	holdMin               = 1.0 // the shortest hold that a maker asks for: PR3, published (V8)
	vacuumKPa diagram.KPa = 4   // a cap's vacuum valve opens by: PR10, published (M14)
)

// pressureHold takes off what the air above the coolant loses by cooling
// (ideal gas at constant volume, physics). One that began with no more than what a
// hold fails by couldn't have failed, and passes nothing; nor does one that rose, for what warmed it hides a leak.
func pressureHold(t *cases.Test) judgement {
	if t.StartKPa == nil || t.EndKPa == nil {
		return judgement{}
	}
	cooling := coolingKPa(t)
	drop := *t.StartKPa - *t.EndKPa - cooling
	if rise := *t.EndKPa - *t.StartKPa; rise > needleKPa && drop < -needleKPa {
		return judgement{flags: []Flag{ofCase("pressure-rose", Look, say.Of("flag.pressure-rose", rise), say.Of("because.pressure-rose"))}}
	}
	if drop <= needleKPa {
		short := t.Minutes != nil && *t.Minutes < holdMin
		j := passIf(*t.StartKPa > failKPa)
		j.but(short, "slight", "fails")
		j.inPart(short)
		return j
	}
	because := pressureBecause(t, cooling)
	if drop > failKPa {
		return found("fails", ofCase("pressure-drop", Act, say.Of("flag.pressure-leaks", drop), because...))
	}
	return found("slight", ofCase("pressure-drop", Look, say.Of("flag.pressure-slight", drop), because...))
}

func pressureBecause(t *cases.Test, cooling diagram.KPa) []say.Text {
	because := []say.Text{say.Of("because.pressure-fell", *t.StartKPa, *t.EndKPa)}
	if t.Minutes != nil {
		because[0] = say.Of("because.pressure-fell-in", *t.StartKPa, *t.EndKPa, *t.Minutes)
	}
	switch {
	case cooling > 0:
		because = append(because, say.Of("because.pressure-cooling", cooling, *t.StartC, *t.EndC))
	case cooling < 0:
		because = append(because, say.Of("because.pressure-warming", -cooling, *t.StartC, *t.EndC))
	}
	return append(because, say.Of("because.pressure-rule", failKPa))
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
	rated := capRating(c, t)
	weighed := rated != nil && t.OpensKPa != nil
	j := passIf(weighed || t.Holds != nil || t.VacuumValveOK != nil)
	rule := say.Of("because.cap-rule") // PR7, PR8
	if weighed {
		numbers := say.Of("because.cap-opens", *t.OpensKPa, *rated)
		switch opens := *t.OpensKPa; {
		case opens < *rated*0.9:
			j.add("weak", ofCase("cap-weak", Act, say.Of("flag.cap-early"), numbers, rule))
		case opens > *rated*1.1:
			j.add("late", ofCase("cap-late", Look, say.Of("flag.cap-late"), numbers, rule))
		}
	}
	if is(t.Holds, false) {
		j.add("weak", ofCase("cap-weak", Act, say.Of("flag.cap-lets-go"), rule))
	}
	if is(t.VacuumValveOK, false) {
		j.add("vacuum-stuck", ofCase("cap-vacuum-stuck", Act, say.Of("flag.cap-vacuum-stuck"), say.Of("because.vacuum", vacuumKPa)))
	}
	j.but(!weighed && t.Holds == nil, "weak")
	j.but(!weighed, "late")
	j.but(t.VacuumValveOK == nil, "vacuum-stuck")
	j.inPart(!weighed || t.Holds == nil)
	return j
}

// capRating is what the test notes of the cap, or else the case; nil: neither tells what one can have.
func capRating(c *cases.Case, t *cases.Test) *diagram.KPa {
	for _, rated := range []*diagram.KPa{t.RatedKPa, c.Loop.CapKPa} {
		if rated != nil && *rated > 0 && cases.CanBeCap(*rated) {
			return rated
		}
	}
	return nil
}

func gasTest(t *cases.Test) judgement {
	if t.Result != "positive" {
		return passIf(t.Result == "negative")
	}
	return found("positive", ofCase("gas-positive", Act, say.Of("flag.gas-positive"), say.Of("because.gas"))) // M16, T23
}

func levelTest(t *cases.Test) judgement {
	if t.State != "low" && t.State != "empty" {
		return passIf(t.State == "full")
	}
	return found(string(t.State), ofCase("level-low", Act, say.Of("flag.level-low", t.State.Text()), say.Of("because.level-low")))
}

func pumpDrive(t *cases.Test) judgement {
	var because []say.Text
	var outcomes []string
	add := func(outcome string, why say.Text) {
		because, outcomes = append(because, why), append(outcomes, outcome)
	}
	if is(t.BeltOK, false) {
		add("belt", say.Of("because.belt-bad"))
	}
	if is(t.Play, true) {
		add("play", say.Of("because.shaft-play"))
	}
	if is(t.Weep, true) {
		add("weeps", say.Of("because.weep-hole"))
	}
	if because == nil {
		j := passIf(t.BeltOK != nil || t.Play != nil || t.Weep != nil)
		j.but(t.BeltOK == nil, "belt")
		j.but(t.Play == nil, "play")
		j.but(t.Weep == nil, "weeps")
		j.inPart(len(j.unseen) > 0)
		return j
	}
	return found(outcomes[0], ofCase("pump-drive", Act, say.Of("flag.pump-drive"), append(because, CommonPractice.Text())...))
}

func hoseLook(t *cases.Test) judgement {
	if is(t.LowerCollapses, true) {
		return found("collapses", ofCase("lower-hose-collapse", Act, say.Of("flag.hose-collapses"), say.Of("because.hose-collapses")))
	}
	return passIf(t.LowerCollapses != nil)
}

func bubbles(t *cases.Test) judgement {
	if is(t.Seen, true) {
		return found("seen", ofCase("bubbles", Look, say.Of("flag.bubbles"), say.Of("because.bubbles")))
	}
	return passIf(t.Seen != nil)
}

func heaterLook(t *cases.Test) judgement {
	switch t.Flows {
	case "none":
		return found("none", ofCase("heater-no-flow", Act, say.Of("flag.heater-none"), say.Of("because.flow-check")))
	case "weak":
		return found("weak", ofCase("heater-restricted", Act, say.Of("flag.heater-weak"), say.Of("because.flow-check")))
	}
	return passIf(t.Flows == "full")
}

func is(v *bool, want bool) bool { return v != nil && *v == want }
