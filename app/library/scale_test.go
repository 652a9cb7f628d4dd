package library

import (
	"context"
	"flag"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"loopbook/cases/experience"
	"loopbook/cases/query"
)

var notebooks = flag.String("notebooks", "", "notebooks to measure, with commas between")

// Wanted at 100,000 cases: cases like one in 100 ms, the shop's history in 300 ms. The
// first question reads the digests, which takes longer: it is told beside.
func BenchmarkLibrary(b *testing.B) {
	if *notebooks == "" {
		b.Skip("name notebooks with -notebooks")
	}
	ctx := context.Background()
	for _, path := range strings.Split(*notebooks, ",") {
		store, err := Open(ctx, path)
		if err != nil {
			b.Fatal(err)
		}
		page, err := store.Search(ctx, query.Parse("stage:closed code:P0128", time.Local).Query)
		if err != nil || page.Total == 0 {
			b.Fatal(page.Total, err)
		}
		name := strings.TrimSuffix(filepath.Base(path), ".db")
		b.Run(name+"/similar", func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := Alike(ctx, store, page.Items[i%len(page.Items)].ID); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+"/history", func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := History(ctx, store, experience.BandKm); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(name+"/history, the first of a start", func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				fresh, err := Open(ctx, path)
				if err != nil {
					b.Fatal(err)
				}
				if _, err := History(ctx, fresh, experience.BandKm); err != nil {
					b.Fatal(err)
				}
				fresh.Close()
			}
		})
		store.Close()
	}
}
