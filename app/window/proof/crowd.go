package proof

import (
	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/cases/diagnosis"
	"loopbook/diagram/physics/ensemble"
)

// crowdAfter is the crowd that the stage after the repair is judged by, or nil;
// then it is simulated apart from the window, and those of the stage's logs with it,
// where there is anything to judge.
func (s *Screen) crowdAfter(g mind.Grounds) *ensemble.Ensemble {
	m, key, missing := s.at.Desk.Mind, "", []diagnosis.Plan(nil)
	if len(g.Plan.Rounds)+len(g.Logs) == 0 {
		return nil
	}
	for _, p := range g.Plans() {
		if m.Crowds.Kept(p) == nil {
			missing = append(missing, p)
			key += p.Setting.Key()
		}
	}
	if len(missing) > 0 && key != s.key { // else it is under way
		s.key = key
		s.at.Start(func() { s.simulateAfter(missing, key) })
	}
	return m.Crowd(g)
}

// simulateAfter makes the crowds that the proof waits for, and shows it anew.
func (s *Screen) simulateAfter(missing []diagnosis.Plan, key string) {
	var err error
	for _, p := range missing {
		if err == nil {
			_, err = s.at.Desk.Mind.Crowds.Get(s.at.Ctx, p, nil)
		}
	}
	fyne.Do(func() {
		if s.key == key {
			s.key = ""
		}
		if err == nil && s.tab.InSight() {
			s.Show()
		}
	})
}
