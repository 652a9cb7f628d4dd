package evidence

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram/say"
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

// judgeFill judges the strength the case states, where no test measured it.
func judgeFill(c *cases.Case) judgement {
	measured := func(t cases.Test) bool {
		return t.Kind == cases.CoolantTest && (t.VolumePercent != nil || t.FreezeC != nil)
	}
	switch {
	case slices.ContainsFunc(c.Tests, measured):
		return judgement{}
	case c.Loop.Coolant.Base == cases.Water:
		return strength(0, say.Of("how.water"), 0)
	case c.Loop.Coolant.VolumePercent != nil:
		return strength(*c.Loop.Coolant.VolumePercent, say.Of("how.stated"), 0)
	}
	return judgement{}
}

// coolantTest passes a coolant whose strength is right: looks or a pH alone
// don't tell it.
func coolantTest(c *cases.Case, t *cases.Test) judgement {
	var j judgement
	switch {
	case t.VolumePercent != nil:
		j = strength(*t.VolumePercent, say.Of("how.measured"), 0)
	case t.FreezeC != nil:
		j = frozen(c, t)
	}
	appearance(t, &j)
	if t.PH != nil && (*t.PH < acidPH || *t.PH > alkalinePH) {
		j.add("ph-out", ofCase("coolant-ph", Look, say.Of("flag.coolant-ph", *t.PH),
			say.Of("because.ph", acidPH, alkalinePH))) // CO8; T10
	}
	stray(t, &j)
	j.but(t.Looks == "", "fouled", "rusty")
	j.but(t.PH == nil, "ph-out")
	j.but(t.StrayV == nil, "stray")
	j.inPart(t.Looks == "")
	return j
}

// frozen judges by the freezing point. One under the curve's end leaves the
// strength open: past 60 % the curve turns back.
func frozen(c *cases.Case, t *cases.Test) judgement {
	mix, ok := Sample(c, t)
	switch {
	case *t.FreezeC >= 0:
		return strength(0, say.Of("how.freezes", *t.FreezeC), 0)
	case !ok:
		return judgement{}
	}
	return strength(float64(mix.Strength), say.Of("how.freezes-as", *t.FreezeC, cases.Base(mix.Base).Text()), readPercent)
}

func strength(percent float64, how say.Text, tolerance float64) judgement {
	because := []say.Text{say.Of("because.strength", percent, how),
		say.Of("because.strength-rule", weakPercent, strongPercent, inhibitPercent, uselessPercent)}
	switch {
	case percent < inhibitPercent-tolerance:
		return found("far-too-weak", ofCase("coolant-too-weak", Act, say.Of("flag.coolant-useless"), because...))
	case percent < weakPercent-tolerance:
		return found("too-weak", ofCase("coolant-too-weak", Look, say.Of("flag.coolant-weak"), because...))
	case percent > uselessPercent+tolerance:
		return found("far-too-strong", ofCase("coolant-too-strong", Act, say.Of("flag.coolant-much-too-strong"), because...))
	case percent > strongPercent+tolerance:
		return found("too-strong", ofCase("coolant-too-strong", Look, say.Of("flag.coolant-strong"), because...))
	}
	return judgement{outcome: Pass}
}

// stray goes by the voltage without its sign, which hangs on how the meter's leads are held.
func stray(t *cases.Test, j *judgement) {
	if t.StrayV == nil || math.Abs(*t.StrayV) < strayWatchV {
		return
	}
	because := say.Of("because.stray", strayWatchV, strayV)
	if math.Abs(*t.StrayV) > strayV {
		j.add("stray", ofCase("stray-voltage", Look, say.Of("flag.stray-high", *t.StrayV), because))
		return
	}
	j.flags = append(j.flags, ofCase("stray-voltage", Note, say.Of("flag.stray", *t.StrayV), because))
}

func appearance(t *cases.Test, j *judgement) {
	because := say.Of("because.looks") // M16
	switch t.Looks {
	case "oily":
		j.add("fouled", ofCase("coolant-fouled", Act, say.Of("flag.coolant-oily"), because))
	case "sludge":
		j.add("fouled", ofCase("coolant-fouled", Act, say.Of("flag.coolant-sludge"), because))
	case "rusty":
		j.add("rusty", ofCase("coolant-fouled", Look, say.Of("flag.coolant-rusty"), because))
	}
}
