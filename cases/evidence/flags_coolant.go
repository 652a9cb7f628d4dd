package evidence

import (
	"fmt"

	"loopbook/cases"
	"loopbook/diagram/coolant"
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

// coolantFilled judges the strength the case states, where no test measured it.
func coolantFilled(c *cases.Case) []Flag {
	for _, t := range c.Tests {
		if t.Kind == "coolant" && (t.VolumePercent != nil || t.FreezeC != nil) {
			return nil
		}
	}
	switch {
	case c.Loop.Coolant.Base == cases.Water:
		return strength(0, "filled with water", 0)
	case c.Loop.Coolant.VolumePercent != nil:
		return strength(*c.Loop.Coolant.VolumePercent, "as the case states it", 0)
	}
	return nil
}

func coolantTest(c *cases.Case, t *cases.Test) []Flag {
	var out []Flag
	switch {
	case t.VolumePercent != nil:
		out = strength(*t.VolumePercent, "measured", 0)
	case t.FreezeC != nil:
		out = frozen(c, t)
	}
	if t.PH != nil && (*t.PH < acidPH || *t.PH > alkalinePH) {
		out = append(out, ofCase("coolant-ph", Look, fmt.Sprintf("The coolant's pH is %.1f: it no longer protects the metal.", *t.PH),
			"7.5 to 11 is the working band (CO8, common practice); pH alone doesn't tell a coolant's life (published, T10)"))
	}
	return append(append(out, stray(t)...), appearance(t)...)
}

// frozen judges by the freezing point. One under the curve's end leaves the
// strength open: past 60 % the curve turns back.
func frozen(c *cases.Case, t *cases.Test) []Flag {
	base := coolant.Base(c.Loop.Coolant.Base)
	if base == "" || base == coolant.Water {
		base = coolant.EthyleneGlycol
	}
	if *t.FreezeC >= 0 {
		return strength(0, fmt.Sprintf("freezes at %s", inC(*t.FreezeC)), 0)
	}
	mix, err := coolant.FromFreeze(base, *t.FreezeC)
	if err != nil {
		return nil
	}
	return strength(float64(mix.Strength), fmt.Sprintf("freezes at %s, as %s of that strength does", inC(*t.FreezeC), c.Loop.Coolant.Base.Name()), readPercent)
}

func strength(percent float64, how string, tolerance float64) []Flag {
	because := []string{fmt.Sprintf("%.0f %% by volume, %s", percent, how),
		"40 to 60 % is accepted (CO1, published, V32), 33 to 67 % at most (CO2, CO3, published, M21, T19)"}
	switch {
	case percent < inhibitPercent-tolerance:
		return []Flag{ofCase("coolant-too-weak", Act, "The coolant is so weak that it protects neither from frost nor from rust.", because...)}
	case percent < weakPercent-tolerance:
		return []Flag{ofCase("coolant-too-weak", Look, "The coolant is weak: it freezes and boils sooner.", because...)}
	case percent > uselessPercent+tolerance:
		return []Flag{ofCase("coolant-too-strong", Act, "The coolant is so strong that it carries less heat and freezes sooner.", because...)}
	case percent > strongPercent+tolerance:
		return []Flag{ofCase("coolant-too-strong", Look, "The coolant is strong: it carries less heat.", because...)}
	}
	return nil
}

func stray(t *cases.Test) []Flag {
	if t.StrayV == nil || *t.StrayV < strayWatchV {
		return nil
	}
	because := []string{"under 0.1 V is good, above 0.3 V is to be looked into (SV5, common practice; published limits run from 0.05 to 0.4 V)"}
	if *t.StrayV > strayV {
		return []Flag{ofCase("stray-voltage", Look, fmt.Sprintf("%.2f V stand in the coolant: look for a bad earth or spent coolant.", *t.StrayV), because...)}
	}
	return []Flag{ofCase("stray-voltage", Note, fmt.Sprintf("%.2f V stand in the coolant.", *t.StrayV), because...)}
}

func appearance(t *cases.Test) []Flag {
	because := "rust, oil and sludge in a sample (published, M16)"
	switch t.Looks {
	case "oily":
		return []Flag{ofCase("coolant-fouled", Act, "There is oil in the coolant: find its way in.", because)}
	case "sludge":
		return []Flag{ofCase("coolant-fouled", Act, "The coolant is sludge: it can't carry heat and blocks narrow ways.", because)}
	case "rusty":
		return []Flag{ofCase("coolant-fouled", Look, "The coolant is rusty.", because)}
	}
	return nil
}
