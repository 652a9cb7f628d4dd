package repair

import (
	"fmt"
	"math"
	"strings"

	"loopbook/app/ui/kit"
	"loopbook/cases/money"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// writePrice writes a price as money, without the currency's code. In what is no
// currency, or no bill has room for, it stands as it was typed.
func writePrice(code string, price float64) string {
	c, err := money.ParseCurrency(code)
	if err != nil {
		return kit.Plain(price)
	}
	a, err := c.FromMajor(price)
	if err != nil {
		return kit.Plain(price)
	}
	c.Code = ""
	return c.Write(a, say.EN)
}

// readCurrency is the code of what was typed: the euro's sign too, the one that is of a single currency.
func readCurrency(text string) (string, error) {
	if strings.TrimSpace(text) == "€" {
		text = "EUR"
	}
	c, err := money.ParseCurrency(text)
	return c.Code, err
}

// readPrice reads a price as money. In a currency of two places 1.234 may be meant as 1234 as
// well as 1.23, so that it is asked for again.
func readPrice(code, text string) (float64, error) {
	v, err := units.Number(text)
	if err != nil {
		return 0, err
	}
	c, err := money.ParseCurrency(code)
	if err != nil {
		c = money.Currency{Digits: 2} // what is no currency is told elsewhere
	}
	places := 0
	if i := strings.LastIndexAny(text, ",."); i >= 0 {
		places = len(strings.TrimSpace(text[i+1:]))
	}
	if places > c.Digits {
		whole := math.Round(v * math.Pow10(places))
		return 0, fmt.Errorf("%q has too many places: write %s or %s", text, writePrice(code, whole), writePrice(code, v))
	}
	return v, nil
}
