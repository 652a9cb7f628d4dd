// Package say turns what the program has to say into words.
//
// A Text names a template of the catalogue and what goes into it; nobody below
// the window and the papers writes sentences. A Speaker says a Text in a
// language and in the units that a person has chosen, so that a temperature is
// rounded once, in the unit it is read in.
//
// The templates lie under assets/words, a folder for each language and a file
// for each room: "The engine is at {0}, {1} above its rating." A place is
//
//	{0}      the first argument, a quantity with its unit, whole
//	{0.1}    to a tenth where it has one
//	{0#}     without its unit
//	{0^}     with a capital, to begin a sentence
//	{0|reading|readings}  the word that goes with the number
package say

import (
	"fmt"
	"math"

	"loopbook/diagram"
)

// Text is something to be said; the zero Text says nothing.
type Text struct {
	key  string // of the catalogue, or own
	args []any  // of the template; of own words, what is said one after the other
	sep  string // between own words
}

// Quantities that have no type of their own in package diagram.
type (
	Kmh float64 // a speed, in km/h
	Km  float64 // a distance, in km
)

// Of is the catalogue's template of that name with its arguments: numbers,
// diagram.Celsius, DeltaK, KPa, Metre and Litre, Kmh, Km, strings that are a person's own or
// an open standard's, and other Texts.
func Of(key string, args ...any) Text { return Text{key: key, args: args} }

// own is the key of words that aren't in the catalogue.
const own = ""

// Own is a person's own words, said in every language as they are.
func Own(words string) Text { return Text{key: own, args: []any{words}} }

// Value is a quantity by itself, whole.
func Value(v any) Text { return Text{key: own, args: []any{v}} }

// Signed is a difference to a tenth that says its direction.
func Signed(k diagram.DeltaK) Text {
	switch {
	case math.Abs(float64(k)) < unseenK:
		return Of("value.tenth", diagram.DeltaK(0))
	case k < 0:
		return Of("value.tenth", k)
	}
	return Of("value.plus", k)
}

// unseenK is a difference that is none once it is said in tenths: it has no sign.
const unseenK = 0.05

// List is several texts in a row, by commas.
func List(texts ...Text) Text { return row(", ", texts) }

// Items is several texts in a row, by semicolons: they may hold commas.
func Items(texts ...Text) Text { return row("; ", texts) }

// Sentences is several texts one after the other.
func Sentences(texts ...Text) Text { return row(" ", texts) }

func row(sep string, texts []Text) Text {
	var args []any
	for _, t := range texts {
		if !t.Empty() {
			args = append(args, t)
		}
	}
	if args == nil {
		return Text{}
	}
	return Text{key: own, args: args, sep: sep}
}

// Empty reports whether t says nothing.
func (t Text) Empty() bool { return t.key == own && len(t.args) == 0 }

// Key is the template's name, or "" where t is a person's own words.
func (t Text) Key() string { return t.key }

// String says t in English and in °C, kPa and km, for errors and for tests.
func (t Text) String() string { return English().Say(t) }

var _ fmt.Stringer = Text{}
