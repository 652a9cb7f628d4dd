// Package query reads what a person types to find cases: words, and filters as
// field:word, as in
//
//	lower hose cause:pump-weak year:2010..2015 -tag:fleet sort:oldest
//
// Several words of a field with commas between mean any of them; several filters
// must all hold; a minus before one turns it round. A word with blanks stands in
// quotation marks. The same text is what the window's clicks write, so that a
// search can be kept, read and changed by hand.
package query

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"loopbook/cases"
	"loopbook/diagram"
)

// sortField is typed as a filter and names the order.
const sortField = "sort"

// Why tells what is wrong with a filter.
type Why string

// The faults.
const (
	NoField    Why = "field" // there is no such field, but one that is a slip away
	NoSuchWord Why = "word"  // the field has no such word
	ManyWords  Why = "many"  // it is the beginning of several
	NoRange    Why = "range" // as 2010..2015
	NoDate     Why = "date"  // as 2014-03
	Empty      Why = "empty" // nothing behind the colon
)

// Problem is a filter that can't be used. It is left out of the query.
type Problem struct {
	Token string // as typed
	Why   Why
	Field cases.Field
	Near  []string // words that may be meant
}

// Parsed is a text as it was read.
type Parsed struct {
	Query    cases.Query
	Problems []Problem
}

// fields are what can be filtered by.
func fields() []cases.Field {
	return []cases.Field{
		cases.ByCause, cases.ByStage, cases.ByCode, cases.BySymptom, cases.ByLayout, cases.ByTag, cases.ByMake,
		cases.ByModel, cases.ByEngine, cases.ByMotive, cases.ByYear, cases.ByKm, cases.ByOpened,
		cases.ByMonth, cases.ByGuess, cases.BySure,
	}
}

// Sorts are the orders by their words.
func Sorts() []cases.Sort { return []cases.Sort{cases.Newest, cases.Oldest, cases.Recently} }

// Parse reads a text; zone tells where in the world a day begins. What is no filter
// is words, a colon in it or not, unless only a slip of the finger made it none.
func Parse(text string, zone *time.Location) Parsed {
	var out Parsed
	var words []string
	for _, t := range tokens(text) {
		name, value, ok := t.filter()
		switch {
		case !ok && t.meant() != "":
			out.problem(t, NoField, "", t.meant())
		case !ok:
			words = append(words, t.text)
		case name == sortField:
			out.sort(t, bare(value))
		default:
			out.add(t, cases.Field(name), value, zone)
		}
	}
	out.Query.Text = strings.Join(words, " ")
	return out
}

func (p *Parsed) problem(t token, why Why, f cases.Field, near ...string) {
	p.Problems = append(p.Problems, Problem{t.text, why, f, near})
}

func (p *Parsed) sort(t token, value string) {
	var words []string
	for _, s := range Sorts() {
		words = append(words, string(s))
	}
	word, why := choose(value, words)
	if why != "" {
		p.problem(t, why, sortField, words...)
		return
	}
	p.Query.Sort = cases.Sort(word)
}

func (p *Parsed) add(t token, f cases.Field, value string, zone *time.Location) {
	c := cases.Condition{Field: f, Not: t.not}
	if len(wordsOf(value)) == 0 {
		p.problem(t, Empty, f)
		return
	}
	var ok bool
	switch f {
	case cases.ByYear, cases.ByKm, cases.BySure:
		if c.Low, c.High, ok = numbers(bare(value)); !ok {
			p.problem(t, NoRange, f)
			return
		}
	case cases.ByOpened:
		from, to, err := period(bare(value), zone)
		if err != nil {
			p.problem(t, NoDate, f)
			return
		}
		when := cases.Between(from, to)
		c.Low, c.High = when.Low, when.High
	default:
		known := vocabulary(f)
		for _, w := range wordsOf(value) {
			if known != nil {
				word, why := choose(w, known)
				if why != "" {
					p.problem(t, why, f, near(w, known)...)
					return
				}
				w = word
			}
			c.Words = append(c.Words, w)
		}
	}
	p.Query.Where = append(p.Query.Where, c)
}

// vocabulary is the words of a field that has a fixed list, or nil.
func vocabulary(f cases.Field) []string {
	switch f {
	case cases.ByCause:
		return plain(cases.Words[cases.Cause]())
	case cases.ByGuess:
		return append([]string{cases.GuessRight, cases.GuessWrong}, plain(cases.Words[cases.Cause]())...)
	case cases.ByMonth:
		return strings.Fields("1 2 3 4 5 6 7 8 9 10 11 12")
	case cases.BySymptom:
		return plain(cases.Words[cases.Symptom]())
	case cases.ByMotive:
		return plain(cases.Words[cases.Motive]())
	case cases.ByStage:
		return append([]string{cases.StageOpen, cases.StageClosed}, plain(cases.Words[cases.Stage]())...)
	case cases.ByLayout:
		loops, err := diagram.Loops()
		if err != nil {
			return nil // told where the program starts
		}
		var out []string
		for _, l := range loops {
			out = append(out, l.ID)
		}
		return out
	}
	return nil
}

func plain[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}

// choose is the word that is typed in full, or whose beginning only it has.
func choose(typed string, known []string) (string, Why) {
	typed = strings.ToLower(strings.ReplaceAll(typed, " ", "-"))
	if slices.Contains(known, typed) {
		return typed, ""
	}
	var fits []string
	for _, w := range known {
		if strings.HasPrefix(w, typed) {
			fits = append(fits, w)
		}
	}
	switch len(fits) {
	case 0:
		return "", NoSuchWord
	case 1:
		return fits[0], ""
	}
	return "", ManyWords
}

// near are the words that begin as what was typed but for one slip, or else those that hold it or a part of it.
func near(typed string, known []string) []string {
	typed = strings.ToLower(strings.ReplaceAll(typed, " ", "-"))
	var out []string
	for _, w := range known {
		if len(typed) >= 3 && slices.Min(cases.Slips(typed, w)) <= 1 {
			out = append(out, w)
		}
	}
	for part := typed; len(part) >= 3 && len(out) == 0; part = part[:len(part)-1] {
		for _, w := range known {
			if strings.Contains(w, part) {
				out = append(out, w)
			}
		}
	}
	return out[:min(len(out), 6)]
}

// numbers reads 2012, 2010..2015, 2010.. or ..2015.
func numbers(text string) (low, high float64, ok bool) {
	a, b, span := strings.Cut(text, "..")
	if !span {
		v, err := strconv.ParseFloat(a, 64)
		return v, v, err == nil && !math.IsNaN(v)
	}
	low, high = math.Inf(-1), math.Inf(1)
	var errA, errB error
	if a != "" {
		low, errA = strconv.ParseFloat(a, 64)
	}
	if b != "" {
		high, errB = strconv.ParseFloat(b, 64)
	}
	return low, high, errA == nil && errB == nil && a+b != "" && low <= high
}
