// Package cases holds the case record: one document that is kept, exchanged
// and analysed, in the open case format, version 1.
//
// A nil pointer, an empty string or an empty list means "not known". Numbers
// carry their unit in the name. Keys that this program doesn't know are kept
// in Extra and written back unchanged, so that a newer file survives here.
package cases

import (
	"encoding/json"
	"math"
	"slices"
	"time"

	"loopbook/diagram"
)

// Format and Version name the document that Decode reads and Encode writes.
const (
	Format  = "loopbook-case"
	Version = 1
)

// Extra holds the keys of an object that this program doesn't know.
type Extra map[string]json.RawMessage

// Keys are in the order of their letters.
func (e Extra) Keys() []string {
	keys := make([]string, 0, len(e))
	for k := range e {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// Case is one vehicle's cooling complaint, from the first word to the proof.
type Case struct {
	Format    string    `json:"format"`
	Version   int       `json:"version"`
	ID        string    `json:"id"`
	Title     string    `json:"title"`
	Opened    time.Time `json:"opened"`
	Vehicle   Vehicle   `json:"vehicle"`
	Customer  Customer  `json:"customer"`
	Loop      Loop      `json:"loop"`
	Site      Site      `json:"site"`
	Complaint Complaint `json:"complaint"`
	Codes     []Code    `json:"codes"`
	Rounds    []Round   `json:"rounds"`
	Logs      []Log     `json:"logs"`
	Tests     []Test    `json:"tests"`
	Verdict   Verdict   `json:"verdict"`
	Repair    Repair    `json:"repair"`
	Photos    []Photo   `json:"photos"`
	Tags      []string  `json:"tags"`
	Lesson    string    `json:"lesson"`
	Extra     Extra     `json:"-"`
}

// Vehicle is what stands in the bay.
type Vehicle struct {
	Make       string   `json:"make"`
	Model      string   `json:"model"`
	Year       *int     `json:"year"`
	Engine     string   `json:"engine"`
	Motive     Motive   `json:"motive"`
	VIN        string   `json:"vin"`
	OdometerKm *float64 `json:"odometer_km"`
	Extra      Extra    `json:"-"`
}

// Customer is whose vehicle it is.
type Customer struct {
	Name    string `json:"name"`
	Contact string `json:"contact"`
	Extra   Extra  `json:"-"`
}

// Loop is the cooling loop as fitted.
type Loop struct {
	Layout           string           `json:"layout"`
	ThermostatOpensC *diagram.Celsius `json:"thermostat_opens_c"`
	ThermostatFullC  *diagram.Celsius `json:"thermostat_full_c"`
	CapKPa           *diagram.KPa     `json:"cap_kpa"`
	Coolant          Coolant          `json:"coolant"`
	CapacityL        *float64         `json:"capacity_l"`
	Fan              FanKind          `json:"fan"`
	Extra            Extra            `json:"-"`
}

// Heated reports whether the loop's thermostat has a heater, as far as its layout is known.
func (l Loop) Heated() bool {
	layout, err := diagram.LoopByID(l.Layout)
	return err == nil && layout.Heated()
}

// Lacks reports whether the loop, as it is noted, has no part that could be at fault so.
func (l Loop) Lacks(cause Cause) bool {
	switch cause {
	case "thermostat-heater-fault":
		return l.Layout != "" && !l.Heated()
	case "fan-always-running":
		return l.Fan == FixedFan || l.Fan == NoFan
	case "fan-not-running":
		return l.Fan == NoFan
	}
	return false
}

// Causes are those that the loop, as it is noted, has the parts for.
func (l Loop) Causes() []Cause { return slices.DeleteFunc(Words[Cause](), l.Lacks) }

// Points are the layout's points along the flow, or all that there are where it isn't known.
func (l Loop) Points() []diagram.Point {
	layout, err := diagram.LoopByID(l.Layout)
	if err != nil {
		return diagram.Points()
	}
	out := make([]diagram.Point, len(layout.Points))
	for i, at := range layout.Points {
		out[i] = at.Point
	}
	return out
}

// Coolant is what the loop is filled with.
type Coolant struct {
	Base          Base     `json:"base"`
	VolumePercent *float64 `json:"volume_percent"`
	Extra         Extra    `json:"-"`
}

// Site is where the case was worked on.
type Site struct {
	AmbientC  *diagram.Celsius `json:"ambient_c"`
	AltitudeM *diagram.Metre   `json:"altitude_m"`
	Extra     Extra            `json:"-"`
}

// Complaint is what the customer feels.
type Complaint struct {
	Text     string    `json:"text"`
	Symptoms []Symptom `json:"symptoms"`
	Extra    Extra     `json:"-"`
}

// Code is a trouble code read from the vehicle.
type Code struct {
	Code        string      `json:"code"`
	State       string      `json:"state"` // stored, pending, permanent or the reader's own word
	FreezeFrame FreezeFrame `json:"freeze_frame"`
	Extra       Extra       `json:"-"`
}

// FreezeFrame is the engine's state when a code was set.
type FreezeFrame struct {
	EctC     *diagram.Celsius `json:"ect_c"`
	RPM      *float64         `json:"rpm"`
	SpeedKmh *float64         `json:"speed_kmh"`
	Extra    Extra            `json:"-"`
}

// Round is one walk around the loop with the gun, under one condition.
type Round struct {
	Label             string           `json:"label"`
	Stage             Stage            `json:"stage"`
	Taken             time.Time        `json:"taken"`
	MinutesSinceStart *float64         `json:"minutes_since_start"`
	EngineRPM         *float64         `json:"engine_rpm"`
	SpeedKmh          *float64         `json:"speed_kmh"`
	Fan               FanState         `json:"fan"`
	Heater            Heater           `json:"heater"`
	AmbientC          *diagram.Celsius `json:"ambient_c"`
	EctC              *diagram.Celsius `json:"ect_c"`
	Gauge             Gauge            `json:"gauge"`
	Gun               Gun              `json:"gun"`
	Readings          []Reading        `json:"readings"`
	Extra             Extra            `json:"-"`
}

// Gun is how the infrared thermometer was set.
type Gun struct {
	Emissivity *float64         `json:"emissivity"`
	ReflectedC *diagram.Celsius `json:"reflected_c"`
	Extra      Extra            `json:"-"`
}

// Reading is what the gun (or the probe, for air) showed at a point.
type Reading struct {
	Point   diagram.Point    `json:"point"`
	ShownC  *diagram.Celsius `json:"shown_c"`
	Surface Surface          `json:"surface"`
	Extra   Extra            `json:"-"`
}

// Log is a time series from the vehicle. All columns that are present are as
// long as TimeS; NaN (null in the file) is a gap.
type Log struct {
	Name        string    `json:"name"`
	Stage       Stage     `json:"stage"`
	TimeS       []float64 `json:"time_s"`
	EctC        []float64 `json:"ect_c"`
	EngineRPM   []float64 `json:"engine_rpm"`
	SpeedKmh    []float64 `json:"speed_kmh"`
	IntakeC     []float64 `json:"intake_c"`
	LoadPercent []float64 `json:"load_percent"`
	Extra       Extra     `json:"-"`
}

// SpeedNoted reports whether the log knows how fast the car went at any time.
func (l *Log) SpeedNoted() bool {
	return slices.ContainsFunc(l.SpeedKmh, func(v float64) bool { return !math.IsNaN(v) })
}

// Verdict is the cause that was found.
type Verdict struct {
	Cause       Cause  `json:"cause"`
	ConfirmedBy string `json:"confirmed_by"` // usually a TestKind
	Note        string `json:"note"`
	Extra       Extra  `json:"-"`
}

// Find makes a cause the verdict. What confirmed another one doesn't confirm this.
func (v *Verdict) Find(cause Cause) {
	if v.Cause != "" && v.Cause != cause {
		v.ConfirmedBy = ""
	}
	v.Cause = cause
}

// Repair is what was done. Version 1 of the format names the first three keys;
// the others are additions, which a reader that doesn't know them keeps as it
// keeps any unknown key. Prices are in major units of the currency and without
// tax; package cases/money sums them exactly.
type Repair struct {
	Parts       []Part   `json:"parts"`
	LabourHours *float64 `json:"labour_hours"`
	AccessNote  string   `json:"access_note"`

	Currency           string   `json:"currency"` // ISO 4217, as EUR
	TaxPercent         *float64 `json:"tax_percent"`
	LabourPricePerHour *float64 `json:"labour_price_per_hour"`
	StepsDone          []string `json:"steps_done"`  // of package cases/access, by their ids
	CodesAfter         []string `json:"codes_after"` // read after the repair; NoCodes alone: none came back
	Extra              Extra    `json:"-"`
}

// NoCodes among Repair.CodesAfter says that the memory was read and is empty.
const NoCodes = "none"

// Part is a line of the parts list; the price is of one piece.
type Part struct {
	Name     string   `json:"name"`
	Quantity *float64 `json:"quantity"`
	Price    *float64 `json:"price"`
	Extra    Extra    `json:"-"`
}

// Photo is a picture in the bundle.
type Photo struct {
	File    string        `json:"file"`
	Caption string        `json:"caption"`
	Point   diagram.Point `json:"point"`
	Extra   Extra         `json:"-"`
}

// CantReach reports whether the reading says that the point can't be reached:
// it names the point and holds neither a temperature nor a surface.
func (r Reading) CantReach() bool { return r.ShownC == nil && r.Surface == (Surface{}) }

// Reading is the round's last reading at p, or nil.
func (r *Round) Reading(p diagram.Point) *Reading {
	for i := len(r.Readings) - 1; i >= 0; i-- {
		if r.Readings[i].Point == p {
			return &r.Readings[i]
		}
	}
	return nil
}

// Begun is the round's last reading at p, or else a new one.
func (r *Round) Begun(p diagram.Point) *Reading {
	if had := r.Reading(p); had != nil {
		return had
	}
	r.Readings = append(r.Readings, Reading{Point: p})
	return &r.Readings[len(r.Readings)-1]
}

// Measured reports whether the round holds a temperature, of a hose or of the sensor. One
// that is only begun doesn't.
func (r *Round) Measured() bool {
	return r.EctC != nil || slices.ContainsFunc(r.Readings, func(at Reading) bool { return at.ShownC != nil })
}

// TellsWarmth reports whether the round tells how warm anything is: by a temperature, or by where
// the gauge stood.
func (r *Round) TellsWarmth() bool { return r.Measured() || r.Gauge != "" }

// Ambient is the outside temperature of round i: its own or the site's, or nil.
func (c *Case) Ambient(i int) *diagram.Celsius {
	if a := c.Rounds[i].AmbientC; a != nil {
		return a
	}
	return c.Site.AmbientC
}
