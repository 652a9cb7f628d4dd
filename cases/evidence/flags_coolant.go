package evidence

import (
	"fmt"

	"loopbook/cases"
)

// Limits of a coolant, from testdata/trade/numbers.csv.
const (
	weakPercent    = 40  // CO1, published (V32)
	strongPercent  = 60  // CO1
	inhibitPercent = 33  // CO2, published (M21): below it nothing protects the metal
	uselessPercent = 67  // CO3, published (T19)
	readPercent    = 2   // what freezing tables differ by
	acidPH         = 7.5 // CO8, common practice
	alkalinePH     = 11  // CO8
	strayWatchV    = 0.1 // SV5, common practice; sources disagree
	strayV         = 0.3 // SV5, SV3
)

func coolantFilled(c *cases.Case) []Flag { return judgeFill(c).flags }

// judgeFill judges the strength the case states, where no test measured it.
func judgeFill(c *cases.Case) judgement {
	for _, t := range c.Tests {
		if t.Kind == "coolant" && (t.VolumePercent != nil || t.FreezeC != nil) {
			return judgement{}
		}
	}
	switch {
	case c.Loop.Coolant.Base == cases.Water:
		return strength(0, "filled with water", 0)
	case c.Loop.Coolant.VolumePercent != nil:
		return strength(*c.Loop.Coolant.VolumePercent, "as the case states it", 0)
	}
	return judgement{}
}

// coolantTest passes a coolant whose strength is right: looks or a pH alone
// don't tell it.
func coolantTest(c *cases.Case, t *cases.Test) judgement {
	var j judgement
	switch {
	case t.VolumePercent != nil:
		j = strength(*t.VolumePercent, "measured", 0)
	case t.FreezeC != nil:
		j = frozen(c, t)
	}
	appearance(t, &j)
	if t.PH != nil && (*t.PH < acidPH || *t.PH > alkalinePH) {
		j.add("ph-out", ofCase("coolant-ph", Look, fmt.Sprintf("The coolant's pH is %.1f: it no longer protects the metal.", *t.PH),
			"7.5 to 11 is the working band (CO8, common practice); pH alone doesn't tell a coolant's life (published, T10)"))
	}
	stray(t, &j)
	return j
}

// frozen judges by the freezing point. One under the curve's end leaves the
// strength open: past 60 % the curve turns back.
func frozen(c *cases.Case, t *cases.Test) judgement {
	mix, ok := Sample(c, t)
	switch {
	case *t.FreezeC >= 0:
		return strength(0, fmt.Sprintf("freezes at %s", inC(*t.FreezeC)), 0)
	case !ok:
		return judgement{}
	}
	return strength(float64(mix.Strength), fmt.Sprintf("freezes at %s, as %s of that strength does", inC(*t.FreezeC), cases.Base(mix.Base).Name()), readPercent)
}

func strength(percent float64, how string, tolerance float64) judgement {
	because := []string{fmt.Sprintf("%.0f %% by volume, %s", percent, how),
		"40 to 60 % is accepted (CO1, published, V32), 33 to 67 % at most (CO2, CO3, published, M21, T19)"}
	weak := func(s Severity, text string) judgement {
		return found("too-weak", ofCase("coolant-too-weak", s, text, because...))
	}
	strong := func(s Severity, text string) judgement {
		return found("too-strong", ofCase("coolant-too-strong", s, text, because...))
	}
	switch {
	case percent < inhibitPercent-tolerance:
		return weak(Act, "The coolant is so weak that it protects neither from frost nor from rust.")
	case percent < weakPercent-tolerance:
		return weak(Look, "The coolant is weak: it freezes and boils sooner.")
	case percent > uselessPercent+tolerance:
		return strong(Act, "The coolant is so strong that it carries less heat and freezes sooner.")
	case percent > strongPercent+tolerance:
		return strong(Look, "The coolant is strong: it carries less heat.")
	}
	return judgement{outcome: Pass}
}

func stray(t *cases.Test, j *judgement) {
	if t.StrayV == nil || *t.StrayV < strayWatchV {
		return
	}
	because := "under 0.1 V is good, above 0.3 V is to be looked into (SV5, common practice; published limits run from 0.05 to 0.4 V)"
	if *t.StrayV > strayV {
		j.add("stray", ofCase("stray-voltage", Look, fmt.Sprintf("%.2f V stand in the coolant: look for a bad earth or spent coolant.", *t.StrayV), because))
		return
	}
	j.flags = append(j.flags, ofCase("stray-voltage", Note, fmt.Sprintf("%.2f V stand in the coolant.", *t.StrayV), because))
}

func appearance(t *cases.Test, j *judgement) {
	because := "rust, oil and sludge in a sample (published, M16)"
	switch t.Looks {
	case "oily":
		j.add("fouled", ofCase("coolant-fouled", Act, "There is oil in the coolant: find its way in.", because))
	case "sludge":
		j.add("fouled", ofCase("coolant-fouled", Act, "The coolant is sludge: it can't carry heat and blocks narrow ways.", because))
	case "rusty":
		j.add("rusty", ofCase("coolant-fouled", Look, "The coolant is rusty.", because))
	}
}
