package anonymous

import (
	"cmp"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"loopbook/cases"
)

// words are what mustn't be read, folded: without case and without the marks on
// letters.
type words struct {
	inside  []string // hidden inside other words too
	alone   []string // short ones, hidden only where they stand alone
	numbers []string // of a vehicle, a plate or a telephone, hidden whatever stands between their signs
}

// shortest of a name's parts that is hidden inside a word ("peckwell-hose.jpg",
// "HerrPeckwell"); a shorter one would take pieces out of ordinary words.
const shortest = 4

// secrets are the customer's name and its parts, the contact and its parts, the
// vehicle's number and its serial part, and what a person adds.
func secrets(c cases.Case, also []string) words {
	var w words
	for _, text := range append([]string{c.Customer.Name, c.Customer.Contact}, also...) {
		w.add(text)
		w.number(text)
		for _, figures := range calls.FindAllString(text, -1) {
			w.number(figures)
		}
		for _, group := range strings.FieldsFunc(text, func(r rune) bool { return unicode.IsSpace(r) || r == ',' || r == ';' }) {
			whose, domain, _ := strings.Cut(group, "@")
			w.add(domain) // whole: its parts are words as any
			for _, part := range strings.FieldsFunc(whose, apart) {
				if !particle(part) && (text != c.Customer.Contact || domain != "" || telling(part)) {
					w.add(part)
				}
			}
		}
	}
	if vin := together(c.Vehicle.VIN); len(vin) == 17 {
		w.add(vin)
		w.add(vin[9:])  // year, plant and serial number
		w.add(vin[11:]) // the serial number, as it stands on orders
	} else {
		w.add(c.Vehicle.VIN)
	}
	w.number(c.Vehicle.VIN)
	w.inside, w.alone = longestFirst(w.inside), longestFirst(w.alone)
	return w
}

// add takes a word in every spelling that people use for it.
func (w *words) add(text string) {
	folded := plainly(text)
	for _, s := range []string{folded, spelled(text), ringSpelled(text), plainVowels(folded)} {
		switch n := utf8.RuneCountInString(s); {
		case n < 2:
		case n < shortest && !strings.ContainsFunc(s, unspaced):
			w.alone = append(w.alone, s)
		default:
			w.inside = append(w.inside, s)
		}
	}
}

// unspaced reports whether a letter is of a writing that puts no blanks between words, where a name never stands alone.
func unspaced(r rune) bool { return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana) }

// leastNumber is how many signs a number has at least that is hidden in any spelling: fewer may be met by chance.
const leastNumber = 6

// number takes a text with a figure in it as signs alone: people write RT-PK 4711 and rtpk4711.
func (w *words) number(text string) {
	signs := string(fold(text).signs().letters)
	if len(signs) >= leastNumber && strings.ContainsFunc(signs, unicode.IsNumber) {
		w.numbers = append(w.numbers, signs)
	}
}

// longestFirst is the list without what stands in it twice.
func longestFirst(list []string) []string {
	slices.SortFunc(list, func(a, b string) int { return cmp.Or(len(b)-len(a), strings.Compare(a, b)) })
	return slices.Compact(list)
}

// particle reports whether a part of a name is no name by itself, or a number too
// short to tell anybody.
func particle(part string) bool {
	figures := strings.IndexFunc(part, func(r rune) bool { return !unicode.IsNumber(r) }) < 0
	return figures && len(part) < shortest || slices.Contains(strings.Fields(`von van der den de di da del la le el al zu zur du dos das ibn bin the and und mr mrs ms dr
		herr frau señor señora tel phone mobile mail`), strings.ToLower(part))
}

// telling reports whether a word of a contact may name somebody: "rings back after
// four" doesn't, and hiding "after" everywhere would spoil what is told.
func telling(word string) bool {
	return strings.ContainsFunc(word, func(r rune) bool { return unicode.IsUpper(r) || unicode.IsNumber(r) })
}

// together is a number without what stands between its signs.
func together(number string) string { return strings.Join(strings.FieldsFunc(number, apart), "") }

func apart(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsNumber(r) && !unicode.IsMark(r) }

