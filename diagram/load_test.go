package diagram_test

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"loopbook/assets"
	"loopbook/diagram"
)

func TestShippedLoopsLoad(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range []string{
		"outlet-thermostat", "inlet-thermostat", "inlet-thermostat-bottle",
		"outlet-thermostat-oil-cooler", "split-head-block", "heated-thermostat",
	} { // the case format's
		l, err := diagram.LoopByID(id)
		if err != nil {
			t.Errorf("LoopByID(%q): %v", id, err)
			continue
		}
		for _, p := range []diagram.Point{diagram.EngineOut, diagram.RadIn, diagram.RadOut, diagram.HeaterIn, diagram.HeaterOut} {
			if !l.Has(p) {
				t.Errorf("%s has no point %s", id, p)
			}
		}
	}
	if len(loops) < 6 {
		t.Errorf("%d layouts, want at least 6", len(loops))
	}
}

func TestUnknownLoopListsTheKnown(t *testing.T) {
	_, err := diagram.LoopByID("figure-of-eight")
	if !errors.Is(err, diagram.ErrUnknownLoop) || !strings.Contains(err.Error(), "inlet-thermostat-bottle") {
		t.Errorf("LoopByID: %v, want ErrUnknownLoop with the names", err)
	}
}

// Each entry of the layout is a slip that a person who adds a layout can make.
func TestFaultyLayoutNamesFileAndKey(t *testing.T) {
	good, err := assets.Loops.ReadFile("loops/outlet-thermostat.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct{ name, old, new, want string }{
		{"cut short", `"legend": [0, 508, 320, 32]`, ``, "loops/outlet-thermostat.json"},
		{"unknown key", `"legend"`, `"legned"`, "legned"},
		{"other id", `"id": "outlet-thermostat"`, `"id": "outlet"`, "id"},
		{"unknown part", `"from": "engine", "to": "thermostat"`, `"from": "motor", "to": "thermostat"`, "hoses[0]"},
		{"unknown point", `{"point": "housing"`, `{"point": "house"`, "points[0].point"},
		{"entry outside", `"entry": [258, 2]`, `"entry": [700, 2]`, "points[0].entry"},
		{"slanting leg", `[[320, 118], [340, 118]]`, `[[320, 118], [340, 119]]`, "hoses[0].path[1]"},
		{"delta without its point", `"from": "housing", "to": "engine_out"`, `"from": "housing", "to": "oil_in"`, "deltas[0]"},
		{"no engine", `"kind": "engine"`, `"kind": "tee"`, "parts: needs an engine"},
		{"head without block", `"kind": "engine"`, `"kind": "head"`, "parts: head and block"},
		{"no side", `"thermostat": "outlet"`, `"thermostat": "top"`, "thermostat"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			text := strings.Replace(string(good), tt.old, tt.new, 1)
			if text == string(good) {
				t.Fatalf("the layout no longer holds %q", tt.old)
			}
			_, err := diagram.LoadLoops(fstest.MapFS{"loops/outlet-thermostat.json": {Data: []byte(text)}})
			if err == nil || !errors.Is(err, diagram.ErrLayout) {
				t.Fatalf("LoadLoops: %v, want ErrLayout", err)
			}
			for _, part := range []string{"loops/outlet-thermostat.json", tt.want} {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("LoadLoops: %v, want %q named", err, part)
				}
			}
		})
	}
}

// Nothing that is written or typed into may overlap, or a hurried hand types
// into the wrong box.
func TestNothingOverlaps(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range loops {
		type block struct {
			name string
			box  diagram.Box
		}
		var blocks []block
		for _, p := range l.Points {
			blocks = append(blocks, block{string(p.Point), diagram.Box{p.Entry[0], p.Entry[1], diagram.EntryWidth, diagram.EntryHeight}})
		}
		for _, d := range l.Deltas {
			blocks = append(blocks, block{d.Name, diagram.Box{d.At[0], d.At[1], d.Width, d.Height()}})
		}
		blocks = append(blocks, block{"caution", l.Caution})
		for _, p := range l.Parts {
			if !p.Kind.Burns() { // the engine's box carries chips
				blocks = append(blocks, block{p.ID, p.Box})
			}
		}
		for i, a := range blocks {
			for _, b := range blocks[:i] {
				if overlap(a.box, b.box) {
					t.Errorf("%s: %s and %s overlap", l.ID, a.name, b.name)
				}
			}
		}
	}
}

func overlap(a, b diagram.Box) bool {
	return a[0] < b[0]+b[2] && b[0] < a[0]+a[2] && a[1] < b[1]+b[3] && b[1] < a[1]+a[3]
}
