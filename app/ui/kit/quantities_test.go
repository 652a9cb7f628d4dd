package kit_test

import (
	"math"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
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

// A US gallon is 3.785411784 l, a quart a fourth of it, a foot 0.3048 m (NIST Handbook 44): who reads °F has
// quarts and feet, and 1.9 gallons don't stand as 7.1922824 litres.
func TestVolumeAndHeightInTheUnitsOfWhoReads(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	f := kit.NewForm(func(_ string, change func(*cases.Case)) { change(&c) })
	volume := f.Volume("Capacity", func(c *cases.Case) **float64 { return &c.Loop.CapacityL })
	height := f.Height("Altitude", func(c *cases.Case) **diagram.Metre { return &c.Site.AltitudeM })
	test.NewTempWindow(t, volume).Resize(fyne.NewSize(200, 80))
	test.NewTempWindow(t, height).Resize(fyne.NewSize(200, 80))
	for _, tt := range []struct {
		set            units.Set
		capacity, high string // as typed
		wantL, wantM   float64
		stands, up     string
	}{
		{units.Metric(), "1.9 gal", "8000 ft", 7.19, 2438.4, "7.19", "2438"},
		{units.US(), "7.6", "8000", 7.19, 2438.4, "7.6", "8000"},
		{units.US(), "7,25 l", "2438 m", 7.25, 2438, "7.66", "7999"},
	} {
		f.Show(c, tt.set)
		for in, typed := range map[fyne.CanvasObject]string{volume: tt.capacity, height: tt.high} {
			at := fieldIn(t, in)
			at.SetText("")
			test.Type(at, typed)
			at.Leave()
		}
		f.Show(c, tt.set)
		if l, m := c.Loop.CapacityL, c.Site.AltitudeM; l == nil || *l != tt.wantL || m == nil || math.Abs(float64(*m)-tt.wantM) > 1e-6 {
			t.Errorf("%s and %s are kept as %v l, %v m", tt.capacity, tt.high, l, m)
		}
		if l, m := fieldIn(t, volume).Text, fieldIn(t, height).Text; l != tt.stands || m != tt.up {
			t.Errorf("%s and %s stand as %q and %q", tt.capacity, tt.high, l, m)
		}
	}
}

func fieldIn(t *testing.T, o fyne.CanvasObject) *kit.Field {
	t.Helper()
	for _, o := range test.LaidOutObjects(o) {
		if f, ok := o.(*kit.Field); ok {
			return f
		}
	}
	t.Fatal("there is no field")
	return nil
}

// An odometer is told in thousands too, and who wrote it otherwise is told how: "write 0 to 10000000" said nothing.
func TestAnOdometerInThousands(t *testing.T) {
	test.NewTempApp(t)
	var c cases.Case
	f := kit.NewForm(func(_ string, change func(*cases.Case)) { change(&c) })
	labelled := f.Dist("Odometer", func(c *cases.Case) **float64 { return &c.Vehicle.OdometerKm })
	test.NewTempWindow(t, labelled)
	field := f.First().(*kit.Field)
	for text, want := range map[string]string{"98k": "98000", "61.5k miles": "98975"} {
		field.Retype(text)
		if f.Show(c, units.Metric()); field.Text != want {
			t.Errorf("%q is shown as %q, want %q", text, field.Text, want)
		}
	}
	field.Retype("98 thousand")
	const want = "not kept: write it as 98500 or 98.5k"
	if !slices.ContainsFunc(test.LaidOutObjects(labelled), func(o fyne.CanvasObject) bool {
		l, ok := o.(*widget.Label)
		return ok && l.Text == want
	}) {
		t.Errorf("nothing says %q", want)
	}
}
