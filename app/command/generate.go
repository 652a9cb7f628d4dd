package command

import (
	"context"
	"flag"
	"fmt"
	"time"

	"loopbook/app/library"
	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/cases/invented"
	"loopbook/cases/sqlite"
	cars "loopbook/cases/trial"
)

// atOnce is how many invented cases are made and kept in one go.
const atOnce = 500

// yearsInvented that a generated notebook spans.
const yearsInvented = 12

// generate fills a notebook with invented cases. It wants one by name, so that
// nobody's own is filled by a slip.
func generate(ctx context.Context, c Console, args []string) error {
	set := flag.NewFlagSet("generate", flag.ContinueOnError)
	notebook := notebookFlag(set)
	n, seed := set.Int("cases", 0, "how many"), set.Int64("seed", 1, "draws them")
	if err := parseAlone(set, args); err != nil {
		return err
	}
	switch {
	case *n < 1 || *n > 10_000_000:
		return usagef("--cases %d: must be 1 to 10000000", *n)
	case *notebook == "":
		return usagef("needs --notebook PATH: your own isn't filled with invented cases")
	}
	store, err := library.Open(ctx, *notebook)
	if err != nil {
		return err
	}
	defer store.Close()
	g, err := newGenerator(*seed, *n)
	if err != nil {
		return err
	}
	defer fmt.Fprintln(c.Err) // ends the line that counts
	return g.fill(ctx, store, func(done int) { fmt.Fprintf(c.Err, "\r%d of %d", done, *n) })
}

type generator struct {
	seed int64
	n    int
	shop *invented.Shop
	mind *mind.Mind
}

// newGenerator invents n cases that end today.
func newGenerator(seed int64, n int) (*generator, error) {
	m, err := mind.New()
	if err != nil {
		return nil, err
	}
	from := time.Date(2014, 1, 7, 8, 0, 0, 0, time.UTC)
	return &generator{seed, n, invented.NewShop(seed, from, yearsInvented, n), m}, nil
}

// batch is some cases with what the program held likeliest of each.
type batch struct {
	bundles []cases.Bundle
	guesses []cases.Guess
}

// fill makes the next batch while one is being kept.
func (g *generator) fill(ctx context.Context, store *sqlite.Store, progress func(done int)) error {
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	made := make(chan batch, 1)
	go func() {
		defer close(made)
		for at := 0; at < g.n; at += atOnce {
			select {
			case made <- g.batch(at):
			case <-ctx.Done():
				return
			}
		}
	}()
	done := 0
	for b := range made {
		if err := store.PutGuessed(ctx, b.bundles, b.guesses, "invented"); err != nil {
			return err
		}
		done += len(b.bundles)
		progress(done)
	}
	return ctx.Err()
}

func (g *generator) batch(at int) batch {
	list := cars.Cases(g.seed+int64(at), min(atOnce, g.n-at), cars.Checks)
	b := batch{make([]cases.Bundle, len(list)), make([]cases.Guess, len(list))}
	for i := range list {
		g.shop.Dress(&list[i])
		b.bundles[i].Case = list[i]
		b.guesses[i] = g.mind.Guess(list[i])
	}
	return b
}
