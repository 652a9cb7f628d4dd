package evidence

import (
	"loopbook/cases"
	"loopbook/diagram"
)

// UsualAmbientC is the air outside where nothing tells it (judgement).
const UsualAmbientC diagram.Celsius = 20

// AirC is the air outside in a round, or of the case (below 0), the usual where nothing tells it.
func AirC(c *cases.Case, round int) diagram.Celsius {
	if a := outsideC(c, round); a != nil {
		return *a
	}
	return UsualAmbientC
}

// outsideC is the air outside as it was noted or, where it wasn't, the coldest that came to the radiator
// at the round's stage: much may warm it on its way there and nothing cools it. Nil: nothing tells it.
func outsideC(c *cases.Case, round int) *diagram.Celsius {
	if a := AirNoted(c, round); a != nil {
		return a
	}
	var coldest *diagram.Celsius
	for i := range c.Rounds {
		if round >= 0 && !c.Rounds[round].Stage.Holds(c.Rounds[i].Stage) {
			continue
		}
		r := c.Rounds[i].Reading(diagram.AirOn)
		if r != nil && r.ShownC != nil && *r.ShownC <= hottestDayC && (coldest == nil || *r.ShownC < *coldest) {
			coldest = r.ShownC
		}
	}
	return coldest
}

// AirNoted is the air outside as it was noted for the round, for the case or, at last, in another round; or nil.
func AirNoted(c *cases.Case, round int) *diagram.Celsius {
	if round >= 0 && c.Ambient(round) != nil {
		return c.Ambient(round)
	}
	return airOfAny(c, func(*cases.Round) bool { return true })
}

// airOfSide is the air outside as it was noted for the case or for a round of that side of the repair: of a log or a
// check, which have none of their own. Nil: it wasn't.
func airOfSide(c *cases.Case, stage cases.Stage) *diagram.Celsius {
	return airOfAny(c, func(r *cases.Round) bool { return stage.Holds(r.Stage) })
}

// airOfAny is the air as it was noted for the case or for the first such round that has it.
func airOfAny(c *cases.Case, such func(*cases.Round) bool) *diagram.Celsius {
	noted := c.Site.AmbientC
	for i := range c.Rounds {
		if r := &c.Rounds[i]; noted == nil && such(r) {
			noted = r.AmbientC
		}
	}
	return noted
}
