package logfile

import (
	"slices"
	"strings"
	"unicode"
)

// vocabulary is how columns are named.
type vocabulary struct {
	phrases []phrase
	foreign map[string]bool
}

func newVocabulary() vocabulary { return vocabulary{phrases(), foreign()} }

// keyOf is what a name with or without its unit stands for, or "".
func (v vocabulary) keyOf(text string) string {
	name, _, _ := cutUnit(text)
	key, _ := v.named(fold(name))
	return key
}

func (v vocabulary) namesCoolant(text string) bool { return v.keyOf(text) == Ect }

// phrase is a way to name a column, in folded words.
type phrase struct {
	key   string
	words []string
	whole bool // only if the name has no other word
}

// phrases are plain words of the trade and the generic names of scan tools in
// English, German and Spanish; those behind "=" must be the whole name. From
// memory.
func phrases() []phrase {
	var out []phrase
	for _, key := range Keys() {
		for _, name := range strings.Split(namesOf(key), ",") {
			name, whole := strings.CutPrefix(strings.TrimSpace(name), "=")
			out = append(out, phrase{key, fold(name), whole})
		}
	}
	return out
}

func namesOf(key string) string {
	switch key {
	case Time:
		return "time, elapsed time, elapsed, time stamp, timestamp, date time, datetime, =seconds, =milliseconds, =minutes, =clock, =t," +
			"zeit, uhrzeit, laufzeit, zeitstempel, zeitpunkt, datum zeit, datum uhrzeit, =sekunden, =minuten," +
			"tiempo, hora, fecha hora, marca tiempo, tiempo transcurrido, =segundos, =minutos"
	case Ect:
		return "ect, clt, coolant temperature, coolant temp, engine coolant temperature, engine coolant temp, =coolant, =engine coolant," +
			"water temperature, water temp, engine temperature, engine temp, motor temp," +
			"kühlmitteltemperatur, kühlmitteltemp, kühlmittel temperatur, kühlmittel temp, =kühlmittel, kühlwassertemperatur, kühlwassertemp," +
			"kühlwasser temperatur, =kühlwasser, wassertemperatur, motortemperatur," +
			"temperatura refrigerante, temp refrigerante, temperatura líquido refrigerante, temp líquido refrigerante," +
			"temperatura refrigerante motor, =refrigerante, temperatura motor, temperatura agua, temp agua"
	case RPM:
		return "rpm, engine speed, engine rpm, engine revs, engine revolutions, =revs, =revolutions, =rev," +
			"drehzahl, motordrehzahl, motor drehzahl," +
			"revoluciones, revoluciones motor, régimen motor, régimen giro, velocidad motor, velocidad giro motor"
	case Speed:
		return "vehicle speed, road speed, ground speed, vss, car speed, =speed, gps speed, speed gps, =km/h, =kmh, =mph," +
			"geschwindigkeit, fahrzeuggeschwindigkeit, fahrgeschwindigkeit, =tempo," +
			"velocidad, velocidad vehículo"
	case Intake:
		return "iat, intake air temperature, intake air temp, intake temperature, intake temp, =intake air, =intake, inlet air temperature, inlet air temp, inlet temp," +
			"manifold air temperature, ansauglufttemperatur, ansauglufttemp, ansaugluft temperatur, ansaugluft temp, =ansaugluft," +
			"temperatura aire admisión, temp aire admisión, temperatura admisión, temp admisión, =aire admisión"
	}
	return "engine load, calculated load, calculated engine load, calculated load value, load value, absolute load, absolute load value, =load," +
		"motorlast, =last, lastwert, berechnete last, =carga, carga motor, carga calculada, carga calculada motor"
}

// foreign are words of other quantities: a column whose name has one is none
// of those that are read, however much the rest of its name sounds like it.
func foreign() map[string]bool {
	const words = "oil öl öltemperatur aceite ambient umgebung umgebungstemperatur aussen außen aussentemperatur außentemperatur outside exterior ambiente " +
		"fuel kraftstoff kraftstofftemperatur combustible exhaust abgas abgastemperatur escape catalyst cat level füllstand nivel pressure druck saugrohrdruck presión " +
		"throttle pedal drossel drosselklappe acelerador mariposa flow caudal luftmasse voltage volt volts spannung tensión battery batterie batería trim advance timing lambda oxygen torque drehmoment par " +
		"gear gang marcha odometer distance consumption verbrauch consumo index counter transmission getriebe getriebetemperatur gearbox " +
		"cabin setpoint target desired soll sollwert sollwärme sollgeschwindigkeit solldrehzahl objetivo deseada fan lüfter lüfterdrehzahl ventilador radiator kühler radiador outlet auslass salida " +
		"latitude longitude altitude injection einspritzzeit einspritzung inyección ignition zündung encendido dwell delay pulse " +
		"wheel rad rueda turbine turbo idle leerlauf ralentí pump pumpe bomba shaft wind cruise limit max maximum min minimum blower electrical generator alternator distancia charge egr warning fault error raw count"
	out := map[string]bool{}
	for _, w := range strings.Fields(words) {
		for _, folded := range fold(w) {
			out[folded] = true
		}
	}
	return out
}

// fold cuts a name into words in small letters without accents. Words that
// tell nothing are left out. Umlauts fold like their two-letter spelling.
func fold(name string) []string {
	var words []string
	for _, w := range strings.FieldsFunc(spaced(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		switch w = plain(w); w {
		case "de", "del", "la", "el", "of", "the", "der", "des", "und", "and", "y", "sensor", "signal", "value", "wert", "valor", "obd", "pid", "actual", "current", "ist":
		default:
			words = append(words, w)
		}
	}
	return words
}

// spaced parts words that are only told apart by a capital letter.
func spaced(name string) string {
	var b strings.Builder
	before := ' '
	for _, r := range name {
		if unicode.IsUpper(r) && unicode.IsLower(before) {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		before = r
	}
	return b.String()
}

func plain(word string) string {
	return strings.NewReplacer("ä", "a", "ö", "o", "ü", "u", "ß", "ss", "á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ñ", "n",
		"ae", "a", "oe", "o", "ue", "u").Replace(strings.ToLower(word))
}

// named is the key that a heading names, and how well: 0 to 200.
func (v vocabulary) named(words []string) (key string, score int) {
	if v.others(words) {
		return "", 0
	}
	total := len(strings.Join(words, ""))
	for _, p := range v.phrases {
		if !contains(words, p.words) || p.whole && len(words) != len(p.words) {
			continue
		}
		letters := len(strings.Join(p.words, ""))
		if s := 100*letters/total + min(letters, 100); s > score {
			key, score = p.key, s
		}
	}
	return key, score
}

// others reports whether words name another quantity.
func (v vocabulary) others(words []string) bool {
	return slices.ContainsFunc(words, func(w string) bool { return v.foreign[w] })
}

// contains reports whether part stands in words, in one piece.
func contains(words, part []string) bool {
	for i := 0; i+len(part) <= len(words); i++ {
		if slices.Equal(words[i:i+len(part)], part) {
			return true
		}
	}
	return false
}
