package physics_test

import (
	"math"
	"testing"

	"loopbook/diagram/physics"
)

// From a moment the car goes on as one that came there and went no other way: with a valve
// that has just let go, and with a fan, electric or by its clutch, that has come and not gone.
// It is run as a crowd is.
func TestAMomentIsComeBackTo(t *testing.T) {
	p := typical(t)
	for _, tt := range []struct {
		name  string
		fault physics.Fault
		fan   physics.FanKind
		until func(*physics.Sim) bool
	}{
		{"let go", physics.Fault{Cause: "thermostat-late", Severity: 0.5}, "", func(s *physics.Sim) bool { return point(t, s, "rad_out") > 45 }},
		{"fan on", physics.Fault{Cause: "radiator-airflow", Severity: 0.7}, "", (*physics.Sim).FanRuns},
		{"clutch on", physics.Fault{Cause: "radiator-airflow", Severity: 0.7}, physics.ViscousFan, (*physics.Sim).FanRuns},
	} {
		for _, l := range layouts(t) {
			cond := at(25)
			cond.Fan = tt.fan
			straight, branched := car(t, l.ID, tt.fault, cond), car(t, l.ID, tt.fault, cond)
			for _, s := range []*physics.Sim{straight, branched} {
				s.Hurry()
				for s.Seconds() < 7200 && !tt.until(s) {
					run(t, s, p.Raised(20, 0), nil)
				}
				if !tt.until(s) {
					t.Fatalf("%s, %s: it never comes to the moment", l.ID, tt.name)
				}
			}
			same := func(when string) {
				for _, at := range l.Points {
					if a, b := point(t, straight, at.Point), point(t, branched, at.Point); math.Abs(a-b) > 1e-6 {
						t.Errorf("%s, %s: %s %s %.6f °C straight, %.6f °C from the moment", l.ID, tt.name, when, at.Point, a, b)
					}
				}
			}
			here := branched.Moment()
			for range 2 {
				run(t, branched, p.Road(900, 1), nil)
				branched.Return(here)
				same("at once")
			}
			for end := straight.Seconds() + 600; straight.Seconds() < end; {
				run(t, straight, p.Idle(20, 0), nil)
				run(t, branched, p.Idle(20, 0), nil)
				if straight.FanRuns() != branched.FanRuns() {
					t.Errorf("%s, %s: after %.0f s the fan runs straight %t, from the moment %t", l.ID, tt.name, straight.Seconds(), straight.FanRuns(), branched.FanRuns())
				}
			}
			same("later")
		}
	}
}
