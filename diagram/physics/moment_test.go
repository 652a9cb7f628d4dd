package physics_test

import (
	"math"
	"testing"

	"loopbook/diagram/physics"
)

// From a moment the car goes on as one that came there and went no other way: with a
// valve that has let go, a fan that is on, and hoses that are warm.
func TestAMomentIsComeBackTo(t *testing.T) {
	p := typical(t)
	for _, l := range layouts(t) {
		for _, f := range []physics.Fault{{}, {Cause: "thermostat-late", Severity: 0.5}, {Cause: "radiator-airflow", Severity: 0.7}} {
			straight, branched := car(t, l.ID, f, at(25)), car(t, l.ID, f, at(25))
			for _, s := range []*physics.Sim{straight, branched} {
				run(t, s, p.Idle(1800, 0), nil)
			}
			here := branched.Moment()
			for range 2 {
				run(t, branched, p.Road(900, 1), nil)
				branched.Return(here)
			}
			for _, s := range []*physics.Sim{straight, branched} {
				run(t, s, p.Raised(300, 0), nil)
			}
			if straight.Seconds() != branched.Seconds() || straight.FanRuns() != branched.FanRuns() {
				t.Errorf("%s, %s: at %g s and %g s, fan on %t and %t", l.ID, f.Cause,
					straight.Seconds(), branched.Seconds(), straight.FanRuns(), branched.FanRuns())
			}
			for _, at := range l.Points {
				if a, b := point(t, straight, at.Point), point(t, branched, at.Point); math.Abs(a-b) > 0.1 {
					t.Errorf("%s, %s: %s %.2f °C straight, %.2f °C from the moment", l.ID, f.Cause, at.Point, a, b)
				}
			}
		}
	}
}
