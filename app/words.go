package main

import (
	"net/url"

	"fyne.io/fyne/v2"

	"loopbook/cases/evidence"
	"loopbook/diagram/units"
)

// inUnits rewrites the findings' sentences, which are in °C and K, for a
// person who reads °F.
func inUnits(flags []evidence.Flag, u units.Set) []evidence.Flag {
	out := make([]evidence.Flag, len(flags))
	for i, f := range flags {
		f.Text = u.Sentence(f.Text)
		because := make([]string, len(f.Because))
		for j, b := range f.Because {
			because[j] = u.Sentence(b)
		}
		f.Because = because
		out[i] = f
	}
	return out
}

func boilingWords(b *evidence.Boiling, u units.Set) string {
	if b == nil {
		return ""
	}
	return "Coolant boils at " + u.TempUnit(b.PointC) + " under this cap; the hottest so far is " +
		u.TempUnit(b.HottestC) + ", " + u.Delta(b.MarginK) + " under it."
}

func asURL(u fyne.URI) *url.URL { return &url.URL{Scheme: u.Scheme(), Path: u.Path()} }
