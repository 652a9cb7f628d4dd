package drawing

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// State is what the drawing shows beside the layout itself. Its words are
// ready to be read; By says the layout's own.
type State struct {
	By         say.Speaker
	Points     map[diagram.Point]PointState
	Deltas     map[string]DeltaState
	Thermostat Opening
	Fan        string // "Fan on", "Fan off" or ""
	FanOn      bool
	Sensor     string // what the scan tool shows, as "sensor 113 °C"
	Bottle     string // the level in a word
	Caution    string // at the cap, while hot; empty shows none
	Doubt      bool   // the radiator's flow is in doubt: hollow arrows
	Unit       string // of the temperatures
	ScaleText  [3]string
}

// PointState is one point's reading.
type PointState struct {
	Text  string           // the number, as typed or as corrected
	TrueC *diagram.Celsius // for the colour and the pin
	Mark  Mark
	LowC  *diagram.Celsius // what this loop would show here and now
	HighC *diagram.Celsius
	Range string // the same in words
	Note  string // "14 K under", or what to do; stands after the range
}

// DeltaState is one difference.
type DeltaState struct {
	Text  string // the number with its unit
	ValK  diagram.DeltaK
	LowK  *diagram.DeltaK
	HighK *diagram.DeltaK
	Range string
	Mark  Mark
}

// Mark is how a reading or a difference stands.
type Mark int

// The marks. Each has its own edge and its own sign, never a colour alone.
const (
	Empty      Mark = iota
	Kept            // in its range, or without one
	OutOfRange      // triangle
	Invalid         // cross: not kept
	CantReach       // slash
	Repeat          // turn mark: a reading to repeat
)

// Opening is how far the thermostat seems to stand open.
type Opening int

// The openings.
const (
	NotKnown Opening = iota
	Shut
	ALittleOpen
	Open
)

func (o Opening) word() say.Text {
	switch o {
	case Shut:
		return say.Of("drawing.shut")
	case ALittleOpen:
		return say.Of("drawing.part-open")
	case Open:
		return say.Of("drawing.open")
	}
	return say.Text{}
}

// Picture is the drawing of one round, with the places that can be typed into.
type Picture struct {
	Width, Height float64
	Shapes        []Shape
	Entries       []Entry // in the order of Tab
}

// Entry is a box for one point's number.
type Entry struct {
	Point diagram.Point
	Box   diagram.Box // the whole box
	Field diagram.Box // the part of it that the number takes
}
