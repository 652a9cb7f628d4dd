// Package experience is what a shop's own cases say together: what a code usually
// turns out to be here, how long it takes to know, what came back, and whether the
// program's chances hold in this shop.
//
// Only closed cases count. Every count names the cases that it is of by their
// conditions, and a share has its range, so that three cases don't look like a law.
package experience

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"loopbook/cases"
)

// Few is how many cases say little (judgement).
const Few = 10

// BandKm is how wide a band of the odometer is for who reads it in km.
const BandKm = 50_000

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
	total, closed  int
	known          map[cases.Cause]int // the place of each cause in a row
	causes         row
	codes, engines map[string]*row
	bandKm         float64
	bands          map[int]*row // by the band's number from 0
	months         [12]row
	minutes        map[cases.Cause][]float64
	visits         []visit
	guesses        guessTally
}

// row counts by cause.
type row []int

// NewTally begins, with bands of the odometer that wide: round in the unit that they are read in.
func NewTally(bandKm float64) *Tally {
	t := &Tally{
		bandKm: bandKm,
		known:  map[cases.Cause]int{}, codes: map[string]*row{}, engines: map[string]*row{}, bands: map[int]*row{},
		minutes: map[cases.Cause][]float64{}, guesses: newGuessTally(),
	}
	for i, c := range cases.Words[cases.Cause]() {
		t.known[c] = i
	}
	return t
}

// Look takes a case into account. Show it every one; what is only taught from counts for nothing.
func (t *Tally) Look(d *cases.Digest) {
	if d.Taught() {
		return
	}
	t.total++
	if d.Car != 0 && !d.Opened.IsZero() {
		t.visits = append(t.visits, visit{d.Car, d.Opened.Unix(), d.Key, d.Cause})
	}
	if d.Cause == "" {
		return
	}
	t.closed++
	at, ok := t.known[d.Cause]
	if !ok { // of a newer program
		at = len(t.known)
		t.known[d.Cause] = at
	}
	t.causes.add(at)
	for i, code := range d.Codes {
		if !slices.Contains(d.Codes[:i], code) {
			count(t.codes, code, at)
		}
	}
	if d.Engine != "" {
		count(t.engines, d.Engine, at)
	}
	if d.OdometerKm >= 0 {
		count(t.bands, t.band(d.OdometerKm), at)
	}
	if !d.Opened.IsZero() {
		t.months[d.Opened.UTC().Month()-1].add(at)
	}
	if d.Minutes >= 0 {
		t.minutes[d.Cause] = append(t.minutes[d.Cause], d.Minutes)
	}
	t.guesses.look(d)
}

func count[K comparable](groups map[K]*row, word K, cause int) {
	r, ok := groups[word]
	if !ok {
		r = &row{}
		groups[word] = r
	}
	r.add(cause)
}

func (r *row) add(cause int) {
	for len(*r) <= cause {
		*r = append(*r, 0)
	}
	(*r)[cause]++
}

// History is what was gathered.
func (t *Tally) History() History {
	names := make([]cases.Cause, len(t.known))
	for c, at := range t.known {
		names[at] = c
	}
	h := History{
		Cases: t.total, Closed: t.closed, Causes: t.causes.counted(names),
		Codes: byNumber(t.codes, names, cases.ByCode), Engines: byNumber(t.engines, names, cases.ByEngine),
		Odometer: t.byBand(names), Months: t.byMonth(names), Returned: returns(t.visits), Guesses: t.guesses.result(),
	}
	h.Minutes = times(t.minutes, h.Causes)
	return h
}

// counted lists the causes that have cases, the most frequent first.
func (r row) counted(names []cases.Cause) []CauseCount {
	var out []CauseCount
	for i, n := range r {
		if n > 0 {
			out = append(out, CauseCount{names[i], n})
		}
	}
	slices.SortFunc(out, func(a, b CauseCount) int {
		return cmp.Or(b.N-a.N, cmp.Compare(a.Cause, b.Cause))
	})
	return out
}

func (r row) group(word string, names []cases.Cause, where cases.Condition) Group {
	g := Group{Word: word, Causes: r.counted(names), Where: []cases.Condition{where}}
	for _, c := range g.Causes {
		g.N += c.N
	}
	return g
}

func is(f cases.Field, word string) cases.Condition {
	return cases.Condition{Field: f, Words: []string{word}}
}

func byNumber(groups map[string]*row, names []cases.Cause, f cases.Field) []Group {
	out := make([]Group, 0, len(groups))
	for word, r := range groups {
		out = append(out, r.group(word, names, is(f, word)))
	}
	slices.SortFunc(out, func(a, b Group) int { return cmp.Or(b.N-a.N, cmp.Compare(a.Word, b.Word)) })
	return out
}

func (t *Tally) byBand(names []cases.Cause) []Group {
	numbers := make([]int, 0, len(t.bands))
	for n := range t.bands {
		numbers = append(numbers, n)
	}
	slices.Sort(numbers)
	var out []Group
	for _, n := range numbers {
		low := t.lowest(n)
		where := cases.Condition{Field: cases.ByKm, Low: low, High: t.lowest(n+1) - 0.01} // miles come with parts of a km
		out = append(out, t.bands[n].group(strconv.FormatFloat(low, 'f', 0, 64), names, where))
	}
	return out
}

// lowest is where a band begins, in whole km, so that its search is short and finds what stands on its edge.
func (t *Tally) lowest(band int) float64 { return math.Floor(float64(band) * t.bandKm) }

func (t *Tally) band(km float64) int {
	n := int(km / t.bandKm)
	if km >= t.lowest(n+1) {
		return n + 1
	}
	return n
}

func (t *Tally) byMonth(names []cases.Cause) []Group {
	var out []Group
	for i, r := range t.months {
		word := strconv.Itoa(i + 1)
		if g := r.group(word, names, is(cases.ByMonth, word)); g.N > 0 {
			out = append(out, g)
		}
	}
	return out
}
