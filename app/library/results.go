package library

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"

	"loopbook/cases"
	"loopbook/cases/exchange"
	"loopbook/cases/sqlite"
)

// HoldsResults reports whether a file is a table of results rather than a log, whose names end alike.
func HoldsResults(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false // whoever reads it tells
	}
	defer f.Close()
	return exchange.IsResults(f)
}

// ResultsEnding is how the name of a file ends that holds results.
const ResultsEnding = ".csv"

// TakeResults takes in the table of results that another notebook wrote, and tells how many of them are new and how many the
// notebook had. Those of a class set that was handed over from here stand under its own cases.
func TakeResults(ctx context.Context, store *sqlite.Store, path string) (taken, known int, err error) {
	f, err := os.Open(path)
	if err != nil {
		return 0, 0, err
	}
	defer f.Close()
	came, err := exchange.ReadResults(filepath.Base(path), f)
	if err != nil {
		return 0, 0, err
	}
	if err := toOurs(ctx, store, came); err != nil {
		return 0, 0, err
	}
	have, err := store.Results(ctx, "")
	if err != nil {
		return 0, 0, err
	}
	var fresh []cases.Result
	for _, r := range came {
		same := func(h cases.Result) bool { // the case's title as it was answered, since its id changes with every edit
			return h.Trainee == r.Trainee && h.Class == r.Class && h.Title == r.Title && h.Finished.Equal(r.Finished)
		}
		if slices.ContainsFunc(have, same) || slices.ContainsFunc(fresh, same) {
			known++
			continue
		}
		fresh = append(fresh, r)
	}
	if len(fresh) > 0 {
		err = store.AddResults(ctx, fresh)
	}
	return len(fresh), known, err
}

// toOurs puts results under the notebook's own class sets and cases, where a set was handed over from it: a set got a number
// behind its name where it came to another of that name.
func toOurs(ctx context.Context, store *sqlite.Store, came []cases.Result) error {
	classes, err := store.Classes(ctx)
	if err != nil {
		return err
	}
	ours := func(name string) bool {
		return slices.ContainsFunc(classes, func(c cases.Class) bool { return c.Name == name })
	}
	for i, r := range came {
		if name := unnumbered(r.Class); !ours(r.Class) && ours(name) {
			came[i].Class = name
		}
	}
	for _, c := range classes {
		var back []*cases.Result // under ids that the set hasn't
		for i, r := range came {
			if r.Class == c.Name && !slices.Contains(c.Cases, r.CaseID) {
				back = append(back, &came[i])
			}
		}
		if len(back) == 0 {
			continue
		}
		set, err := handedOver(ctx, store, c)
		if err != nil {
			return err
		}
		for _, r := range back {
			r.CaseID = ownID(set, *r)
		}
	}
	return nil
}

// leaving is a case as it leaves, beside its own id.
type leaving struct {
	own string
	cases.Case
}

// handedOver are the cases of a class set as they leave.
func handedOver(ctx context.Context, store *sqlite.Store, class cases.Class) (out []leaving, err error) {
	for _, id := range class.Cases {
		b, _, err := Giving{Anonymous: true}.Bundle(ctx, store, id)
		if errors.Is(err, cases.ErrNotFound) {
			continue
		}
		if err != nil {
			return nil, err
		}
		out = append(out, leaving{id, b.Case})
	}
	return out, nil
}

// ownID is the own id of the case that a result is of, by the id under which that leaves, or by its title where it was edited
// since. Where several could be it, it is none of them: the result keeps its id.
func ownID(set []leaving, r cases.Result) string {
	var titled []string
	for _, l := range set {
		switch {
		case l.ID == r.CaseID:
			return l.own
		case l.Title == r.Title && l.Verdict.Cause == r.Truth:
			titled = append(titled, l.own)
		}
	}
	if len(titled) == 1 {
		return titled[0]
	}
	return r.CaseID
}
