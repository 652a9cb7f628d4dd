package cases_test

import (
	"reflect"
	"testing"

	"loopbook/cases"
)

// A key that the format has elsewhere is told with its place; one that no
// version knows is kept without a word.
func TestMisplacedKeysAreFound(t *testing.T) {
	c, err := cases.Decode([]byte(`{"format": "loopbook-case", "version": 1, "id": "01J", "opened": "2025-02-03T10:00:00Z",
		"symptoms": ["coolant-loss"], "shop_colour": "blue", "loop": {"ambient_c": 20},
		"rounds": [{"readings": [{"point": "rad_in", "shown_c": 80, "ect_c": 90}]}]}`))
	if err != nil {
		t.Fatal(err)
	}
	want := []cases.Misplacement{
		{Path: "loop.ambient_c", Belongs: []string{"site", "rounds[]"}},
		{Path: "rounds[0].readings[0].ect_c", Belongs: []string{"codes[].freeze_frame", "rounds[]", "logs[]"}},
		{Path: "symptoms", Belongs: []string{"complaint"}},
	}
	if got := cases.Misplaced(&c); !reflect.DeepEqual(got, want) {
		t.Errorf("Misplaced = %+v, want %+v", got, want)
	}
	if c.Extra["symptoms"] == nil || c.Extra["shop_colour"] == nil {
		t.Errorf("not kept: %v", c.Extra)
	}
	if got := cases.Misplaced(&cases.Case{}); got != nil {
		t.Errorf("an empty case has %v", got)
	}
}
