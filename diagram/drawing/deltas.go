package drawing

import (
	"strings"

	"loopbook/diagram"
	"loopbook/diagram/say"
)

// deltaFullK is the end of every difference's bar, so that all compare.
const deltaFullK = 70

// delta draws a difference beside its hose: number, name, bar, range. It is
// boxed only where it is out of its range. Nothing is drawn before it is known.
func (d *drafter) delta(at diagram.DeltaAt) {
	s, known := d.state.Deltas[at.Name]
	if !known {
		return
	}
	x, y, w := at.At[0], at.At[1], at.Width
	out := s.Mark == OutOfRange
	if out {
		d.add(Rect{Box: diagram.Box{x, y, w, at.Height()}, Corner: 5, Fill: In(ActGround), Stroke: In(ActText), StrokeWidth: 1.2})
		d.add(Wedge{Center: diagram.XY{x + 12, y + 12.5}, Radius: 7, Toward: Up, Fill: In(ActSign), Stroke: In(ActText), StrokeWidth: 1})
	}
	left := x + 6
	number := left
	if out {
		number = x + 22
	}
	d.label(number, y+11, s.Text, 14, true, Text, Start)
	if at.Narrow() {
		d.label(left, y+27, d.state.By.Say(say.DeltaName(at.Name)), labelSize, false, Text, Start)
		d.bar(diagram.Box{left, y + 39, w * 0.3, barHeight}, asFloat(s.LowK), asFloat(s.HighK), asFloat(&s.ValK), deltaFullK, out)
		d.label(x+w-5, y+43, s.Range, labelSize, false, Soft, End)
		return
	}
	d.label(x+w-5, y+11, d.state.By.Say(say.DeltaName(at.Name)), labelSize, false, Text, End)
	d.bar(diagram.Box{left, y + 25, w * 0.55, barHeight}, asFloat(s.LowK), asFloat(s.HighK), asFloat(&s.ValK), deltaFullK, out)
	d.label(x+w-5, y+28, s.Range, labelSize, false, Soft, End)
}

// caution stands at the cap while the loop is hot.
func (d *drafter) caution() {
	if d.state.Caution == "" {
		return
	}
	b := d.loop.Caution
	d.add(Rect{Box: b, Corner: 6, Fill: In(ActGround), Stroke: In(ActText), StrokeWidth: 1.5},
		Wedge{Center: diagram.XY{b[0] + 12, b[1] + 16}, Radius: 7.5, Toward: Up, Fill: In(ActSign), Stroke: In(ActText), StrokeWidth: 1})
	d.label(b[0]+24, b[1]+15, d.state.By.Of("drawing.keep-shut"), nameSize-1, true, ActText, Start)
	y := b[1] + 33
	for _, line := range wrap(d.state.Caution, 13) {
		d.label(b[0]+9, y, line, labelSize, false, Text, Start)
		y += 15
	}
}

// legend explains the colours and the bars.
func (d *drafter) legend() {
	b := d.loop.Legend
	const steps = 10
	w := 140.0
	y := b[1] + b[3] - 24
	step := (ScaleHighC - ScaleLowC) / steps
	for i := 0; i < steps; i++ {
		c := ScaleLowC + step*diagram.Celsius(i)
		left := w * float64(i) / steps // each reaches under the next, so that no seam shows
		d.add(Band{Box: diagram.Box{b[0] + left, y, min(w/steps+1, w-left), 8}, Start: Heat(c), End: Heat(c + step)})
	}
	for i, text := range d.state.ScaleText {
		d.label(b[0]+w*float64(i)/2, y+16, text, labelSize, false, Soft, [3]Align{Start, Middle, End}[i])
	}
	if !d.ranged() {
		return
	}
	low, high, value := 50.0, 75.0, 66.0
	d.bar(diagram.Box{b[0] + 164, y + 2, 64, barHeight}, &low, &high, &value, pointFullC, false)
	d.label(b[0]+164, y+16, d.state.By.Of("drawing.bar"), labelSize, false, Soft, Start)
}

// ranged reports whether any point has an expected range.
func (d *drafter) ranged() bool {
	for _, s := range d.state.Points {
		if s.LowC != nil {
			return true
		}
	}
	return false
}

// wrap breaks text into lines of at most that many letters, at blanks.
func wrap(text string, letters int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case len([]rune(line))+1+len([]rune(word)) <= letters:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	return append(lines, line)
}
