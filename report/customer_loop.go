package report

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// spot is one line of the customer's table and one box on the drawings.
type spot struct {
	label say.Text
	sides[shown]
}

// sides are the two of a repair.
type sides[T any] struct{ before, after T }

// of is the side that a panel is of.
func (s sides[T]) of(p panel) T {
	if p.after {
		return s.after
	}
	return s.before
}

// shown is a temperature as it was found at a stage.
type shown struct {
	c      *diagram.Celsius
	out    bool            // not as it should be
	quiet  bool            // shown without a sign: it belies what the page says, and is the shop's to look into
	slight bool            // out by no more than the gun may be off
	should *evidence.Range // at that time; nil: not known
}

// alarms reports whether it is shown as one that is not as it should be.
func (s shown) alarms() bool { return s.out && !s.quiet }

// off is how far it is out of its range.
func (s shown) off() diagram.DeltaK {
	if s.c == nil || s.should == nil {
		return 0
	}
	return s.should.OffK(*s.c)
}

// spots are the few places that a customer understands, where anything was
// measured: the engine, the two radiator hoses, the heater's, and the heater's air where the heater was at fault.
func (c *customer) spots() []spot {
	var engine []diagram.Point // no layout: a housing may as well be where the cold coolant comes in
	if c.loop != nil {
		engine = []diagram.Point{diagram.Housing, diagram.EngineOut}
		if c.loop.Thermostat == diagram.Inlet {
			engine = engine[1:]
		}
	}
	var out []spot
	var used []diagram.Point // so that no reading stands for two places
	for _, s := range []struct {
		key    string
		points []diagram.Point
	}{
		{"engine", engine},
		{"upper", []diagram.Point{diagram.RadIn, diagram.EngineOut}},
		{"lower", []diagram.Point{diagram.RadOut, diagram.PumpIn}},
		{"heater", []diagram.Point{diagram.HeaterIn, diagram.HeaterOut}},
		{"cabin", c.cabin()},
	} {
		got := spot{label: say.Of("customer.spot." + s.key)}
		at := c.measuredPoint(slices.DeleteFunc(s.points, func(p diagram.Point) bool { return slices.Contains(used, p) }))
		used = append(used, at)
		got.before, got.after = c.shownAt(c.pair.before, at), c.shownAt(c.pair.after, at)
		c.quieten(&got)
		if s.key == "engine" && got.before.c == nil && got.after.c == nil {
			got.before.c, got.after.c = c.engineC(c.pair.before), c.engineC(c.pair.after)
		}
		if got.before.c != nil || got.after.c != nil {
			out = append(out, got)
		}
	}
	return out
}

// sameK is how far two readings of one place may differ that show the same (IR9 of testdata/trade/numbers.csv, common
// practice).
const sameK diagram.DeltaK = 3

// quieten takes the sign from what is out of its range without being the fault's: what the repair that helped left as
// it was, what is out of a sound loop's range by no more than the gun may be off, and what is out of a range that was
// asked of the sensor at fault.
func (c *customer) quieten(s *spot) {
	before, after := &s.before, &s.after
	switch state := c.state(); {
	case state == fixed && after.c != nil:
		after.quiet = after.out
		left := before.c != nil && (after.out && before.off() <= after.off() || diagram.DeltaK(math.Abs(float64(*before.c-*after.c))) <= sameK)
		before.quiet = before.out && left
	case state == healthy:
		before.quiet, after.quiet = before.out && before.slight, after.out && after.slight
	}
	if c.c.Verdict.Cause.OfSensor() && !diagnosis.Overheated(c.c, c.f) {
		before.quiet, after.quiet = before.out, after.out
	}
}

// cabin is where the heat comes in that the heater's fault kept out; none with another fault, or the heater off.
func (c *customer) cabin() []diagram.Point {
	felt := slices.Contains([]cases.Cause{"heater-core-restricted", "heater-valve-shut", "heater-air-side"}, c.c.Verdict.Cause)
	for _, i := range []int{c.pair.before, c.pair.after} {
		felt = felt && (i < 0 || c.c.Rounds[i].Heater != cases.HeaterOff)
	}
	if !felt {
		return nil
	}
	return []diagram.Point{diagram.Vent}
}

// gap is the difference that tells most in the customer's table, over the radiator, the thermostat or the heater: in
// the round before, or in the one after where that shows why it isn't fixed. Each side has the range of its own round.
type gap struct {
	label say.Text
	sides[*evidence.Delta]
}

