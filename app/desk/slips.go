package desk

import (
	"errors"
	"slices"
	"time"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Slip is a number that was typed and could not be kept.
type Slip struct{ Text, Why string }

// Slips are what was typed in this round and can't be read.
func (d *Desk) Slips() map[diagram.Point]Slip { return d.slips.Of(d.Round) }

// EachSlip tells of all that was typed in any round and can't be read.
func (d *Desk) EachSlip(tell func(round int, p diagram.Point, slip Slip)) {
	d.slips.Each(func(round int, slips map[diagram.Point]Slip) {
		for p, slip := range slips {
			tell(round, p, slip)
		}
	})
}

// Use changes the units. What could not be read may be meant in them.
func (d *Desk) Use(u units.Set) {
	d.Units = u
	type typed struct {
		round int
		at    diagram.Point
		text  string
	}
	var again []typed
	d.EachSlip(func(round int, p diagram.Point, slip Slip) { again = append(again, typed{round, p, slip.Text}) })
	for _, t := range again {
		d.typed(t.round, t.at, t.text)
	}
}

// Typed takes what was typed at a point: a temperature, nothing, or a dash for
// a point that can't be reached.
func (d *Desk) Typed(p diagram.Point, text string) { d.typed(d.Round, p, text) }

func (d *Desk) typed(i int, p diagram.Point, text string) {
	if i < 0 {
		return
	}
	forget := func() { delete(d.slips.Of(i), p) }
	switch text {
	case "":
		forget()
		d.Edit(say.English().Of("window.hosemap.edit-cleared", say.PointName(p)), func(c *cases.Case) {
			r := &c.Rounds[i]
			r.Readings = slices.DeleteFunc(r.Readings, func(at cases.Reading) bool { return at.Point == p })
		})
		return
	case "-", "–", "/":
		forget()
		d.Edit(say.English().Of("window.hosemap.edit-cant-reach", say.PointName(p)), func(c *cases.Case) {
			at := c.Rounds[i].Begun(p)
			at.ShownC, at.Surface = nil, cases.Surface{}
		})
		return
	}
	shown, why := d.read(p, text)
	if why != "" {
		if d.slips.Of(i) == nil {
			d.slips.Put(i, map[diagram.Point]Slip{})
		}
		d.slips.Of(i)[p] = Slip{text, why}
		d.Changed()
		return
	}
	forget()
	d.Edit(say.English().Of("window.hosemap.edit-reading", say.PointName(p), d.Units.TempUnit(shown)), func(c *cases.Case) {
		r := &c.Rounds[i]
		r.Begun(p).ShownC = &shown
		if r.Taken.IsZero() {
			r.Taken = time.Now().UTC().Truncate(time.Second)
		}
	})
}

// read reads a temperature at a point, or says why it can't be kept. Coolant has narrower bounds than air: beyond
// them it would be used for nothing.
func (d *Desk) read(p diagram.Point, text string) (c diagram.Celsius, why string) {
	c, err := d.Units.ParseTemp(text)
	switch {
	case errors.Is(err, units.ErrNotANumber):
		return 0, say.English().Of("window.frame.slip-number")
	case err == nil && (p.Air() || cases.CanBeCoolant(c)):
		return c, ""
	case p.Air():
		return 0, say.English().Of("window.frame.slip-range", d.Units.TempRange(diagram.MinC, diagram.MaxC))
	}
	return 0, say.English().Of("window.frame.slip-range", d.Units.TempRange(cases.CoolantLeastC, cases.CoolantMostC))
}
