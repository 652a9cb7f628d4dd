package warmup

import (
	view "loopbook/app/ui/warmup"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

func facts(r warmup.Result, u units.Set) []view.Fact {
	var out []view.Fact
	for _, f := range picture.WarmUpFacts(r, say.English().With(u)) {
		out = append(out, view.Fact{What: f[0], Value: f[1]})
	}
	return out
}

func remarks(r warmup.Result, u units.Set) []string {
	return say.English().With(u).All(r.Remarks)
}
