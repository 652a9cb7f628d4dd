package physics_test

import (
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// What a shut thermostat holds back (testdata/trade/signatures.csv, common
// practice; the degrees to its words are judgement): behind one at the outlet the
// upper hose is near ambient but for its first centimetres, later luke-warm by
// conduction (F00 and F02, COLD5 and WIDLE); before one at the inlet it is hot at
// the engine and warms slowly towards the radiator, and the lower hose is cold
// (F00i and F02i).
func TestHosesBehindAShutThermostat(t *testing.T) {
	p, stuck := typical(t), physics.Fault{Cause: "thermostat-stuck-closed", Severity: 1}
	for _, tt := range []struct {
		row     string
		side    diagram.Side
		fault   physics.Fault
		minutes float64
		at      diagram.Point
		low     float64 // over ambient, K
		high    float64
	}{
		{"F00 COLD5", diagram.Outlet, physics.Fault{}, 5, diagram.EngineOut, 1, 15},
		{"F00 COLD5", diagram.Outlet, physics.Fault{}, 5, diagram.RadIn, 0, 5},
		{"F00 COLD5", diagram.Outlet, physics.Fault{}, 5, diagram.RadOut, 0, 2},
		{"F02 COLD5", diagram.Outlet, stuck, 5, diagram.EngineOut, 0, 5},
		{"F02 COLD5", diagram.Outlet, stuck, 5, diagram.RadIn, 0, 2},
		{"F02 WIDLE", diagram.Outlet, stuck, 25, diagram.EngineOut, 8, 25},
		{"F02 WIDLE", diagram.Outlet, stuck, 25, diagram.RadIn, 0, 15},
		{"F02 WIDLE", diagram.Outlet, stuck, 25, diagram.RadOut, 0, 10},
		{"F00i COLD5", diagram.Inlet, physics.Fault{}, 5, diagram.RadIn, 1, 20},
		{"F00i COLD5", diagram.Inlet, physics.Fault{}, 5, diagram.RadOut, 0, 2},
		{"F02i COLD5", diagram.Inlet, stuck, 5, diagram.RadOut, 0, 2},
		{"F02i WIDLE", diagram.Inlet, stuck, 25, diagram.EngineOut, 70, 120},
		{"F02i WIDLE", diagram.Inlet, stuck, 25, diagram.RadIn, 15, 80},
		{"F02i WIDLE", diagram.Inlet, stuck, 25, diagram.RadOut, 0, 10},
	} {
		for _, l := range layouts(t) {
			if l.Thermostat != tt.side {
				continue
			}
			s := car(t, l.ID, tt.fault, at(20))
			run(t, s, p.Idle(tt.minutes*60, 0), nil)
			if over := point(t, s, tt.at) - 20; !(over >= tt.low && over <= tt.high) {
				t.Errorf("%s, %s: %s %.1f K over ambient, want %g to %g", l.ID, tt.row, tt.at, over, tt.low, tt.high)
			}
		}
	}
}

// A heater valve that stays shut is hot before and cold after itself (F13,
// published pattern, T22): in the supply it leaves both hoses cold, behind it the
// supply hot.
func TestHeaterValveShutWhereItSits(t *testing.T) {
	p := typical(t)
	for _, l := range layouts(t) {
		supply := func(severity float64) (in, out, engine float64) {
			s := car(t, l.ID, physics.Fault{Cause: "heater-valve-shut", Severity: severity}, at(20))
			run(t, s, p.Idle(1500, 0), nil)
			run(t, s, p.Idle(300, 1), nil)
			return point(t, s, diagram.HeaterIn), point(t, s, diagram.HeaterOut), float64(s.ECT())
		}
		if in, out, _ := supply(0.3); in > 35 || out > 35 {
			t.Errorf("%s, valve in the supply: hoses at %.1f and %.1f, want both cold", l.ID, in, out)
		}
		if in, out, engine := supply(0.8); in < engine-15 || out > 35 {
			t.Errorf("%s, valve behind the supply: hoses at %.1f and %.1f with the engine at %.1f, want hot and cold", l.ID, in, out, engine)
		}
	}
}
