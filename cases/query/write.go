package query

import (
	"math"
	"strconv"
	"strings"
	"time"

	"loopbook/cases"
)

// Write is the text that Parse reads as the conditions.
func Write(where []cases.Condition) string {
	var out []string
	for _, c := range where {
		words := make([]string, len(c.Words))
		for i, w := range c.Words {
			words[i] = quoted(w)
		}
		value := strings.Join(words, ",")
		switch c.Field {
		case cases.ByYear, cases.ByKm, cases.BySure:
			value = number(c.Low) + ".." + number(c.High)
		case cases.ByOpened:
			value = moment(c.Low, 0) + ".." + moment(c.High, -1)
		}
		text := string(c.Field) + ":" + value
		if c.Not {
			text = "-" + text
		}
		out = append(out, text)
	}
	return strings.Join(out, " ")
}

func number(v float64) string {
	if math.IsInf(v, 0) {
		return ""
	}
	return strconv.FormatFloat(math.Round(v*1e6)/1e6, 'f', -1, 64)
}

// moment is a day, shifted by some.
func moment(unix float64, days int) string {
	if math.IsInf(unix, 0) {
		return ""
	}
	return time.Unix(int64(unix), 0).UTC().AddDate(0, 0, days).Format(time.DateOnly)
}
