package hosemap

import (
	view "loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/diagnosis"
	"loopbook/cases/diagnosis/likelihood"
)

// toDo is how the round that is shown is walked, while nothing is measured in it: a check that was
// begun is read where it is done.
func (s *Screen) toDo() view.ToDo {
	d := s.desk
	if d.Round < 0 || d.Round >= len(d.Case.Rounds) || d.Case.Rounds[d.Round].Measured() {
		return view.ToDo{}
	}
	for _, c := range s.tables.Checks() {
		if round, ok := WalkOf(c.Check); ok && round.Label == d.Case.Rounds[d.Round].Label {
			c := diagnosis.Minded(c, d.Case.Loop.Fan, diagnosis.Overheated(&d.Case, d.Found), diagnosis.LevelLow(&d.Case))
			return view.ToDo{Title: d.By().Say(c.Title()), Text: d.By().Say(c.Text()), Caution: d.By().Say(c.Caution())}
		}
	}
	return view.ToDo{}
}

// walkNamed is a round of a name, as the walk of that name asks for it: the speed after a drive is that of the drive, which
// who fills in the engine that now stands wouldn't guess.
func walkNamed(label string) cases.Round {
	for _, check := range likelihood.Walks() {
		if round, ok := WalkOf(check); ok && round.Label == label {
			return round
		}
	}
	return cases.Round{Label: label}
}

// WalkOf is the round that a check asks for, as its text says that it is walked; false where
// it asks for none.
func WalkOf(check string) (cases.Round, bool) {
	raised, idle, standing, kmh := 2500.0, 800.0, 0.0, 80.0
	switch check {
	case likelihood.RaisedIdle:
		return cases.Round{Label: kit.L("round.raised-idle"), EngineRPM: &raised, SpeedKmh: &standing}, true
	case likelihood.HotIdle:
		return cases.Round{Label: kit.L("round.hot-idle"), EngineRPM: &idle, SpeedKmh: &standing, Heater: cases.HeaterOff}, true
	case likelihood.AfterRoad:
		return cases.Round{Label: kit.L("round.after-road"), SpeedKmh: &kmh, Heater: cases.HeaterOff}, true
	}
	return cases.Round{}, false
}
