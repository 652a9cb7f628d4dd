package library

import (
	"context"
	"strings"

	"loopbook/cases"
	"loopbook/cases/similar"
	"loopbook/cases/sqlite"
	"loopbook/diagram/say"
)

// MostAlike is how many cases like one are told.
const MostAlike = 12

// Lookalike is a case like another, with what the two share.
type Lookalike struct {
	cases.Summary
	Distance float64
	Because  say.Text
}

// Told is why a case is like another, and what it turned out to be.
func (l Lookalike) Told() say.Text {
	if l.Cause == "" {
		return say.Of("window.alike.open", l.Because)
	}
	return say.Of("window.alike.was", l.Because, l.Cause.Name())
}

// Alike finds the cases most like one, without those that are only taught from.
func Alike(ctx context.Context, store *sqlite.Store, id string) ([]Lookalike, error) {
	like, err := store.Digest(ctx, id)
	if err != nil {
		return nil, err
	}
	f := similar.Like(like, MostAlike)
	real := func(d *cases.Digest) {
		if !d.Taught() { // a case's copy would be most alike
			f.Look(d)
		}
	}
	if err := store.EachDigest(ctx, real); err != nil {
		return nil, err
	}
	matches := f.Matches()
	keys, of := make([]int64, len(matches)), map[int64]similar.Match{}
	for i, m := range matches {
		keys[i], of[m.Key] = m.Key, m
	}
	lines, err := store.Summaries(ctx, keys)
	if err != nil {
		return nil, err
	}
	out := make([]Lookalike, 0, len(lines))
	for _, line := range lines {
		out = append(out, Lookalike{line, of[line.Key].Distance, likenessWords(of[line.Key])})
	}
	return out, nil
}

// likenessWords tell what two cases share.
func likenessWords(m similar.Match) say.Text {
	var parts []say.Text
	if n := len(m.Shares.Codes); n > 0 {
		parts = append(parts, say.Of("window.alike.codes", n, strings.Join(m.Shares.Codes, ", ")))
	}
	for _, d := range m.Shares.Out {
		parts = append(parts, say.Of("window.alike."+sideOf(d.Z), say.Of("delta."+d.Name)))
	}
	if n := m.Shares.Inside; n > 0 {
		parts = append(parts, say.Of("window.alike.inside", n))
	}
	if len(m.Shares.Symptoms) > 0 {
		var names []string
		for _, s := range m.Shares.Symptoms {
			names = append(names, s.Name())
		}
		parts = append(parts, say.Of("window.alike.symptoms", strings.Join(names, ", ")))
	}
	if m.Shares.Layout {
		parts = append(parts, say.Of("window.alike.layout"))
	}
	if len(parts) > 0 {
		return say.Items(parts...)
	}
	return say.Of("window.alike.nothing")
}

func sideOf(z float64) string {
	if z < 0 {
		return "low"
	}
	return "high"
}
