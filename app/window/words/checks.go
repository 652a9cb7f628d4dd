package words

import (
	"loopbook/app/ui/checks"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Checks are the words of the screen of checks, from the tables that the
// causes are weighed by; of which stage a check is and how a plot is saved the window adds.
func Checks(t *likelihood.Tables) checks.Words {
	infos := map[cases.TestKind]likelihood.Check{}
	for _, c := range t.Checks() {
		infos[cases.TestKind(c.Check)] = c
	}
	return checks.Words{
		Info: func(kind cases.TestKind, fan cases.FanKind, found checks.Found, u units.Set) checks.Info {
			return checkInfo(diagnosis.Minded(infos[kind], fan, found.Hot, found.Low), kind, u)
		},
		Result: CheckResult,
		TopUp:  topUpWords,
	}
}

func checkInfo(c diagnosis.Check, kind cases.TestKind, u units.Set) checks.Info {
	by, guide := say.English().With(u), evidence.GuideTo(kind, c.Fan)
	return checks.Info{
		Title: by.Say(c.Title()), Minutes: kit.L("window.minutes", c.Minutes), Text: by.Say(c.Text()),
		Caution: by.Say(c.Caution()), Needs: by.Say(c.Needs.Text()),
		Accepts: by.Say(guide.Accepts), NotProven: by.Say(guide.NotProven),
	}
}

// CheckResult is how a check came out, with its findings and its sums.
func CheckResult(c *cases.Case, test *cases.Test, u units.Set) checks.Result {
	found, by := evidence.Workshop(c, test), say.English().With(u)
	r := checks.Result{}
	if found.Outcome != "" {
		r.Says = by.Say(evidence.OutcomeText(test.Kind, found.Outcome))
		if !evidence.Passed(found.Outcome) {
			r.Severity = string(evidence.Note) // what raises no flag is told
		}
	}
	for i, f := range found.Flags {
		if i == 0 || f.Severity == evidence.Act {
			r.Severity = string(f.Severity)
		}
		r.Told = append(r.Told, checks.Told{Text: by.Say(f.Text), Because: by.All(f.Because)})
	}
	for _, s := range found.Sums {
		r.Sums = append(r.Sums, [2]string{by.Say(s.Name), by.Say(s.Value)})
	}
	return r
}

// topUpWords tell what to drain and what to fill for a wanted strength.
func topUpWords(c *cases.Case, t *cases.Test, want, with float64, u units.Set) string {
	mix, ok := evidence.Sample(c, t)
	switch {
	case !ok:
		return kit.L("window.topup.no-strength")
	case c.Loop.CapacityL == nil:
		return kit.L("window.topup.no-capacity")
	}
	fill := say.Of("window.topup.coolant", with)
	switch {
	case want < float64(mix.Strength):
		with, fill = 0, say.Of("window.topup.water")
	case with >= 100:
		fill = say.Of("window.topup.concentrate")
	}
	drain, err := coolant.Change(diagram.Litre(*c.Loop.CapacityL), mix.Strength, coolant.VolumePercent(want), coolant.VolumePercent(with))
	switch {
	case err != nil:
		return kit.L("window.topup.cant", float64(mix.Strength), want)
	case drain < 0.05:
		return kit.L("window.topup.as-wanted")
	}
	text := []say.Text{say.Of("window.topup.drain", drain, fill)}
	mix.Strength = coolant.VolumePercent(want)
	if freezes, err := mix.FreezeC(); err == nil {
		then := say.Of("window.topup.then", freezes)
		if boils, ok := boilsUnderCap(c, mix); ok {
			then = say.Of("window.topup.then-boils", freezes, boils)
		}
		text = append(text, then)
	}
	return say.English().With(u).Say(say.Sentences(append(text, say.Of("window.topup.mixed"))...))
}

func boilsUnderCap(c *cases.Case, mix coolant.Mixture) (diagram.Celsius, bool) {
	if c.Loop.CapKPa == nil {
		return 0, false
	}
	altitude := diagram.Metre(0)
	if c.Site.AltitudeM != nil {
		altitude = *c.Site.AltitudeM
	}
	boils, err := mix.BoilUnderCapC(*c.Loop.CapKPa, altitude)
	return boils, err == nil
}