func (c *customer) gap() (gap, bool) {
	if c.state() == notFixed {
		if g, ok := c.gapOf(c.pair.after); ok {
			return g, true
		}
	}
	return c.gapOf(c.pair.before)
}

// gapOf is the difference that is out by most in a round.
func (c *customer) gapOf(round int) (gap, bool) {
	var out gap
	worst := diagram.DeltaK(0)
	for _, name := range []string{evidence.AcrossRadiator, evidence.ThermostatStep, evidence.HeaterDrop} {
		d := c.deltaAt(round, name)
		if d == nil || !d.State.Out() {
			continue
		}
		if off := outBy(d); off > worst {
			worst, out = off, gap{say.Of("customer.gap." + name), sides[*evidence.Delta]{c.deltaAt(c.pair.before, name), c.deltaAt(c.pair.after, name)}}
		}
	}
	return out, worst > 0
}

func (c *customer) deltaAt(round int, name string) *evidence.Delta {
	for i := range c.f.Deltas {
		if d := &c.f.Deltas[i]; d.Round == round && d.Name == name {
			return d
		}
	}
	return nil
}

// outBy is how far a difference is out of its range.
func outBy(d *evidence.Delta) diagram.DeltaK {
	off := diagram.DeltaK(0)
	if d.ExpectedLowK != nil {
		off = max(off, *d.ExpectedLowK-d.ValueK)
	}
	if d.ExpectedHighK != nil {
		off = max(off, d.ValueK-*d.ExpectedHighK)
	}
	return off
}

// leastOut is by how much a reading or a difference has to be out for a customer to be told: less may read the same as
// the end of its range. It is of what was measured, not of the numbers as they are read, which would be out in one unit
// and within in the other.
const leastOut diagram.DeltaK = 0.5

// leastApart is how far at least what is out is read from the end of its range: numbers are whole, and 0.6 K may stand
// between two that read the same, in °C or in °F.
const leastApart diagram.DeltaK = 1

// measuredPoint is the first of the points that the rounds have a reading of to go by, so that
// before and after are of the same place.
func (c *customer) measuredPoint(points []diagram.Point) diagram.Point {
	for _, p := range points {
		for _, i := range []int{c.pair.before, c.pair.after} {
			if i < 0 {
				continue
			}
			if r, ok := c.f.Rounds[i].Readings[p]; ok && r.Usable() {
				return p
			}
		}
	}
	return ""
}

func (c *customer) shownAt(round int, p diagram.Point) shown {
	if round < 0 {
		return shown{}
	}
	r, ok := c.f.Rounds[round].Readings[p]
	if !ok || !r.Usable() {
		return shown{}
	}
	if r.Expected == nil {
		return shown{c: &r.TrueC}
	}
	should := *r.Expected
	out := should.OffK(r.TrueC) >= leastOut
	if !out { // or a number beside its ring would read as one outside
		should.LowC, should.HighC = min(should.LowC, r.TrueC), max(should.HighC, r.TrueC)
	}
	return shown{c: &r.TrueC, out: out, slight: proof.WithinGun(r), should: &should}
}

func (c *customer) engineC(round int) *diagram.Celsius {
	if round < 0 {
		return nil
	}
	return c.f.Rounds[round].EngineC
}

// panel is one of the drawings with its head.
type panel struct {
	key   string
	round int
	after bool // the repair
	mood
}

const underPictures = 6

// pictures draw the loop before and after the repair side by side, or once
// where it was measured once, in what height is left for them and the scale.
func (c *customer) pictures(rows []spot, height float64) {
	const gap, pad, least = 10, 8, 140
	height -= underPictures + scaleHeight()
	plain, err := c.loop.Plain()
	if err != nil || height < least {
		return
	}
	panels := c.panels()
	width := (c.inner() - gap) / 2
	height = min(height, width*c.plainDrawing(panels[0], plain, rows).Height/plain.Width+boxHead.lead()+2*pad)
	x := margin + (c.inner()-float64(len(panels))*width-float64(len(panels)-1)*gap)/2
	for _, p := range panels {
		c.panel(p, plain, rows, x, width, height)
		x += width + gap
	}
	c.y += height + underPictures
	c.scale()
}

// panels are the stages that anything was measured at to draw.
func (c *customer) panels() []panel { return c.panelsOf(c.pair.before >= 0, c.pair.after >= 0) }

