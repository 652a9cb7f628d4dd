package drawing_test

import (
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

func ghostsAt(l *diagram.Loop, g drawing.Ghost) map[diagram.Point]drawing.Ghost {
	out := map[diagram.Point]drawing.Ghost{}
	for _, p := range l.Points {
		out[p.Point] = g
	}
	return out
}

// Pills are the boxes that a text stands in the middle of.
func pills(p drawing.Picture, text string) []diagram.Box {
	var out []diagram.Box
	for i, s := range p.Shapes {
		if label, ok := s.(drawing.Label); ok && label.Text == text {
			out = append(out, p.Shapes[i-1].(drawing.Rect).Box)
		}
	}
	return out
}

func TestGhostsOfEveryLayoutStandApartAndInside(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range loops {
		p := drawing.DrawGhosts(l, drawing.State{}, ghostsAt(l, drawing.Ghost{Measured: "112.4", Would: "106–116", Match: drawing.Agrees}))
		all := append(pills(p, "112.4"), pills(p, "106–116")...)
		if len(all) != 2*len(l.Points) {
			t.Errorf("%s: %d pills for %d points", l.ID, len(all), len(l.Points))
		}
		for i, a := range all {
			if a[0] < 0 || a[1] < 0 || a[0]+a[2] > l.Width || a[1]+a[3] > l.Height {
				t.Errorf("%s: a pill at %v lies outside", l.ID, a)
			}
			for _, b := range all[:i] {
				if a[0] < b[0]+b[2] && b[0] < a[0]+a[2] && a[1] < b[1]+b[3] && b[1] < a[1]+a[3] {
					t.Errorf("%s: pills %v and %v overlap", l.ID, a, b)
				}
			}
		}
	}
}

func TestAMatchHasASignOfItsOwn(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	signs := func(m drawing.Match) (ticks, rhombs int) {
		for _, s := range drawing.DrawGhosts(l, drawing.State{}, ghostsAt(l, drawing.Ghost{Measured: "90", Would: "80–95", Match: m})).Shapes {
			switch s := s.(type) {
			case drawing.Line:
				if s.Stroke == drawing.In(drawing.FineText) {
					ticks++
				}
			case drawing.Rhomb:
				rhombs++
			}
		}
		return ticks / 2, rhombs
	}
	n := len(l.Points)
	for m, want := range map[drawing.Match][2]int{drawing.NotCompared: {0, 0}, drawing.Agrees: {n, 0}, drawing.Differs: {0, n}} {
		if ticks, rhombs := signs(m); [2]int{ticks, rhombs} != want {
			t.Errorf("match %d: %d ticks and %d diamonds, want %v", m, ticks, rhombs, want)
		}
	}
}
