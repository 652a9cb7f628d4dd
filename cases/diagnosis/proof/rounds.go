package proof

import (
	"slices"
	"sort"

	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// Pair is a round after the repair with the round before it of the same
// condition, by their places in the case.
type Pair struct {
	Before, After int
	Open          []say.Text // conditions that weren't noted in both, so not compared
	Points        []Point    // in the order of the flow
}

// Point is a point of the loop before and after. A temperature is as corrected;
// nil: it wasn't read, or can't be judged by.
type Point struct {
	Point         diagram.Point
	Before, After *diagram.Celsius
	Expected      *evidence.Range // after the repair; nil: no rule
	State         evidence.State  // after the repair
}

// ChangeK is by how much the point is warmer after the repair; false where one
// of the two isn't known.
func (p Point) ChangeK() (diagram.DeltaK, bool) {
	if p.Before == nil || p.After == nil {
		return 0, false
	}
	return p.After.Minus(*p.Before), true
}

// Lone is a round that has no like in the other stage.
type Lone struct {
	Round int
	Why   say.Text // what the nearest differs in
}

// pairRounds gives every round that was measured at most one like, the most alike first.
func pairRounds(c *cases.Case, f evidence.Findings) (pairs []Pair, lone []Lone) {
	if !anyAfter(c) {
		return nil, nil // none of before waits for its like yet
	}
	type match struct {
		Pair
		distance float64
	}
	var matches []match
	for a := range c.Rounds {
		for b := range c.Rounds {
			if !isAfter(c.Rounds[a].Stage) || isAfter(c.Rounds[b].Stage) || !c.Rounds[a].Measured() || !c.Rounds[b].Measured() {
				continue
			}
			if like := compare(c, b, a); len(like.differs) == 0 {
				matches = append(matches, match{Pair{Before: b, After: a, Open: like.open}, like.distance + float64(len(like.open))})
			}
		}
	}
	sort.SliceStable(matches, func(i, j int) bool { return matches[i].distance < matches[j].distance })
	taken := map[int]bool{}
	for _, m := range matches {
		if taken[m.Before] || taken[m.After] {
			continue
		}
		taken[m.Before], taken[m.After] = true, true
		m.measure(c, f)
		pairs = append(pairs, m.Pair)
	}
	sort.Slice(pairs, func(i, j int) bool { return pairs[i].After < pairs[j].After })
	for i := range c.Rounds {
		if !taken[i] && c.Rounds[i].Measured() {
			lone = append(lone, Lone{i, whyLone(c, i)})
		}
	}
	return pairs, lone
}

// walkAgain are the rounds before the repair that have no like after it, of those that showed what was wrong:
// a cold one that was in order proves little. Where none showed anything, all are. What was measured twice, as after a
// first repair that didn't help, is walked again once.
func walkAgain(c *cases.Case, f evidence.Findings, pairs []Pair) []int {
	var before []int
	for i := range c.Rounds {
		if !isAfter(c.Rounds[i].Stage) && c.Rounds[i].Measured() {
			before = append(before, i)
		}
	}
	shown := slices.ContainsFunc(before, f.OutOfRange)
	like := func(i, j int) bool { return len(compare(c, i, j).differs) == 0 }
	var out []int
	slices.Reverse(before)
	for _, i := range before { // of those that are alike the last is of the car as it was repaired
		walked := slices.ContainsFunc(pairs, func(p Pair) bool { return p.Before == i || like(i, p.After) })
		if told := f.OutOfRange(i) || !shown; told && !walked && !slices.ContainsFunc(out, func(j int) bool { return like(i, j) }) {
			out = append(out, i)
		}
	}
	slices.Reverse(out)
	return out
}

// anyAfter reports whether a round after the repair was measured: one that was only begun is like none.
func anyAfter(c *cases.Case) bool {
	for i := range c.Rounds {
		if isAfter(c.Rounds[i].Stage) && c.Rounds[i].Measured() {
			return true
		}
	}
	return false
}

// whyLone says what the nearest round of the other stage differs in.
func whyLone(c *cases.Case, i int) say.Text {
	after := isAfter(c.Rounds[i].Stage)
	near, found := comparison{}, false
	for j := range c.Rounds {
		if isAfter(c.Rounds[j].Stage) == after || !c.Rounds[j].Measured() {
			continue
		}
		b, a := i, j
		if after {
			b, a = j, i
		}
		if like := compare(c, b, a); !found || len(like.differs) < len(near.differs) {
			near, found = like, true
		}
	}
	switch {
	case !found && after:
		return say.Of("proof.lone.no-before")
	case len(near.differs) == 0:
		return say.Of("proof.lone.taken")
	case after:
		return say.Of("proof.lone.after", say.List(near.differs...))
	}
	return say.Of("proof.lone.before", say.List(near.differs...))
}

// measure fills in what the two rounds show.
func (p *Pair) measure(c *cases.Case, f evidence.Findings) {
	before, after := f.Rounds[p.Before], f.Rounds[p.After]
	for _, at := range c.Loop.Points() {
		b, okB := before.Readings[at]
		a, okA := after.Readings[at]
		if !okB && !okA {
			continue
		}
		point := Point{Point: at, State: evidence.Unknown}
		if okB && b.Usable() {
			point.Before = &b.TrueC
		}
		if okA && a.Usable() {
			point.After, point.State = &a.TrueC, a.State
		}
		if want, ok := after.Expected[at]; ok {
			point.Expected = &want
		}
		p.Points = append(p.Points, point)
	}
}
