package causes

import (
	"slices"

	"loopbook/app/desk"
	"loopbook/app/mind"
	view "loopbook/app/ui/causes"
	"loopbook/app/ui/kit"
	"loopbook/cases/diagnosis"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// mostPoints of hoses are named among the next checks.
const mostPoints = 4

func checkLines(t mind.Thought, round string, u units.Set) []view.Check {
	doubt := t.Ranking.Doubt()
	out := make([]view.Check, 0, len(t.Next))
	points, told := 0, map[string]bool{}
	for _, c := range besideless(t) {
		line := checkLine(c, u)
		line.Worth = worth(c, doubt)
		if c.Point != "" {
			line.Title = kit.L("window.causes.read-point", say.Place(c.Point))
			if points++; points > mostPoints {
				continue
			}
			line.Needs = kit.L("window.causes.in-round", round)
			if told[line.Text] { // how it is done stands under the first
				line.Text, line.Caution = "", ""
			}
			told[line.Text] = true
		}
		out = append(out, line)
	}
	return out
}

// besideless are the next checks without the one that stands with the second fault.
func besideless(t mind.Thought) []diagnosis.Check {
	b := t.Beside
	return slices.DeleteFunc(slices.Clone(t.Next), func(c diagnosis.Check) bool {
		return b != nil && len(b.Next) > 0 && b.Next[0].Check.Check == c.Check.Check
	})
}

// worth says what a check is good for: a proof hardly settles what is as good as settled.
func worth(c diagnosis.Check, doubt float64) string {
	if c.Proof {
		return kit.L("window.causes.proves")
	}
	return kit.L("window.causes.settles", 100*min(c.Bits/doubt, 1))
}

// orderOf says in which order the checks stand.
func orderOf(next []diagnosis.Check) string {
	if len(next) > 0 && next[0].Proof {
		return kit.L("window.causes.proof-order")
	}
	return kit.L("window.causes.next-order")
}

func checkLine(c diagnosis.Check, u units.Set) view.Check {
	by := say.English().With(u)
	return view.Check{
		Check: c.Check.Check, Point: c.Point,
		Title: by.Say(c.Title()), Text: by.Say(c.Text()), Needs: by.Say(c.Needs.Text()),
		Minutes: kit.L("window.minutes", c.Minutes), Caution: by.Say(c.Caution()),
	}
}

// besideLine is what may be a second fault, with the check that tells most of it.
func besideLine(b *diagnosis.Beside, u units.Set) *view.Beside {
	if b == nil {
		return nil
	}
	out := &view.Beside{Text: say.English().With(u).Say(b.Words())}
	if len(b.Next) > 0 {
		line := checkLine(b.Next[0], u)
		line.Worth = kit.L("window.causes.tells-second")
		out.Check = &line
	}
	return out
}

// roundToRead is the name of the round in which a hose is read next; "" where there is none.
func roundToRead(a desk.Answer) string {
	i := JudgedRound(a.Grounds.Plan, -1)
	if i < 0 {
		return ""
	}
	return kit.RoundName(a.Case.Rounds[i], i)
}