// panelsOf are those of the stages that there is something of.
func (c *customer) panelsOf(before, after bool) []panel {
	switch {
	case before && after:
		return []panel{c.beforePanel(), c.afterPanel()}
	case after:
		return []panel{c.afterPanel()}
	}
	return []panel{c.beforePanel()}
}

// beforePanel is how the car came, and is still where nothing was done.
func (c *customer) beforePanel() panel {
	switch {
	case c.measuredAfter():
		return panel{"before", c.pair.before, false, moodAct()}
	case !c.worked() || c.state() == healthy:
		return panel{"now-shown", c.pair.before, false, c.moodCame()}
	}
	return panel{"before", c.pair.before, false, c.moodCame()}
}

func (c *customer) afterPanel() panel { return panel{"after", c.pair.after, true, c.moodNow()} }

func (c *customer) panel(p panel, plain *diagram.Loop, rows []spot, x, width, height float64) {
	const pad = 8
	c.paint(x, c.y, 1, drawing.Rect{Box: diagram.Box{0, 0, width, height}, Corner: 6, Fill: drawing.In(drawing.Card), Stroke: drawing.In(p.edge), StrokeWidth: 1})
	c.paint(x+pad, c.y+pad+1, 1, p.sign)
	c.put(x+pad+17, c.y+pad, c.by.Of("customer."+p.key), boxHead)
	when := c.by.Say(c.c.Rounds[p.round].Title())
	left := x + pad + 17 + c.measure(c.by.Of("customer."+p.key), boxHead) + 12
	if _, twoDays := c.outside(); twoDays { // where there is room beside the round's name
		if both := join(", ", c.by.Of("customer.outside", *c.c.Ambient(p.round)), when); len(c.lines(both, x+width-pad-left, softStyle)) == 1 {
			when = both
		}
	}
	line := c.cutLine(when, x+width-pad-left, softStyle)
	c.put(x+width-pad-c.measure(line, softStyle), c.y+pad+2, line, softStyle)

	d := c.plainDrawing(p, plain, rows)
	scale := min((width-2*pad)/d.Width, (height-boxHead.lead()-2*pad)/d.Height)
	c.paint(x+(width-d.Width*scale)/2, c.y+pad+boxHead.lead(), scale, d.Shapes...)
}

func (c *customer) plainDrawing(p panel, plain *diagram.Loop, rows []spot) drawing.Picture {
	return drawing.DrawPlain(plain, picture.State(c.loop, c.c, c.f, p.round, c.by), c.drawn(p, plain, rows))
}

// drawn are the boxes on a drawing: it has no place for the cabin's air.
func (c *customer) drawn(p panel, plain *diagram.Loop, rows []spot) []drawing.Spot {
	at := map[string]diagram.Point{"customer.spot.engine": diagram.Housing, "customer.spot.upper": diagram.RadIn, "customer.spot.lower": diagram.RadOut, "customer.spot.heater": diagram.HeaterIn}
	if plain.Thermostat == diagram.Inlet {
		at["customer.spot.engine"] = diagram.EngineOut
	}
	var out []drawing.Spot
	for _, row := range rows {
		if s := row.of(p); s.c != nil && at[row.label.Key()] != "" {
			out = append(out, drawing.Spot{Point: at[row.label.Key()], Label: c.by.Say(row.label), Text: c.by.Say(say.Value(*s.c)), Out: s.alarms()})
		}
	}
	return out
}

// scale explains the hoses' colours.
func (c *customer) scale() {
	const width, steps = 150, 12
	x := margin + c.measure(c.by.Of("customer.colour"), softStyle) + 10
	c.put(margin, c.y, c.by.Of("customer.colour"), softStyle)
	low, high := c.by.Units.TempUnit(drawing.ScaleLowC), c.by.Units.TempUnit(drawing.ScaleHighC)
	c.put(x, c.y, low, softStyle)
	x += c.measure(low, softStyle) + 6
	step := (drawing.ScaleHighC - drawing.ScaleLowC) / steps
	for i := 0; i < steps; i++ {
		from := drawing.ScaleLowC + step*diagram.Celsius(i)
		left := float64(i) * width / steps // each reaches under the next, so that no seam shows
		c.paint(x, c.y, 1, drawing.Band{Box: diagram.Box{left, 2, min(width/steps+1, width-left), 7}, Start: drawing.Heat(from), End: drawing.Heat(from + step)})
	}
	c.put(x+width+6, c.y, high, softStyle)
	c.y += scaleHeight()
}

func scaleHeight() float64 { return softStyle.lead() + 6 }
