package window

import (
	"context"
	"strconv"
	"strings"
	"sync"

	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/share"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/anonymous"
	"loopbook/cases/photo"
	"loopbook/diagram/units"
)

// sharePreview tells what goes and what stays of the open case while a person chooses. It
// is made apart from the window: a case may have many photos to look into.
type sharePreview struct {
	w    *window
	e    *share.Export
	read func() (cases.Bundle, error) // the open case, once
	turn sync.Mutex                   // one is made at a time
	seen bool                         // a preview is in sight
	drop func()                       // what is being made is no longer wanted
}

func (w *window) newSharePreview(e *share.Export) *sharePreview {
	ctx, store, id := w.at.Ctx, w.at.Desk.Store, w.at.Desk.Case.ID
	return &sharePreview{w: w, e: e, drop: func() {}, read: sync.OnceValues(func() (cases.Bundle, error) { return store.Bundle(ctx, id) })}
}

// show tells what a wish means. A newer wish drops what is under way; until then what
// is in sight stays, so that nothing flickers while somebody types.
func (p *sharePreview) show(wish share.Wish) {
	p.drop()
	ctx, cancel := context.WithCancel(p.w.at.Ctx)
	p.drop = cancel
	if text := withoutPreview(wish, p.w.at.Desk.Open); text != "" {
		p.seen = false
		p.e.Show(text, share.Preview{})
		return
	}
	if !p.seen {
		p.e.Show(kit.L("window.share.preview-making"), share.Preview{})
	}
	p.w.at.Start(func() {
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

func (p *sharePreview) made(wish share.Wish, told anonymous.Preview, err error) {
	if err != nil {
		p.seen = false
		p.e.Show(err.Error(), share.Preview{})
		return
	}
	text := kit.L("window.share.preview-text")
	if wish.Scope != share.This {
		text = kit.L("window.share.preview-many")
	}
	p.seen = true
	p.e.Show(text, previewLines(told, p.w.at.Desk.Units))
}

// withoutPreview is what is said where there is nothing to preview; "": there is.
func withoutPreview(wish share.Wish, open bool) string {
	switch {
	case wish.Scope == share.Table:
		return kit.L("window.share.table-text")
	case !wish.Anonymous:
		return kit.L("window.share.whole-text")
	case !open:
		return kit.L("window.share.no-open")
	}
	return ""
}

func previewLines(p anonymous.Preview, u units.Set) (out share.Preview) {
	for _, l := range p.Goes {
		out.Goes = append(out.Goes, share.Line{Where: whereWords(l), Was: lineWords(l.Kind, l.Was, u), Now: lineWords(l.Kind, l.Now, u)})
	}
	for _, l := range p.Stays {
		out.Stays = append(out.Stays, share.Line{Where: whereWords(l), Was: lineWords(l.Kind, l.Was, u)})
	}
	return out
}

// whereWords is a line's place in the case in plain words; of a file its kind and its
// name.
func whereWords(l anonymous.Line) string {
	switch l.Kind {
	case anonymous.Notes, anonymous.LogFile, anonymous.OtherFile, anonymous.PictureOf:
		return kit.L("window.share.kind-"+string(l.Kind)) + " · " + l.Where
	case anonymous.Unknown:
		return kit.L("window.share.kind-"+string(l.Kind)) + " · " + words.Place(l.Where)
	}
	return words.Place(l.Where)
}

// lineWords is what a line says, in a person's words and units.
func lineWords(k anonymous.Kind, text string, u units.Set) string {
	number, err := strconv.ParseFloat(text, 64)
	switch {
	case k == anonymous.Times:
		return words.Moment(text)
	case err != nil:
	case k == anonymous.Odometer:
		return u.DistUnit(number)
	case k == anonymous.Notes:
		return kit.L("window.share.notes", int(number))
	case k == anonymous.LogFile, k == anonymous.OtherFile:
		return kit.L("window.share.kilobytes", int(number+999)/1000)
	}
	return strings.Join(strings.Fields(text), " ")
}
