package notebook

import (
	"errors"
	"strings"
	"time"
)

// period reads "2014", "2014-03" or a span of two of them ("2010-2015",
// "2014-03..2014-05") as a time from and a time before. Empty text is any time.
func period(text string) (from, to time.Time, err error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return from, to, nil
	}
	first, last := text, text
	if a, b, ok := strings.Cut(text, ".."); ok {
		first, last = strings.TrimSpace(a), strings.TrimSpace(b)
	} else if a, b, ok := strings.Cut(text, "-"); ok && len(strings.TrimSpace(b)) == 4 {
		first, last = strings.TrimSpace(a), strings.TrimSpace(b)
	}
	from, _, err = span(first)
	if err != nil {
		return time.Time{}, time.Time{}, err
	}
	_, to, err = span(last)
	if err != nil {
		return time.Time{}, time.Time{}, err
	}
	return from, to, nil
}

func span(text string) (from, to time.Time, err error) {
	if t, err := time.ParseInLocation("2006", text, time.Local); err == nil {
		return t, t.AddDate(1, 0, 0), nil
	}
	if t, err := time.ParseInLocation("2006-1", text, time.Local); err == nil {
		return t, t.AddDate(0, 1, 0), nil
	}
	return from, to, errors.New("write 2014, 2014-03 or 2010-2015")
}
