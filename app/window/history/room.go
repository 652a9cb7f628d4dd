// Package history fills the room that tells what a shop's cases say together.
package history

import (
	"context"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	view "loopbook/app/ui/history"
	"loopbook/app/ui/kit"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/experience"
	"loopbook/cases/sqlite"
)

// Room shows the history.
type Room struct {
	at      bench.Bench
	view    *view.View
	ranking func() // stops what ranks the closed cases; nil: nothing does
}

// Ways lead from the history elsewhere.
type Ways struct {
	Back   func()            // to the case
	Open   func(id string)   // to a case
	Search func(text string) // to the cases that a search finds
}

// New shows no history yet; save writes a chart and says where.
func New(at bench.Bench, save kit.Saver, ways Ways) *Room {
	r := &Room{at: at, view: view.New(save, ways.Back)}
	r.view.OnSearch, r.view.OnOpen, r.view.OnGuess = ways.Search, ways.Open, r.rankClosed
	return r
}

// Content is the room.
func (r *Room) Content() fyne.CanvasObject { return r.view.Content() }

// Show gathers the history apart from the window and shows it.
func (r *Room) Show() {
	store, u := r.at.Desk.Store, r.at.Desk.Units
	r.at.Start(func() {
		h, err := library.History(r.at.Ctx, store, bandKm(u))
		var lines map[int64]cases.Summary
		if err == nil {
			lines, err = linesOf(r.at.Ctx, store, h)
		}
		fyne.Do(func() {
			switch {
			case store != r.at.Desk.Store: // another notebook is open by now
			case err != nil:
				r.at.Ask.Tell(err)
			default:
				r.view.Show(dataOf(h, lines, u))
			}
		})
	})
}

// linesOf are the cases of the repairs that came back.
func linesOf(ctx context.Context, store *sqlite.Store, h experience.History) (map[int64]cases.Summary, error) {
	var keys []int64
	for _, back := range h.Returned[:min(len(h.Returned), mostLines)] {
		keys = append(keys, back.First, back.Second)
	}
	list, err := store.Summaries(ctx, keys)
	out := map[int64]cases.Summary{}
	for _, s := range list {
		out[s.Key] = s
	}
	return out, err
}
