package report

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// words writes what may be unknown; the unknown is "".
type words struct{ units.Set }

// by says the findings' sentences.
func (w words) by() say.Speaker { return say.English().With(w.Set) }

func (w words) temp(c *diagram.Celsius) string {
	if c == nil {
		return ""
	}
	return w.Temp(*c) + " " + string(w.Temperature)
}

func (w words) pressure(p *diagram.KPa) string {
	if p == nil {
		return ""
	}
	return w.PressureUnit(*p)
}

func (w words) distance(km *float64) string {
	if km == nil {
		return ""
	}
	return w.DistUnit(*km)
}

func (w words) speed(kmh *float64) string {
	if kmh == nil {
		return ""
	}
	return w.Speed(*kmh)
}

// measured is a reading with how far it may be off.
func (w words) measured(r evidence.Reading) string {
	if r.UncertainK < 0.5 {
		return w.Temp(r.TrueC)
	}
	return w.Temp(r.TrueC) + " ± " + w.Delta(r.UncertainK)
}

// span is a difference's expected range; an end may be open.
func (w words) span(d evidence.Delta) string {
	switch low, high := d.ExpectedLowK, d.ExpectedHighK; {
	case low != nil && high != nil:
		return w.DeltaRange(*low, *high)
	case low != nil:
		return "at least " + w.Delta(*low)
	case high != nil:
		return "up to " + w.Delta(*high)
	}
	return ""
}

// number writes a quantity with its unit.
func number[T ~float64](v *T, unit string) string {
	if v == nil {
		return ""
	}
	return strings.TrimSpace(decimal(float64(*v)) + " " + unit)
}

// decimal writes up to three digits behind the point.
func decimal(v float64) string {
	text := strings.TrimRight(strconv.FormatFloat(v, 'f', 3, 64), "0")
	if text = strings.TrimSuffix(text, "."); text == "-0" {
		return "0"
	}
	return text
}

func whole(v *int) string {
	if v == nil {
		return ""
	}
	return strconv.Itoa(*v)
}

// yes picks the word for a check's answer.
func yes(v *bool, isSo, isNot string) string {
	switch {
	case v == nil:
		return ""
	case *v:
		return isSo
	}
	return isNot
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

// names are words of the format in those of the trade.
func names[T interface{ Name() string }](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = w.Name()
	}
	return out
}

// capital begins a sentence.
func capital(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

func count(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
