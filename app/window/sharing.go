package window

import (
	"context"
	"strings"

	"fyne.io/fyne/v2"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/share"
	"loopbook/app/window/filename"
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
	d := w.at.Ask.Offer(kit.L("window.share.title"), kit.L("window.share.write"), kit.L("window.frame.close"), e.Content(), func() { w.writeShare(e.Wish()) })
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(200, 120)))
	w.at.Ask.ShowThen(d, p.drop)
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
		if !w.at.Desk.Open {
			return
		}
		name = w.at.Desk.Case.Title
		if wish.Anonymous {
			name = kit.L("window.share.anonymous-name")
		}
	}
	w.at.Ask.SaveFile(filename.Of(name)+ending, []string{ending}, func(f fyne.URIWriteCloser, err error) {
		if err != nil {
			w.at.Ask.Tell(err)
			return
		}
		if f != nil {
			f.Close()
			w.shareTo(wish, f.URI().Path())
		}
	})
}

func (w *window) shareTo(wish share.Wish, path string) {
	store, q, id := w.at.Desk.Store, w.pages.query, w.at.Desk.Case.ID
	if wish.Scope == share.All {
		q = cases.Query{}
	}
	busy := w.at.Ask.Busy(w.at.Ctx, kit.L("window.share.writing"))
	w.at.Start(func() {
		files, err := giveTo(busy.Ctx, store, givingOf(wish), wish.Scope, q, id, path)
		fyne.Do(func() {
			switch stopped := busy.Done(); {
			case stopped:
			case err != nil:
				w.at.Ask.Tell(err)
			default:
				w.at.Ask.Show(w.at.Ask.Notice(kit.L("window.share.kept-title"), keptWords(wish, files)))
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
