package kit_test

import (
	"testing"

	"loopbook/app/ui/kit"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// A slip of a digit is asked for again, in the units that are typed.
func TestNoCoolantBeyondWhatItCanBe(t *testing.T) {
	us := units.US()
	for _, tt := range []struct {
		units units.Set
		text  string
		want  diagram.Celsius
		why   string // "": it is read
	}{
		{units.Metric(), "107", 107, ""}, {units.Metric(), "-40", -40, ""}, {units.Metric(), "390", 0, "390 °C can't be: write -50 °C to 150 °C"},
		{units.Metric(), "950", 0, "950 can't be: write -50 °C to 150 °C"}, // no bound of another temperature's
		{us, "212", 100, ""}, {us, "390", 0, "390 °F can't be: write -58 °F to 302 °F"},
	} {
		c, err := kit.ParseCoolant(tt.units)(tt.text)
		switch {
		case tt.why == "" && (err != nil || c != tt.want):
			t.Errorf("%s: %v, %v, want %v", tt.text, c, err, tt.want)
		case tt.why != "" && (err == nil || err.Error() != tt.why):
			t.Errorf("%s: %v, want %q", tt.text, err, tt.why)
		}
	}
}

// A temperature that is typed into the field of the engine's speed is no speed.
func TestParseRPM(t *testing.T) {
	for text, want := range map[string]float64{"0": 0, "650": 650, "2500 rpm": 2500, "93": -1, "299": -1, "30000": -1} {
		rpm, err := kit.ParseRPM(text)
		if (err != nil) != (want < 0) || err == nil && rpm != want {
			t.Errorf("%q: %g, %v", text, rpm, err)
		}
	}
}
