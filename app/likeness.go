package main

import (
	"context"
	"flag"
	"fmt"
	"math"
	"strings"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/similar"
	"loopbook/cases/sqlite"
	"loopbook/diagram/say"
)

// mostAlike is how many cases like one are told.
const mostAlike = 12

// lookalike is a case like another, with the reason.
type lookalike struct {
	cases.Summary
	Distance float64
	Because  string
}

// findAlike finds the cases most like one.
func findAlike(ctx context.Context, store *sqlite.Store, id string) ([]lookalike, error) {
	like, err := store.Digest(ctx, id)
	if err != nil {
		return nil, err
	}
	f := similar.Like(like, mostAlike)
	if err := store.EachDigest(ctx, f.Look); err != nil {
		return nil, err
	}
	matches := f.Matches()
	keys := make([]int64, len(matches))
	for i, m := range matches {
		keys[i] = m.Key
	}
	lines, err := store.Summaries(ctx, keys)
	if err != nil {
		return nil, err
	}
	out := make([]lookalike, 0, len(lines))
	for i, line := range lines {
		out = append(out, lookalike{line, matches[i].Distance, likenessWords(matches[i])})
	}
	return out, nil
}

// likenessWords tell what two cases share, and what the other turned out to be.
func likenessWords(m similar.Match) string {
	var parts []string
	if n := len(m.Shares.Codes); n > 0 {
		parts = append(parts, kit.L("window.alike.codes", n, strings.Join(m.Shares.Codes, ", ")))
	}
	for _, d := range m.Shares.Out {
		parts = append(parts, kit.L("window.alike."+sideOf(d.Z), say.Of("delta."+d.Name)))
	}
	if n := m.Shares.Inside; n > 0 {
		parts = append(parts, kit.L("window.alike.inside", n))
	}
	if len(m.Shares.Symptoms) > 0 {
		var names []string
		for _, s := range m.Shares.Symptoms {
			names = append(names, s.Name())
		}
		parts = append(parts, kit.L("window.alike.symptoms", strings.Join(names, ", ")))
	}
	if m.Shares.Layout {
		parts = append(parts, kit.L("window.alike.layout"))
	}
	because := kit.L("window.alike.nothing")
	if len(parts) > 0 {
		because = strings.Join(parts, "; ")
	}
	if m.Cause == "" {
		return kit.Capital(kit.L("window.alike.open", because))
	}
	return kit.Capital(kit.L("window.alike.was", because, m.Cause.Name()))
}

func sideOf(z float64) string {
	if z < 0 {
		return "low"
	}
	return "high"
}

// likeEnough is up to which distance a case says something of another (judgement).
const likeEnough = 0.4

// closeness is a distance in a word.
func closeness(distance float64) string {
	switch {
	case distance < 0.12:
		return kit.L("window.alike.very")
	case distance < 0.25:
		return kit.L("window.alike.much")
	case distance < likeEnough:
		return kit.L("window.alike.some")
	}
	return kit.L("window.alike.little")
}

// similarCases prints the cases most like one.
func similarCases(ctx context.Context, c console, args []string) error {
	set := flag.NewFlagSet("similar", flag.ContinueOnError)
	notebook := notebookFlag(set)
	ids, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(ids) != 1 {
		return usagef("needs one ID")
	}
	store, err := openRefreshed(ctx, c, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	list, err := findAlike(ctx, store, ids[0])
	if err != nil {
		return err
	}
	for _, a := range list {
		fmt.Fprintf(c.out, "%s\t%.2f\t%s\t%s\t%s\n", a.ID, math.Round(a.Distance*100)/100, a.Title, a.Vehicle, a.Because)
	}
	return nil
}

// openRefreshed opens a notebook to read from, with all that its statistics need.
func openRefreshed(ctx context.Context, c console, path string) (*sqlite.Store, error) {
	store, err := openExisting(ctx, path)
	if err != nil {
		return nil, err
	}
	if err := store.Refresh(ctx, func(left int) { fmt.Fprintf(c.err, "\rbringing the notebook up to date: %d left ", left) }); err != nil {
		store.Close()
		return nil, err
	}
	return store, nil
}
