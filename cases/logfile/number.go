package logfile

import (
	"bytes"
	"math"
	"strings"
)

// decimal reads numbers whose decimal mark is a point or a comma. The other
// one may group thousands; where it can't, it is taken for a decimal mark too.
type decimal struct{ mark byte }

// number reads the number that cell begins with; rest is what follows it.
func (d decimal) number(cell []byte) (v float64, rest []byte, ok bool) {
	i, negative := sign(cell)
	var mantissa uint64
	digits, decimals, inDecimals := 0, 0, false
	for ; i < len(cell); i++ {
		c := cell[i]
		switch {
		case c >= '0' && c <= '9':
			digits++
			if mantissa < 1e18 {
				mantissa = mantissa*10 + uint64(c-'0')
			} else {
				decimals-- // beyond what a float64 can tell
			}
			if inDecimals {
				decimals++
			}
			continue
		case (c == '.' || c == ',') && !inDecimals && c != d.mark && digits > 0 && grouped(cell[i+1:]):
			continue
		case (c == '.' || c == ',') && !inDecimals:
			inDecimals = true
			continue
		case !inDecimals && digits > 0:
			if width := between(cell[i:]); width > 0 && grouped(cell[i+width:]) {
				i += width - 1
				continue
			}
		}
		break
	}
	if digits == 0 {
		return 0, cell, false
	}
	exponent, rest := exponentOf(cell[i:])
	v = scaled(mantissa, exponent-decimals)
	if negative {
		v = -v
	}
	return v, trim(rest), !math.IsInf(v, 0)
}

func sign(cell []byte) (width int, negative bool) {
	switch {
	case len(cell) > 0 && cell[0] == '-':
		return 1, true
	case len(cell) > 0 && cell[0] == '+':
		return 1, false
	case bytes.HasPrefix(cell, []byte("−")):
		return len("−"), true
	}
	return 0, false
}

// between is the width of what parts thousands and nothing else: a blank that no line breaks at (SI Brochure, 5.4.4), or
// an apostrophe.
func between(b []byte) int {
	for _, mark := range []string{"\u00a0", "\u202f", "\u2009", "'", "’"} {
		if bytes.HasPrefix(b, []byte(mark)) {
			return len(mark)
		}
	}
	return 0
}

// grouped reports whether three digits follow and then none.
func grouped(b []byte) bool {
	for i := 0; i < 3; i++ {
		if i >= len(b) || !isDigit(b[i]) {
			return false
		}
	}
	return len(b) == 3 || !isDigit(b[3])
}

func exponentOf(b []byte) (exponent int, rest []byte) {
	if len(b) < 2 || b[0] != 'e' && b[0] != 'E' {
		return 0, b
	}
	width, negative := sign(b[1:])
	i := 1 + width
	from := i
	for i < len(b) && isDigit(b[i]) && i-from < 4 {
		exponent = exponent*10 + int(b[i]-'0')
		i++
	}
	if i == from {
		return 0, b
	}
	if negative {
		exponent = -exponent
	}
	return exponent, b[i:]
}

func scaled(mantissa uint64, exponent int) float64 {
	v := float64(mantissa)
	switch {
	case mantissa == 0 || exponent == 0:
		return v
	case exponent < 0 && exponent >= -22: // powers up to here are exact: rounds once
		return v / math.Pow10(-exponent)
	}
	return v * math.Pow10(exponent)
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// missing reports whether a cell says that there is no value.
func missing(cell []byte) bool {
	if len(cell) == 0 {
		return true
	}
	if len(cell) > 8 {
		return false
	}
	switch strings.ToLower(string(cell)) {
	case "-", "--", "---", "–", "—", "nan", "n/a", "na", "#n/a", "null", "nul", "none", "nil", "inf", "-inf", "?", "*", "n.a.", "k.a.", "no data", "nodata":
		return true
	}
	return false
}
