package money_test

import (
	"errors"
	"math"
	"math/big"
	"math/rand"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/money"
	"loopbook/diagram/say"
)

// Digits of the minor unit: ISO 4217:2015, list one (from memory; the odd ones
// are those that have none or three).
func TestCurrencies(t *testing.T) {
	for code, digits := range map[string]int{"EUR": 2, "USD": 2, "usd": 2, "JPY": 0, "KRW": 0, "ISK": 0, "XOF": 0, "KWD": 3, "TND": 3, "CHF": 2, "XCG": 2, "ZWG": 2, "": 2} {
		if c, err := money.ParseCurrency(code); err != nil || c.Digits != digits {
			t.Errorf("ParseCurrency(%q) = %+v, %v, want %d digits", code, c, err, digits)
		}
	}
	for _, code := range []string{"EURO", "ABC", "€", "E"} {
		if _, err := money.ParseCurrency(code); !errors.Is(err, money.ErrCurrency) {
			t.Errorf("ParseCurrency(%q): %v", code, err)
		}
	}
	if n := len(money.Codes()); n < 150 || n > 170 {
		t.Errorf("%d codes", n)
	}
}

// Decimal texts are met exactly, halves go away from zero: the schoolbook's
// rule, by hand.
func TestPricesAreExact(t *testing.T) {
	for _, tt := range []struct {
		code string
		v    float64
		want money.Amount
		says string
	}{
		{"EUR", 31.4, 3140, "31.40 EUR"},
		{"EUR", 0.07, 7, "0.07 EUR"},
		{"EUR", 1.005, 101, "1.01 EUR"}, // as it is written; the binary number is below the half
		{"EUR", -1.005, -101, "−1.01 EUR"},
		{"EUR", 1.0049, 100, "1.00 EUR"},
		{"JPY", 1234.5, 1235, "1235 JPY"},
		{"KWD", 0.0005, 1, "0.001 KWD"},
		{"", 12, 1200, "12.00"},
	} {
		c, err := money.ParseCurrency(tt.code)
		if err != nil {
			t.Fatal(err)
		}
		got, err := c.FromMajor(tt.v)
		if err != nil || got != tt.want || c.Write(got, say.EN) != tt.says {
			t.Errorf("%g %s = %d (%q), %v; want %d (%q)", tt.v, tt.code, got, c.Write(got, say.EN), err, tt.want, tt.says)
		}
	}
	if got := (money.Currency{Code: "EUR", Digits: 2}).Write(3140, say.DE); got != "31,40 EUR" {
		t.Errorf("in German %q", got)
	}
}

// A bill by hand: 3 × 12.35 + 0.5 × 8.01 (4.005, so 4.01) + 1.25 h × 96.00 =
// 161.06; 19 % of it 30.6014, so 30.60.
func TestABillByHand(t *testing.T) {
	b, err := money.Of(cases.Repair{
		Currency: "EUR", TaxPercent: casetest.P(19.0), LabourHours: casetest.P(1.25), LabourPricePerHour: casetest.P(96.0),
		Parts: []cases.Part{
			{Name: "clamp", Quantity: casetest.P(3.0), Price: casetest.P(12.35)},
			{Name: "coolant, l", Quantity: casetest.P(0.5), Price: casetest.P(8.01)},
			{Name: "seal"},
		},
	})
	if err != nil || b.Subtotal != 16106 || b.Tax != 3060 || b.Total != 19166 || b.Unpriced != 1 || b.Parts[1].Sum != 401 || b.Labour.Sum != 12000 {
		t.Errorf("%+v, %v", b, err)
	}
	if b.Empty() {
		t.Error("nothing on it has a price")
	}
	if unpriced, err := money.Of(cases.Repair{Parts: []cases.Part{{Name: "seal"}}}); err != nil || !unpriced.Empty() {
		t.Errorf("a bill of one part without a price: %+v, %v", unpriced, err)
	}
	if got := b.Parts[1].Quantity.Write(say.DE); got != "0,5" {
		t.Errorf("quantity %q", got)
	}
}

