package diagnosis_test

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases/diagnosis"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// What a healthy loop would show of a difference is one range, on the hose map and in a reason:
// on an engine hotter than any healthy one it is the trade's.
func TestAReasonTellsTheRangeOfTheHoseMap(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 116, map[diagram.Point]float64{"heater_in": 112, "heater_out": 60})
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	want := diagnosis.Expecter{Table: b.table, Crowds: b.crowds}.Expect(&c, 0).Deltas["heater"]
	by := say.English()
	healthy := by.Fill("healthy {0#} to {1}", *want.LowK, *want.HighK)
	told := 0
	for _, cause := range r.Causes {
		for _, reason := range append(cause.For, cause.Against...) {
			if len(reason.Points) != 2 {
				continue
			}
			told++
			if got := by.Say(reason.Words); !strings.Contains(got, healthy) {
				t.Errorf("%s: %s, want %s", cause.Cause, got, healthy)
			}
		}
	}
	if told == 0 {
		t.Error("no cause has a reason by the heater's difference")
	}
}

// Many readings that agree speak for a sound loop together, where each by itself says too little to be told.
func TestReadingsThatAgreeSpeakTogether(t *testing.T) {
	b := newBench(t)
	c := idle("outlet-thermostat", 90, map[diagram.Point]float64{
		"housing": 88, "engine_out": 84, "rad_in": 83, "rad_out": 58, "pump_in": 57, "heater_in": 84, "heater_out": 75, "bypass": 84, "vent": 60,
	})
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	told := 0
	for _, cause := range r.Causes {
		for _, reason := range append(cause.For, cause.Against...) {
			if reason.Words.Key() == "reason.together" {
				told++
			}
		}
	}
	if first := r.Causes[0]; first.Cause != "none" || len(first.For) == 0 || told == 0 {
		t.Errorf("%s is first by %v; %d causes are told of by all together", first.Cause, first.For, told)
	}
}

// Who reads a reason has its numbers alone: a temperature that the cause's cars show and healthy ones don't isn't told
// against the cause, nor the other way about.
func TestAReasonsNumbersDontBelieIt(t *testing.T) {
	b, by := newBench(t), say.English()
	numbers := regexp.MustCompile(`(-?\d+) (?:°C|K); with this cause (-?\d+) to (-?\d+) (?:°C|K), healthy (-?\d+) to (-?\d+) `)
	c := idle("inlet-thermostat-bottle", 94, map[diagram.Point]float64{
		"housing": 75, "engine_out": 89, "rad_in": 77, "rad_out": 44, "pump_in": 43, "bypass": 80, "heater_in": 82, "heater_out": 58,
		"bottle_bleed": 31, "bottle_out": 24, "vent": 27,
	})
	*c.Site.AmbientC = 7
	r := b.rank(t, c, diagnosis.Prior{})
	r.Explain(len(r.Causes))
	told := 0
	for _, cause := range r.Causes {
		for _, reason := range append(cause.For, cause.Against...) {
			got := by.Say(reason.Words)
			m := numbers.FindStringSubmatch(got)
			if m == nil {
				continue
			}
			told++
			var v [5]float64
			for i := range v {
				v[i], _ = strconv.ParseFloat(m[i+1], 64)
			}
			within := func(low, high float64) bool { return low < v[0] && v[0] < high }
			outside := func(low, high float64) bool { return v[0] < low || v[0] > high }
			pro, con := within(v[1], v[2]) && outside(v[3], v[4]), outside(v[1], v[2]) && within(v[3], v[4])
			if pro && reason.Factor < 1 || con && reason.Factor > 1 {
				t.Errorf("%s, %.2f: %s", cause.Cause, reason.Factor, got)
			}
		}
	}
	if told < 10 {
		t.Errorf("%d reasons by temperatures, want ten and more", told)
	}
}
