// Package vin reads a vehicle identification number: 17 letters and figures by
// ISO 3779, whose ninth is a check digit and whose tenth tells the model year
// where 49 CFR 565.15 holds (vehicles made for North America). Elsewhere the
// maker may put anything there, so what doesn't fit is a warning and never a
// refusal.
package vin

import "strings"

// length of a number since model year 1981.
const length = 17

// Fault says what is odd about a number.
type Fault string

// The faults. None of them keeps a number out of a case.
const (
	Fine       Fault = ""
	WrongSize  Fault = "size"        // not 17 signs
	WrongSign  Fault = "sign"        // a letter that no number has: I, O, Q, or none at all
	WrongCheck Fault = "check-digit" // the ninth doesn't go with the others
)

// Number is a number as read.
type Number struct {
	Text  string // capitals, without blanks and dashes
	Fault Fault
	At    int  // of a WrongSign, from 1
	Want  byte // what the ninth would be; 0 where it can't be reckoned
	Bound bool // the rule of the check digit binds this vehicle
}

// Read takes a number as somebody typed it.
func Read(text string) Number {
	n := Number{Text: tidy(text)}
	n.Bound = n.Text != "" && n.Text[0] >= '1' && n.Text[0] <= '5' // North America, 49 CFR 565.16 and ISO 3780
	signs := []rune(n.Text)                                        // those of another alphabet look alike and are longer
	if len(signs) != length {
		n.Fault = WrongSize
		return n
	}
	sum := 0
	for i, sign := range signs {
		v, ok := value(sign)
		if !ok {
			n.Fault, n.At = WrongSign, i+1
			return n
		}
		sum += v * weights()[i]
	}
	n.Want = "0123456789X"[sum%11]
	if n.Text[8] != n.Want {
		n.Fault = WrongCheck
	}
	return n
}

// tidy is the text in capitals, without what people put between its groups.
func tidy(text string) string {
	return strings.ToUpper(strings.NewReplacer(" ", "", "-", "", ".", "", "\t", "").Replace(strings.TrimSpace(text)))
}

// weights of the places (49 CFR 565.15, table IV); the check digit's own is 0.
func weights() [length]int {
	return [length]int{8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2}
}

// value of a sign (49 CFR 565.15, table III).
func value(sign rune) (int, bool) {
	if sign >= '0' && sign <= '9' {
		return int(sign - '0'), true
	}
	const letters, figures = "ABCDEFGHJKLMNPRSTUVWXYZ", "12345678123457923456789"
	at := strings.IndexRune(letters, sign)
	if at < 0 {
		return 0, false
	}
	return int(figures[at] - '0'), true
}

// Years are the model years that the tenth sign may mean, the older first: it
// comes round every thirty years. Cars and light trucks tell which by the seventh, a
// figure until 2009 and a letter since (49 CFR 565.15(d)(1), table VII). None
// where the sign is no year's.
func (n Number) Years() []int {
	const signs, first = "ABCDEFGHJKLMNPRSTVWXY123456789", 1980
	if len(n.Text) != length {
		return nil
	}
	at := strings.IndexByte(signs, n.Text[9])
	switch seventh := n.Text[6]; {
	case at < 0:
		return nil
	case !n.Bound:
		return []int{first + at, first + len(signs) + at}
	case seventh >= '0' && seventh <= '9':
		return []int{first + at}
	}
	return []int{first + len(signs) + at}
}
