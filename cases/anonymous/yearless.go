package anonymous

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A day without its year is written as many a measured value is: 12.3 are volts too, 1/2 a throttle, 10-12 psi. It counts as
// a day where a German puts the stop behind the month, or where a word before it says so; where both may be meant it stays, and
// is told with the texts that are to be read. Ways to write one are of common practice in each language, no source.
var (
	yearless = regexp.MustCompile(`(\d{1,2})([./-])(\d{1,2})(\.?)`)
	goesOn   = regexp.MustCompile(`^[./:-]\d`)
	tellsDay = regexp.MustCompile(`(?i)(?:^|[^\p{L}])(?:on|am|vom|el|del|` + weekdays + `)[.,]?\s+$`)
	// onNumber is "on" alone, which a number of volts follows as well.
	onNumber = regexp.MustCompile(`(?i)(?:^|[^\p{L}])on\s+$`)
	unit     = regexp.MustCompile(`^\s?(?:[°%Ω]|(?i:[vaklhs]|m[ams]?|ma|min|bar|psi|k?pa|mbar|ohms?|cm|km|km/h|kw|rpm|nm|lit(?:er|re|ro)s?)(?:[^\p{L}]|$))`)
)

const weekdays = `mon(?:day)?|tue(?:s|sday)?|wed(?:nesday)?|thu(?:rs|rsday)?|fri(?:day)?|sat(?:urday)?|sun(?:day)?|` +
	`montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonnabend|sonntag|lunes|martes|mi[ée]rcoles|jueves|viernes|s[áa]bado|domingo`

// withoutYears hides the days that have no year.
func withoutYears(text string) string {
	var cut []span
	for _, at := range yearless.FindAllStringSubmatchIndex(text, -1) {
		before, rest := text[:at[0]], text[at[1]:]
		p := pair{first: text[at[2]:at[3]], sign: text[at[4]:at[5]], second: text[at[6]:at[7]], stop: at[8] < at[9]}
		if !continues(before, rest) && p.isDay(before, rest) {
			cut = append(cut, span{at[0], at[1]})
		}
	}
	return without(text, cut)
}

// continues reports whether a pair of numbers is a piece of a longer number.
func continues(before, rest string) bool {
	last, _ := utf8.DecodeLastRuneInString(before)
	next, _ := utf8.DecodeRuneInString(rest)
	return unicode.IsNumber(last) || unicode.IsNumber(next) || strings.ContainsRune(".,/-−+", last) ||
		goesOn.MatchString(rest)
}

// pair is two numbers that may be a day and a month.
type pair struct {
	first, sign, second string
	stop                bool // a full stop follows
}

func (p pair) isDay(before, rest string) bool {
	a, _ := strconv.Atoi(p.first)
	b, _ := strconv.Atoi(p.second)
	dayFirst, monthFirst := within(a, 31) && within(b, 12), within(a, 12) && within(b, 31)
	padded := p.first[0] == '0' || p.second[0] == '0'
	told := tellsDay.MatchString(before) && !unit.MatchString(rest)
	switch p.sign {
	case ".":
		if p.stop && dayFirst && (padded || told || !endsSentence(rest)) {
			return true
		}
		return dayFirst && told && !onNumber.MatchString(before) && !names(rest)
	case "-": // else from 10 to 12
		return told && padded && (dayFirst || monthFirst)
	}
	return told && (dayFirst || monthFirst) && !(a < b && fraction(b) && !padded)
}

func within(n, most int) bool { return n >= 1 && n <= most }

// fraction reports whether spanners and throttles have such parts.
func fraction(parts int) bool {
	return parts == 2 || parts == 3 || parts == 4 || parts == 8 || parts == 16
}

// endsSentence reports whether a full stop before rest may be one.
func endsSentence(rest string) bool {
	next, _ := utf8.DecodeRuneInString(strings.TrimSpace(rest))
	return strings.TrimSpace(rest) == "" || unicode.IsUpper(next) || unicode.IsNumber(next)
}

// names reports whether what follows a number is a name, as an engine of 1.6 litres has one.
func names(rest string) bool {
	next, _ := utf8.DecodeRuneInString(strings.TrimSpace(rest))
	return unicode.IsUpper(next)
}
