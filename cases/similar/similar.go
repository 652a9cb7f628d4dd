// Package similar finds the cases most like one: by how far each difference of the
// loop was out of what a healthy one shows, by codes, symptoms and layout.
//
// A distance lies between 0, alike in everything, and 1, alike in nothing. What is
// known of one case only tells neither way: it counts as half.
package similar

import (
	"math"
	"slices"

	"loopbook/cases"
)

// What each part weighs, together 1 (judgement: temperatures are measured, symptoms
// are told, and a layout alone says little).
const (
	deltaWeight   = 0.45
	codeWeight    = 0.20
	symptomWeight = 0.20
	layoutWeight  = 0.15
)

const (
	enoughDeltas = 4   // in common, that temperatures weigh fully
	farApart     = 2.0 // two deviations are wholly unlike
	agreed       = 0.5 // two deviations agree, or one is out of range at all
)

// Trait is something that two cases share.
type Trait struct {
	Codes    []string
	Symptoms []cases.Symptom
	Layout   bool
	Out      []cases.Deviation // of the case found, where both are out to the same side
	Inside   int               // differences that are in range in both
}

// Match is a case that was found.
type Match struct {
	Key      int64
	Distance float64
	Shares   Trait
	Cause    cases.Cause // what it turned out to be; empty while it is open
}

// Finder keeps the nearest of the cases that it is shown.
type Finder struct {
	like cases.Digest
	most int
	best []Match // by distance
	held []cases.Digest
}

// Like finds the nearest cases to one, itself left out.
func Like(d cases.Digest, most int) *Finder { return &Finder{like: d, most: most} }

// Look takes a case into account. Show it every one.
func (f *Finder) Look(d *cases.Digest) {
	if d.Key == f.like.Key || f.most <= 0 {
		return
	}
	full := len(f.best) == f.most
	limit := math.Inf(1)
	if full {
		limit = f.best[f.most-1].Distance
	}
	dist := distance(&f.like, d, limit)
	if dist >= limit {
		return
	}
	at, _ := slices.BinarySearchFunc(f.best, dist, func(m Match, x float64) int {
		if m.Distance <= x { // who came first stays first
			return -1
		}
		return 1
	})
	f.best = slices.Insert(f.best, at, Match{Key: d.Key, Distance: dist, Cause: d.Cause})
	f.held = slices.Insert(f.held, at, *d)
	if full {
		f.best, f.held = f.best[:f.most], f.held[:f.most]
	}
}

// Matches are the nearest so far, each with what it shares.
func (f *Finder) Matches() []Match {
	out := slices.Clone(f.best)
	for i := range out {
		out[i].Shares = shared(&f.like, &f.held[i])
	}
	return out
}

// distance is how unlike two cases are, 0 to 1. It stops where it can only end over the limit: temperatures take longest, so
// they come last.
func distance(a, b *cases.Digest, limit float64) float64 {
	sum, unknown := 0.0, 0.5
	part := func(weight, d float64, known bool) {
		if !known {
			d = unknown
		}
		sum += weight * d
	}
	part(layoutWeight, unlike(a.Layout == b.Layout), a.Layout != "" && b.Layout != "")
	part(codeWeight, apart(a.Codes, b.Codes), len(a.Codes)+len(b.Codes) > 0)
	if sum >= limit {
		return sum
	}
	part(symptomWeight, apart(a.Symptoms, b.Symptoms), len(a.Symptoms) > 0 && len(b.Symptoms) > 0)
	if sum >= limit {
		return sum
	}
	d, common := deltas(a.Deltas, b.Deltas)
	share := float64(min(common, enoughDeltas)) / enoughDeltas
	part(deltaWeight*share, d, true)
	part(deltaWeight*(1-share), 0, false)
	return sum
}

func unlike(same bool) float64 {
	if same {
		return 0
	}
	return 1
}

// apart is 1 less the part of all words that both have (Jaccard). A word that one has twice, as a code that is stored and
// pending, counts once.
func apart[T ~string](a, b []T) float64 {
	both, all := 0, 0
	for i, w := range a {
		if slices.Contains(a[:i], w) {
			continue
		}
		all++
		if slices.Contains(b, w) {
			both++
		}
	}
	for i, w := range b {
		if !slices.Contains(b[:i], w) && !slices.Contains(a, w) {
			all++
		}
	}
	if all == 0 {
		return 0
	}
	return 1 - float64(both)/float64(all)
}

// deltas is how unlike the deviations of both are, on average.
func deltas(a, b []cases.Deviation) (d float64, common int) {
	for i := range a {
		for j := range b {
			if a[i].Name == b[j].Name {
				d += min(math.Abs(a[i].Z-b[j].Z)/farApart, 1)
				common++
				break
			}
		}
	}
	if common == 0 {
		return 0, 0
	}
	return d / float64(common), common
}

func shared(a, b *cases.Digest) Trait {
	t := Trait{Layout: a.Layout != "" && a.Layout == b.Layout}
	for _, c := range a.Codes {
		if slices.Contains(b.Codes, c) && !slices.Contains(t.Codes, c) {
			t.Codes = append(t.Codes, c)
		}
	}
	for _, s := range a.Symptoms {
		if slices.Contains(b.Symptoms, s) && !slices.Contains(t.Symptoms, s) {
			t.Symptoms = append(t.Symptoms, s)
		}
	}
	for _, x := range a.Deltas {
		for _, y := range b.Deltas {
			if x.Name == y.Name && x.Z == 0 && y.Z == 0 {
				t.Inside++
			}
			if x.Name == y.Name && x.Z*y.Z > 0 && math.Abs(x.Z-y.Z) <= max(agreed, math.Abs(x.Z)/2) {
				t.Out = append(t.Out, y)
			}
		}
	}
	return t
}
