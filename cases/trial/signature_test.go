package trial_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/trial"
	"loopbook/diagram"
	"loopbook/diagram/published"
)

// The key_delta of each fault's rows in testdata/trade/signatures.csv (common
// practice but for T1's and R1's) comes out between its low and high on most
// cars. Not on all: faults are drawn from noticeable to bad, the rows speak of
// coolant and these are hoses that the gun reads with its errors.
func TestFaultsShowTheirSignatures(t *testing.T) {
	const spreadK = 3 // IR9: what two readings of one place may part by
	list := trial.Cases(11, 20000, trial.Temperatures)
	sensor := minus(round.ect, engine)
	ectFar := minus(round.ect, far)
	for _, tt := range []struct {
		row, condition string
		cause          cases.Cause
		delta          value
	}{
		{"F01", "COLD5", "thermostat-stuck-open", ectFar},
		{"F01", "WIDLE", "thermostat-stuck-open", where(warmDay, minus(round.rating, round.ect))},
		{"F02", "COLD5", "thermostat-stuck-closed", where(outletSide, ectFar)},
		{"F02", "W2500", "thermostat-stuck-closed", where(outletSide, minus(point(diagram.Housing), point(diagram.EngineOut)))},
		{"F02i", "COLD5", "thermostat-stuck-closed", where(round.inlet, ectFar)},
		{"F02i", "WIDLE", "thermostat-stuck-closed", where(round.inlet, ectFar)},
		{"F02i", "W2500", "thermostat-stuck-closed", where(round.inlet, ectFar)},
		{"F02i", "HIDLE_FAN", "thermostat-stuck-closed", where(round.inlet, ectFar)},
		{"F03", "COLD5", "thermostat-late", ectFar},
		{"F04", "WIDLE", "thermostat-early", minus(round.ect, round.rating)},
		{"F05", "W2500", "radiator-restricted", where(over(8), across)},
		{"F06", "W2500", "radiator-airflow", where(over(8), across)},
		{"F07", "W2500", "fan-not-running", where(over(8), across)},
		{"F07", "HIDLE_FAN", "fan-not-running", where(over(8), across)},
		{"F08", "COLD5", "pump-weak", where(heaterFull, heaterDrop)},
		{"F09", "COLD5", "coolant-low-air", sensor},
		{"F10", "WIDLE", "lower-hose-collapse", where(warmDay, across)},
		{"F11", "WIDLE", "bypass-open", minus(engine, point(diagram.Bypass))},
		{"F11", "W2500", "bypass-open", where(round.inlet, minus(point(diagram.Housing), point(diagram.PumpIn)))},
		{"F12", "COLD5", "heater-core-restricted", where(heaterFull, heaterDrop)},
		{"F12", "WIDLE", "heater-core-restricted", where(heaterFull, heaterDrop)},
		{"F12", "W2500", "heater-core-restricted", where(heaterFull, heaterDrop)},
		{"F12", "HIDLE_FAN", "heater-core-restricted", where(heaterFull, heaterDrop)},
		{"F17", "WIDLE", "sensor-reads-low", sensor},
		{"F17", "W2500", "sensor-reads-low", sensor},
		{"F18", "WIDLE", "sensor-reads-high", sensor},
		{"F18", "W2500", "sensor-reads-high", sensor},
		{"F22", "WIDLE", "thermostat-heater-fault", where(warmDay, minus(round.ect, round.rating))},
		{"F23", "COLD5", "fan-always-running", ectFar},
		{"F23", "WIDLE", "fan-always-running", across},
		{"F23", "W2500", "fan-always-running", where(warmDay, across)},
		{"F23", "HIDLE_FAN", "fan-always-running", across},
		{"F25", "WIDLE", "heater-air-side", where(heaterFull, minus(point(diagram.HeaterIn), point(diagram.Vent)))},
	} {
		low, high := signature(t, tt.row, tt.condition)
		n, share := within(list, tt.cause, tt.condition, tt.delta, low-spreadK, high+spreadK)
		t.Logf("%s %s %s: %.0f %% of %d within %g to %g", tt.row, tt.condition, tt.cause, 100*share, n, low, high)
		if n < 12 || share < 0.5 {
			t.Errorf("%s %s: %.0f %% of %d rounds with %s are within %g to %g K, want most", tt.row, tt.condition, 100*share, n, tt.cause, low, high)
		}
	}
}

// signature is the row's range.
func signature(t *testing.T, row, condition string) (low, high float64) {
	t.Helper()
	for _, r := range published.Rows(t, "trade/signatures.csv") {
		if r["fault_id"] == row && r["condition"] == condition {
			return r.Number(t, "delta_low_C"), r.Number(t, "delta_high_C")
		}
	}
	t.Fatalf("signatures.csv has no row %s %s", row, condition)
	return 0, 0
}
