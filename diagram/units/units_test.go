package units_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/units"
)

func TestParse(t *testing.T) {
	us, metric := units.US(), units.Metric()
	for _, tt := range []struct {
		name      string
		got, want float64
		err       error
		source    string
	}{
		{"boiling in °F", first(us.ParseTemp("212")), 100, second(us.ParseTemp("212")), "definition of the degree Fahrenheit, NIST SP 811"},
		{"-40 is both", first(us.ParseTemp("-40")), -40, nil, "the same"},
		{"decimal comma", first(metric.ParseTemp(" 88,5 ")), 88.5, nil, "common practice"},
		{"15 psi cap", float64(must(us.ParsePressure("15"))), 103.42136, nil, "NIST SP 811 B.8: 1 psi = 6.894757 kPa"},
		{"thousands and a comma", must(units.Number("1.234,50")), 1234.5, nil, "common practice"},
		{"thousands and a point", must(units.Number("1,234.50")), 1234.5, nil, "common practice"},
		{"an odometer with a comma", must(metric.ParseDist("182,500")), 182500, nil, "common practice"},
		{"an odometer with a point", must(metric.ParseDist(" 182.500 ")), 182500, nil, "common practice"},
		{"an odometer over a million", must(metric.ParseDist("1.182.500")), 1182500, nil, "common practice"},
		{"an odometer in thousands", must(metric.ParseDist("98k")), 98000, nil, "common practice"},
		{"thousands with a tenth", must(metric.ParseDist("98,5 K")), 98500, nil, "common practice"},
		{"thousands of the other unit", must(metric.ParseDist("61.5k miles")), 61.5 * 1609.344, nil, "international mile, NIST SP 811 B.8"},
		{"thousands of the own", must(us.ParseDist("1k")), 1609.344, nil, "international mile, NIST SP 811 B.8"},
		{"a unit that begins with k", must(metric.ParseDist("98 km")), 98, nil, "SI brochure"},
		{"a trip", must(metric.ParseDist("182,5")), 182.5, nil, "common practice"},
		{"a cap in bar", float64(must(metric.ParsePressure("1,4 bar"))), 140, nil, "1 bar = 100 kPa, by definition"},
		{"a cap in psi", float64(must(metric.ParsePressure("15psi"))), 103.42136, nil, "NIST SP 811 B.8"},
		{"°F behind it", float64(must(metric.ParseTemp("212 °F"))), 100, nil, "definition of the degree Fahrenheit, NIST SP 811"},
		{"°C behind it", float64(must(us.ParseTemp("88c"))), 88, nil, "the same"},
		{"thousands with blanks", must(units.Number("1 182 500,5")), 1182500.5, nil, "ISO 80000-1, 7.3.1: groups of three, parted by a small space (from memory)"},
		{"a percentage", must(units.Number("50 %")), 50, nil, "common practice"},
		{"1 mile", must(us.ParseDist("1")), 1.609344, nil, "international mile, NIST SP 811 B.8"},
	} {
		if tt.err != nil || !(math.Abs(tt.got-tt.want) < 1e-5) {
			t.Errorf("%s = %v, %v; want %v (%s)", tt.name, tt.got, tt.err, tt.want, tt.source)
		}
	}
	for _, bad := range []string{"", "7o", "4000", "-61", "NaN", "1e999", "88.5.1", "88 K", "-", "°C", "8 8", "10 2", "1 0", "8 8.5"} {
		if c, err := metric.ParseTemp(bad); err == nil {
			t.Errorf("ParseTemp(%q) = %v, want an error", bad, c)
		}
	}
}

func TestWrite(t *testing.T) {
	us, metric := units.US(), units.Metric()
	for _, tt := range []struct{ got, want string }{
		{metric.Temp(88.46), "88.5"},
		{us.TempUnit(100), "212 °F"},
		{metric.TempRange(84.4, 93.7), "84–94"},
		{metric.TempRange(-5, 3), "-5…3"},
		{metric.Delta(-0.2), "0 K"},
		{us.Delta(10), "18 F°"},
		{us.PressureUnit(103.42), "15 psi"},
		{metric.DistUnit(154200), "154\u00a0200 km"},
		{us.Speed(80), "50 mph"},
		{units.Thousands(-123), "-123"},
		{units.Thousands(-1234567), "-1\u00a0234\u00a0567"},
		{us.DistUnit(154200), "95\u00a0815 mi"}, // 154200 km over 1.609344: NIST SP 811, appendix B
	} {
		if tt.got != tt.want {
			t.Errorf("got %q, want %q", tt.got, tt.want)
		}
	}
}

// No display and no hand writes 1e2 for 100: it is a key beside the one that was meant.
func TestALetterInANumberIsASlip(t *testing.T) {
	for _, text := range []string{"1e2", "9E1", "0x50", "0x1p6"} {
		if v, err := units.Number(text); !errors.Is(err, units.ErrNotANumber) {
			t.Errorf("%q is taken as %g, %v", text, v, err)
		}
	}
}

// A percentage is of no unit: somebody is in the wrong field.
func TestAPercentageIsNoQuantity(t *testing.T) {
	bar := units.Set{Temperature: units.C, Pressure: units.Bar, Distance: units.Km}
	_, temp := bar.ParseTemp("50 %")
	_, pressure := bar.ParsePressure("1.4%")
	_, dist := bar.ParseDist("5 %")
	_, volume := bar.ParseVolume("50%")
	for name, err := range map[string]error{"temperature": temp, "pressure": pressure, "distance": dist, "volume": volume} {
		if !errors.Is(err, units.ErrNotANumber) {
			t.Errorf("a %s in percent: %v", name, err)
		}
	}
}

func first(c diagram.Celsius, _ error) float64  { return float64(c) }
func second(_ diagram.Celsius, err error) error { return err }
func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}
