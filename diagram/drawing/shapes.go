// Package drawing makes the picture of a layout with its readings, out of
// shapes that know no toolkit. The window, the paper and a bitmap paint the
// same shapes.
//
// Lengths are the layout's drawing units, x to the right and y down.
package drawing

import (
	"image/color"

	"loopbook/diagram"
)

// Shape is a primitive: a Rect, Disc, Line, Band, Wedge, Rhomb or Label.
type Shape interface{ shape() }

// Rect is a box with round corners. An empty Fill or Stroke paints nothing.
type Rect struct {
	Box          diagram.Box
	Corner       float64
	Fill, Stroke Ink
	StrokeWidth  float64
}

// Disc is a circle.
type Disc struct {
	Center       diagram.XY
	Radius       float64
	Fill, Stroke Ink
	StrokeWidth  float64
}

// Line is a straight stroke.
type Line struct {
	From, To diagram.XY
	Stroke   Ink
	Width    float64
}

// Band is a box whose colour runs from one end to the other: a leg of a hose,
// a core, a scale. It runs from left to right unless Vertical says otherwise.
type Band struct {
	Box      diagram.Box
	Start    Ink // at the left or the top
	End      Ink
	Vertical bool
}

// Wedge is a triangle with equal sides that points to one of four ways.
type Wedge struct {
	Center       diagram.XY
	Radius       float64 // to its corners
	Toward       Way
	Fill, Stroke Ink
	StrokeWidth  float64
}

// Rhomb is a square that stands on a corner.
type Rhomb struct {
	Center       diagram.XY
	Radius       float64
	Fill, Stroke Ink
	StrokeWidth  float64
}

// Label is a line of text. At is the middle of its height, at the end that
// Align names.
type Label struct {
	At    diagram.XY
	Text  string
	Size  float64
	Bold  bool
	Ink   Ink
	Align Align
}

// Way is one of the four directions.
type Way int

// The ways.
const (
	Right Way = iota
	Down
	Left
	Up
)

// Align says which end of a text its place is.
type Align int

// The ends of a text.
const (
	Start Align = iota
	Middle
	End
)

func (Rect) shape()  {}
func (Disc) shape()  {}
func (Line) shape()  {}
func (Band) shape()  {}
func (Wedge) shape() {}
func (Rhomb) shape() {}
func (Label) shape() {}

// Ink is a colour: a role that the palette fills, or a fixed colour such as a
// hose's temperature. The zero Ink paints nothing.
type Ink struct {
	Role  Role
	Fixed color.NRGBA
}

// In is the ink of a role.
func In(r Role) Ink { return Ink{Role: r} }

// None reports whether the ink paints nothing.
func (i Ink) None() bool { return i == Ink{} }

// Color is the ink's colour in a palette.
func (i Ink) Color(p Palette) color.NRGBA {
	if i.Role == "" {
		return i.Fixed
	}
	return p[i.Role]
}
