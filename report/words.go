package report

import (
	"math"
	"strings"
	"time"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// The words for what may be unknown: the unknown says nothing.

// temp is a temperature with its unit, to a tenth where it was noted to one: 113 °C are 235 °F, as on the drawing.
func temp(c *diagram.Celsius) say.Text {
	switch {
	case c == nil:
		return say.Text{}
	case *c == diagram.Celsius(math.Round(float64(*c))):
		return say.Value(*c)
	}
	return say.Of("value.tenth", *c)
}

// known is what is said of a value, if it is known.
func known[T any](v *T, words func(T) say.Text) say.Text {
	if v == nil {
		return say.Text{}
	}
	return words(*v)
}

func distance(km *float64) say.Text {
	return known(km, func(km float64) say.Text { return say.Value(say.Km(km)) })
}

func speed(kmh *float64) say.Text {
	return known(kmh, func(kmh float64) say.Text { return say.Value(say.Kmh(kmh)) })
}

func litres(v *float64) say.Text {
	return known(v, func(v float64) say.Text { return say.Of("record.volume", diagram.Litre(v)) })
}

// whole is a quantity by itself.
func whole[T any](v *T) say.Text {
	return known(v, func(v T) say.Text { return say.Value(v) })
}

// quantity is a number in a template of the catalogue that gives it its unit.
func quantity[T any](key string, v *T) say.Text {
	return known(v, func(v T) say.Text { return say.Of(key, v) })
}

// texts are the words of a list.
func texts[T interface{ Text() say.Text }](list []T) []say.Text {
	out := make([]say.Text, len(list))
	for i, x := range list {
		out[i] = x.Text()
	}
	return out
}

// yes picks the words for a check's answer.
func yes(v *bool, isSo, isNot say.Text) say.Text {
	switch {
	case v == nil:
		return say.Text{}
	case *v:
		return isSo
	}
	return isNot
}

// yesNo is yes in one word.
func yesNo(v *bool) say.Text { return yes(v, say.Of("yes"), say.Of("no")) }

// span is a difference's expected range; an end may be open.
func span(d evidence.Delta) say.Text {
	switch low, high := d.ExpectedLowK, d.ExpectedHighK; {
	case low != nil && high != nil:
		return say.Of("record.between", *low, *high)
	case low != nil:
		return say.Of("record.at-least", *low)
	case high != nil:
		return say.Of("record.up-to", *high)
	}
	return say.Text{}
}

// between is a range of temperatures without its unit.
func (p *paper) between(r *evidence.Range) string {
	if r == nil {
		return ""
	}
	return p.by.Units.TempRange(r.LowC, r.HighC)
}

// bare is a temperature without its unit, to a tenth.
func (p *paper) bare(c *diagram.Celsius) string {
	if c == nil {
		return ""
	}
	return p.by.Fill("{0.1#}", *c)
}

// decimal is a number as the language writes it, or nothing.
func (p *paper) decimal(v *float64) string {
	if v == nil {
		return ""
	}
	return p.by.Fill("{0.3}", *v)
}

// moment is a time to the minute in its own zone.
func moment(t time.Time) string {
	switch _, offset := t.Zone(); {
	case t.IsZero():
		return ""
	case offset == 0:
		return t.Format("2006-01-02 15:04 UTC")
	}
	return t.Format("2006-01-02 15:04 UTC-07:00")
}

// day is a date by ISO 8601, or nothing.
func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format(time.DateOnly)
}

// join puts what is known in a row.
func join(sep string, parts ...string) string {
	var known []string
	for _, p := range parts {
		if p != "" {
			known = append(known, p)
		}
	}
	return strings.Join(known, sep)
}
