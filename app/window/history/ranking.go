package history

import (
	"context"

	"fyne.io/fyne/v2"

	"loopbook/app/mind"
	"loopbook/app/ui/kit"
)

// rankClosed ranks the closed cases of which it isn't known what the program would have
// held likeliest, one after the other apart from the window.
func (r *Room) rankClosed() {
	if r.ranking != nil {
		r.ranking() // pressed again: stop
		return
	}
	ctx, cancel := context.WithCancel(r.at.Ctx)
	r.ranking = cancel
	store := r.at.Desk.Store
	r.at.Start(func() {
		err := mind.RankClosed(ctx, store, func(done, of int) {
			fyne.Do(func() { r.view.Tell(kit.L("window.history.ranking", done, of)) })
		})
		fyne.Do(func() {
			r.ranking = nil
			r.view.Tell("")
			if err != nil && ctx.Err() == nil {
				r.at.Ask.Tell(err)
			}
			r.Show()
		})
	})
}

// Drop stops the ranking, for a notebook that is being closed.
func (r *Room) Drop() {
	if r.ranking != nil {
		r.ranking()
	}
}
