package diagram

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"sync"

	"loopbook/assets"
)

// ErrLayout says that a layout's data is at fault.
var ErrLayout = errors.New("layout data at fault")

// Loops reads the shipped layouts, once. They are shared: don't change them.
var Loops = sync.OnceValues(func() ([]*Loop, error) { return LoadLoops(assets.Loops) })

// plainLoops reads the shipped plain loops, once.
var plainLoops = sync.OnceValues(func() ([]*Loop, error) {
	files, err := fs.Sub(assets.PlainLoops, "plain")
	if err != nil {
		return nil, err
	}
	return LoadLoops(files)
})

// LoadLoops reads and checks loops/*.json of a file system, in the order of
// their file names. An error names the file and the key.
func LoadLoops(files fs.FS) ([]*Loop, error) {
	names, err := fs.Glob(files, "loops/*.json")
	if err != nil {
		return nil, err
	}
	loops := make([]*Loop, 0, len(names))
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		l, err := parseLoop(text)
		if err == nil && l.ID+".json" != path.Base(name) {
			err = fmt.Errorf("id: is %q, must be the file's name", l.ID)
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w: %w", name, ErrLayout, err)
		}
		loops = append(loops, l)
	}
	return loops, nil
}

func parseLoop(text []byte) (*Loop, error) {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	var l Loop
	if err := dec.Decode(&l); err != nil {
		return nil, err
	}
	return &l, l.check()
}

// check holds the layout's data against itself.
func (l *Loop) check() error {
	parts := map[string]bool{}
	for i, p := range l.Parts {
		if p.ID == "" || parts[p.ID] {
			return fmt.Errorf("parts[%d].id: %q is empty or stands twice", i, p.ID)
		}
		if !p.Kind.known() {
			return fmt.Errorf("parts[%d].kind: unknown kind %q", i, p.Kind)
		}
		if !l.holds(p.Box) {
			return fmt.Errorf("parts[%d].box: %v is outside the drawing", i, p.Box)
		}
		parts[p.ID] = true
	}
	if err := l.checkKinds(); err != nil {
		return err
	}
	if l.Thermostat != Outlet && l.Thermostat != Inlet {
		return fmt.Errorf("thermostat: %q must be %q or %q", l.Thermostat, Outlet, Inlet)
	}
	return errors.Join(l.checkPoints(), l.checkHoses(parts), l.checkDeltas(), l.checkCaptions(parts))
}

// checkKinds sees that the loop has what every loop has, and an engine that is
// one part or a head and a block.
func (l *Loop) checkKinds() error {
	for _, kind := range []PartKind{Radiator, Thermostat, Pump} {
		if l.Part(kind) == nil {
			return fmt.Errorf("parts: no %s", kind)
		}
	}
	head, block := l.Part(Head) != nil, l.Part(Block) != nil
	switch {
	case head != block:
		return errors.New("parts: head and block need each other")
	case head == (l.Part(Engine) != nil):
		return errors.New("parts: needs an engine, or a head and a block")
	}
	return nil
}

func (l *Loop) checkPoints() error {
	seen := map[Point]bool{}
	for i, p := range l.Points {
		if !p.Point.Known() || seen[p.Point] {
			return fmt.Errorf("points[%d].point: %q is unknown or stands twice", i, p.Point)
		}
		if !l.holds(Box{p.Entry[0], p.Entry[1], EntryWidth, EntryHeight}) {
			return fmt.Errorf("points[%d].entry: %v leaves the drawing", i, p.Entry)
		}
		if !l.holds(Box{p.Anchor[0], p.Anchor[1]}) {
			return fmt.Errorf("points[%d].anchor: %v is outside the drawing", i, p.Anchor)
		}
		seen[p.Point] = true
	}
	return nil
}

func (l *Loop) checkHoses(parts map[string]bool) error {
	for i, h := range l.Hoses {
		if !parts[h.From] || !parts[h.To] {
			return fmt.Errorf("hoses[%d]: from %q to %q: no such part", i, h.From, h.To)
		}
		if !h.Bore.known() || !h.Cold.known() || !h.Hot.known() {
			return fmt.Errorf("hoses[%d]: unknown bore %q or flow %q, %q", i, h.Bore, h.Cold, h.Hot)
		}
		if len(h.Path) < 2 {
			return fmt.Errorf("hoses[%d].path: needs two places", i)
		}
		for j, at := range h.Path {
			if !l.holds(Box{at[0], at[1]}) {
				return fmt.Errorf("hoses[%d].path[%d]: %v is outside the drawing", i, j, at)
			}
			if j > 0 && at[0] != h.Path[j-1][0] && at[1] != h.Path[j-1][1] {
				return fmt.Errorf("hoses[%d].path[%d]: the leg is neither level nor upright", i, j)
			}
		}
		for _, p := range h.Ends {
			if p != "" && !l.Has(p) {
				return fmt.Errorf("hoses[%d].ends: the layout has no point %q", i, p)
			}
		}
	}
	return nil
}

func (l *Loop) checkDeltas() error {
	for i, d := range l.Deltas {
		if d.Name == "" {
			return fmt.Errorf("deltas[%d]: needs a name", i)
		}
		if (d.From != "" && !l.Has(d.From)) || !l.Has(d.To) {
			return fmt.Errorf("deltas[%d]: from %q to %q: the layout has no such point", i, d.From, d.To)
		}
		if !l.holds(Box{d.At[0], d.At[1], d.Width}) {
			return fmt.Errorf("deltas[%d].at: %v leaves the drawing", i, d.At)
		}
	}
	return nil
}

func (l *Loop) checkCaptions(parts map[string]bool) error {
	for i, c := range l.Captions {
		if !parts[c.Part] {
			return fmt.Errorf("captions[%d].part: no part %q", i, c.Part)
		}
	}
	return nil
}

func (l *Loop) holds(b Box) bool {
	return b[0] >= 0 && b[1] >= 0 && b[0]+b[2] <= l.Width && b[1]+b[3] <= l.Height
}

func (k PartKind) known() bool {
	switch k {
	case Radiator, HeaterCore, Thermostat, Pump, Fan, Bottle, Tee, OilCooler, WaxHeater:
		return true
	}
	return k.Burns()
}

func (b Bore) known() bool {
	return b == BoreMain || b == BoreHeater || b == BoreFeed || b == BoreBleed
}

func (f Flow) known() bool { return f == Forward || f == Still || f == Little }

// EntryWidth and EntryHeight are the block of one entry in drawing units: its
// label, its box, its bar and its range.
const (
	EntryWidth  = 112
	EntryHeight = 74
)
