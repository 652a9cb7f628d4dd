package query

import (
	"errors"
	"strings"
	"time"
)

var errPeriod = errors.New("write 2014, 2014-03, 2014-03-12 or two of them as 2010..2015")

// period reads a year, a month, a day or a span of two of them as a time from and a
// time before; an end that is left out is open.
func period(text string, zone *time.Location) (from, to time.Time, err error) {
	text = strings.TrimSpace(text)
	first, last, span := strings.Cut(text, "..")
	if !span {
		last = first
	}
	if first+last == "" {
		return from, to, errPeriod
	}
	if first != "" {
		if from, _, err = stretch(first, zone); err != nil {
			return time.Time{}, time.Time{}, err
		}
	}
	if last != "" {
		if _, to, err = stretch(last, zone); err != nil {
			return time.Time{}, time.Time{}, err
		}
	}
	if !from.IsZero() && !to.IsZero() && !from.Before(to) {
		return time.Time{}, time.Time{}, errPeriod
	}
	return from, to, nil
}

func stretch(text string, zone *time.Location) (from, to time.Time, err error) {
	if t, err := time.ParseInLocation("2006", text, zone); err == nil {
		return t, t.AddDate(1, 0, 0), nil
	}
	if t, err := time.ParseInLocation("2006-1", text, zone); err == nil {
		return t, t.AddDate(0, 1, 0), nil
	}
	if t, err := time.ParseInLocation("2006-1-2", text, zone); err == nil {
		return t, t.AddDate(0, 0, 1), nil
	}
	return from, to, errPeriod
}
