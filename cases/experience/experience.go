// Package experience is what a shop's own cases say together: what a code usually
// turns out to be here, how long it takes to know, what came back, and whether the
// program's chances hold in this shop.
//
// Only closed cases count. Every count names the cases that it is of by their
// conditions, and a share has its range, so that three cases don't look like a law.
package experience

import (
	"cmp"
	"slices"
	"strconv"

	"loopbook/cases"
)

// Few is how many cases say little (judgement).
const Few = 10

// bandKm is how wide a band of the odometer is.
const bandKm = 50_000

// CauseCount is how many cases turned out to be one thing.
type CauseCount struct {
	Cause cases.Cause
	N     int
}

// Group is the closed cases that share something.
type Group struct {
	Word   string // the code, the engine, the band's lower end in km, the month from 1
	N      int
	Causes []CauseCount // the most frequent first
	Where  []cases.Condition
}

// History is the whole of it.
type History struct {
	Cases, Closed int
	Causes        []CauseCount
	Codes         []Group // the most frequent first
	Engines       []Group // the same
	Odometer      []Group // by band
	Months        []Group // January to December, those with cases
	Minutes       []Time  // by cause, the most frequent first; the first is of all
	Returned      []Return
	Guesses       Guesses
}

// Tally gathers a History from the digests that it is shown.
type Tally struct {
	total, closed                 int
	causes                        map[cases.Cause]int
	codes, engines, bands, months map[string]map[cases.Cause]int
	minutes                       map[cases.Cause][]float64
	visits                        []visit
	guesses                       guessTally
}

// NewTally begins.
func NewTally() *Tally {
	group := func() map[string]map[cases.Cause]int { return map[string]map[cases.Cause]int{} }
	return &Tally{
		causes: map[cases.Cause]int{}, codes: group(), engines: group(), bands: group(), months: group(),
		minutes: map[cases.Cause][]float64{}, guesses: newGuessTally(),
	}
}

// Look takes a case into account. Show it every one.
func (t *Tally) Look(d *cases.Digest) {
	t.total++
	if d.Car != 0 && !d.Opened.IsZero() {
		t.visits = append(t.visits, visit{d.Car, d.Opened.Unix(), d.Key, d.Cause})
	}
	if d.Cause == "" {
		return
	}
	t.closed++
	t.causes[d.Cause]++
	for i, code := range d.Codes {
		if !slices.Contains(d.Codes[:i], code) {
			count(t.codes, code, d.Cause)
		}
	}
	if d.Engine != "" {
		count(t.engines, d.Engine, d.Cause)
	}
	if d.OdometerKm >= 0 {
		count(t.bands, bandOf(d.OdometerKm), d.Cause)
	}
	if !d.Opened.IsZero() {
		count(t.months, strconv.Itoa(int(d.Opened.UTC().Month())), d.Cause)
	}
	if d.Minutes >= 0 {
		t.minutes[d.Cause] = append(t.minutes[d.Cause], d.Minutes)
	}
	t.guesses.look(d)
}

func count(groups map[string]map[cases.Cause]int, word string, cause cases.Cause) {
	g, ok := groups[word]
	if !ok {
		g = map[cases.Cause]int{}
		groups[word] = g
	}
	g[cause]++
}

func bandOf(km float64) string { return strconv.Itoa(int(km/bandKm) * bandKm) }

// History is what was gathered.
func (t *Tally) History() History {
	h := History{
		Cases: t.total, Closed: t.closed, Causes: counted(t.causes),
		Codes:    byNumber(t.codes, func(w string) cases.Condition { return is(cases.ByCode, w) }),
		Engines:  byNumber(t.engines, func(w string) cases.Condition { return is(cases.ByEngine, w) }),
		Odometer: byOrder(t.bands, band),
		Months:   byOrder(t.months, func(w string) cases.Condition { return is(cases.ByMonth, w) }),
		Returned: returns(t.visits),
		Guesses:  t.guesses.result(),
	}
	h.Minutes = times(t.minutes, h.Causes)
	return h
}

func is(f cases.Field, word string) cases.Condition {
	return cases.Condition{Field: f, Words: []string{word}}
}

func band(low string) cases.Condition {
	km, _ := strconv.Atoi(low) // it was written by bandOf
	return cases.Condition{Field: cases.ByKm, Low: float64(km), High: float64(km + bandKm - 1)}
}

func counted(n map[cases.Cause]int) []CauseCount {
	out := make([]CauseCount, 0, len(n))
	for c, k := range n {
		out = append(out, CauseCount{c, k})
	}
	slices.SortFunc(out, func(a, b CauseCount) int {
		return cmp.Or(b.N-a.N, cmp.Compare(a.Cause, b.Cause))
	})
	return out
}

func groups(n map[string]map[cases.Cause]int, where func(string) cases.Condition) []Group {
	out := make([]Group, 0, len(n))
	for word, causes := range n {
		g := Group{Word: word, Causes: counted(causes), Where: []cases.Condition{where(word)}}
		for _, c := range g.Causes {
			g.N += c.N
		}
		out = append(out, g)
	}
	return out
}

func byNumber(n map[string]map[cases.Cause]int, where func(string) cases.Condition) []Group {
	out := groups(n, where)
	slices.SortFunc(out, func(a, b Group) int { return cmp.Or(b.N-a.N, cmp.Compare(a.Word, b.Word)) })
	return out
}

// byOrder sorts by the number that the word is.
func byOrder(n map[string]map[cases.Cause]int, where func(string) cases.Condition) []Group {
	out := groups(n, where)
	slices.SortFunc(out, func(a, b Group) int {
		x, _ := strconv.Atoi(a.Word)
		y, _ := strconv.Atoi(b.Word)
		return x - y
	})
	return out
}
