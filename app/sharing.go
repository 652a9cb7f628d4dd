package main

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/share"
	"loopbook/cases"
	"loopbook/cases/anonymous"
)

// chooseShare asks what is to leave the notebook, and shows what goes with it.
func (w *window) chooseShare() {
	w.leave()
	scopes := []string{kit.L("window.share.this"), kit.L("window.share.shown", w.pages.total), kit.L("window.share.all"), kit.L("window.share.table", w.pages.total)}
	e := share.NewExport(scopes)
	e.OnWish = func(wish share.Wish) { w.previewShare(e, wish) }
	w.previewShare(e, e.Wish())
	d := dialog.NewCustomConfirm(kit.L("window.share.title"), kit.L("window.share.write"), kit.L("window.frame.close"), e.Content(), func(write bool) {
		if write {
			w.writeShare(e.Wish())
		}
	}, w.window)
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(200, 120)))
	w.ask(d)
}

// previewShare tells what goes and what stays of the open case.
func (w *window) previewShare(e *share.Export, wish share.Wish) {
	switch {
	case wish.Scope == share.Table:
		e.Show(kit.L("window.share.table-text"), share.Preview{})
	case !wish.Anonymous:
		e.Show(kit.L("window.share.whole-text"), share.Preview{})
	case !w.desk.open:
		e.Show(kit.L("window.share.no-open"), share.Preview{})
	default:
		_, told, err := givingOf(wish).bundle(w.desk.ctx, w.desk.store, w.desk.c.ID)
		if err != nil {
			e.Show(err.Error(), share.Preview{})
			return
		}
		text := kit.L("window.share.preview-text")
		if wish.Scope != share.This {
			text = kit.L("window.share.preview-many")
		}
		e.Show(text, previewLines(told))
	}
}

func givingOf(wish share.Wish) giving {
	return giving{anonymous: wish.Anonymous, hide: listed(wish.Hide)}
}

func previewLines(p anonymous.Preview) share.Preview {
	line := func(l anonymous.Line) share.Line {
		where := l.Where
		if l.Kind != anonymous.Words && l.Kind != anonymous.FreeText {
			where = kit.L("window.share.kind-"+string(l.Kind)) + " · " + l.Where
		}
		return share.Line{Where: strings.ReplaceAll(where, "_", " "), Was: oneLine(l.Was), Now: oneLine(l.Now)}
	}
	var out share.Preview
	for _, l := range p.Goes {
		out.Goes = append(out.Goes, line(l))
	}
	for _, l := range p.Stays {
		s := line(l)
		s.Now = ""
		out.Stays = append(out.Stays, s)
	}
	return out
}

// writeShare asks for the file and writes it apart from the window.
func (w *window) writeShare(wish share.Wish) {
	ending, name := ".zip", kit.L("window.share.notebook-name")
	if wish.Scope == share.Table {
		ending = ".csv"
	}
	if wish.Scope == share.This {
		if !w.desk.open {
			return
		}
		name = w.desk.c.Title
		if wish.Anonymous {
			name = kit.L("window.share.anonymous-name")
		}
	}
	d := dialog.NewFileSave(func(f fyne.URIWriteCloser, err error) {
		if err != nil {
			w.tell(err)
			return
		}
		if f != nil {
			f.Close()
			w.shareTo(wish, f.URI().Path())
		}
	}, w.window)
	d.SetFilter(storage.NewExtensionFileFilter([]string{ending}))
	d.SetFileName(fileName(name) + ending)
	d.Resize(fyne.NewSize(900, 600))
	w.ask(d)
}

func (w *window) shareTo(wish share.Wish, path string) {
	store, q, id := w.desk.store, w.pages.query, w.desk.c.ID
	if wish.Scope == share.All {
		q = cases.Query{}
	}
	ctx, done := w.busy(kit.L("window.share.writing"))
	w.start(func() {
		err := giveTo(ctx, store, givingOf(wish), wish.Scope, q, id, path)
		fyne.Do(func() {
			done()
			if err != nil && ctx.Err() == nil {
				w.tell(err)
			}
		})
	})
}

// busy shows that something is under way, with a way to stop it.
func (w *window) busy(text string) (ctx context.Context, done func()) {
	ctx, cancel := context.WithCancel(w.desk.ctx)
	w.working = widget.NewLabel(text)
	d := dialog.NewCustomWithoutButtons(kit.L("window.share.busy"), kit.Wide(360, w.working), w.window)
	stop := widget.NewButton(kit.L("window.share.stop"), func() {
		cancel()
		d.Hide()
	})
	d.SetButtons([]fyne.CanvasObject{stop})
	d.Show()
	return ctx, func() {
		d.Hide()
		cancel()
	}
}
