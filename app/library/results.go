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
	have, err := store.Results(ctx, "")
	if err != nil {
		return 0, 0, err
	}
	ours, err := handedOver(ctx, store, came)
	if err != nil {
		return 0, 0, err
	}
	var fresh []cases.Result
	for _, r := range came {
		if id := ours[[2]string{r.Class, r.CaseID}]; id != "" {
			r.CaseID = id
		}
		same := func(h cases.Result) bool {
			return h.Trainee == r.Trainee && h.Class == r.Class && h.CaseID == r.CaseID && h.Finished.Equal(r.Finished)
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

// handedOver are the notebook's cases by the class and the id under which they came back: a case leaves anonymous, under
// another id, and by its title where it was edited since.
func handedOver(ctx context.Context, store *sqlite.Store, came []cases.Result) (map[[2]string]string, error) {
	classes, err := store.Classes(ctx)
	if err != nil {
		return nil, err
	}
	ours := map[[2]string]string{}
	for _, c := range classes {
		back := slices.DeleteFunc(slices.Clone(came), func(r cases.Result) bool { return r.Class != c.Name || slices.Contains(c.Cases, r.CaseID) })
		if len(back) == 0 {
			continue
		}
		for _, id := range c.Cases {
			b, _, err := Giving{Anonymous: true}.Bundle(ctx, store, id)
			if errors.Is(err, cases.ErrNotFound) {
				continue
			}
			if err != nil {
				return nil, err
			}
			for _, r := range back {
				if r.CaseID == b.Case.ID || r.Title == b.Case.Title && r.Truth == b.Case.Verdict.Cause {
					ours[[2]string{c.Name, r.CaseID}] = id
				}
			}
		}
	}
	return ours, nil
}
