package ensemble

import (
	"testing"

	"loopbook/diagram"
)

// Two settings that differ are never one crowd, whose cars would be held against the wrong thermostat.
func TestAKeyIsOfOneSetting(t *testing.T) {
	l, err := diagram.LoopByID("outlet-thermostat")
	if err != nil {
		t.Fatal(err)
	}
	key := func(opens, full diagram.Celsius, cap diagram.KPa) string {
		return Setting{Loop: l, OpensC: &opens, FullC: &full, CapKPa: &cap}.Key()
	}
	if a, b := key(88.5, 95, 90), key(88.59, 59, 0); a == b {
		t.Errorf("two thermostats are the crowd %q", a)
	}
}
