package window

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/share"
	"loopbook/cases"
	"loopbook/cases/sqlite"
)

// chooseShare asks what is to leave the notebook, and shows what goes with it.
func (w *window) chooseShare() {
	w.leave()
	scopes := []string{kit.L("window.share.this"), kit.L("window.share.shown", w.pages.total), kit.L("window.share.all"), kit.L("window.share.table", w.pages.total)}
	e := share.NewExport(scopes)
	p := w.newSharePreview(e)
	e.OnWish = p.show
	p.show(e.Wish())
	d := w.offer(kit.L("window.share.title"), kit.L("window.share.write"), kit.L("window.frame.close"), e.Content(), func() { w.writeShare(e.Wish()) })
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(200, 120)))
	ask(w.window, d, p.drop)
}

func givingOf(wish share.Wish) library.Giving {
	return library.Giving{Anonymous: wish.Anonymous, Hide: library.Listed(wish.Hide)}
}

// writeShare asks for the file and writes it apart from the window.
func (w *window) writeShare(wish share.Wish) {
	ending, name := ".zip", kit.L("window.share.notebook-name")
	if wish.Scope == share.Table {
		ending = ".csv"
	}
	if wish.Scope == share.This {
		if !w.desk.Open {
			return
		}
		name = w.desk.Case.Title
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
	askName(w.window, d, fileName(name)+ending)
}

func (w *window) shareTo(wish share.Wish, path string) {
	store, q, id := w.desk.Store, w.pages.query, w.desk.Case.ID
	if wish.Scope == share.All {
		q = cases.Query{}
	}
	ctx, done := w.busy(kit.L("window.share.writing"))
	w.start(func() {
		files, err := giveTo(ctx, store, givingOf(wish), wish.Scope, q, id, path)
		fyne.Do(func() {
			switch stopped := done(); {
			case stopped:
			case err != nil:
				w.tell(err)
			default:
				w.ask(w.message(kit.L("window.share.kept-title"), keptWords(wish, files)))
			}
		})
	})
}

// keptWords says where what left lies, and whether the customer left with it: a table
// holds none in any case.
func keptWords(wish share.Wish, files []string) string {
	word := "window.share.kept"
	if wish.Anonymous && wish.Scope != share.Table {
		word = "window.share.kept-anonymous"
	}
	return kit.L(word, strings.Join(files, "\n"))
}

// busy shows that something is under way until done is called, which tells whether a
// person stopped it: by the button, or by Escape.
func (w *window) busy(text string) (ctx context.Context, done func() (stopped bool)) {
	ctx, cancel := context.WithCancel(w.ctx)
	w.working = widget.NewLabel(text)
	d := dialog.NewCustomWithoutButtons(kit.L("window.share.busy"), kit.Wide(360, w.working), w.window)
	d.SetButtons([]fyne.CanvasObject{kit.NewButton(kit.L("window.share.stop"), d.Hide).ByEnter()})
	ask(w.window, d, cancel)
	return ctx, func() bool {
		if ctx.Err() != nil {
			return true // and its dialog is gone
		}
		d.Hide()
		return false
	}
}

// giveTo writes what a person chose in the window, and names the files.
func giveTo(ctx context.Context, store *sqlite.Store, g library.Giving, scope share.Scope, q cases.Query, id, path string) ([]string, error) {
	if scope == share.Table {
		return []string{path}, library.WriteTable(ctx, store, q, path)
	}
	ids := []string{id}
	if scope != share.This {
		var err error
		if ids, err = library.IDsOf(ctx, store, q); err != nil {
			return nil, err
		}
	}
	return g.Write(ctx, store, ids, path)
}
