package evidence_test

import (
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
)

// The hose behind a shut thermostat is luke-warm by conduction, not as cold as the air: 30 K and
// more under the engine it tells by itself, without the housing before it (F02, "ECT minus upper
// hose" from 30 K on, testdata/trade/signatures.csv; common practice).
func TestALukewarmHoseBehindAHotEngineIsShutOff(t *testing.T) {
	for name, tt := range map[string]struct {
		layout    string
		ect, hose diagram.Celsius
		want      bool
	}{
		"luke-warm":              {"outlet-thermostat", 112, 48, true},
		"cooler by what is lost": {"outlet-thermostat", 112, 90, false},
		"just over its rating":   {"outlet-thermostat", 95, 48, false},
		"before the thermostat":  {"inlet-thermostat", 112, 48, false},
	} {
		c := &cases.Case{
			Loop: cases.Loop{Layout: tt.layout, ThermostatOpensC: casetest.P(diagram.Celsius(88))}, Site: cases.Site{AmbientC: casetest.P(diagram.Celsius(22))},
			Rounds: []cases.Round{{MinutesSinceStart: casetest.P(15.0), EngineRPM: casetest.P(800.0), EctC: &tt.ect, Readings: []cases.Reading{
				{Point: diagram.EngineOut, ShownC: &tt.hose}, {Point: diagram.RadIn, ShownC: casetest.P(tt.hose - 8)},
			}}},
		}
		if got := find(analyst(t).Analyse(c), "thermostat-not-opening") != nil; got != tt.want {
			t.Errorf("%s: told as shut %v, want %v", name, got, tt.want)
		}
	}
}
