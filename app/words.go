package main

import (
	"net/url"

	"fyne.io/fyne/v2"

	"loopbook/cases/evidence"
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

func asURL(u fyne.URI) *url.URL { return &url.URL{Scheme: u.Scheme(), Path: u.Path()} }
