package report

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/proof"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// spot is one line of the customer's table and one box on the drawings.
type spot struct {
	label say.Text
	sides[shown]
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
			got.before.c, got.after.c = c.f.Round(c.pair.before).EngineC, c.f.Round(c.pair.after).EngineC
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

// cabin is where the heat comes in that the heater's fault kept out, or that the customer misses while no cause is known;
// none with another fault, or the heater off.
func (c *customer) cabin() []diagram.Point {
	felt := slices.Contains([]cases.Cause{"heater-core-restricted", "heater-valve-shut", "heater-air-side"}, c.c.Verdict.Cause)
	if c.c.Verdict.Cause == "" {
		felt = slices.Contains(c.c.Complaint.Symptoms, "cabin-heat-poor") || slices.Contains(c.c.Complaint.Symptoms, "cabin-heat-comes-and-goes")
	}
	for _, i := range []int{c.pair.before, c.pair.after} {
		felt = felt && (i < 0 || c.c.Rounds[i].Heater != cases.HeaterOff)
	}
	if !felt {
		return nil
	}
	return []diagram.Point{diagram.Vent}
}

// measuredPoint is the first of the points that the rounds have a reading of to go by, so that
// before and after are of the same place.
func (c *customer) measuredPoint(points []diagram.Point) diagram.Point {
	for _, p := range points {
		for _, i := range []int{c.pair.before, c.pair.after} {
			if r, ok := c.f.Round(i).Readings[p]; ok && r.Usable() {
				return p
			}
		}
	}
	return ""
}

func (c *customer) shownAt(round int, p diagram.Point) shown {
	r, ok := c.f.Round(round).Readings[p]
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
