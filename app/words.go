package main

import (
	"net/url"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/units"
)

// boilingWords tells how far the loop is from boiling.
func boilingWords(b *evidence.Boiling, u units.Set) string {
	if b == nil {
		return ""
	}
	return "Coolant boils at " + u.TempUnit(b.PointC) + " under this cap; the hottest so far is " +
		u.TempUnit(b.HottestC) + ", " + u.Delta(b.MarginK) + " under it."
}

// coolantWords tell when the filling freezes, and boils under the cap, as far
// as its strength, the cap and the altitude are known.
func coolantWords(c cases.Case, u units.Set) string {
	fill := c.Loop.Coolant
	mix := coolant.Mixture{Base: coolant.Base(fill.Base)}
	switch {
	case fill.Base == "":
		return ""
	case fill.VolumePercent != nil:
		mix.Strength = coolant.VolumePercent(*fill.VolumePercent)
	case fill.Base != cases.Water:
		return ""
	}
	var words []string
	if freezes, err := mix.FreezeC(); err == nil {
		words = append(words, "freezes at "+u.TempUnit(freezes))
	}
	if c.Loop.CapKPa != nil {
		altitude := diagram.Metre(0)
		if a := c.Site.AltitudeM; a != nil {
			altitude = *a
		}
		if boils, err := mix.BoilUnderCapC(*c.Loop.CapKPa, altitude); err == nil {
			words = append(words, "boils at "+u.TempUnit(boils)+" under this cap")
		}
	}
	if len(words) == 0 {
		return ""
	}
	return "This filling " + strings.Join(words, " and ") + "."
}

func asURL(u fyne.URI) *url.URL { return &url.URL{Scheme: u.Scheme(), Path: u.Path()} }
