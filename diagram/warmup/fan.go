package warmup

import (
	"math"

	"loopbook/diagram"
)

// A fan's tooth (judgement): a rise and a fall of at least 3 K, more than noise
// makes, on a standing car, or one slow enough that the fan matters (FN9,
// published, T7: 40 km/h), once the engine has come to its level.
const (
	toothK  = 3
	fansKmh = 40
)

// fanCycles walks up and down the standing parts and counts the teeth. The
// swing over at the thermostat's opening comes before the plateau, so it is
// none.
func fanCycles(k track, p *Plateau) []FanCycle {
	if p == nil {
		return nil
	}
	var out []FanCycle
	from := -1
	for i := int(p.FromS / k.stepS); i <= len(k.smooth); i++ {
		stands := i < len(k.smooth) && k.runs(i) && !(k.kmh[i] >= fansKmh) && !math.IsNaN(k.smooth[i])
		switch {
		case stands && from < 0:
			from = i
		case !stands && from >= 0:
			out = append(out, k.teeth(from, i)...)
			from = -1
		}
	}
	if len(out) < 2 { // one may be anything's: the heater's, a gust's
		return nil
	}
	return out
}

// teeth are the tops of a stretch with a rise before and a fall after them.
func (k track) teeth(from, to int) []FanCycle {
	turns := k.turns(from, to)
	var out []FanCycle
	for i := 1; i+1 < len(turns); i++ {
		if top, bottom := k.smooth[turns[i]], k.smooth[turns[i+1]]; top > bottom {
			out = append(out, FanCycle{diagram.Celsius(top), diagram.Celsius(bottom)})
		}
	}
	return out
}

// turns are the tops and bottoms of a stretch that lie a tooth apart.
func (k track) turns(from, to int) []int {
	var out []int
	top, bottom, up, down := from, from, true, true // at first it may go either way
	for i := from; i < to; i++ {
		switch c := k.smooth[i]; {
		case up && c > k.smooth[top]:
			top = i
		case up && c < k.smooth[top]-toothK:
			out, bottom, up, down = append(out, top), i, false, true
		case down && c < k.smooth[bottom]:
			bottom = i
		case down && c > k.smooth[bottom]+toothK:
			out, top, up, down = append(out, bottom), i, true, false
		}
	}
	if up && !down {
		return append(out, top)
	}
	return append(out, bottom)
}
