package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/infrared"
	"loopbook/diagram/say"
)

// What is taken where the case doesn't say. The emissivity is the one most
// guns are fixed to, and rubber's (IR1 in testdata/trade/numbers.csv).
const (
	usualEmissivity = 0.95
	usualSurface    = "rubber"
)

// readRound corrects the round's readings. Of several at a point the last one
// counts; a point that can't be reached has none.
func readRound(c *cases.Case, i int) map[diagram.Point]Reading {
	round := &c.Rounds[i]
	gun := gunOf(c, i)
	out := make(map[diagram.Point]Reading, len(round.Readings))
	for _, r := range round.Readings {
		switch {
		case r.ShownC != nil:
			out[r.Point] = correct(r, gun)
		case r.CantReach():
			delete(out, r.Point)
		}
	}
	return out
}

// gunOf is the round's gun. What a surface mirrors is taken to be what the gun
// is set to, or the air's temperature where the round doesn't say.
func gunOf(c *cases.Case, i int) infrared.Gun {
	set := c.Rounds[i].Gun
	gun := infrared.Gun{Emissivity: usualEmissivity, ReflectedC: AirC(c, i)}
	if set.Emissivity != nil {
		gun.Emissivity = *set.Emissivity
	}
	if set.ReflectedC != nil {
		gun.ReflectedC = *set.ReflectedC
	}
	return gun
}

// correct turns what was shown into the surface's temperature. Air is taken
// with a probe, which shows it as it is.
func correct(r cases.Reading, gun infrared.Gun) Reading {
	out := Reading{Point: r.Point, ShownC: *r.ShownC, TrueC: *r.ShownC, Surface: r.Surface, State: Unknown}
	if r.Point.Air() {
		return out
	}
	noted := supposed(r.Surface)
	surface, err := surfaceOf(noted)
	var got infrared.Corrected
	if err == nil {
		got, err = gun.Correct(*r.ShownC, surface, gun.ReflectedC)
	}
	if err != nil {
		out.Doubtful, out.Why = true, say.Of("because.not-correctable")
		return out
	}
	out.TrueC, out.UncertainK = got.TrueC, got.UncertainK
	out.CorrectionK = got.TrueC.Minus(*r.ShownC)
	if got.Doubtful() {
		out.Doubtful = true
		out.Why = say.Of("because.doubtful", noted.Text(), out.ShownC, out.TrueC, out.UncertainK)
	}
	return out
}

// supposed is the surface that a reading is corrected for: the usual one where none is noted.
func supposed(s cases.Surface) cases.Surface {
	if s == (cases.Surface{}) {
		s.Word = usualSurface
	}
	return s
}

func surfaceOf(s cases.Surface) (infrared.Surface, error) {
	if s.Emissivity != 0 {
		return infrared.Stated(s.Emissivity)
	}
	return infrared.Named(s.Word)
}

// onHose reports whether the reading was taken on a hose's rubber, which
// stands 2 to 8 K under the coolant within (IR8, from memory).
func (r Reading) onHose() bool {
	return r.Point != diagram.Housing && supposed(r.Surface).Word == usualSurface
}
