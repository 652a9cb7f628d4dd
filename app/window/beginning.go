package window

import (
	"loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/diagram"
)

// begin turns to where an advised check is done; a walk's round is begun there, with the last one's
// gun, and with its heater where the walk doesn't say how that is set.
func (w *window) begin(check string, at diagram.Point) {
	w.leave()
	switch round, walk := walkOf(check); {
	case check == likelihood.HosePoint:
		w.tabs.SelectIndex(hoseMapTab)
		kit.Focus(w.hosemap.Read(judgedRound(w.at.Desk.Plan(), -1), at))
	case check == likelihood.ReadCodes:
		w.tabs.SelectIndex(complaintTab)
		kit.Focus(w.complaint.NewCode())
	case check == likelihood.WarmUp:
		w.tabs.SelectIndex(warmUpTab)
		kit.Focus(w.warmup.First())
	case walk:
		round.Stage = stageNow(&w.at.Desk.Case)
		if n := len(w.at.Desk.Case.Rounds); n > 0 {
			last := w.at.Desk.Case.Rounds[n-1]
			round.Gun = last.Gun
			if round.Heater == "" {
				round.Heater = last.Heater
			}
		}
		w.tabs.SelectIndex(hoseMapTab)
		kit.Focus(w.hosemap.Begin(round))
	default:
		w.tabs.SelectIndex(checksTab)
		kit.Focus(w.checks.Begin(cases.TestKind(check)))
	}
}

// toDo is how the round that is shown is walked, while nothing is measured in it: a check that was
// begun is read where it is done.
func (w *window) toDo() hosemap.ToDo {
	d := w.at.Desk
	if d.Round < 0 || d.Round >= len(d.Case.Rounds) || d.Case.Rounds[d.Round].Measured() {
		return hosemap.ToDo{}
	}
	for _, c := range w.tables.Checks() {
		if round, ok := walkOf(c.Check); ok && round.Label == d.Case.Rounds[d.Round].Label {
			c := diagnosis.Minded(c, diagnosis.Overheated(&d.Case, d.Found))
			return hosemap.ToDo{Title: d.By().Say(c.Title()), Text: d.By().Say(c.Text()), Caution: d.By().Say(c.Caution())}
		}
	}
	return hosemap.ToDo{}
}

// walkOf is the round that a check asks for, as its text says that it is walked; false where
// it asks for none.
func walkOf(check string) (cases.Round, bool) {
	raised, idle, kmh := 2500.0, 800.0, 80.0
	switch check {
	case likelihood.RaisedIdle:
		return cases.Round{Label: kit.L("round.raised-idle"), EngineRPM: &raised}, true
	case likelihood.HotIdle:
		return cases.Round{Label: kit.L("round.hot-idle"), EngineRPM: &idle, Heater: cases.HeaterOff}, true
	case likelihood.AfterRoad:
		return cases.Round{Label: kit.L("round.after-road"), SpeedKmh: &kmh, Heater: cases.HeaterOff}, true
	}
	return cases.Round{}, false
}

// stageNow is that of a check that is begun: after the repair where one is noted,
// or where all that was measured was measured after one.
func stageNow(c *cases.Case) cases.Stage {
	if kit.Repaired(c) {
		return cases.AfterRepair
	}
	return diagnosis.StageOf(c)
}
