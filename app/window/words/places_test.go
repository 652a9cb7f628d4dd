package words

import (
	"reflect"
	"strings"
	"testing"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Every key of the format has words, and so has one of what each of its lists holds.
func TestEveryPlaceOfACaseHasWords(t *testing.T) {
	var look func(reflect.Type)
	look = func(of reflect.Type) {
		for i := range of.NumField() {
			key, inner := of.Field(i).Tag.Get("json"), of.Field(i).Type
			switch {
			case key == "" || key == "-" || key == "format" || key == "version":
				continue
			case !silent(key) && strings.HasPrefix(kit.L("window.place.of-"+key), "window."):
				t.Errorf("%s.%s has no words", of, key)
			}
			if inner.Kind() == reflect.Slice && inner.Elem().Kind() == reflect.Struct {
				if inner = inner.Elem(); !silent(key) && strings.HasPrefix(kit.L("window.place.one-of-"+key), "window.") {
					t.Errorf("one of %s.%s has no words", of, key)
				}
			}
			if inner.Kind() == reflect.Struct && strings.HasSuffix(inner.PkgPath(), "cases") {
				look(inner)
			}
		}
	}
	look(reflect.TypeFor[cases.Case]())
}

func TestPlacesInWords(t *testing.T) {
	for path, want := range map[string]string{
		"lesson": "Lesson", "repair.parts[0].name": "Repair · part 1 · name", "rounds[1].taken": "Round 2 · taken",
		"photos[11].caption": "Photo 12 · caption", "vehicle.vin": "Vehicle · VIN", "rounds[0].glow_plug": "Round 1 · glow plug", "tags[2]": "Tag 3",
	} {
		if got := Place(path); got != want {
			t.Errorf("%s is %q, want %q", path, got, want)
		}
	}
}

// What stands in a file without its unit is read in a person's own.
func TestWhatACaseSaysHasUnits(t *testing.T) {
	c := cases.Case{
		Vehicle: cases.Vehicle{OdometerKm: casetest.P(160934.4)},
		Loop:    cases.Loop{Fan: "electric", CapKPa: casetest.P(diagram.KPa(110)), CapacityL: casetest.P(5.9)},
		Site:    cases.Site{AltitudeM: casetest.P(diagram.Metre(150))},
		Rounds: []cases.Round{{Label: "warm idle", Fan: cases.FanOff, SpeedKmh: casetest.P(80.0), Readings: []cases.Reading{
			{Point: diagram.RadIn, ShownC: casetest.P(diagram.Celsius(90.54)), Surface: cases.Surface{Word: "rubber"}},
		}}},
		Tests:   []cases.Test{{Kind: "cap", Holds: casetest.P(false)}},
		Verdict: cases.Verdict{Cause: "cap-weak", ConfirmedBy: cases.ByHoseMap},
	}
	_, same, err := Differences(c, c, units.US())
	if err != nil {
		t.Fatal(err)
	}
	says := map[string]string{}
	for _, r := range same {
		says[r.Where] = r.Left
	}
	hose := "Round 1, warm idle · " + say.Place(diagram.RadIn).String()
	for where, want := range map[string]string{
		"Vehicle · odometer":               "100\u00a0000 mi", // 1 mile is 1.609344 km: NIST SP 811, appendix B
		"Round 1, warm idle · speed":       "50 mph",          // 80 km/h over 1.609344 is 49.7: the same
		"Cooling loop · capacity":          "6.23 qt",         // 5.9 L over 0.9463529: NIST SP 811, appendix B
		"Where it was measured · altitude": "492 ft",          // 150 m over 0.3048: NIST SP 811, appendix B
		"Cooling loop · fan":               cases.FanKind("electric").Name(), "Round 1, warm idle · fan": cases.FanOff.Name(),
		hose:                "195 °F", // 90.54 × 1.8 + 32 = 194.97: NIST SP 811, appendix B
		hose + " · surface": "rubber",
		"Check 1, " + cases.TestKind("cap").Name() + " · holds": "no",
		"Verdict · confirmed by":                                cases.Confirmation(cases.ByHoseMap).String(),
	} {
		if got := says[where]; got != want {
			t.Errorf("%s says %q, want %q", where, got, want)
		}
	}
	d := c
	d.Rounds = []cases.Round{c.Rounds[0]}
	d.Rounds[0].Readings = []cases.Reading{{Point: diagram.RadIn, ShownC: casetest.P(diagram.Celsius(90.53)), Surface: cases.Surface{Word: "rubber"}}}
	if differ, _, err := Differences(c, d, units.Metric()); err != nil || len(differ) != 1 || differ[0].Left != "90.54" || differ[0].Right != "90.53" {
		t.Errorf("two readings that are written alike: %+v, %v", differ, err)
	}
}
