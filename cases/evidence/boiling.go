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

// boiling is the hottest coolant of one side of the repair against its boiling point under the cap, with what is to
// be said of it; nil where it isn't known. An unknown cap or strength is not guessed; an unknown altitude is taken
// as 0 m.
func boiling(c *cases.Case, stage cases.Stage, h hottest) (*Boiling, []Flag) {
	holds := heldKPa(c, stage)
	if !h.ok || holds == nil {
		return nil, nil
	}
	mix, known := mixture(c, stage)
	if !known {
		return nil, boilsBetween(c, stage, *holds, h)
	}
	point, err := mix.BoilUnderCapC(*holds, altitude(c))
	if err != nil {
		return nil, nil // outside what the formulas hold for
	}
	b := &Boiling{PointC: point, HottestC: h.c, MarginK: point.Minus(h.c), Where: h.where, Stage: stage}
	boils := say.Of("because.boils", cases.Water.Text(), point, *holds)
	if mix.Strength > 0 { // glycol by itself would boil far above its mix with water
		boils = say.Of("because.boils-mix", float64(mix.Strength), c.Loop.Coolant.Base.Text(), point, *holds)
	}
	return b, marginFlags(c, b, boils)
}

// heldKPa is the pressure that the cap holds on one side of the repair: what it is marked with, or less where its
// last test there found that it opens before; nil: not known, as of one that was found to let go.
func heldKPa(c *cases.Case, stage cases.Stage) *diagram.KPa {
	marked := c.Loop.CapKPa
	holds := marked
	for i := range c.Tests {
		t := &c.Tests[i]
		switch {
		case marked == nil || t.Kind != cases.CapTest || !stage.Holds(t.Stage):
		case t.OpensKPa != nil && *t.OpensKPa < *marked:
			holds = t.OpensKPa
		case is(t.Holds, false):
			holds = nil
		case t.OpensKPa != nil || t.Holds != nil:
			holds = marked
		}
	}
	return holds
}

// boilsBetween tells the range that the boiling point lies in where the filling
// isn't known, once the coolant comes near to the lower end.
func boilsBetween(c *cases.Case, stage cases.Stage, holds diagram.KPa, h hottest) []Flag {
	water, err := coolant.Mixture{Base: coolant.Water}.BoilUnderCapC(holds, altitude(c))
	mix, mixErr := coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}.BoilUnderCapC(holds, altitude(c))
	if err != nil || mixErr != nil || water.Minus(h.c) >= marginLookK {
		return nil
	}
	f := ofCase("boiling-unknown", Note, say.Of("flag.boiling-unknown", water, mix, h.c, h.where), altitudeText(c)...)
	f.Stage = stage
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

// mixture is the coolant as stated, or as strong as the last test until the end of that side of the repair found it.
func mixture(c *cases.Case, stage cases.Stage) (coolant.Mixture, bool) {
	filled := c.Loop.Coolant
	m := coolant.Mixture{Base: coolant.Base(filled.Base)}
	if filled.Base == "" || filled.Base == cases.Water {
		return m, filled.Base == cases.Water
	}
	known := filled.VolumePercent != nil
	if known {
		m.Strength = coolant.VolumePercent(*filled.VolumePercent)
	}
	for i := range c.Tests {
		t := &c.Tests[i]
		if t.Kind != cases.CoolantTest || stage != cases.AfterRepair && !stage.Holds(t.Stage) {
			continue
		}
		if found, ok := Sample(c, t); ok {
			m.Strength, known = found.Strength, true
		}
	}
	return m, known
}

// marginFlags tell a margin that is small.
func marginFlags(c *cases.Case, b *Boiling, boils say.Text) []Flag {
	if b.MarginK >= marginLookK {
		return nil
	}
	because := append([]say.Text{boils, say.Of("because.hottest", b.HottestC, marginLookK, b.Where)}, altitudeText(c)...)
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
