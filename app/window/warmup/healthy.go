package warmup

import (
	"fyne.io/fyne/v2"

	"loopbook/cases"
	"loopbook/cases/diagnosis"
)

// healthy is how healthy cars warm up as the log's car was run.
type healthy struct {
	key  string          // of the crowd that the band is of, or will be
	band *diagnosis.Band // nil: not known, or not yet
}

// expect finds out, apart from the window, how healthy cars would have
// warmed up as the log's car was run. The air outside is what the log began in
// where the case doesn't say.
func (s *Screen) expect(l *cases.Log, startS float64) {
	c := s.at.Desk.Case
	p, ok := diagnosis.PlanForLog(&c, l, startS)
	key := ""
	if ok {
		key = p.Setting.Key()
	}
	if key == s.healthy.key {
		return
	}
	s.healthy.key, s.healthy.band = key, nil
	if !ok {
		return
	}
	s.at.Start(func() {
		e, err := s.at.Desk.Mind.Crowds.Get(s.at.Ctx, p.Healthy(), nil)
		fyne.Do(func() {
			if err == nil && s.healthy.key == key {
				band := diagnosis.BandOf(e, startS)
				s.healthy.band = &band
				s.Show()
			}
		})
	})
}
