package chart

import (
	"math"
	"strings"

	"loopbook/diagram/units"
)

// Spot words the measured point nearest to a place inside the axes, counted in
// parts of what the curves span.
func (l Lines) Spot(x, y float64) (string, bool) {
	wide, high := l.spans()
	best, says := math.Inf(1), ""
	for _, c := range l.Curves {
		for i := range c.X {
			if i >= len(c.Y) || math.IsNaN(c.Y[i]) || math.IsNaN(c.X[i]) {
				continue
			}
			if off := math.Hypot((c.X[i]-x)/wide, l.offY(c.Y[i], y)/high); off < best {
				best, says = off, l.words(c, i)
			}
		}
	}
	return says, says != ""
}

// spans are how far the curves reach each way; 1 where they don't.
func (l Lines) spans() (wide, high float64) {
	x0, x1, y0, y1 := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, c := range l.Curves {
		for i := 0; i < min(len(c.X), len(c.Y)); i++ {
			if math.IsNaN(c.X[i]) || math.IsNaN(c.Y[i]) {
				continue
			}
			x0, x1 = min(x0, c.X[i]), max(x1, c.X[i])
			y0, y1 = min(y0, c.Y[i]), max(y1, c.Y[i])
		}
	}
	wide, high = x1-x0, l.offY(y1, y0)
	if !(wide > 0) {
		wide = 1
	}
	if !(high > 0) {
		high = 1
	}
	return wide, high
}

// offY is a difference as the axis shows it.
func (l Lines) offY(a, b float64) float64 {
	if l.LogY && a > 0 && b > 0 {
		return math.Log(a / b)
	}
	return a - b
}

// words are a curve's point: its name, what was measured, and where.
func (l Lines) words(c Curve, i int) string {
	at := units.Short(c.X[i], 1) + " " + unitOf(l.X)
	if n := int(c.X[i]); len(l.Names) > 0 && n >= 0 && n < len(l.Names) {
		at = l.Names[n]
	}
	says := units.Short(c.Y[i], 1) + " " + unitOf(l.Y) + ", " + at
	if c.Name == "" {
		return says
	}
	return c.Name + ": " + says
}

// unitOf is what stands behind the last comma of an axis's words, or all of them.
func unitOf(axis string) string {
	return strings.TrimSpace(axis[strings.LastIndex(axis, ",")+1:])
}
