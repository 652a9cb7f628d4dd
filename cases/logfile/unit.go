package logfile

import "strings"

// dimension is what a unit measures.
type dimension int

const (
	otherwise dimension = iota // a unit, but of nothing that is read here
	duration
	temperature
	revolutions
	velocity
	share
)

// unit turns a file's values into the log's: value × factor + offset.
type unit struct {
	name           string
	of             dimension
	factor, offset float64
}

// unitOf knows the usual ways to write a unit.
func unitOf(text string) (unit, bool) {
	switch text = bare(text); strings.ToLower(text) {
	case "s", "sec", "secs", "second", "seconds", "sek", "sekunde", "sekunden", "seg", "segundo", "segundos":
		return unit{"s", duration, 1, 0}, true
	case "ms", "msec", "msek", "millisecond", "milliseconds", "millisekunden", "milisegundos":
		return unit{"ms", duration, 1e-3, 0}, true
	case "us", "µs", "μs", "microseconds":
		return unit{"µs", duration, 1e-6, 0}, true
	case "ns":
		return unit{"ns", duration, 1e-9, 0}, true
	case "min", "mins", "minute", "minutes", "minuten", "minutos":
		return unit{"min", duration, 60, 0}, true
	case "h", "hr", "hour", "hours", "std", "stunden", "horas":
		return unit{"h", duration, hourS, 0}, true
	case "°c", "c", "degc", "deg c", "deg. c", "deg.c", "° c", "ºc", "c°", "℃", "celsius", "centigrade", "degrees c", "degrees celsius", "grad c", "grad celsius", "grados c",
		"grados celsius", "grados centígrados", "centígrados":
		return unit{"°C", temperature, 1, 0}, true
	case "°f", "f", "degf", "deg f", "deg. f", "deg.f", "° f", "ºf", "f°", "℉", "fahrenheit", "degrees f", "degrees fahrenheit", "grad f", "grad fahrenheit", "grados f",
		"grados fahrenheit":
		return unit{"°F", temperature, 5.0 / 9, -32 * 5.0 / 9}, true
	case "k", "kelvin":
		return unit{"K", temperature, 1, -273.15}, true
	case "rpm", "1/min", "u/min", "r/min", "rev/min", "min-1", "min^-1", "min⁻¹", "/min", "upm":
		return unit{"1/min", revolutions, 1, 0}, true
	case "km/h", "kmh", "kph", "km/hr", "kmph", "kilometers/hour", "kilometres/hour", "kilometers per hour", "kilometres per hour":
		return unit{"km/h", velocity, 1, 0}, true
	case "mph", "mi/h", "mi/hr", "mile/h", "miles/h", "mls/h", "miles/hour", "miles per hour":
		return unit{"mph", velocity, 1.609344, 0}, true
	case "m/s", "m/sec", "meters/second", "metres/second", "meters per second", "metres per second":
		return unit{"m/s", velocity, 3.6, 0}, true
	case "%", "pct", "percent", "prozent", "por ciento":
		return unit{"%", share, 1, 0}, true
	case "kpa", "psi", "bar", "mbar", "hpa", "inhg", "g/s", "kg/h", "lb/min", "v", "mv", "volt", "a", "ma", "ohm", "nm", "km", "mi", "m", "l", "l/h", "l/100km", "mg", "mg/str", "hz", "°", "deg", "lambda", "bool", "on/off":
		return unit{text, otherwise, 1, 0}, true
	case "hh:mm:ss", "hh:mm", "mm:ss", "min:s":
		return unit{strings.ToLower(text), otherwise, 1, 0}, true
	}
	return unit{}, false
}

// bare strips what is written around a unit, and mends a degree sign that was
// encoded twice.
func bare(text string) string {
	return strings.Trim(strings.ReplaceAll(text, "Â", ""), " \t[](){}<>\u00a0")
}

// cutUnit takes the unit off the end of a heading.
func cutUnit(heading string) (name string, u unit, ok bool) {
	if u, ok := unitOf(heading); ok {
		return heading, u, true
	}
	for i, r := range heading {
		if i == 0 || !strings.ContainsRune(" _/,;[({<-", r) {
			continue
		}
		bracketed := strings.ContainsRune("[({<", r)
		end := heading[i+len(string(r)):]
		if u, ok := unitOf(end); ok && strings.TrimSpace(heading[:i]) != "" {
			if !bracketed && u.of == revolutions && !strings.ContainsAny(end, "/-1") {
				return heading, u, true // a word such as RPM is a name too
			}
			return heading[:i], u, true
		}
	}
	return heading, unit{}, false
}

// dimensionOf is what the values of a key measure.
func dimensionOf(key string) dimension {
	switch key {
	case Time:
		return duration
	case Ect, Intake:
		return temperature
	case RPM:
		return revolutions
	case Speed:
		return velocity
	}
	return share
}

// assumedUnit is the unit of a key when the file doesn't tell it.
func assumedUnit(key string) unit {
	switch dimensionOf(key) {
	case duration:
		return unit{"s", duration, 1, 0}
	case temperature:
		return unit{"°C", temperature, 1, 0}
	case revolutions:
		return unit{"1/min", revolutions, 1, 0}
	case velocity:
		return unit{"km/h", velocity, 1, 0}
	}
	return unit{"%", share, 1, 0}
}
