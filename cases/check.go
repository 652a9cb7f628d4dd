package cases

import (
	"fmt"
	"math"
	"strings"
	"unicode"

	"loopbook/diagram"
)

// check holds the document as a whole against the format, after its types.
func (d *decoder) check(c *Case) {
	if c.Format != Format {
		d.fault("format", "is %q: must be %q", Clip(c.Format), Format)
	}
	switch {
	case c.Version > Version:
		d.fault("version", "is %d: this program reads up to %d; use a newer one", c.Version, Version)
	case c.Version < 1:
		d.fault("version", "is missing or below 1: must be %d", Version)
	}
	if len(c.ID) > 64 {
		d.fault("id", "must have at most 64 letters")
	}
	if strings.ContainsFunc(c.ID, unicode.IsControl) {
		d.fault("id", "must have letters, digits and signs only") // it is printed in a line
	}
	d.atMost("rounds", len(c.Rounds))
	d.atMost("tests", len(c.Tests))
	d.atMost("codes", len(c.Codes))
	d.atMost("photos", len(c.Photos))
	d.atMost("repair.parts", len(c.Repair.Parts))
	d.checkLoop(c)
	for i := range c.Rounds {
		d.checkRound(fmt.Sprintf("rounds[%d]", i), &c.Rounds[i])
	}
	for i := range c.Logs {
		d.checkLog(fmt.Sprintf("logs[%d]", i), &c.Logs[i])
	}
	for i := range c.Tests {
		d.checkTest(fmt.Sprintf("tests[%d]", i), &c.Tests[i])
	}
	for i, p := range c.Photos {
		d.checkPoint(fmt.Sprintf("photos[%d].point", i), p.Point)
	}
}

// mostOfAKind is how many rounds, or the like, a case may have: far more than anybody measures on a car, and few enough
// that it is judged at once. Each round is held against each.
const mostOfAKind = 1000

func (d *decoder) atMost(path string, n int) {
	if n > mostOfAKind {
		d.fault(path, "are %d: a case may have %d", n, mostOfAKind)
	}
}

func (d *decoder) checkLoop(c *Case) {
	if id := c.Loop.Layout; id != "" {
		if _, err := diagram.LoopByID(id); err != nil {
			d.fault("loop.layout", "%v", err)
		}
	}
	d.within("loop.coolant.volume_percent", c.Loop.Coolant.VolumePercent, 0, 100)
	d.within("loop.cap_kpa", asFloat(c.Loop.CapKPa), 0, 500)
	d.within("loop.capacity_l", c.Loop.CapacityL, 0, 1000)
	d.within("site.altitude_m", asFloat(c.Site.AltitudeM), -500, 9000)
	d.within("vehicle.odometer_km", c.Vehicle.OdometerKm, 0, 1e7)
	d.within("repair.labour_hours", c.Repair.LabourHours, 0, 1e5)
	d.within("repair.tax_percent", c.Repair.TaxPercent, 0, 100)
}

func (d *decoder) checkRound(path string, r *Round) {
	d.within(path+".minutes_since_start", r.MinutesSinceStart, 0, 1e5)
	d.within(path+".engine_rpm", r.EngineRPM, 0, 2e4)
	d.within(path+".speed_kmh", r.SpeedKmh, 0, 500)
	if e := r.Gun.Emissivity; e != nil && !(*e > 0 && *e <= 1) {
		d.fault(path+".gun.emissivity", "is %g: must be above 0 and up to 1", *e)
	}
	for i, reading := range r.Readings {
		at := fmt.Sprintf("%s.readings[%d].point", path, i)
		if reading.Point == "" {
			d.fault(at, "is missing")
		}
		d.checkPoint(at, reading.Point)
	}
}

func (d *decoder) checkPoint(path string, p diagram.Point) {
	if p != "" && !p.Known() {
		d.fault(path, "unknown point %q: must be one of %v", Clip(string(p)), diagram.Points())
	}
}

func (d *decoder) checkLog(path string, l *Log) {
	for i, t := range l.TimeS {
		if math.IsNaN(t) {
			d.fault(fmt.Sprintf("%s.time_s[%d]", path, i), "must not be null")
			break
		}
	}
	for _, column := range []struct {
		key    string
		values []float64
	}{
		{"ect_c", l.EctC},
		{"engine_rpm", l.EngineRPM},
		{"speed_kmh", l.SpeedKmh},
		{"intake_c", l.IntakeC},
		{"load_percent", l.LoadPercent},
	} {
		if n := len(column.values); n > 0 && n != len(l.TimeS) {
			d.fault(path+"."+column.key, "has %d values where time_s has %d", n, len(l.TimeS))
		}
	}
}

func (d *decoder) checkTest(path string, t *Test) {
	if t.Kind == "" {
		d.fault(path+".kind", "is missing")
	}
	d.within(path+".volume_percent", t.VolumePercent, 0, 100)
	d.within(path+".ph", t.PH, 0, 14)
	d.within(path+".minutes", t.Minutes, 0, 1e5)
	for i, row := range t.ShownC {
		if len(row) != len(t.ShownC[0]) {
			d.fault(fmt.Sprintf("%s.shown_c[%d]", path, i), "has %d cells where the first row has %d", len(row), len(t.ShownC[0]))
		}
	}
}

func (d *decoder) within(path string, v *float64, low, high float64) {
	if v != nil && !(*v >= low && *v <= high) {
		d.fault(path, "is %g: must be between %g and %g", *v, low, high)
	}
}

func asFloat[T ~float64](v *T) *float64 {
	if v == nil {
		return nil
	}
	f := float64(*v)
	return &f
}
