package repair

import (
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
)

// The bill says what can't be summed in its own place.
func TestTheBillInWords(t *testing.T) {
	r := cases.Repair{
		Currency: "EUR", TaxPercent: casetest.P(20.0), LabourHours: casetest.P(0.5), LabourPricePerHour: casetest.P(99.0),
		Parts: []cases.Part{{Name: "thermostat", Price: casetest.P(31.4)}, {Name: "seal"}},
	}
	b := billWords(r) // 31.40 + 49.50 = 80.90, and 16.18
	if b.Parts[0] != "31.40 EUR" || b.Parts[1] != "" || b.Labour != "49.50 EUR" || b.Tax != "16.18 EUR" || b.Total != "97.08 EUR" || b.Remark == "" {
		t.Errorf("%+v", b)
	}
	r.Currency = "coins"
	if b := billWords(r); b.Total != "" || !strings.Contains(b.Remark, "repair.currency") {
		t.Errorf("in coins: %+v", b)
	}
}

// The places are the currency's (ISO 4217): two of the euro, none of the yen, three
// of the Kuwaiti dinar.
func TestHoursWithoutAPriceAreToldBesideTheSum(t *testing.T) {
	r := cases.Repair{Parts: []cases.Part{{Name: "cap", Price: casetest.P(11.9)}}, LabourHours: casetest.P(0.3)}
	if b := billWords(r); b.Total != "11.90" || !strings.Contains(b.Remark, "hours") {
		t.Errorf("%+v", b)
	}
	for _, change := range []func(){func() { r.LabourPricePerHour = casetest.P(90.0) }, func() { r.LabourPricePerHour, r.LabourHours = nil, casetest.P(0.0) }, func() { r.Parts[0].Price, r.LabourHours = nil, casetest.P(0.3) }} {
		change()
		if b := billWords(r); strings.Contains(b.Remark, "hours") {
			t.Errorf("%+v", b)
		}
	}
}

func TestPricesHaveTheCurrencysPlaces(t *testing.T) {
	for _, tt := range []struct {
		code  string
		price float64
		want  string
	}{{"EUR", 64.9, "64.90"}, {"", 64.9, "64.90"}, {"JPY", 6490, "6490"}, {"KWD", 6.5, "6.500"}, {"EUR", 1e20, "100000000000000000000"}, {"coins", 64.9, "64.9"}} {
		if got := writePrice(tt.code, tt.price); got != tt.want {
			t.Errorf("writePrice(%q, %g) = %q, want %q", tt.code, tt.price, got, tt.want)
		}
	}
}

// 1.234 of a currency of two places is 1234 or 1.23; of one of three it is what it says.
func TestAPriceHasNoMorePlacesThanItsCurrency(t *testing.T) {
	for _, tt := range []struct {
		code, text string
		want       float64 // 0: refused
		source     string
	}{
		{"EUR", "1.234", 0, "ISO 4217: two places"},
		{"EUR", "1,234", 0, "the same"},
		{"EUR", "1.230", 0, "the same"},
		{"EUR", "1.234,50", 1234.5, "the same"},
		{"EUR", "31,4", 31.4, "the same"},
		{"", "1.234", 0, "most have two"},
		{"KWD", "1.234", 1.234, "ISO 4217: three places"},
		{"JPY", "1.5", 0, "ISO 4217: none"},
		{"JPY", "1 500", 1500, "the same"},
	} {
		v, err := readPrice(tt.code, tt.text)
		if (err != nil) != (tt.want == 0) || v != tt.want {
			t.Errorf("%s of %s is read as %g, %v; want %g (%s)", tt.text, tt.code, v, err, tt.want, tt.source)
		}
	}
	if _, err := readPrice("EUR", "1.234"); err == nil || !strings.HasSuffix(err.Error(), ": write 1234.00 or 1.23") {
		t.Errorf("the refusal says %v", err)
	}
}

// A bill's hand writes € and was told of a standard; a sign of many currencies is still asked about.
func TestTheEurosSignIsItsCode(t *testing.T) {
	for text, want := range map[string]string{" €": "EUR", "eur": "EUR", "$": "", "": ""} {
		if got, err := readCurrency(text); got != want || (err != nil) != (text == "$") {
			t.Errorf("%q is %q, %v", text, got, err)
		}
	}
}
