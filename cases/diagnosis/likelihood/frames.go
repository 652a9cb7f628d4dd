package likelihood

import (
	"errors"
	"io/fs"
	"slices"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/say"
)

const framesFile = "frames.json"

// frameHotK is how far over its thermostat's opening an engine is too hot in a freeze frame, on cars that run
// cool as on those that run warm (judgement: above the fan's second speed, FN5).
const frameHotK = 17

// frameRow is the share of the frames of a hot engine that were taken standing. On a car that was
// driven they are the rest of them.
type frameRow struct {
	Frame string `json:"frame"`
	shares
	grounds
}

func (t *Tables) readFrames(files fs.FS) error {
	words := []string{"hot-standing"}
	return readEach(files, framesFile, vocabulary[string]{"frame", words}, func(r frameRow) string { return r.Frame },
		func(r frameRow) error {
			v, err := r.vector()
			rest := newVector()
			for i, p := range v {
				rest[i] = 1 - p
			}
			t.standing.Log, t.driven.Log = v.logs(), rest.logs()
			return errors.Join(err, r.grounds.check())
		})
}

// Frame is what the first freeze frame of a hot engine says by whether the car stood: that it was hot its
// code says already. It is false without one, and where the customer told of traffic or road, which is the same news.
func (t *Tables) Frame(c *cases.Case) (Factor, bool) {
	if told := c.Complaint.Symptoms; slices.Contains(told, "overheats-idle") || slices.Contains(told, "overheats-road") {
		return Factor{}, false
	}
	hotC := evidence.OpensC(c) + frameHotK
	for _, code := range c.Codes {
		f := code.FreezeFrame
		if f.EctC == nil || f.SpeedKmh == nil || *f.EctC < hotC || *f.EctC > evidence.SensorMostC {
			continue
		}
		switch word := cases.InLetters(code.Code); {
		case *f.SpeedKmh <= evidence.StandingKmh:
			return t.standing.says("reason.frame-standing", word, *f.EctC), true
		case *f.SpeedKmh >= evidence.RamAirKmh:
			return t.driven.says("reason.frame-driven", word, *f.EctC, say.Kmh(*f.SpeedKmh)), true
		}
	}
	return Factor{}, false
}

func (f Factor) says(key string, args ...any) Factor {
	f.Label = say.Of(key, args...)
	return f
}
