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

// 24 causes × 200 draws of a warm-up of 25 minutes: wanted in 5 s on two cores.
func BenchmarkFresh(b *testing.B) {
	s := setting(b, "outlet-thermostat", ensemble.Stop{Seconds: 1500, RPM: 800, Blower: 1})
	for i := 0; i < b.N; i++ {
		if _, err := ensemble.Run(context.Background(), s, 200, nil); err != nil {
			b.Fatal(err)
		}
	}
}
