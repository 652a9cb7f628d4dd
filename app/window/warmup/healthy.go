package warmup

import (
	"fyne.io/fyne/v2"

	"loopbook/app/window/bench"
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
// where the case doesn't say. It calls there when it knows.
func (h *healthy) expect(at bench.Bench, l *cases.Log, startS float64, there func()) {
	c := at.Desk.Case
	p, ok := diagnosis.PlanForLog(&c, l, startS)
	key := ""
	if ok {
		key = p.Setting.Key()
	}
	if key == h.key {
		return
	}
	h.key, h.band = key, nil
	if !ok {
		return
	}
	at.Start(func() {
		e, err := at.Desk.Mind.Crowds.Get(at.Ctx, p.Healthy(), nil)
		fyne.Do(func() {
			if err == nil && h.key == key {
				band := diagnosis.BandOf(e, startS)
				h.band = &band
				there()
			}
		})
	})
}
