package drawing

import (
	"math"

	"loopbook/diagram"
)

func (d *drafter) part(p diagram.Part) {
	switch p.Kind {
	case diagram.Engine, diagram.Head:
		d.engine(p.Box, d.name(p.Kind), d.state.Sensor)
	case diagram.Block:
		d.engine(p.Box, d.name(p.Kind), "")
	case diagram.Radiator:
		d.core(p.Box, d.heat(diagram.RadIn, diagram.RadOut), d.heat(diagram.RadOut, diagram.RadIn), 11, 5)
	case diagram.HeaterCore:
		d.core(p.Box, d.heat(diagram.HeaterIn, diagram.HeaterOut), d.heat(diagram.HeaterOut, diagram.HeaterIn), 3, 6)
	case diagram.Thermostat:
		d.thermostat(p.Box, d.opening(p))
	case diagram.Pump:
		c, r := middle(p.Box)
		d.add(Disc{Center: c, Radius: r, Fill: In(Card), Stroke: In(Text), StrokeWidth: 3},
			Wedge{Center: c, Radius: 13, Toward: Left, Fill: In(Text)})
	case diagram.Fan:
		d.fan(p.Box)
	case diagram.Bottle:
		d.bottle(p.Box)
	case diagram.OilCooler:
		d.core(p.Box, d.heat(diagram.OilIn, diagram.OilOut), d.heat(diagram.OilOut, diagram.OilIn), 3, 6)
	case diagram.WaxHeater:
		d.waxHeater(p.Box)
	case diagram.Tee:
		c, r := middle(p.Box)
		d.add(Disc{Center: c, Radius: r, Fill: d.teeHeat(p.ID), Stroke: In(PipeEdge), StrokeWidth: 1.5})
	}
}

// teeHeat is the ink of the first known hose end that meets a tee.
func (d *drafter) teeHeat(id string) Ink {
	for _, h := range d.loop.Hoses {
		for i, part := range [2]string{h.From, h.To} {
			if ink := d.heat(h.Ends[i]); part == id && ink.Role == "" {
				return ink
			}
		}
	}
	return In(Card)
}

// engine is an engine's box or a half's, with its name and its sensor.
func (d *drafter) engine(b diagram.Box, name, sensor string) {
	d.add(Rect{Box: b, Corner: 8, Fill: In(PartFill), Stroke: In(PartLine), StrokeWidth: 2})
	x := b[0] + b[2]/2
	d.label(x, b[1]+70, name, 17, true, Text, Middle)
	d.label(x, b[1]+92, sensor, labelSize, false, Soft, Middle)
}

// core is a radiator, a heater core or an oil cooler: coloured from its inlet at the top to
// its outlet, with fins across.
func (d *drafter) core(b diagram.Box, in, out Ink, fins int, inset float64) {
	d.add(Rect{Box: b, Corner: 5, Fill: In(PartLine)},
		Band{Box: shrink(b, 3), Start: in, End: out, Vertical: true})
	for i := 1; i <= fins; i++ {
		y := b[1] + b[3]*float64(i)/float64(fins+1)
		d.add(Line{From: diagram.XY{b[0] + inset + 3, y}, To: diagram.XY{b[0] + b[2] - inset - 3, y}, Stroke: In(PartLine), Width: 1.5})
	}
}

// thermostat is a ring with two seat bars and a plate on a stem; the plate's
// distance from the seats is the lift. Without a plate the lift isn't known.
func (d *drafter) thermostat(b diagram.Box, o Opening) {
	c, r := middle(b)
	d.add(Disc{Center: c, Radius: r, Fill: In(Card), Stroke: In(Text), StrokeWidth: 3})
	lift := map[Opening]float64{Shut: 0, ALittleOpen: 5, Open: 11}[o]
	seat := c[0] - 1
	for _, half := range [2][2]float64{{-18, -8}, {8, 18}} {
		d.add(Line{From: diagram.XY{seat, c[1] + half[0]}, To: diagram.XY{seat, c[1] + half[1]}, Stroke: In(Text), Width: 4})
	}
	d.add(Rect{Box: diagram.Box{c[0] - 19, c[1] - 4, 9, 8}, Corner: 2, Fill: In(Text)})
	if o == NotKnown {
		return
	}
	plate := seat + lift
	d.add(Line{From: diagram.XY{c[0] - 12, c[1]}, To: diagram.XY{plate, c[1]}, Stroke: In(Text), Width: 3},
		Line{From: diagram.XY{plate, c[1] - 9}, To: diagram.XY{plate, c[1] + 9}, Stroke: In(Text), Width: 4})
}

// opening is the first thermostat's: the readings say nothing of a second one.
func (d *drafter) opening(p diagram.Part) Opening {
	if p.ID != d.loop.Part(diagram.Thermostat).ID {
		return NotKnown
	}
	return d.state.Thermostat
}

