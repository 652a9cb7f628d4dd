package window

import (
	"loopbook/app/ui/kit"
	"loopbook/app/window/causes"
	"loopbook/app/window/hosemap"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

// begin turns to where an advised check is done; a walk's round is begun there, with the last one's
// gun, and with its heater where the walk doesn't say how that is set.
func (w *ways) begin(check string, at diagram.Point) {
	w.at.Leave()
	d, s := w.at.Desk, w.screens
	switch round, walk := hosemap.WalkOf(check); {
	case check == likelihood.HosePoint:
		s.tabs.SelectIndex(hoseMapTab)
		kit.Focus(s.hosemap.Read(causes.JudgedRound(d.Plan(), -1), at))
	case check == likelihood.ReadCodes:
		s.tabs.SelectIndex(complaintTab)
		kit.Focus(s.complaint.NewCode())
	case check == likelihood.WarmUp:
		s.tabs.SelectIndex(warmUpTab)
		kit.Focus(s.warmup.First())
	case walk:
		s.tabs.SelectIndex(hoseMapTab)
		kit.Focus(s.hosemap.Begin(likeTheLast(round, &d.Case)))
	default:
		w.doCheck(cases.TestKind(check))
	}
}

// likeTheLast is a round that is begun, with what the last one of the case tells of it.
func likeTheLast(round cases.Round, c *cases.Case) cases.Round {
	round.Stage = kit.StageNow(c)
	if n := len(c.Rounds); n > 0 {
		last := c.Rounds[n-1]
		round.Gun = last.Gun
		if round.Heater == "" {
			round.Heater = last.Heater
		}
	}
	return round
}
