package drawing_test

import (
	"math"
	"strings"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

func loop(t *testing.T, id string) *diagram.Loop {
	t.Helper()
	l, err := diagram.LoopByID(id)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func labels(p drawing.Picture) string {
	var words []string
	for _, s := range p.Shapes {
		if l, ok := s.(drawing.Label); ok {
			words = append(words, l.Text)
		}
	}
	return strings.Join(words, "\n")
}

func TestEveryPointHasItsEntryInTheOrderOfTheFlow(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range loops {
		p := drawing.Draw(l, drawing.State{}, false)
		if len(p.Entries) != len(l.Points) {
			t.Fatalf("%s: %d entries for %d points", l.ID, len(p.Entries), len(l.Points))
		}
		for i, e := range p.Entries {
			if e.Point != l.Points[i].Point {
				t.Errorf("%s: entry %d is %s, want %s", l.ID, i, e.Point, l.Points[i].Point)
			}
			if e.Field[0] < e.Box[0] || e.Field[0]+e.Field[2] > e.Box[0]+e.Box[2] {
				t.Errorf("%s: the field of %s leaves its box", l.ID, e.Point)
			}
		}
	}
}

func TestNumbersStandInThePictureOnlyWhereTextIsWanted(t *testing.T) {
	l := loop(t, "outlet-thermostat")
	s := drawing.State{Points: map[diagram.Point]drawing.PointState{diagram.Housing: {Text: "88.5", Mark: drawing.Kept}}}
	if got := labels(drawing.Draw(l, s, false)); strings.Contains(got, "88.5") {
		t.Error("the number stands behind the field that is typed into")
	}
	if got := labels(drawing.Draw(l, s, true)); !strings.Contains(got, "88.5") {
		t.Error("the paper's picture lacks the number")
	}
}

// A sign says what a colour says, so that neither colour-blind eyes nor a grey
// print miss it.
func TestOutOfRangeHasASignAndWords(t *testing.T) {
	l := loop(t, "outlet-thermostat")
	c, low, high := diagram.Celsius(112), diagram.Celsius(84), diagram.Celsius(94)
	s := drawing.State{Points: map[diagram.Point]drawing.PointState{
		diagram.Housing: {Text: "112", TrueC: &c, LowC: &low, HighC: &high, Range: "84–94", Note: "18 K over", Mark: drawing.OutOfRange},
	}}
	signs := func(s drawing.State) (n int) {
		for _, shape := range drawing.Draw(l, s, true).Shapes {
			if w, ok := shape.(drawing.Wedge); ok && w.Fill == drawing.In(drawing.ActSign) {
				n++
			}
		}
		return n
	}
	if got := signs(s); got != 1 {
		t.Errorf("%d triangles, want 1", got)
	}
	if got := signs(drawing.State{}); got != 0 {
		t.Errorf("%d triangles on a loop without readings", got)
	}
	if got := labels(drawing.Draw(l, s, true)); !strings.Contains(got, "18 K over") {
		t.Error("the words are missing")
	}
}

func TestFlowInDoubtHasHollowArrows(t *testing.T) {
	l := loop(t, "outlet-thermostat")
	hollow := func(s drawing.State) (n int) {
		for _, shape := range drawing.Draw(l, s, true).Shapes {
			if w, ok := shape.(drawing.Wedge); ok && w.Fill.None() {
				n++
			}
		}
		return n
	}
	if doubted, sure := hollow(drawing.State{Doubt: true}), hollow(drawing.State{}); doubted == 0 || sure != 0 {
		t.Errorf("%d hollow arrows in doubt and %d without; want some and none", doubted, sure)
	}
}

// Contrast of text: WCAG 2.1 success criterion 1.4.3, at least 4.5 : 1.
func TestTextIsReadableInBothLights(t *testing.T) {
	for name, p := range map[string]drawing.Palette{"light": drawing.Light(), "dark": drawing.Dark()} {
		for _, pair := range [][2]drawing.Role{
			{drawing.Text, drawing.Paper}, {drawing.Text, drawing.Card}, {drawing.Text, drawing.PartFill}, {drawing.Text, drawing.Coolant},
			{drawing.Soft, drawing.Paper}, {drawing.Soft, drawing.Rail}, {drawing.Soft, drawing.ActGround}, {drawing.Soft, drawing.LookGround},
			{drawing.Soft, drawing.NoteGround}, {drawing.Accent, drawing.Card}, {drawing.OnAccent, drawing.Accent}, {drawing.Text, drawing.Chosen},
			{drawing.ActText, drawing.ActGround}, {drawing.ActText, drawing.Paper}, {drawing.LookText, drawing.LookGround},
			{drawing.NoteText, drawing.NoteGround}, {drawing.FineText, drawing.FineGround}, {drawing.FineText, drawing.Rail},
		} {
			if got := contrast(p, pair[0], pair[1]); !(got >= 4.5) {
				t.Errorf("%s: %s on %s has a contrast of %.2f, want 4.5 (WCAG 2.1, 1.4.3)", name, pair[0], pair[1], got)
			}
		}
	}
}

// The temperature scale must keep its order without colour: its relative
// luminance (WCAG 2.1) only rises.
func TestHeatOnlyGetsLighter(t *testing.T) {
	last := -1.0
	for c := drawing.ScaleLowC; c <= drawing.ScaleHighC; c++ {
		l := luminance(drawing.Heat(c))
		if !(l > last) {
			t.Fatalf("at %v °C the scale gets no lighter: %g after %g", c, l, last)
		}
		last = l
	}
	if drawing.Heat(-60) != drawing.Heat(drawing.ScaleLowC) || drawing.Heat(400) != drawing.Heat(drawing.ScaleHighC) {
		t.Error("beyond its ends the scale must hold the end's colour")
	}
}

func contrast(p drawing.Palette, a, b drawing.Role) float64 {
	x, y := luminance(drawing.Ink{Fixed: p[a]}), luminance(drawing.Ink{Fixed: p[b]})
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

// luminance is the relative luminance of WCAG 2.1, worked out apart from the
// program's own.
func luminance(i drawing.Ink) float64 {
	sum := 0.0
	for _, part := range []struct {
		v uint8
		w float64
	}{{i.Fixed.R, 0.2126}, {i.Fixed.G, 0.7152}, {i.Fixed.B, 0.0722}} {
		s := float64(part.v) / 255
		if s <= 0.03928 {
			sum += part.w * s / 12.92
		} else {
			sum += part.w * math.Pow((s+0.055)/1.055, 2.4)
		}
	}
	return sum
}

func TestAShutThermostatStopsTheRadiatorsArrows(t *testing.T) {
	l := loop(t, "outlet-thermostat")
	arrows := func(o drawing.Opening) (n int) {
		for _, shape := range drawing.Draw(l, drawing.State{Thermostat: o}, true).Shapes {
			if w, ok := shape.(drawing.Wedge); ok && w.Toward == drawing.Left && w.Center[1] == 440 && w.Center[0] > 400 {
				n++
			}
		}
		return n
	}
	if shut, open := arrows(drawing.Shut), arrows(drawing.Open); shut != 0 || open == 0 {
		t.Errorf("%d arrows on the lower hose shut and %d open; want none and some", shut, open)
	}
}

// The readings tell how far the loop's thermostat is open, and nothing of a
// second one, which has no plate.
func TestASecondThermostatHasNoPlate(t *testing.T) {
	l := loop(t, "split-head-block")
	lines := func(o drawing.Opening) (n int) {
		for _, shape := range drawing.Draw(l, drawing.State{Thermostat: o}, true).Shapes {
			if _, ok := shape.(drawing.Line); ok {
				n++
			}
		}
		return n
	}
	if plates := (lines(drawing.Open) - lines(drawing.NotKnown)) / 2; plates != 1 { // a plate and its stem
		t.Errorf("%d thermostats have a plate, want 1", plates)
	}
}

// Captions and the thermostat's word stand on no part but an engine, on no
// entry and on no difference, and the word on no hose. A letter is 8 units wide at most, on the mean.
func TestCaptionsStandFree(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, lang := range say.Langs() {
		by, err := say.In(lang, units.Metric())
		if err != nil {
			t.Fatal(err)
		}
		for _, l := range loops {
			captionsStandFree(t, l, by, drawing.Shut, "drawing.shut")
			captionsStandFree(t, l, by, drawing.ALittleOpen, "drawing.part-open")
			captionsStandFree(t, l, by, drawing.Open, "drawing.open")
		}
	}
}

func captionsStandFree(t *testing.T, l *diagram.Loop, by say.Speaker, how drawing.Opening, word string) {
	t.Helper()
	words := map[string]bool{by.Of(word): true}
	for _, p := range l.Parts {
		words[by.Of("part."+string(p.Kind))] = !p.Kind.Burns() && p.Kind != diagram.Bottle
	}
	seen := 0
	for _, shape := range drawing.Draw(l, drawing.State{By: by, Thermostat: how}, true).Shapes {
		w, ok := shape.(drawing.Label)
		if !ok || !words[w.Text] {
			continue
		}
		seen++
		if on := under(l, textBox(w)); on != "" {
			t.Errorf("%s, %s: %q stands on %s", l.ID, by.Lang, w.Text, on)
		}
		if on := overHose(l, textBox(w)); on != "" && w.Text == by.Of(word) {
			t.Errorf("%s, %s: %q stands on the hose %s", l.ID, by.Lang, w.Text, on)
		}
	}
	if seen <= len(l.Captions) {
		t.Errorf("%s, %s: %d captions are drawn of %d and the thermostat's word", l.ID, by.Lang, seen, len(l.Captions))
	}
}

func textBox(w drawing.Label) diagram.Box {
	width := 8 * float64(len([]rune(w.Text)))
	b := diagram.Box{w.At[0], w.At[1] - 5, width, 10}
	if w.Align == drawing.End {
		b[0] -= width
	}
	return b
}

// under is what lies under a box, or "".
func under(l *diagram.Loop, b diagram.Box) string {
	boxes := map[string]diagram.Box{}
	for _, p := range l.Parts {
		if !p.Kind.Burns() {
			boxes[p.ID] = p.Box
		}
	}
	for _, p := range l.Points {
		boxes[say.PointName(p.Point).String()] = diagram.Box{p.Entry[0], p.Entry[1], diagram.EntryWidth, diagram.EntryHeight}
	}
	for _, d := range l.Deltas {
		boxes[d.Name] = diagram.Box{d.At[0], d.At[1], d.Width, d.Height()}
	}
	for name, on := range boxes {
		if meet(b, on) {
			return name
		}
	}
	return ""
}

func meet(a, b diagram.Box) bool {
	return a[0] < b[0]+b[2] && b[0] < a[0]+a[2] && a[1] < b[1]+b[3] && b[1] < a[1]+a[3]
}

// overHose is the hose that a box lies on, or "". An engine hides the hoses behind
// it.
func overHose(l *diagram.Loop, b diagram.Box) string {
	for _, p := range l.Parts {
		if p.Kind.Burns() && meet(b, p.Box) {
			return ""
		}
	}
	const half = 6 // of a heater's hose
	for _, h := range l.Hoses {
		for i := 1; i < len(h.Path); i++ {
			from, to := h.Path[i-1], h.Path[i]
			left, top := min(from[0], to[0])-half, min(from[1], to[1])-half
			if meet(b, diagram.Box{left, top, max(from[0], to[0]) + half - left, max(from[1], to[1]) + half - top}) {
				return h.ID
			}
		}
	}
	return ""
}
