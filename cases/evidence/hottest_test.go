package evidence_test

import (
	"math"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/diagram/published"
)

// The hottest that a case knows of may stand in a freeze frame or a log. A sensor
// whose circuit is cut or shorted says 130 °C and more (SN2, published, V35), and a
// code about the sensor itself says that its value is worth nothing; one sample
// alone is taken for a loose contact, unless somebody wrote it down each minute (judgement).
func TestHottestIsOfAllThatTheCaseKnows(t *testing.T) {
	frame := func(code string, c diagram.Celsius) cases.Code {
		return cases.Code{Code: code, FreezeFrame: cases.FreezeFrame{EctC: &c}}
	}
	for name, tt := range map[string]struct {
		codes []cases.Code
		log   []float64
		stepS float64 // 0: a second
		want  diagram.Celsius
		where string
	}{
		"round":             {nil, nil, 0, 100, "in the round “W2500”"},
		"cooler frame":      {[]cases.Code{frame("P0217", 92)}, nil, 0, 100, "in the round “W2500”"},
		"frame":             {[]cases.Code{frame("p0217", 118.5)}, nil, 0, 118.5, "in the freeze frame of P0217"},
		"shorted":           {[]cases.Code{frame("P0217", 140)}, nil, 0, 100, "in the round “W2500”"},
		"sensor's own code": {[]cases.Code{frame("P0118", 118.5)}, nil, 0, 100, "in the round “W2500”"},
		"log":               {[]cases.Code{frame("P0217", 104)}, []float64{90, 109, 111, 95}, 0, 109, "in the log “hill”"},
		"one value in turn": {nil, []float64{math.NaN(), 109, math.NaN(), 111, math.NaN(), 95}, 0, 109, "in the log “hill”"},
		"one sample":        {nil, []float64{90, 91, 125, 92}, 0, 100, "in the round “W2500”"},
		"written down":      {nil, []float64{82, 95, 113}, 60, 113, "in the log “hill”"},
		"cut, written down": {nil, []float64{82, 95, 140}, 60, 100, "in the round “W2500”"},
		"cut on the way":    {nil, []float64{90, 91, 215, 215, 92}, 0, 100, "in the round “W2500”"},
	} {
		c := toCase(healthy("outlet-thermostat", warm2500).open(100, 15))
		c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, casetest.P(diagram.KPa(110))
		c.Codes = tt.codes
		if tt.log != nil {
			l := cases.Log{Name: "hill", EctC: tt.log}
			for i := range tt.log {
				l.TimeS = append(l.TimeS, 600+float64(i)*max(tt.stepS, 1))
			}
			c.Logs = []cases.Log{l}
		}
		b := analyst(t).Analyse(c).Hottest()
		if b == nil || b.HottestC != tt.want || b.MarginK != b.PointC.Minus(tt.want) || b.Where.String() != tt.where {
			t.Errorf("%s: %+v, want %g °C %s", name, b, float64(tt.want), tt.where)
		}
	}
}

// How far water is from boiling under that cap at that altitude: IAPWS and the standard atmosphere, by other code
// (testdata/reference/boiling_cap_altitude.csv). An altitude that isn't noted is the sea's.
func TestMarginByCapAndAltitude(t *testing.T) {
	n := 0
	for _, r := range published.Rows(t, "reference/boiling_cap_altitude.csv") {
		high, holds := diagram.Metre(r.Number(t, "altitude_geopotential_m")), diagram.KPa(r.Number(t, "cap_gauge_Pa")/1000)
		c := toCase(healthy("outlet-thermostat", warm2500).open(90, 15))
		c.Loop.Coolant, c.Loop.CapKPa, c.Site.AltitudeM = cases.Coolant{Base: cases.Water}, &holds, &high
		if high == 0 {
			c.Site.AltitudeM = nil
		}
		want := r.Number(t, "T_boil_water_degC")
		b := analyst(t).Analyse(c).Hottest()
		if b == nil || math.Abs(float64(b.PointC)-want) > 0.05 || math.Abs(float64(b.MarginK)-(want-90)) > 0.05 {
			t.Errorf("water at %g m under %g kPa: %+v, want it to boil at %g °C", high, holds, b, want)
		}
		n++
	}
	if n < 10 {
		t.Errorf("%d rows held", n)
	}
}

// With the engine once at 118.5 °C it was 12 K from boiling: that is said, and from where.
func TestFreezeFrameNearBoilingIsTold(t *testing.T) {
	c := toCase(healthy("outlet-thermostat", warm2500).open(95, 15))
	c.Loop.Coolant, c.Loop.CapKPa = cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: casetest.P(50.0)}, casetest.P(diagram.KPa(110))
	c.Codes = []cases.Code{{Code: "P0217", FreezeFrame: cases.FreezeFrame{EctC: casetest.P(diagram.Celsius(118.5))}}}
	flag := find(analyst(t).Analyse(c), "boiling-margin-small")
	if flag == nil || !strings.Contains(becauseOf(flag), "in the freeze frame of P0217") {
		t.Errorf("118.5 °C under a 110 kPa cap: %+v", flag)
	}
}
