package whatif

import (
	"context"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	view "loopbook/app/ui/whatif"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/units"
)

func ordinary(t *testing.T, layout string) ensemble.Setting {
	t.Helper()
	build, _, ok := buildOf(&cases.Case{Loop: cases.Loop{Layout: layout}})
	if !ok {
		t.Fatalf("no loop of layout %q", layout)
	}
	return build
}

func newCar(t *testing.T, layout string, set view.Settings) *tryout {
	t.Helper()
	car, err := newTryout(ordinary(t, layout), set)
	if err != nil {
		t.Fatal(err)
	}
	return car
}

// Heat flows from warm to cold (the second law): nothing in a car that is only
// heated gets colder than the air outside.
func TestNothingIsColderThanTheAirOutside(t *testing.T) {
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range loops {
		for _, cause := range cases.Words[cases.Cause]() {
			set := view.Idle()
			set.AmbientC, set.Cause, set.SpeedKmh = 7, cause, 50
			car := newCar(t, l.ID, set)
			if err := car.run(60); err != nil {
				t.Fatalf("%s, %s: %v", l.ID, cause, err)
			}
			for _, p := range l.Points {
				if c, ok := car.sim.At(p.Point); ok && c < 6.5 {
					t.Errorf("%s, %s: %s at %.1f °C with 7 °C outside", l.ID, cause, p.Point, float64(c))
				}
			}
		}
	}
}

func TestDrivingGoesOnAndAnotherFaultIsAnotherCar(t *testing.T) {
	car := newCar(t, "outlet-thermostat", view.Idle())
	before, set := car.sim, view.Idle()
	set.RPM, set.Load, set.SpeedKmh, set.Blower = 2500, 1.5, 90, 0
	if err := car.turn(set); err != nil || car.sim != before {
		t.Errorf("another way of driving made another car (%v)", err)
	}
	set.Cause = "thermostat-stuck-open"
	if err := car.turn(set); err != nil || car.sim == before || car.cold {
		t.Errorf("another cause: same car %t, cold %t, %v; want another, warm", car.sim == before, car.cold, err)
	}
	if err := car.start(); err != nil {
		t.Fatal(err)
	}
	if got := car.sim.ECT(); got != 20 || !car.cold {
		t.Errorf("started cold the sensor shows %v °C at 20 °C outside", got)
	}
}

// A thermostat that doesn't open overheats the engine; one that stands open
// keeps it cold in winter (common practice, no source).
func TestFaultsShow(t *testing.T) {
	winter := view.Idle()
	winter.AmbientC, winter.SpeedKmh, winter.Severity = -10, 70, 1
	sensor := func(cause cases.Cause) diagram.Celsius {
		set := winter
		set.Cause = cause
		return newCar(t, "outlet-thermostat", set).sim.ECT()
	}
	open, healthy, shut := sensor("thermostat-stuck-open"), sensor(cases.Healthy), sensor("thermostat-stuck-closed")
	if !(open < healthy-15 && healthy < shut-10) {
		t.Errorf("open %.0f, healthy %.0f, shut %.0f °C", float64(open), float64(healthy), float64(shut))
	}
}

func TestACarIsPaintedAtEachTickUntilItEnds(t *testing.T) {
	test.NewTempApp(t)
	pictures := make(chan view.Shown, 10)
	l := newLive(func(do func()) {}, func(s view.Shown) { pictures <- s }, func(err error) { t.Error(err) })
	l.begin(ordinary(t, "outlet-thermostat"), view.Idle(), units.Metric())
	ctx, end := context.WithCancel(context.Background())
	ticks, ended := make(chan time.Time), make(chan error)
	go func() { ended <- l.drive(ctx, ordinary(t, "outlet-thermostat"), ticks) }()
	time0 := func() string { return (<-pictures).Facts[0].Value }
	if got := time0(); got != "warmed up" {
		t.Errorf("at first: %q, want warmed up", got)
	}
	l.want(func(w *wish) { w.again = fromCold })
	ticks <- time.Time{}
	if got := time0(); got != "0 min from cold" {
		t.Errorf("started cold: %q", got)
	}
	for range 10 {
		ticks <- time.Time{}
		time0()
	}
	l.want(func(w *wish) { w.paused = true })
	ticks <- time.Time{}
	if got := time0(); got != "2 min from cold" { // ten fifths of a second, 60 times as fast
		t.Errorf("after ten ticks: %q, want 2 min from cold", got)
	}
	ticks <- time.Time{}
	end()
	if err := <-ended; err != nil || len(pictures) > 0 {
		t.Errorf("paused and ended: %v, %d pictures more", err, len(pictures))
	}
}
