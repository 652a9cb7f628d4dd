// Package words says what a case holds as the window's reader knows it: its places, its vehicle,
// its coolant and its checks, in plain words and the units chosen. It paints nothing.
package words

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// spot is a place in a case's document: the keys that lead there, the same in
// words, and those words without the names that a person may change.
type spot struct {
	keys []string
	said []string
	sure []string
}

// silent keys add nothing to the words: what they lead to speaks for itself.
func silent(key string) bool { return key == "readings" || key == "shown_c" }

// key is the place under a key.
func (p spot) key(key string) spot {
	next := spot{keys: with(p.keys, key), said: p.said, sure: p.sure}
	if !silent(key) {
		next.said, next.sure = with(p.said, keyWords(key)), with(p.sure, keyWords(key))
	}
	return next
}

// item is one of the things of the list at the place, with a name of its own where it has
// one, which is a label where a person gave it.
func (p spot) item(i int, name string, label bool) spot {
	said, sure, last := p.said, p.sure, p.keys[len(p.keys)-1]
	words := name
	switch {
	case !silent(last):
		said, sure = said[:len(said)-1], sure[:len(sure)-1]
		words = kit.L("window.place.one", oneWords(last), i+1)
		if name != "" {
			words = kit.L("window.place.one-named", oneWords(last), i+1, name)
		}
	case name == "":
		words = fmt.Sprint(i + 1)
	}
	next := spot{keys: with(p.keys, fmt.Sprintf("%04d", i)), said: with(said, words), sure: with(sure, words)}
	if label {
		next.sure = with(sure, kit.L("window.place.one", oneWords(last), i+1))
	}
	return next
}

// with is the list with one more, and leaves it as it was.
func with(list []string, one string) []string { return append(list[:len(list):len(list)], one) }

func (p spot) words() string { return inWords(p.said) }

func (p spot) sureWords() string { return inWords(p.sure) }

func inWords(steps []string) string { return kit.Capital(strings.Join(steps, " · ")) }

// keyWords is a key of the format in plain words; one that this program doesn't know is
// told as it stands.
func keyWords(key string) string { return known(kit.L("window.place.of-"+key), key) }

// oneWords is one of the things that a key lists.
func oneWords(key string) string { return known(kit.L("window.place.one-of-"+key), key) }

// known are the words found for a key; what isn't found is its own name.
func known(words, key string) string {
	if strings.HasPrefix(words, "window.") {
		return strings.ReplaceAll(key, "_", " ")
	}
	return words
}

// Place are the words of a path as anonymous.Line has it: repair.parts[0].name.
func Place(path string) string {
	var p spot
	for _, step := range strings.Split(path, ".") {
		key, rest, isItem := strings.Cut(step, "[")
		p = p.key(key)
		if n, err := strconv.Atoi(strings.TrimSuffix(rest, "]")); isItem && err == nil {
			p = p.item(n, "", false)
		}
	}
	return p.words()
}

// value is what stands at the place, as people of the trade say it.
func (p spot) value(v any, u units.Set) string {
	switch v := v.(type) {
	case bool:
		if v {
			return kit.L("window.place.yes")
		}
		return kit.L("window.place.no")
	case float64:
		return p.number(v, u)
	case string:
		return p.word(v)
	}
	return fmt.Sprint(v)
}

// last is the key that the place ends with.
func (p spot) last() string {
	for i := len(p.keys) - 1; i >= 0; i-- {
		if _, err := strconv.Atoi(p.keys[i]); err != nil {
			return p.keys[i]
		}
	}
	return ""
}

// number is said with the unit that its key ends with.
func (p spot) number(v float64, u units.Set) string {
	key, plain := p.last(), strconv.FormatFloat(v, 'f', -1, 64)
	switch key[strings.LastIndex(key, "_")+1:] {
	case "c":
		return u.Temp(diagram.Celsius(v)) + " " + string(u.Temperature)
	case "kpa":
		return u.PressureUnit(diagram.KPa(v))
	case "km":
		return u.DistUnit(v)
	case "kmh":
		return u.Speed(v)
	case "percent":
		return plain + " %"
	case "m":
		return units.Short(u.FromM(diagram.Metre(v)), 0) + " " + u.HeightUnit()
	case "l":
		return units.Short(u.FromL(v), 2) + " " + u.VolumeUnit()
	case "mm":
		return plain + " mm"
	case "v":
		return plain + " V"
	case "hours":
		return plain + " h"
	}
	return plain
}

// word is a word of the format as the trade says it, or what a person wrote.
func (p spot) word(word string) string {
	switch key := p.last(); {
	case key == "opened" || key == "taken":
		return Moment(word)
	case key == "layout":
		return kit.LayoutTitle(word)
	case key == "fan" && p.keys[0] == "loop":
		return cases.FanKind(word).Name()
	case key == "surface":
		return cases.Surface{Word: word}.Text().String()
	default:
		if name := vocabulary()[key]; name != nil {
			return name(word)
		}
		return word
	}
}

// vocabulary says the words of those keys that have a list of them.
func vocabulary() map[string]func(string) string {
	return map[string]func(string) string{
		"cause":        func(w string) string { return cases.Cause(w).Name() },
		"symptoms":     func(w string) string { return cases.Symptom(w).Name() },
		"stage":        func(w string) string { return cases.Stage(w).Name() },
		"heater":       func(w string) string { return cases.Heater(w).Name() },
		"gauge":        func(w string) string { return cases.Gauge(w).Name() },
		"motive":       func(w string) string { return cases.Motive(w).Name() },
		"base":         func(w string) string { return cases.Base(w).Name() },
		"fan":          func(w string) string { return cases.FanState(w).Name() },
		"looks":        func(w string) string { return cases.Looks(w).Name() },
		"flows":        func(w string) string { return cases.HeaterFlow(w).Name() },
		"kind":         func(w string) string { return cases.TestKind(w).Name() },
		"confirmed_by": func(w string) string { return cases.Confirmation(w).String() },
		"point":        func(w string) string { return say.PointName(diagram.Point(w)).String() },
	}
}

// Moment is a time of the format as a person reads it, here.
func Moment(word string) string {
	t, err := time.Parse(time.RFC3339Nano, word)
	if err != nil {
		return word
	}
	return t.Local().Format("2 Jan 2006, 15:04")
}
