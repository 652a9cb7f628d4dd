package proof

import (
	"loopbook/app/desk"
	view "loopbook/app/ui/proof"
	"loopbook/cases"
	"loopbook/cases/diagnosis/proof"
	"loopbook/diagram/warmup"
	"loopbook/report/picture"
)

// curves lay the first pair of warm-ups over each other; one without its
// like stands alone.
func (s *Screen) curves(p proof.Proof, to *view.Data) {
	d := s.at.Desk
	if len(p.Logs) == 0 {
		return
	}
	pair := p.Logs[0]
	for _, l := range p.Logs {
		if l.Before >= 0 && l.After >= 0 {
			pair = l
			break
		}
	}
	before, after := logAt(d, pair.Before), logAt(d, pair.After)
	if lines := picture.BothWarmUps(&d.Case, before, after, resultAt(d, pair.Before), resultAt(d, pair.After), d.By()); len(lines.Curves) > 0 {
		to.Curves = lines
	}
}

// logAt is one of the case's logs, or nil.
func logAt(d *desk.Desk, i int) *cases.Log {
	if i < 0 {
		return nil
	}
	return &d.Case.Logs[i]
}

func resultAt(d *desk.Desk, i int) warmup.Result {
	if i < 0 {
		return warmup.Result{}
	}
	return d.Found.WarmUps[i].Result
}
