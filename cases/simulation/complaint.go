package simulation

import (
	"math"
	"slices"

	"loopbook/cases"
	"loopbook/diagram"
)

// What a driver notices, and an engine's control: differences from the sound car of the same build on the
// same way (judgement but for coldK).
const (
	feltK      = 8   // hotter, colder, or of the air at the vent
	fineK      = 4   // colder than a sound car's, the air at the vent is nobody's complaint
	hotOverK   = 12  // over the rating: the needle leaves the middle
	fanOverK   = 5   // over where its fan starts, and not before: a sound engine stands there in traffic too
	coldK      = 11  // under the rating: the needle is under the middle, and a thermostat's code is due: REG1 of testdata/trade/numbers.csv, published (R1, R4)
	coldNoC    = -7  // air in which it isn't looked for: REG2, published (R1, R4)
	tooHotC    = 115 // where a code of overheating is due
	implausK   = 15  // a sensor's first value off the air's
	warmC      = 70
	warmByS    = 15 * 60 // of idling: before, every car is cold and every vent too
	slower     = 1.3
	alwaysPart = 0.5 // of the time by which a fan runs more
)

// complaint is what the driver of the ill car tells.
func complaint(car Car, ill, well *course, opensC diagram.Celsius, light bool) cases.Complaint {
	var out []cases.Symptom
	tell := func(s cases.Symptom, noticed bool) {
		if noticed {
			out = append(out, s)
		}
	}
	tell("warning-light", light)
	idle, road := ill.hotter(well, opensC, false), ill.hotter(well, opensC, true)
	tell("overheats-always", idle && road)
	tell("overheats-idle", idle && !road)
	tell("overheats-road", road && !idle)
	tell("gauge-low", ill.low(well, opensC))
	tell("slow-warm-up", ill.reaches(warmC) > slower*well.reaches(warmC))
	tell("gauge-swings", !idle && !road && ill.swings(well))
	poor, fine := ill.vent(well)
	tell("cabin-heat-poor", poor && !fine)
	tell("cabin-heat-comes-and-goes", poor && fine)
	more := (ill.fanS - well.fanS) / ill.lastS
	tell("fan-always-on", more > alwaysPart)
	tell("fan-never-on", ill.fanS == 0 && well.fanS > 0 && idle)
	felt := unheated()[car.Cause]
	tell("coolant-loss", ill.boiledOver(well) && !slices.Contains(felt, "coolant-loss"))
	for _, s := range felt {
		tell(s, true)
	}
	c := cases.Complaint{Symptoms: out}
	if len(out) == 0 {
		c.Text = "Nothing is felt: a look before a long journey."
	}
	return c
}

// unheated are the symptoms that go with a fault and that no temperature makes: the symptom column of
// testdata/trade/signatures.csv, in the words of the format.
func unheated() map[cases.Cause][]cases.Symptom {
	return map[cases.Cause][]cases.Symptom{
		"coolant-low-air":  {"coolant-loss"},
		"combustion-leak":  {"coolant-loss", "bubbles-in-bottle", "hoses-hard-cold"},
		"cap-weak":         {"coolant-loss", "coolant-smell"},
		"external-leak":    {"coolant-loss", "coolant-smell"},
		"cap-vacuum-stuck": {"coolant-loss"},
	}
}

// hotter reports whether the needle stands too high, on the road or at rest.
func (c *course) hotter(well *course, opensC diagram.Celsius, road bool) bool {
	hotC := max(float64(opensC)+hotOverK, float64(c.sim.FanStartsC())+fanOverK)
	for i, l := range c.legs {
		if (l.Drive == Road) == road && l.heldC() > max(well.legs[i].heldC()+feltK, hotC) {
			return true
		}
	}
	return false
}

// low reports whether the needle stays under the middle in a leg of the warm engine.
func (c *course) low(well *course, opensC diagram.Celsius) bool {
	for i, l := range c.legs {
		if l.endS > warmByS && l.heldC() < min(well.legs[i].heldC()-feltK, float64(opensC)-coldK) {
			return true
		}
	}
	return false
}

// heldC is what a driver remembers of a leg: the most that was shown, but of the road, which cools what got hot
// before it, and of the way to the warm engine, on which a valve may let go late, the end.
func (l leg) heldC() float64 {
	if l.Drive == Road || l.warms {
		return l.endC
	}
	return l.mostC
}

// reaches is when the sensor shows that much first, in seconds.
func (c *course) reaches(shownC float64) float64 {
	for i, v := range c.log.EctC {
		if v >= shownC {
			return c.log.TimeS[i]
		}
	}
	return math.Inf(1)
}

// swings reports whether the needle moves much more than the sound car's in a leg of the warm engine, or falls back
// on the way to it.
func (c *course) swings(well *course) bool {
	for i, l := range c.legs {
		if l.movedK() > well.legs[i].movedK()+feltK {
			return true
		}
	}
	return false
}

// movedK is by how much the needle moves in a leg; rising as the engine warms is no moving.
func (l leg) movedK() float64 {
	if l.warms {
		return l.mostC - l.endC
	}
	return l.mostC - l.leastC
}

// vent tells whether the cabin stays colder than the sound car's at the end of any leg with the heater on, and
// whether it is as warm at the end of another.
func (c *course) vent(well *course) (poor, fine bool) {
	for i, l := range c.legs {
		if part, _ := l.Heater.Blower(); part == 0 || l.endS < warmByS {
			continue
		}
		colderK := well.legs[i].ventC - l.ventC
		poor, fine = poor || colderK > feltK, fine || colderK < fineK
	}
	return poor, fine
}
