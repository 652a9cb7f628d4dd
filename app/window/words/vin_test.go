package words

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

func TestOddNumbersAreTold(t *testing.T) {
	for _, tt := range []struct {
		vin  string
		year int
		want string
	}{
		{"", 2005, ""},
		{"1G4AH59H45G118341", 2005, ""}, // 49 CFR 565.15, table V
		{"1G4AH59H45G118341", 2011, "model year 2005"},
		{"1G4AH59H55G118341", 2005, "should be 4"},
		{"WZZZZZ00ZAA000001", 2010, "another rule"},
		{"1G4AH59H45O118341", 2005, "Character 11"},
		{"118341", 2005, "this one has 6"},
	} {
		got := VIN(cases.Vehicle{VIN: tt.vin, Year: casetest.P(tt.year)})
		if (got == "") != (tt.want == "") || !strings.Contains(got, tt.want) {
			t.Errorf("%s of %d: %q, want %q", tt.vin, tt.year, got, tt.want)
		}
	}
}
