package library

import (
	"context"
	"fmt"
	"io/fs"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// DemoCases reads the invented cases that come with the program.
func DemoCases() ([]cases.Bundle, error) {
	names, err := fs.Glob(assets.Demo, "demo/*.json")
	if err != nil {
		return nil, err
	}
	bundles := make([]cases.Bundle, 0, len(names))
	for _, name := range names {
		text, err := fs.ReadFile(assets.Demo, name)
		if err != nil {
			return nil, err
		}
		c, err := cases.Decode(text)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		bundles = append(bundles, cases.Bundle{Case: c})
	}
	return bundles, nil
}

// FillDemo puts the demo's cases into a notebook that holds none.
func FillDemo(ctx context.Context, store *sqlite.Store) error {
	page, err := store.Search(ctx, cases.Query{Limit: 1})
	if err != nil || page.Total > 0 {
		return err
	}
	bundles, err := DemoCases()
	if err != nil {
		return err
	}
	_, err = store.PutAll(ctx, bundles, "demo")
	return err
}