// The patterns of what leads to a person whoever it is: a mail address; a telephone number (seven figures and more behind
// a + or a 0, with signs between, or ten grouped as in North America: NANP, no group of the first two begins with 0 or 1); a
// vehicle's number (ISO 3779: 17 signs without I, O and Q, the last four figures); a day. calls are figures as telephones have
// them, in what is known to be of a person.
var (
	mail  = regexp.MustCompile(`[\p{L}\p{N}._%+-]+@[\p{L}\p{N}-]+(\.[\p{L}\p{N}-]+)+`)
	phone = regexp.MustCompile(`(\+|\b0)\d[\d ()/.-]{5,}\d|(\([2-9]\d{2}\) ?|\b[2-9]\d{2}[-.])[2-9]\d{2}[-.]\d{4}\b|` +
		`\b[679]\d{2}(\d{6}| \d{3} \d{3}|( \d{2}){3})\b|\b[89]\d \d{3} \d{2} \d{2}\b`)
	vehicle = regexp.MustCompile(`[A-HJ-NPR-Za-hj-npr-z\d]{13}\d{4}`)
	day     = regexp.MustCompile(`(19|20)\d{2}[-./_]\d{1,2}[-./_]\d{1,2}(T[\d:.]+(Z|[+-]\d{2}:?\d{2})?)?|` +
		`(19|20)\d{2}(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])(\d{4}(\d{2})?)?|` + // as logs are named, with the time
		`(0?[1-9]|[12]\d|3[01])\.(\s?(0?[1-9]|1[0-2])\.\s?(19|20)\d{2}|(0?[1-9]|1[0-2])\.\d{2})|` + // 8.5. 92 are two values
		`\d{1,2}/\s?\d{1,2}/\s?(\d{4}|\d{2})|\d{1,2}-\d{1,2}-(19|20)\d{2}`)
	// A day with its month in a word, as English, German and Spanish have it: the number first, or behind it in English. The
	// longer names stand first; a small may isn't a month, since 12 may be too little.
	dayInWords = regexp.MustCompile(`(?:[12]\d|3[01]|0?[1-9])(?:st|nd|rd|th|º)?[ .\x{a0}/-]{0,2}(?:of |de )?` +
		`(?:(?i:january|february|januar|februar|märz|mär|mrz|mai|junio|juni|julio|juli|oktober|okt|dezember|dez|` +
		`enero|ene|febrero|marzo|abril|abr|mayo|agosto|ago|sept?iembre|octubre|noviembre|diciembre|dic|` + englishMonths + `)|May|MAY)` +
		`(?:[ .,\x{a0}/-]{1,2}(?:of |del? )?(?:19|20)\d{2}|(?:19|20)\d{2})?|` +
		`(?:(?i:` + englishMonths + `)|May|MAY)[ .\x{a0}-]{1,2}(?:[12]\d|3[01]|0?[1-9])(?:st|nd|rd|th)?(?:,? (?:19|20)\d{2})?`)
	calls = regexp.MustCompile(`\d[\d ()/.-]{4,}\d`)
)

// englishMonths are without May.
const englishMonths = `january|jan|february|feb|march|mar|april|apr|june|jun|july|jul|august|aug|september|sept|sep|october|oct|november|nov|december|dec`

// clean is the text with every secret taken out.
func (w words) clean(text string) string {
	text = mail.ReplaceAllLiteralString(text, Hidden)
	sign := func(r rune) bool { return !apart(r) }
	text = apartFrom(unicode.IsNumber, day, text)
	text = apartFrom(sign, dayInWords, text)
	text = withoutYears(text)
	text = apartFrom(sign, vehicle, text)
	text = phone.ReplaceAllLiteralString(text, Hidden)
	f := fold(text)
	signs := f.signs()
	var cut []span
	for _, secret := range w.numbers {
		cut = append(cut, signs.find([]rune(secret), false)...)
	}
	for _, secret := range w.inside {
		cut = append(cut, f.find([]rune(secret), false)...)
	}
	for _, secret := range w.alone {
		cut = append(cut, f.find([]rune(secret), true)...)
	}
	return without(text, cut)
}

// apartFrom hides what a pattern finds where no such sign stands beside it. (A word's end would be none beside an underscore,
// as logs have it in their names.)
func apartFrom(beside func(rune) bool, pattern *regexp.Regexp, text string) string {
	var cut []span
	for _, at := range pattern.FindAllStringIndex(text, -1) {
		before, _ := utf8.DecodeLastRuneInString(text[:at[0]])
		after, _ := utf8.DecodeRuneInString(text[at[1]:])
		if !beside(before) && !beside(after) {
			cut = append(cut, span{at[0], at[1]})
		}
	}
	return without(text, cut)
}

type span struct{ from, to int }

// find lists where the letters stand in the text.
func (f folded) find(secret []rune, alone bool) []span {
	var out []span
	for i := 0; i+len(secret) <= len(f.letters); i++ {
		end := i + len(secret)
		if !slices.Equal(f.letters[i:end], secret) {
			continue
		}
		if alone && (i > 0 && !apart(f.letters[i-1]) || end < len(f.letters) && !apart(f.letters[end])) {
			continue
		}
		out = append(out, span{f.from[i], f.to[end-1]})
	}
	return out
}

func without(text string, cut []span) string {
	if len(cut) == 0 {
		return text
	}
	slices.SortFunc(cut, func(a, b span) int { return a.from - b.from })
	var out strings.Builder
	at := 0
	for _, c := range cut {
		if c.to <= at {
			continue
		}
		if c.from >= at && !(c.from == at && strings.HasSuffix(out.String(), Hidden)) {
			out.WriteString(text[at:c.from])
			out.WriteString(Hidden)
		}
		at = c.to
	}
	out.WriteString(text[at:])
	return out.String()
}
