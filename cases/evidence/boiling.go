package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/say"
)

// What is left to boiling: under 15 K the case is worth a look, under 5 K it
// is about to boil. Common practice, no source.
const (
	marginLookK diagram.DeltaK = 15
	marginActK  diagram.DeltaK = 5
)

// boiling is the hottest coolant that the case tells of against its boiling
// point under the cap. An unknown cap or strength is not guessed; an unknown
// altitude is taken as 0 m.
func boiling(c *cases.Case, h hottest) *Boiling {
	mix, known := mixture(c)
	holds := heldKPa(c)
	if !h.ok || !known || holds == nil {
		return nil
	}
	point, err := mix.BoilUnderCapC(*holds, altitude(c))
	if err != nil {
		return nil // outside what the formulas hold for
	}
	return &Boiling{PointC: point, HottestC: h.c, MarginK: point.Minus(h.c), Where: h.where, Stage: h.stage}
}

// heldKPa is the pressure that the cap holds: what it is marked with, or less where its last test found that
// it opens before, unless the car has been measured after a repair since; nil: not known.
func heldKPa(c *cases.Case) *diagram.KPa {
	holds := c.Loop.CapKPa
	if holds == nil {
		return nil
	}
	for i := range c.Tests {
		t := &c.Tests[i]
		if t.Kind != "cap" || t.OpensKPa == nil || t.Stage != cases.AfterRepair && c.HasStage(cases.AfterRepair) {
			continue
		}
		if holds = c.Loop.CapKPa; *t.OpensKPa < *holds {
			holds = t.OpensKPa
		}
	}
	return holds
}

// boilsBetween tells the range that the boiling point lies in where the filling
// isn't known, once the coolant comes near to the lower end.
func boilsBetween(c *cases.Case, h hottest) []Flag {
	holds := heldKPa(c)
	if _, known := mixture(c); !h.ok || known || holds == nil {
		return nil
	}
	water, err := coolant.Mixture{Base: coolant.Water}.BoilUnderCapC(*holds, altitude(c))
	mix, mixErr := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}.BoilUnderCapC(*holds, altitude(c))
	if err != nil || mixErr != nil || water.Minus(h.c) >= marginLookK {
		return nil
	}
	f := ofCase("boiling-unknown", Note, say.Of("flag.boiling-unknown", water, mix, h.c, h.where), altitudeText(c)...)
	f.Stage = h.stage
	return []Flag{f}
}

// altitudeText is what was assumed of the altitude, if anything.
func altitudeText(c *cases.Case) []say.Text {
	if c.Site.AltitudeM != nil {
		return nil
	}
	return []say.Text{say.Of("because.altitude-assumed", altitude(c))}
}

func altitude(c *cases.Case) diagram.Metre {
	if c.Site.AltitudeM == nil {
		return 0
	}
	return *c.Site.AltitudeM
}

// mixture is the coolant as stated, or as strong as the last test found it.
func mixture(c *cases.Case) (coolant.Mixture, bool) {
	filled := c.Loop.Coolant
	m := coolant.Mixture{Base: coolant.Base(filled.Base)}
	if filled.Base == "" || filled.Base == cases.Water {
		return m, filled.Base == cases.Water
	}
	percent := filled.VolumePercent
	for _, t := range c.Tests {
		if t.Kind == "coolant" && t.VolumePercent != nil {
			percent = t.VolumePercent
		}
	}
	if percent == nil {
		return m, false
	}
	m.Strength = coolant.VolumePercent(*percent)
	return m, true
}

// boils says at what the filling boils: glycol by itself would do so far above its mix with water.
func boils(c *cases.Case, b *Boiling) say.Text {
	base, cap := c.Loop.Coolant.Base.Text(), *heldKPa(c)
	if mix, _ := mixture(c); mix.Strength > 0 {
		return say.Of("because.boils-mix", float64(mix.Strength), base, b.PointC, cap)
	}
	return say.Of("because.boils", base, b.PointC, cap)
}

func boilingFlags(c *cases.Case, b *Boiling) []Flag {
	if b == nil || b.MarginK >= marginLookK {
		return nil
	}
	because := []say.Text{
		boils(c, b),
		say.Of("because.hottest", b.HottestC, marginLookK, b.Where),
	}
	because = append(because, altitudeText(c)...)
	severity, text := Look, say.Of("flag.boiling-margin-small", b.MarginK)
	if b.MarginK < marginActK {
		severity = Act
	}
	if b.MarginK <= 0 {
		text = say.Of("flag.boiling-now")
	}
	f := ofCase("boiling-margin-small", severity, text, because...)
	f.Stage = b.Stage
	return []Flag{f}
}
