package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/warmup"
)

// Regime is how warm the engine is against its thermostat's rating.
type Regime string

// The regimes. Shut is a warm-up on its way; Below is an engine that had the
// time to get warm and isn't. Both are more than 11 K under the rating.
const (
	NoRegime Regime = ""
	Shut     Regime = "shut"
	Below    Regime = "below"
	AtRating Regime = "at"
	Above    Regime = "above" // by more than 8 K
)

// The bounds of the regimes and of a warm-up's verdict, from
// testdata/trade/numbers.csv.
const (
	targetK       diagram.DeltaK  = 11 // REG1, published (R1, R4)
	aboveK        diagram.DeltaK  = 8  // DT4, common practice
	fullK         diagram.DeltaK  = 13 // TH3: full open at rated + about 13 K, published
	coldNoCallC   diagram.Celsius = -7 // REG2, published (R1, R4)
	idleNoCallC   diagram.Celsius = 10 // REG3: lower targets are allowed up to here; published (R1)
	drivenMinutes                 = 12 // WU1, common practice
	idledMinutes                  = 25 // WU3, common practice
)

// rating is the temperature that the thermostat holds.
type rating struct {
	opensC  diagram.Celsius
	fullC   diagram.Celsius
	targetC diagram.Celsius // a warm engine stands above
	assumed bool
	heated  bool
}

// ratingOf is the case's rating, or the trade's usual one: 88 °C (TH5, common
// practice), 105 °C for a heated thermostat (TH6, published, T2). A heated one
// may hold 82 °C as well (TH7), so its target isn't above that.
func ratingOf(c *cases.Case) rating {
	opens := c.Loop.ThermostatOpensC
	r := rating{opensC: warmup.UsualOpensC, assumed: opens == nil || !canBeMark(*opens), heated: c.Loop.Heated()}
	switch {
	case !r.assumed:
		r.opensC = *opens
	case r.heated:
		r.opensC = 105
	}
	r.fullC, r.targetC = r.opensC+diagram.Celsius(fullK), r.opensC-diagram.Celsius(targetK)
	if full := c.Loop.ThermostatFullC; full != nil && *full > r.opensC {
		r.fullC = *full
	}
	if r.heated {
		r.targetC = min(r.targetC, 82)
	}
	return r
}

// OpensC is where the case's thermostat is taken to begin to open.
func OpensC(c *cases.Case) diagram.Celsius { return ratingOf(c).opensC }

// RatingText is what the thermostat is taken to hold, and whether that is only
// assumed.
func RatingText(c *cases.Case) say.Text { return ratingOf(c).text() }

// text is the rating; TH5 where it is assumed.
func (r rating) text() say.Text {
	if r.assumed {
		return say.Of("because.rating-assumed", r.opensC)
	}
	return say.Of("because.rating", r.opensC)
}

// regimeAt sorts an engine's temperature.
func (m *moment) regimeAt(t diagram.Celsius) Regime {
	switch {
	case t > m.rating.opensC+diagram.Celsius(aboveK):
		return Above
	case t >= m.rating.targetC:
		return AtRating
	}
	return m.coldRegime()
}

func (m *moment) coldRegime() Regime {
	if m.noCall().Empty() {
		return Below
	}
	return Shut
}

// noCall says why an engine under its target may still be on its way there,
// or is empty where it had the time. A warm-up at idle is the regulator's own
// example of a false call (REG5), so idling takes longest to be called. The rules
// are REG2, WU1, REG3 and WU3.
func (m *moment) noCall() say.Text {
	air, minutes := outsideC(m.c, m.i), m.round.MinutesSinceStart
	driven := PaceOf(m.round) == OnRoad
	switch {
	case air != nil && *air < coldNoCallC:
		return say.Of("because.frost", *air, coldNoCallC)
	case minutes == nil:
		return say.Of("because.minutes-unknown")
	case driven && *minutes >= drivenMinutes:
		return say.Text{}
	case driven:
		return say.Of("because.driven", *minutes, drivenMinutes)
	case air != nil && *air < idleNoCallC:
		return say.Of("because.idled-in-cold", *air)
	case *minutes < idledMinutes:
		return say.Of("because.idled", *minutes, idledMinutes)
	}
	return say.Text{}
}
