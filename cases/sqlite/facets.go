package sqlite

import (
	"cmp"
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"

	"loopbook/cases"
)

// Facets counts the words of each field among the cases that q asks for.
func (s *Store) Facets(ctx context.Context, q cases.Query) (cases.Facets, error) {
	counts := map[cases.Field]map[string]int{}
	for _, f := range []cases.Field{cases.ByCause, cases.ByLayout, cases.ByStage, cases.ByCode, cases.BySymptom, cases.ByTag, cases.ByMake, cases.ByMotive} {
		counts[f] = map[string]int{}
	}
	err := s.view(ctx, func(tx *sql.Tx) error {
		return s.meeting(ctx, tx, q, matchOf(q.Text), func(d *cases.Digest, _ int) { tally(counts, d) })
	})
	if err != nil {
		return nil, fmt.Errorf("counting: %w", err)
	}
	out := cases.Facets{}
	for f, words := range counts {
		out[f] = sorted(words)
	}
	return out, nil
}

func tally(counts map[cases.Field]map[string]int, d *cases.Digest) {
	one := func(f cases.Field, word string) {
		if word != "" {
			counts[f][word]++
		}
	}
	one(cases.ByCause, string(d.Cause))
	one(cases.ByLayout, d.Layout)
	one(cases.ByMake, d.Make)
	one(cases.ByMotive, string(d.Motive))
	state := cases.StageClosed
	if d.Cause == "" {
		state = cases.StageOpen
	}
	one(cases.ByStage, state)
	if d.Before {
		one(cases.ByStage, string(cases.BeforeRepair))
	}
	if d.After {
		one(cases.ByStage, string(cases.AfterRepair))
	}
	once(d.Codes, func(w string) { one(cases.ByCode, w) })
	once(d.Tags, func(w string) { one(cases.ByTag, w) })
	once(d.Symptoms, func(w cases.Symptom) { one(cases.BySymptom, string(w)) })
}

// once calls do with each word of a list, however often it stands there.
func once[T ~string](list []T, do func(T)) {
	for i, w := range list {
		if !slices.Contains(list[:i], w) {
			do(w)
		}
	}
}

func sorted(words map[string]int) []cases.Count {
	out := make([]cases.Count, 0, len(words))
	for w, n := range words {
		out = append(out, cases.Count{Word: w, N: n})
	}
	slices.SortFunc(out, func(a, b cases.Count) int {
		return cmp.Or(b.N-a.N, strings.Compare(a.Word, b.Word))
	})
	return out
}
