package units_test

import (
	"math"
	"testing"

	"loopbook/diagram/units"
)

// Factors: NIST SP 811, appendix B.8. How a clock is written is common practice.
func TestAUnitMayStandBehindANumber(t *testing.T) {
	us := units.US()
	for _, tt := range []struct {
		text  string
		parse func(string) (float64, error)
		want  float64
	}{
		{"6,5 l", units.Litres().Parse, 6.5},
		{"6.5L", units.Litres().Parse, 6.5},
		{"6.5", units.Litres().Parse, 6.5},
		{"2 gal", units.Litres().Parse, 7.570824},
		{"5 mm", units.Millimetres().Parse, 5},
		{"0.5 in", units.Millimetres().Parse, 12.7},
		{"8000 ft", units.Metres().Parse, 2438.4},
		{"2.5 kΩ", units.Ohms().Parse, 2500},
		{"300 mV", units.Volts().Parse, 0.3},
		{"2500 rpm", units.Revs().Parse, 2500},
		{"3 qt", units.Litres().Parse, 2.8390587},
		{"750 ml", units.Litres().Parse, 0.75},
		{"2 cm", units.Millimetres().Parse, 20},
		{"2 k", units.Ohms().Parse, 2000},
		{"2 kohm", units.Ohms().Parse, 2000},
		{"5 min", units.Minutes().Clock, 5},
		{"90 s", units.Minutes().Clock, 1.5},
		{"90 sec", units.Minutes().Clock, 1.5},
		{"2 h", units.Minutes().Clock, 120},
		{"2 hrs", units.Hours().Clock, 2},
		{"3:30", units.Minutes().Clock, 3.5},
		{"1:30", units.Hours().Clock, 1.5},
		{"90 min", units.Hours().Clock, 1.5},
		{"1,5", units.Hours().Clock, 1.5},
		{"50 km/h", us.ParseDist, 50},
		{"152,300 km", us.ParseDist, 152300},
		{"30 mph", units.Metric().ParseDist, 48.28032},
		{"94,500 mi", units.Metric().ParseDist, 152083.008},
		// a comma that parts thousands, as a height's or a sensor's in ohm: taken for a fraction's, a pass lay at the sea and a cold
		// sensor was shorted (NTC20 of testdata/trade/numbers.csv, published: 2502 ohm at 20 °C)
		{"5,280 ft", units.Metres().Parse, 1609.344},
		{"1.600", units.Metres().Parse, 1600},
		{"2,502", units.Ohms().Parse, 2502},
		{"2,502 ohm", units.Ohms().Parse, 2502},
		{"2.502 kohm", units.Ohms().Parse, 2502},
		{"175.7", units.Ohms().Parse, 175.7},
		{"0.350", units.Ohms().Parse, 0.35},
		{"2,500 rpm", units.Revs().Parse, 2500},
		{"6.125 l", units.Litres().Parse, 6.125},
		{"0.500 km", units.Metric().ParseDist, 0.5},
		{"1,182.500", units.Metric().ParseDist, 1182.5},
	} {
		if got, err := tt.parse(tt.text); err != nil || math.Abs(got-tt.want) > 1e-6*math.Max(1, tt.want) {
			t.Errorf("%q is read as %v, %v; want %v", tt.text, got, err, tt.want)
		}
	}
	for _, bad := range []string{"6.5 kg", "1:60", "1:75", "1:5", "-1:30", "1:30:00", "l", ":30"} {
		if got, err := units.Litres().Parse(bad); err == nil {
			t.Errorf("%q are %v litres", bad, got)
		}
		if got, err := units.Hours().Clock(bad); err == nil {
			t.Errorf("%q are %v hours", bad, got)
		}
	}
}
