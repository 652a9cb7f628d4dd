package kit_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// crowded is a loop's picture with every reading typed, every range shown and the longest
// words beside them.
func crowded(l *diagram.Loop, by say.Speaker, mark drawing.Mark, note string) drawing.Picture {
	u := by.Units
	s := drawing.State{
		By: by, Unit: string(u.Temperature), Thermostat: drawing.ALittleOpen, Fan: by.Of("drawing.fan-off"), Sensor: by.Of("drawing.sensor", diagram.Celsius(118)),
		Bottle: by.Of("drawing.level-empty"), Caution: by.Of("drawing.hot", diagram.Celsius(50)), Points: map[diagram.Point]drawing.PointState{}, Deltas: map[string]drawing.DeltaState{},
		ScaleText: [3]string{u.Temp(drawing.ScaleLowC), u.Temp((drawing.ScaleLowC + drawing.ScaleHighC) / 2), u.TempUnit(drawing.ScaleHighC)},
	}
	low, high, shown := diagram.Celsius(100), diagram.Celsius(110), diagram.Celsius(88.4)
	for _, p := range l.Points {
		s.Points[p.Point] = drawing.PointState{Text: by.Fill("{0.1#}", shown), TrueC: &shown, LowC: &low, HighC: &high, Range: u.TempRange(low, high), Mark: mark, Note: note}
		if mark == drawing.Repeat || mark == drawing.Invalid {
			at := s.Points[p.Point]
			at.Range = ""
			s.Points[p.Point] = at
		}
	}
	lowK, highK := diagram.DeltaK(-12), diagram.DeltaK(53)
	for i, d := range l.Deltas {
		s.Deltas[d.Name] = drawing.DeltaState{Text: u.Delta(-24), ValK: -24, LowK: &lowK, HighK: &highK, Range: u.DeltaRange(lowK, highK), Mark: mark}
		if i%2 == 0 { // one without a lower bound
			s.Deltas[d.Name] = drawing.DeltaState{Text: u.Delta(54), ValK: 54, HighK: &highK, Range: by.Of("drawing.delta-up-to", highK), Mark: mark}
		}
	}
	return drawing.Draw(l, s, false)
}

// span is where a label stands, in the drawing's units: as wide as the window's letters
// make it, and as high as a small letter's line.
func span(l drawing.Label) diagram.Box {
	text := canvas.NewText(l.Text, nil)
	text.TextSize, text.TextStyle.Bold = float32(l.Size), l.Bold
	w := float64(text.MinSize().Width)
	b := diagram.Box{l.At[0], l.At[1] - 0.4*l.Size, w, 0.8 * l.Size}
	switch l.Align {
	case drawing.Middle:
		b[0] -= w / 2
	case drawing.End:
		b[0] -= w
	}
	return b
}

// apart is how much room there must be between two labels in a line.
const apart = 4

func touch(a, b diagram.Box) bool {
	return a[0] < b[0]+b[2]+apart && b[0] < a[0]+a[2]+apart && a[1] < b[1]+b[3] && b[1] < a[1]+a[3]
}

// Whatever is typed, no two labels of a hose map touch, and none leaves the drawing.
func TestLabelsOfTheHoseMapStandApart(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(kit.NewTheme(kit.Bright))
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	fahrenheit := units.Metric()
	fahrenheit.Temperature = units.F
	for _, lang := range say.Langs() { // the papers have all three
		for _, u := range []units.Set{units.Metric(), fahrenheit} {
			by, err := say.In(lang, u)
			if err != nil {
				t.Fatal(err)
			}
			under := strings.Replace(by.Of("drawing.under", diagram.DeltaK(19)), " F°", "°", 1) // as package picture has it
			for _, l := range loops {
				for note, mark := range map[string]drawing.Mark{
					"": drawing.Kept, by.Of("drawing.just-under"): drawing.OutOfRange, under: drawing.OutOfRange,
					by.Of("drawing.gun", diagram.Celsius(104.4)): drawing.Kept, by.Of("drawing.repeat-on-tape"): drawing.Repeat, kit.L("window.frame.slip-number"): drawing.Invalid,
				} {
					name := l.ID + ", " + string(lang) + ", " + string(u.Temperature)
					p := crowded(l, by, mark, note)
					standApart(t, name, p)
					standClear(t, name, l, p)
				}
			}
		}
	}
}

// clear is how much room there must be between a label and what isn't its own.
const clear = 2

// standClear finds the labels that what is drawn runs through: a radiator or another part with
// an edge, the caution's card, a box, the thin line from a block to its hose.
func standClear(t *testing.T, name string, l *diagram.Loop, p drawing.Picture) {
	t.Helper()
	var solid []diagram.Box
	for _, part := range l.Parts {
		switch part.Kind {
		case diagram.Radiator, diagram.HeaterCore, diagram.OilCooler, diagram.Thermostat, diagram.Pump, diagram.Fan:
			solid = append(solid, part.Box)
		}
	}
	solid = append(solid, l.Caution)
	for _, e := range p.Entries {
		solid = append(solid, e.Box)
	}
	for _, s := range p.Shapes {
		if r, ok := s.(drawing.Rect); ok && r.Fill == drawing.In(drawing.ActGround) {
			solid = append(solid, r.Box) // a difference out of its range
		}
		if mark, ok := s.(drawing.Disc); ok && mark.Fill == drawing.In(drawing.ActSign) {
			solid = append(solid, diagram.Box{mark.Center[0] - mark.Radius, mark.Center[1] - mark.Radius, 2 * mark.Radius, 2 * mark.Radius})
		}
		if line, ok := s.(drawing.Line); ok && line.Width == 1 && line.Stroke == drawing.In(drawing.PartLine) {
			solid = append(solid, diagram.Box{min(line.From[0], line.To[0]), min(line.From[1], line.To[1]), abs(line.From[0] - line.To[0]), abs(line.From[1] - line.To[1])})
		}
	}
	for _, s := range p.Shapes {
		label, ok := s.(drawing.Label)
		if !ok || label.Text == "" {
			continue
		}
		b := span(label)
		if card := l.Caution; b[0] > card[0] && b[0] < card[0]+card[2] && b[1] > card[1] && b[1] < card[1]+card[3] && b[1]+b[3] > card[1]+card[3]-clear {
			t.Errorf("%s: %q leaves the caution's card", name, label.Text)
		}
		for _, o := range solid {
			if b[0] < o[0]+o[2]+clear && o[0] < b[0]+b[2]+clear && b[1] < o[1]+o[3] && o[1] < b[1]+b[3] && !(b[0] >= o[0] && b[0]+b[2] <= o[0]+o[2]) {
				t.Errorf("%s: %q at %.0f lies on what is drawn at %.0f", name, label.Text, b, o)
			}
		}
	}
}

func abs(v float64) float64 { return max(v, -v) }

func standApart(t *testing.T, name string, p drawing.Picture) {
	t.Helper()
	var labels []drawing.Label
	for _, s := range p.Shapes {
		if l, ok := s.(drawing.Label); ok && l.Text != "" {
			labels = append(labels, l)
		}
	}
	for i, a := range labels {
		if b := span(a); b[0] < 0 || b[0]+b[2] > p.Width || b[1] < 0 || b[1]+b[3] > p.Height+1 {
			t.Errorf("%s: %q at %v leaves the drawing", name, a.Text, b)
		}
		for _, b := range labels[:i] {
			if touch(span(a), span(b)) {
				t.Errorf("%s: %q at %.0f touches %q at %.0f", name, a.Text, span(a), b.Text, span(b))
			}
		}
	}
}
