package report

import (
	"loopbook/cases"
	"loopbook/diagram/say"
)

// Deferral says what goes before anything that this program shows.
func Deferral() say.Text { return say.Of("caution.defer") }

// Cautions are the dangers of the work on this case, the gravest first, in a
// sentence or two each. Deferral closes them.
//
// The limit for the cap is the strictest that an owner's manual sets (SF1 of
// testdata/trade/numbers.csv, published). Pressure climbs fast under a tester
// by service texts (V6 to V8 of sources.md); fan by T6, fan drive by V20,
// glycol by T20, exhaust by R7. The rest is common practice.
func Cautions(c *cases.Case) []say.Text {
	list := []say.Text{
		say.Of("caution.scalding"), say.Of("caution.pressure"), say.Of("caution.fan"), say.Of("caution.belt"),
		say.Of("caution.poison"), say.Of("caution.exhaust"),
	}
	if c.Vehicle.Motive.HighVoltage() {
		list = append(list, say.Of("caution.voltage"))
	}
	return append(list, Deferral())
}
