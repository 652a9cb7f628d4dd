package ensemble_test

import (
	"context"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics/ensemble"
)

func setting(t testing.TB, layout string, stops ...ensemble.Stop) ensemble.Setting {
	t.Helper()
	l, err := diagram.LoopByID(layout)
	if err != nil {
		t.Fatal(err)
	}
	opens := diagram.Celsius(88)
	return ensemble.Setting{
		Loop: l, OpensC: &opens, Coolant: coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50},
		Causes: []string{"none", "thermostat-stuck-open", "thermostat-stuck-closed", "thermostat-late", "thermostat-early", "radiator-restricted",
			"radiator-airflow", "fan-not-running", "pump-weak", "coolant-low-air", "lower-hose-collapse", "bypass-open", "heater-core-restricted",
			"heater-valve-shut", "combustion-leak", "cap-weak", "external-leak", "sensor-reads-low", "sensor-reads-high", "coolant-mix-wrong",
			"fan-always-running", "thermostat-heater-fault", "cap-vacuum-stuck", "heater-air-side"},
		Starts: []ensemble.Start{{AmbientC: 20, Stops: stops}},
	}
}

// 24 causes × 200 draws of a warm-up of 25 minutes, and the same with three ways to go
// on from there: wanted in 5 s on two cores.
func BenchmarkFresh(b *testing.B) {
	cold := setting(b, "outlet-thermostat", ensemble.Stop{Seconds: 1500, RPM: 800, Blower: 1})
	warm := cold
	warm.Ahead = []ensemble.Stop{{Seconds: 300, RPM: 2500}, {Seconds: 720, RPM: 800, Held: true}, {Seconds: 900, RPM: 2200, SpeedKmh: 80}}
	for name, s := range map[string]ensemble.Setting{"round": cold, "ahead": warm} {
		b.Run(name, func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := ensemble.Run(context.Background(), s, 200, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The same setting gives the same crowd, whatever the order in which the cores
// came to its draws; and each kind of fault is told from health somewhere, but
// for those that no temperature tells.
func TestCrowdIsTheSameAgain(t *testing.T) {
	s := setting(t, "inlet-thermostat", ensemble.Stop{Seconds: 300, RPM: 1000, Blower: -1}, ensemble.Stop{RPM: 2500, Blower: 1}, ensemble.Stop{Seconds: 900, SpeedKmh: 80})
	a, err := ensemble.Run(context.Background(), s, 12, nil)
	if err != nil {
		t.Fatal(err)
	}
	b, err := ensemble.Run(context.Background(), s, 12, nil)
	if err != nil {
		t.Fatal(err)
	}
	silent := map[string]bool{"none": true, "cap-weak": true, "cap-vacuum-stuck": true, "thermostat-heater-fault": true}
	for cause, name := range s.Causes {
		differs := false
		for draw := 0; draw < a.N; draw++ {
			for stop := 0; stop < s.Stops(); stop++ {
				healthy := a.Look(0, draw, stop)
				for slot, v := range a.Look(cause, draw, stop) {
					if v != b.Look(cause, draw, stop)[slot] {
						t.Fatalf("%s, draw %d, stop %d: %g, then %g", name, draw, stop, v, b.Look(cause, draw, stop)[slot])
					}
					differs = differs || v != healthy[slot]
				}
			}
		}
		if differs == silent[name] {
			t.Errorf("%s differs from health: %v", name, differs)
		}
	}
	if s.Stops() != 3 || a.AmbientC(2) != 20 || a.Slot("rad_out") < ensemble.FirstSlot || a.Slot("oil_in") != -1 {
		t.Errorf("%d stops, %v outside, rad_out at %d, oil_in at %d", s.Stops(), a.AmbientC(2), a.Slot("rad_out"), a.Slot("oil_in"))
	}
}
