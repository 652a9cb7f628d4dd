package evidence_test

import (
	"testing"

	"loopbook/cases/evidence"
	"loopbook/diagram"
)

// A cold bleed line on a hot engine is a blocked line or a low level (common practice). Where nothing passes the
// thermostat, and on an engine that warms up still, it may well be cold.
func TestAColdBleedLineOnAHotEngineIsTold(t *testing.T) {
	for name, tt := range map[string]struct {
		s    *scene
		line float64
		want bool
	}{
		"cold":                     {healthy("inlet-thermostat-bottle", warmIdle), 26, true},
		"warm":                     {healthy("inlet-thermostat-bottle", warmIdle), 70, false},
		"a cold engine's":          {healthy("inlet-thermostat-bottle", cold5), 22, false},
		"behind a shut thermostat": {healthy("inlet-thermostat-bottle", warm2500).shut(115), 26, false},
	} {
		flag := find(analyst(t).Analyse(toCase(tt.s.set(diagram.BottleBleed, tt.line))), "bleed-line-cold")
		if (flag != nil) != tt.want || flag != nil && flag.Severity != evidence.Look {
			t.Errorf("%s: %+v", name, flag)
		}
	}
}
