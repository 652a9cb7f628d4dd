package logfile

import (
	"bytes"
	"time"
)

// readDate reads 2018-02-16, 16.02.2018, 2/16/18, 02-16-2018, 16-Feb-2018 as days since 1970.
func readDate(b []byte, monthFirst bool) (days int64, ok bool) {
	a, rest, ok := readInt(b)
	if !ok || len(rest) < 4 || !bytes.ContainsRune([]byte("-./"), rune(rest[0])) {
		return 0, false
	}
	separator, named := rest[0], false
	m, rest, ok := readInt(rest[1:])
	if !ok {
		m, rest, named = readMonth(rest)
	}
	if !ok && !named || len(rest) < 2 || rest[0] != separator {
		return 0, false
	}
	c, rest, ok := readInt(rest[1:])
	if !ok || len(rest) > 0 {
		return 0, false
	}
	year, month, day := c, m, a
	switch {
	case a > 31:
		year, day = a, c
	case monthFirst && separator != '.' && !named:
		month, day = a, m
	}
	return daysOf(year, month, day)
}

// months are their short names in English, German and Spanish (from memory). What is longer comes first.
var months = [...][]string{{"jan", "ene"}, {"feb"}, {"märz", "mar", "mär", "mrz"}, {"apr", "abr"}, {"may", "mai"}, {"juni", "jun"}, {"juli", "jul"},
	{"aug", "ago"}, {"sept", "sep"}, {"oct", "okt"}, {"nov"}, {"dec", "dez", "dic"}}

func readMonth(b []byte) (month int, rest []byte, ok bool) {
	for i, names := range months {
		for _, name := range names {
			if len(b) >= len(name) && bytes.EqualFold(b[:len(name)], []byte(name)) {
				return i + 1, bytes.TrimPrefix(b[len(name):], []byte(".")), true
			}
		}
	}
	return 0, b, false
}

func daysOf(year, month, day int) (int64, bool) {
	if year < 100 {
		year += 2000
	}
	if month < 1 || month > 12 || day < 1 || day > 31 || year < 1900 || year > 2200 {
		return 0, false
	}
	return time.Date(year, time.Month(month), day, 0, 0, 0, 0, time.UTC).Unix() / dayS, true
}
