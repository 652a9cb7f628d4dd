package physics_test

import (
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// The bands of a heated thermostat, 100 to 110 °C at light load and 82 to 90 °C
// under load (testdata/trade/numbers.csv, TH6 and TH7, published), and a heater
// that fails: the engine stays hot under load, where a fall of 10 to 20 K is
// expected and not seen (signatures.csv, F22).
func TestHeatedThermostatHoldsItsBands(t *testing.T) {
	within := func(what string, got, low, high float64) {
		t.Helper()
		if !(got >= low && got <= high) {
			t.Errorf("%s is %.1f, want %g to %g", what, got, low, high)
		}
	}
	sound := visit(t, heated, physics.Fault{})
	within("TH6, ECT at warm idle", sound["WIDLE ect"], 100, 110)
	warm := func(f physics.Fault) *physics.Sim { // before a standing loop soaks through
		s := car(t, heated, f, at(20))
		run(t, s, typical(t).Idle(1500, 0), nil)
		return s
	}
	raised := warm(physics.Fault{})
	run(t, raised, typical(t).Raised(300, 0), nil)
	within("TH6, ECT at 2500 rpm without load", float64(raised.ECT()), 100, 110)
	within("TH7, ECT on the road in frost", sound["ROAD ect"], 82, 90)
	bad := visit(t, heated, physics.Fault{Cause: "thermostat-heater-fault", Severity: 1})
	within("F22 COLD5, change of ECT", bad["COLD5 ect"]-sound["COLD5 ect"], -1, 1)
	within("F22 WIDLE, ECT", bad["WIDLE ect"], 100, 110)
	within("F22 under load, fall not seen", bad["ROAD ect"]-sound["ROAD ect"], 10, 20)

	stays := warm(physics.Fault{Cause: "thermostat-heater-fault", Severity: 1, Form: 1}) // its driver never lets go
	within("heated always, ECT at warm idle in the band of load (TH7)", float64(stays.ECT()), 82, 90)

	p := typical(t)
	mild := car(t, heated, physics.Fault{}, at(20))
	run(t, mild, p.Road(1800, 0), nil)
	within("TH7, ECT on the road", float64(mild.ECT()), 82, 90)
	run(t, mild, physics.Stage{Seconds: 900, RPM: 3000, HeatKW: 24, SpeedKmh: 50}, nil)
	within("TH7, ECT on a hill", float64(mild.ECT()), 82, 90)
}

// Where no wax is heated, its heater has nothing to fail.
func TestOtherThermostatsHaveNoHeaterToFail(t *testing.T) {
	for _, l := range layouts(t) {
		if l.Heated() {
			continue
		}
		sound := car(t, l.ID, physics.Fault{}, at(20))
		bad := car(t, l.ID, physics.Fault{Cause: "thermostat-heater-fault", Severity: 1}, at(20))
		stays := car(t, l.ID, physics.Fault{Cause: "thermostat-heater-fault", Severity: 1, Form: 1}, at(20))
		for _, s := range []*physics.Sim{sound, bad, stays} {
			run(t, s, typical(t).Road(1800, 0), nil)
		}
		if a, b, c := point(t, sound, diagram.RadOut), point(t, bad, diagram.RadOut), point(t, stays, diagram.RadOut); a != b || a != c {
			t.Errorf("%s: the lower hose at %g, with the fault at %g and %g", l.ID, a, b, c)
		}
	}
}

// Oil is warmer than the coolant once the car is driven, so its cooler warms the
// coolant, and takes warmth from it while the oil is cold: physics; by how much
// is judgement.
func TestOilCoolerWarmsTheCoolant(t *testing.T) {
	p := typical(t)
	s := car(t, oil, physics.Fault{}, at(20))
	rise := func() float64 { return point(t, s, diagram.OilOut) - point(t, s, diagram.OilIn) }
	run(t, s, p.Idle(240, 0), nil)
	if k := rise(); !(k < 0) {
		t.Errorf("cold oil warms the coolant by %.1f K", k)
	}
	run(t, s, p.Road(1800, 0), nil)
	if k := rise(); !(k > 0.3 && k < 10) {
		t.Errorf("on the road the oil cooler warms the coolant by %.1f K, want 0.3 to 10", k)
	}
}
