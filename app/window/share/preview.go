package share

import (
	"context"
	"sync"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/share"
	"loopbook/app/window/bench"
	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/photo"
)

// preview tells what goes and what stays of the open case while a person chooses. It
// is made apart from the window: a case may have many photos to look into.
type preview struct {
	at   bench.Bench
	e    *view.Export
	read func() (cases.Bundle, error) // the open case, once
	turn sync.Mutex                   // one is made at a time
	seen bool                         // a preview is in sight
	drop func()                       // what is being made is no longer wanted
}

func newPreview(at bench.Bench, e *view.Export) *preview {
	ctx, store, id := at.Ctx, at.Desk.Store, at.Desk.Case.ID
	return &preview{at: at, e: e, drop: func() {}, read: sync.OnceValues(func() (cases.Bundle, error) { return store.Bundle(ctx, id) })}
}

// show tells what a wish means. A newer wish drops what is under way; until then what
// is in sight stays, so that nothing flickers while somebody types.
func (p *preview) show(wish view.Wish) {
	p.drop()
	ctx, cancel := context.WithCancel(p.at.Ctx)
	p.drop = cancel
	if text := withoutPreview(wish, p.at.Desk.Open); text != "" {
		p.seen = false
		p.e.Show(text, view.Preview{})
		return
	}
	if !p.seen {
		p.e.Show(kit.L("window.share.preview-making"), view.Preview{})
	}
	p.at.Start(func() {
		p.turn.Lock()
		defer p.turn.Unlock()
		if ctx.Err() != nil {
			return
		}
		b, err := p.read()
		var told anonymous.Preview
		if err == nil {
			_, told, err = anonymous.Make(b, givingOf(wish).Hide, photo.Bare)
		}
		fyne.Do(func() {
			if ctx.Err() == nil {
				p.made(wish, told, err)
			}
		})
	})
}

func (p *preview) made(wish view.Wish, told anonymous.Preview, err error) {
	if err != nil {
		p.seen = false
		p.e.Show(err.Error(), view.Preview{})
		return
	}
	text := kit.L("window.share.preview-text")
	if wish.Scope != view.This {
		text = kit.L("window.share.preview-many")
	}
	p.seen = true
	p.e.Show(text, previewLines(told, p.at.Desk.Units))
}

// withoutPreview is what is said where there is nothing to preview; "": there is.
func withoutPreview(wish view.Wish, open bool) string {
	switch {
	case wish.Scope == view.Table:
		return kit.L("window.share.table-text")
	case !wish.Anonymous:
		return kit.L("window.share.whole-text")
	case !open:
		return kit.L("window.share.no-open")
	}
	return ""
}
