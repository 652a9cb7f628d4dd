package say

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"loopbook/diagram"
	"loopbook/diagram/units"
)

// Speaker says texts in one language and one set of units. It is immutable.
// The zero Speaker speaks English.
type Speaker struct {
	Lang  Lang
	Units units.Set
	words map[string]string
}

// In is a speaker of a language. An error names the data that is at fault, or
// the language that isn't known.
func In(l Lang, u units.Set) (Speaker, error) {
	words, err := Catalogue(l)
	return Speaker{l, u, words}, err
}

// English speaks English in °C, kPa and km: what commands print.
func English() Speaker {
	s, err := In(EN, units.Metric())
	if err != nil {
		panic(err) // shipped data that the tests read
	}
	return s
}

// With speaks the same language in other units.
func (s Speaker) With(u units.Set) Speaker {
	s.Units = u
	return s
}

// Say is t in words. A template that isn't there says its name.
func (s Speaker) Say(t Text) string {
	if t.key != own {
		template, ok := s.catalogue()[t.key]
		if !ok {
			return t.key
		}
		return s.Fill(template, t.args...)
	}
	parts := make([]string, len(t.args))
	for i, a := range t.args {
		parts[i] = s.arg(a, shape{})
	}
	return strings.Join(parts, t.sep)
}

// catalogue is the speaker's; the zero Speaker has the English one.
func (s Speaker) catalogue() map[string]string {
	if s.words == nil {
		return English().words
	}
	return s.words
}

// Of says a template of the catalogue with its arguments.
func (s Speaker) Of(key string, args ...any) string { return s.Say(Of(key, args...)) }

// All says each text.
func (s Speaker) All(texts []Text) []string {
	out := make([]string, len(texts))
	for i, t := range texts {
		out[i] = s.Say(t)
	}
	return out
}

// Fill puts the arguments into a template's places. A place without its
// argument stays as it is, so that it is seen.
func (s Speaker) Fill(template string, args ...any) string {
	var out strings.Builder
	for {
		before, rest, found := strings.Cut(template, "{")
		out.WriteString(before)
		if !found {
			return out.String()
		}
		place, after, _ := strings.Cut(rest, "}")
		if p, ok := readShape(place); ok && p.arg < len(args) {
			out.WriteString(s.arg(args[p.arg], p))
		} else {
			out.WriteString("{" + place + "}")
		}
		template = after
	}
}

// shape is how an argument is to stand in its place.
type shape struct {
	arg     int
	digits  int      // behind the point, at most
	bare    bool     // without the unit
	capital bool     // at the beginning of a sentence
	forms   []string // the word for one, and for any other number
}

func readShape(place string) (p shape, ok bool) {
	place, forms, counted := strings.Cut(place, "|")
	if counted {
		p.forms = strings.Split(forms, "|")
	}
	if trimmed := strings.TrimSuffix(place, "^"); trimmed != place {
		place, p.capital = trimmed, true
	}
	if trimmed := strings.TrimSuffix(place, "#"); trimmed != place {
		place, p.bare = trimmed, true
	}
	arg, digits, fine := strings.Cut(place, ".")
	var err error
	if fine {
		if p.digits, err = strconv.Atoi(digits); err != nil {
			return p, false
		}
	}
	p.arg, err = strconv.Atoi(arg)
	return p, err == nil && p.arg >= 0 && (!counted || len(p.forms) == 2)
}

func (s Speaker) arg(a any, p shape) string {
	if p.forms != nil {
		return form(a, p.forms)
	}
	text := s.plain(a, p)
	if p.capital && text != "" {
		first, size := utf8.DecodeRuneInString(text)
		text = string(unicode.ToUpper(first)) + text[size:]
	}
	return text
}

// form is the word that goes with a number: English, German and Spanish have
// one for one and another for the rest.
func form(a any, forms []string) string {
	if n, ok := a.(int); ok && n == 1 {
		return forms[0]
	}
	return forms[1]
}

func (s Speaker) plain(a any, p shape) string {
	value, unit := s.quantity(a, p.digits)
	if unit != "" && !p.bare {
		value += " " + unit
	}
	return value
}

// quantity is an argument's number and its unit.
func (s Speaker) quantity(a any, digits int) (value, unit string) {
	u := s.Units
	switch v := a.(type) {
	case Text:
		return s.Say(v), ""
	case string:
		return v, ""
	case diagram.Celsius:
		return s.number(u.FromC(v), digits), string(u.Temperature)
	case diagram.DeltaK:
		return s.number(u.FromK(v), digits), u.DeltaUnit()
	case diagram.KPa:
		return s.number(u.FromKPa(v), max(digits, u.PressureDigits())), string(u.Pressure)
	case Kmh:
		return s.number(u.FromKm(float64(v)), digits), u.SpeedUnit()
	case Km:
		return units.Thousands(u.FromKm(float64(v))), u.DistanceUnit()
	case diagram.Metre:
		return s.number(u.FromM(v), digits), u.HeightUnit()
	case diagram.Litre:
		return s.number(u.FromL(float64(v)), digits), u.VolumeUnit()
	case float64:
		return s.number(v, digits), ""
	case fmt.Stringer:
		return v.String(), ""
	}
	return fmt.Sprint(a), ""
}

// number writes v with the language's decimal sign.
func (s Speaker) number(v float64, digits int) string {
	return s.Lang.Decimal(units.Short(v, digits))
}
