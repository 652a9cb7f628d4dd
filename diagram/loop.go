package diagram

import (
	"errors"
	"fmt"
	"slices"
	"strings"
)

// ErrUnknownLoop says that no layout has the name asked for.
var ErrUnknownLoop = errors.New("unknown layout")

// Side says where in the loop the thermostat sits.
type Side string

// The sides of the engine that a thermostat can sit on.
const (
	Outlet Side = "outlet" // where coolant leaves the engine for the radiator
	Inlet  Side = "inlet"  // where coolant re-enters the pump
)

// Flow is how coolant moves in a hose while the thermostat is shut or open.
type Flow string

// The flows of a hose, along its path.
const (
	Forward Flow = "forward" // from the path's first place to its last
	Still   Flow = "still"   // none, but for leakage and creeping warmth
	Little  Flow = "little"  // some of it: the other way takes most
)

// Loop is a layout: which parts, hoses and points a cooling loop has, and how
// it is drawn. Places are in drawing units, x to the right and y down, within
// Width × Height.
type Loop struct {
	ID         string    `json:"id"`
	Thermostat Side      `json:"thermostat"`
	Width      float64   `json:"width"`
	Height     float64   `json:"height"`
	Parts      []Part    `json:"parts"`
	Hoses      []Hose    `json:"hoses"`
	Points     []PointAt `json:"points"` // in the order of Tab, along the flow
	Deltas     []DeltaAt `json:"deltas"`
	Captions   []Caption `json:"captions"`
	Caution    Box       `json:"caution"` // where the cap's caution stands
	Legend     Box       `json:"legend"`
}

// Part is a component with its place.
type Part struct {
	ID   string   `json:"id"`
	Kind PartKind `json:"kind"`
	Box  Box      `json:"box"`
}

// PartKind says how a part is drawn and what it does.
type PartKind string

// The kinds of parts.
const (
	Engine     PartKind = "engine"
	Head       PartKind = "head" // of an engine with a way for coolant of each
	Block      PartKind = "block"
	Radiator   PartKind = "radiator"
	HeaterCore PartKind = "heater-core"
	Thermostat PartKind = "thermostat"
	Pump       PartKind = "pump"
	Fan        PartKind = "fan"
	Bottle     PartKind = "bottle"
	Tee        PartKind = "tee"
	OilCooler  PartKind = "oil-cooler"
	WaxHeater  PartKind = "wax-heater" // electric, in the thermostat's wax
)

// Burns reports whether a part is an engine or one of its two halves.
func (k PartKind) Burns() bool { return k == Engine || k == Head || k == Block }

// Hose joins two parts. The points on it say where its temperature is known.
type Hose struct {
	ID   string   `json:"id"`
	From string   `json:"from"` // a part, where the flow comes from
	To   string   `json:"to"`
	Bore Bore     `json:"bore"`
	Cold Flow     `json:"cold"` // thermostat shut
	Hot  Flow     `json:"hot"`  // thermostat open
	Path []XY     `json:"path"` // straight legs, each level or upright
	Ends [2]Point `json:"ends"` // whose temperatures colour it, from and to
}

// Bore is a hose's width class.
type Bore string

// The bores: radiator hoses; heater and bypass; bottle feed; bleed line.
const (
	BoreMain   Bore = "main"
	BoreHeater Bore = "heater"
	BoreFeed   Bore = "feed"
	BoreBleed  Bore = "bleed"
)

// PointAt is a point of the layout: where its entry stands and the place on
// the hose or part that the entry's thin line leads to.
type PointAt struct {
	Point  Point `json:"point"`
	Entry  XY    `json:"entry"` // the left top of the entry's block
	Anchor XY    `json:"anchor"`
}

// DeltaAt is a difference that the layout has a place for. Sensor deltas have
// no From: the scan tool's value takes its place.
type DeltaAt struct {
	Name  string  `json:"name"`
	From  Point   `json:"from"`
	To    Point   `json:"to"`
	At    XY      `json:"at"`
	Width float64 `json:"width"`
}

// Caption is a word beside a part.
type Caption struct {
	Part string `json:"part"`
	At   XY     `json:"at"`
}

// XY is a place in drawing units.
type XY [2]float64

// Box is left, top, width and height in drawing units.
type Box [4]float64

// Has reports whether the layout has the point.
func (l *Loop) Has(p Point) bool {
	for _, at := range l.Points {
		if at.Point == p {
			return true
		}
	}
	return false
}

// Heated reports whether the thermostat's wax has an electric heater too.
func (l *Loop) Heated() bool { return l.Part(WaxHeater) != nil }

// Part is the first part of a kind, or nil.
func (l *Loop) Part(kind PartKind) *Part {
	for i := range l.Parts {
		if l.Parts[i].Kind == kind {
			return &l.Parts[i]
		}
	}
	return nil
}

// LoopByID is the shipped layout of that name. The error lists the names.
func LoopByID(id string) (*Loop, error) {
	loops, err := Loops()
	if err != nil {
		return nil, err
	}
	names := make([]string, 0, len(loops))
	for _, l := range loops {
		if l.ID == id {
			return l, nil
		}
		names = append(names, l.ID)
	}
	slices.Sort(names)
	return nil, fmt.Errorf("%w %q: must be one of %s", ErrUnknownLoop, id, strings.Join(names, ", "))
}

// Plain is the loop with its main parts alone, for a customer's page. It is
// shared: don't change it.
func (l *Loop) Plain() (*Loop, error) {
	loops, err := plainLoops()
	if err != nil {
		return nil, err
	}
	for _, p := range loops {
		if p.Thermostat == l.Thermostat {
			return p, nil
		}
	}
	return nil, fmt.Errorf("plain loops: %w: none with its thermostat at the %s", ErrUnknownLoop, l.Thermostat)
}

// narrow is the width under which a difference is written in three rows.
const narrow = 150

// Narrow reports whether the difference is written in three rows, not two.
func (d DeltaAt) Narrow() bool { return d.Width < narrow }

// Height of the difference's block in drawing units.
func (d DeltaAt) Height() float64 {
	if d.Narrow() {
		return 54
	}
	return 38
}
