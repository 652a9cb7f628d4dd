package money

import (
	"fmt"
	"math/bits"
	"strconv"
	"strings"

	"loopbook/diagram/say"
)

// Amount is a sum in the smallest unit of its currency.
type Amount int64

// Thousandths is how many of something, in thousandths: pieces, hours, percent.
type Thousandths int64

// scaled reads a number's decimal text as an integer of so many digits behind
// the point, half away from zero. The shortest text of a number that a file
// held is that file's, so a price such as 31.40 is met exactly.
func scaled(v float64, digits int) (int64, error) {
	text := strconv.FormatFloat(v, 'f', -1, 64)
	whole, rest, _ := strings.Cut(strings.TrimPrefix(text, "-"), ".")
	up := len(rest) > digits && rest[digits] >= '5'
	for len(rest) < digits {
		rest += "0"
	}
	n, err := strconv.ParseInt(whole+rest[:digits], 10, 64)
	if err != nil || n >= largest {
		return 0, fmt.Errorf("%g: %w", v, ErrTooLarge) // NaN and the infinities too
	}
	if up {
		n++
	}
	if v < 0 {
		n = -n
	}
	return n, nil
}

// FromMajor is a price in major units of the currency, as a case has it.
func (c Currency) FromMajor(v float64) (Amount, error) {
	n, err := scaled(v, c.Digits)
	return Amount(n), err
}

// inThousandths is a quantity, as a case has it.
func inThousandths(v float64) (Thousandths, error) {
	n, err := scaled(v, 3)
	return Thousandths(n), err
}

// Write is an amount in major units with the currency's code, and with the
// decimal sign of the language.
func (c Currency) Write(a Amount, l say.Lang) string {
	text := l.Decimal(decimal(int64(a), c.Digits))
	if c.Code == "" {
		return text
	}
	return text + " " + c.Code
}

// Write is a quantity without noughts at its end.
func (t Thousandths) Write(l say.Lang) string {
	text := strings.TrimRight(decimal(int64(t), 3), "0")
	return l.Decimal(strings.TrimSuffix(text, "."))
}

func decimal(n int64, digits int) string {
	sign := ""
	if n < 0 {
		sign, n = "−", -n
	}
	text := fmt.Sprintf("%0*d", digits+1, n)
	if digits == 0 {
		return sign + text
	}
	at := len(text) - digits
	return sign + text[:at] + "." + text[at:]
}

// largest bounds every amount, so that no sum of a bill's lines can overflow
// unseen: a hundred thousand lines of it still fit.
const largest = 1e13

// times is a × b ÷ by, half away from zero; by is above zero. It refuses what
// is larger than any bill.
func times(a, b, by int64) (int64, error) {
	negative := (a < 0) != (b < 0)
	high, low := bits.Mul64(absolute(a), absolute(b))
	if high >= uint64(by) {
		return 0, ErrTooLarge
	}
	n, rest := bits.Div64(high, low, uint64(by))
	if rest >= uint64(by)-rest {
		n++
	}
	if n > largest {
		return 0, ErrTooLarge
	}
	if negative {
		return -int64(n), nil
	}
	return int64(n), nil
}

func absolute(v int64) uint64 {
	if v < 0 {
		return uint64(-v)
	}
	return uint64(v)
}
