package proof

import (
	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	view "loopbook/app/ui/proof"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/report/picture"
)

// toWalkAgain are the rounds that are to be walked again, with their names.
func toWalkAgain(d *desk.Desk, p proof.Proof) []view.Round {
	out := make([]view.Round, len(p.Again))
	for n, i := range p.Again {
		out[n] = view.Round{Index: i, Name: kit.RoundName(d.Case.Rounds[i], i)}
	}
	return out
}

// pairWords fill in the pairs, and the one that is looked at.
func pairWords(d *desk.Desk, p proof.Proof, to *view.Data) {
	by := d.By()
	for _, pair := range p.Pairs {
		to.Pairs = append(to.Pairs, kit.L("window.proof.pair", picture.RoundName(&d.Case, pair.Before, by), picture.RoundName(&d.Case, pair.After, by)))
	}
	if to.Pair < 0 {
		return
	}
	pair := p.Pairs[to.Pair]
	if len(pair.Open) > 0 {
		to.Condition = kit.L("window.proof.not-noted", by.Say(say.List(pair.Open...)))
	}
	l, err := diagram.LoopByID(d.Case.Loop.Layout)
	if err != nil {
		return
	}
	to.Picture = picture.Pair(l, &d.Case, d.Found, pair, by)
	state := picture.State(l, &d.Case, d.Found, pair.After, by)
	before := picture.State(l, &d.Case, d.Found, pair.Before, by)
	for _, at := range l.Deltas {
		b, a := before.Deltas[at.Name], state.Deltas[at.Name]
		if b.Text == "" && a.Text == "" {
			continue
		}
		to.Rows = append(to.Rows, view.Row{Name: kit.Capital(by.Say(say.DeltaName(at.Name))), Before: b.Text, After: a.Text, Expected: a.Range, Out: a.Mark == drawing.OutOfRange})
	}
}