// waxHeater is a coil in a box, with a wire to the capsule of the thermostat
// above it.
func (d *drafter) waxHeater(b diagram.Box) {
	if p := d.loop.Part(diagram.Thermostat); p != nil {
		c, _ := middle(p.Box)
		x := c[0] - 15
		d.add(Line{From: diagram.XY{x, c[1] + 4}, To: diagram.XY{x, b[1]}, Stroke: In(Text), Width: 2})
	}
	d.add(Rect{Box: b, Corner: 3, Fill: In(Card), Stroke: In(PartLine), StrokeWidth: 2})
	const turns = 4
	y, step := b[1]+b[3]/2, (b[2]-8)/turns
	for i := 0; i < turns; i++ {
		x := b[0] + 4 + step*float64(i)
		d.add(Line{From: diagram.XY{x, y + 5}, To: diagram.XY{x + step/2, y - 5}, Stroke: In(Text), Width: 1.5},
			Line{From: diagram.XY{x + step/2, y - 5}, To: diagram.XY{x + step, y + 5}, Stroke: In(Text), Width: 1.5})
	}
}

func (d *drafter) fan(b diagram.Box) {
	c, r := middle(b)
	d.add(Disc{Center: c, Radius: r, Fill: In(Card), Stroke: In(PartLine), StrokeWidth: 2})
	for i := 0; i < 3; i++ {
		sin, cos := math.Sincos(math.Pi/2 + float64(i)*2*math.Pi/3)
		d.add(Line{From: c, To: diagram.XY{c[0] + (r-5)*cos, c[1] - (r-5)*sin}, Stroke: In(Text), Width: 4})
	}
	d.add(Disc{Center: c, Radius: 4, Fill: In(Text)})
	d.label(c[0], b[1]+b[3]+15, d.state.Fan, labelSize, d.state.FanOn, Text, Middle)
}

func (d *drafter) bottle(b diagram.Box) {
	cap := diagram.Box{b[0] + b[2]/2 - 14, b[1], 28, 9}
	body := diagram.Box{b[0], b[1] + 8, b[2], b[3] - 8}
	level := body[1] + body[3]*0.5
	d.add(Rect{Box: body, Corner: 7, Fill: In(Card), Stroke: In(PartLine), StrokeWidth: 2},
		Rect{Box: diagram.Box{body[0] + 2, level, body[2] - 4, body[1] + body[3] - level - 2}, Corner: 5, Fill: In(Coolant)},
		Rect{Box: cap, Corner: 2, Fill: In(PartLine)})
	d.label(body[0]+8, body[1]+16, d.name(diagram.Bottle), labelSize, true, Text, Start)
	d.label(body[0]+8, level+body[3]*0.25, d.state.Bottle, labelSize, false, Text, Start)
}

// name is a part's in words.
func (d *drafter) name(k diagram.PartKind) string { return d.state.By.Of("part." + string(k)) }

func (d *drafter) caption(c diagram.Caption) {
	align, name := Start, c.Part
	for _, p := range d.loop.Parts {
		if p.ID == c.Part {
			name = d.name(p.Kind)
			if c.At[0] < p.Box[0] {
				align = End
			}
		}
	}
	d.label(c.At[0], c.At[1], name, labelSize, true, Text, align)
	if p := d.loop.Part(diagram.Thermostat); p == nil || p.ID != c.Part {
		return
	}
	word := d.state.By.Say(d.state.Thermostat.word()) // of the first, as the plate
	if align == End {
		d.label(c.At[0], c.At[1]+15, word, labelSize, false, Soft, End)
		return
	}
	if d.taken(diagram.Box{c.At[0] + 90, c.At[1], 8 * float64(len([]rune(word))), 0}) {
		d.label(c.At[0], c.At[1]+15, word, labelSize, false, Soft, Start)
		return
	}
	d.label(c.At[0]+90, c.At[1], word, labelSize, false, Soft, Start)
}

// taken reports whether a part stands in the box.
func (d *drafter) taken(b diagram.Box) bool {
	for _, p := range d.loop.Parts {
		if b[0] < p.Box[0]+p.Box[2] && p.Box[0] < b[0]+b[2] && b[1] < p.Box[1]+p.Box[3] && p.Box[1] <= b[1]+b[3] {
			return true
		}
	}
	return false
}

func middle(b diagram.Box) (center diagram.XY, radius float64) {
	return diagram.XY{b[0] + b[2]/2, b[1] + b[3]/2}, min(b[2], b[3]) / 2
}

func shrink(b diagram.Box, by float64) diagram.Box {
	return diagram.Box{b[0] + by, b[1] + by, b[2] - 2*by, b[3] - 2*by}
}