// What must hold of any bill: the lines make the sum, the tax is within half a
// unit of the exact one, the order of the parts doesn't matter, and what is too
// large is refused.
func TestSumsHold(t *testing.T) {
	dice := rand.New(rand.NewSource(7))
	for n := 0; n < 20000; n++ {
		r := randomRepair(dice)
		b, err := money.Of(r)
		if err != nil {
			t.Fatalf("%+v: %v", r, err)
		}
		sum := money.Amount(0)
		for _, l := range b.Parts {
			sum += l.Sum
			checkRounded(t, int64(l.Sum), int64(l.Quantity), int64(*l.Each), 1000)
		}
		if b.Labour != nil {
			sum += b.Labour.Sum
		}
		if sum != b.Subtotal || b.Total != b.Subtotal+b.Tax {
			t.Fatalf("lines make %d, bill says %d + %d = %d", sum, b.Subtotal, b.Tax, b.Total)
		}
		checkRounded(t, int64(b.Tax), int64(b.Subtotal), int64(*b.TaxPercent), 100_000)
		dice.Shuffle(len(r.Parts), func(i, j int) { r.Parts[i], r.Parts[j] = r.Parts[j], r.Parts[i] })
		again, err := money.Of(r)
		if err != nil || again.Total != b.Total {
			t.Fatalf("in another order %d, %v, not %d", again.Total, err, b.Total)
		}
	}
}

// checkRounded holds got against a·b/by in exact arithmetic.
func checkRounded(t *testing.T, got, a, b, by int64) {
	t.Helper()
	twice := new(big.Int).Mul(big.NewInt(a), big.NewInt(2*b))
	off := twice.Sub(twice, new(big.Int).Mul(big.NewInt(got), big.NewInt(2*by)))
	if off.CmpAbs(big.NewInt(by)) > 0 {
		t.Fatalf("%d·%d/%d is rounded to %d", a, b, by, got)
	}
}

func randomRepair(dice *rand.Rand) cases.Repair {
	some := func(most float64, digits int) *float64 {
		to := math.Pow(10, float64(digits))
		v := math.Round(dice.Float64()*most*to) / to
		return &v
	}
	r := cases.Repair{Currency: money.Codes()[dice.Intn(len(money.Codes()))], TaxPercent: some(100, 2)}
	for i := dice.Intn(20); i > 0; i-- {
		p := cases.Part{Quantity: some(50, 3), Price: some(1e5, 4)}
		if dice.Intn(5) == 0 {
			*p.Price = -*p.Price // an old part given back
		}
		r.Parts = append(r.Parts, p)
	}
	if dice.Intn(2) == 0 {
		r.LabourHours, r.LabourPricePerHour = some(60, 2), some(300, 2)
	}
	return r
}

func TestTheTooLargeIsRefused(t *testing.T) {
	for _, v := range []float64{1e14, 1e300, math.Inf(1), math.NaN(), -1e200} {
		for _, r := range []cases.Repair{
			{Parts: []cases.Part{{Price: &v}}},
			{Parts: []cases.Part{{Price: casetest.P(1.0), Quantity: &v}}},
			{LabourHours: &v, LabourPricePerHour: casetest.P(10.0)},
			{TaxPercent: &v, Parts: []cases.Part{{Price: casetest.P(1.0)}}},
		} {
			if b, err := money.Of(r); !errors.Is(err, money.ErrTooLarge) {
				t.Errorf("%g: %+v, %v", v, b, err)
			}
		}
	}
	million := 9e6
	if _, err := money.Of(cases.Repair{Parts: []cases.Part{{Price: &million, Quantity: &million}}}); !errors.Is(err, money.ErrTooLarge) {
		t.Errorf("a product of two fine numbers: %v", err)
	}
}
