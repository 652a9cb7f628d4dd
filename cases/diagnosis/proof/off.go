package proof

import (
	"slices"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Off is a point that is out of its range in a round after the repair.
type Off struct {
	Point diagram.Point
	Why   Reason
}

// Reason is why a point that is out of its range says nothing against the repair.
type Reason string

// The reasons. Unexplained is none: such a point is to be read again.
const (
	Unexplained Reason = ""
	Slight      Reason = "slight"    // no more than the gun may be off
	Throttled   Reason = "throttled" // behind a thermostat that holds the engine at its rating
	Told        Reason = "told"      // of a place that a finding of the round speaks of
)

// slightK is what a gun may be off at one place: it repeats to 3 K (IR9) and is off
// by 2 K itself (both common practice), besides what the surface adds.
const slightK diagram.DeltaK = 5

// offAfter are the points that are out of their range after the repair, round by
// round along the flow.
func offAfter(c *cases.Case, f evidence.Findings) []Off {
	var out []Off
	for i := range c.Rounds {
		if !isAfter(c.Rounds[i].Stage) {
			continue
		}
		for _, p := range c.Loop.Points() {
			if r, ok := f.Rounds[i].Readings[p]; ok && r.Usable() && r.Expected != nil && r.State.Out() {
				why := reason(r, f.Rounds[i].Regime)
				if why == Unexplained && told(f.Flags, i, p) {
					why = Told
				}
				out = append(out, Off{p, why})
			}
		}
	}
	return out
}

func reason(r evidence.Reading, regime evidence.Regime) Reason {
	switch {
	case WithinGun(r):
		return Slight
	case regime == evidence.AtRating && behindThermostat(r.Point):
		return Throttled
	}
	return Unexplained
}

// told reports whether a fault that a round shows is at that place.
func told(flags []evidence.Flag, round int, p diagram.Point) bool {
	return slices.ContainsFunc(flags, func(f evidence.Flag) bool {
		return f.Round == round && f.Severity == evidence.Act && slices.Contains(f.Points, p)
	})
}

// WithinGun reports whether a reading is out of its range by no more than the gun may be off at one place.
func WithinGun(r evidence.Reading) bool {
	return r.Expected != nil && r.Expected.OffK(r.TrueC) <= slightK+r.UncertainK
}

// behindThermostat are the places that are as warm as the flow which a throttling
// thermostat lets through the radiator makes them: any drop across it is well while
// the engine holds its rating (DT2, common practice).
func behindThermostat(p diagram.Point) bool {
	return p == diagram.RadOut || p == diagram.PumpIn || p == diagram.AirOff
}

// places are the points that are off for a reason, each once.
func (p *Proof) places(why Reason) []say.Text {
	var seen []diagram.Point
	var out []say.Text
	for _, o := range p.Off {
		if o.Why == why && !slices.Contains(seen, o.Point) {
			seen, out = append(seen, o.Point), append(out, say.Place(o.Point))
		}
	}
	return out
}

// harmless says of each point that is off why it doesn't matter.
func (p *Proof) harmless() []say.Text {
	var out []say.Text
	if at := p.places(Slight); at != nil {
		out = append(out, say.Of("proof.off.slight", say.List(at...)))
	}
	if at := p.places(Throttled); at != nil {
		out = append(out, say.Of("proof.off.throttled", say.List(at...)))
	}
	return out
}
