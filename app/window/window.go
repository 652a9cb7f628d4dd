package window

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/desk"
	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/app/window/charts"
	"loopbook/app/window/history"
	"loopbook/app/window/intake"
	"loopbook/app/window/notebook"
	"loopbook/app/window/papers"
	"loopbook/app/window/practice"
	"loopbook/app/window/share"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/sqlite"
)

// window holds what is in sight: the list of cases, and beside it one of the rooms.
type window struct {
	window   fyne.Window
	at       bench.Bench
	menus    *menus
	list     *notebook.List
	rail     fyne.CanvasObject // the list in its place
	rooms    *rooms
	frame    *frame
	screens  *screens
	parting  *parting
	history  *history.Room
	practice *practice.Room
}

// newWindow makes the window; start runs what may take a while apart from it.
func newWindow(ctx context.Context, a fyne.App, store *sqlite.Store, start func(func())) (*window, error) {
	d, err := desk.New(ctx, store, desk.Apart{Start: start, Do: fyne.Do})
	if err != nil {
		return nil, err
	}
	tables, err := likelihood.Shipped()
	if err != nil {
		return nil, err
	}
	kept := preferences{a.Preferences()}
	a.Settings().SetTheme(kit.NewTheme(kept.light()))
	d.Units = kept.units()
	w := &window{window: a.NewWindow("Loopbook")}
	w.window.SetMaster()
	w.at = bench.Bench{Ctx: ctx, Desk: d, Ask: asking.Over(w.window), Start: start, Leave: w.leave}
	if err := w.make(a, tables, kept); err != nil {
		return nil, err
	}
	w.layOut()
	d.Changed, d.Kept, d.Told = w.show, w.list.Again, w.menus.shelf.tell
	d.Answered, d.Progressed = w.frame.showAnswer, w.frame.showProgress
	w.use(store)
	w.menus.renew()
	w.window.SetOnDropped(func(_ fyne.Position, files []fyne.URI) { w.menus.dropped(files) })
	w.window.SetCloseIntercept(w.menus.quit)
	w.searchAgainOnReturn(a.Lifecycle())
	w.window.Resize(fyne.NewSize(1280, 800))
	return w, nil
}

// searchAgainOnReturn lets the list show what the command line brought while another program was in front. As the window
// opens it comes to the front too, and is searched already.
func (w *window) searchAgainOnReturn(l fyne.Lifecycle) {
	away := false
	l.SetOnExitedForeground(func() { away = true })
	l.SetOnEnteredForeground(func() {
		if away {
			away = false
			w.list.Again()
		}
	})
}

// make makes the window's parts and joins them to each other.
func (w *window) make(a fyne.App, tables *likelihood.Tables, kept preferences) (err error) {
	at, home := w.at, func() { w.enter(caseRoom) }
	quit := func() { w.quit(a) }
	way := &ways{at: at, home: w.goHome}
	w.parting = &parting{at: at, spent: func() float64 { return w.practice.Spent() }}
	o := &opener{at: at, parting: w.parting, home: home, toCase: w.goHome, begun: way.begun}
	p := parts{
		tables: tables, kept: a.Preferences(), smaller: library.NewSmaller(), copied: a.Clipboard().Content, charts: charts.New(at),
	}
	p.papers = papers.New(at, a, p.smaller, quit)
	w.screens = newScreens(at, p, way, o)
	p.papers.Lost = w.screens.lost
	way.screens, w.parting.screens = w.screens, w.screens
	w.list = notebook.New(at, notebook.Ways{New: o.begin, Open: o.open, Changed: w.listChanged})
	w.history = history.New(at, p.charts.Save, history.Ways{Back: home, Open: o.open, Search: w.list.Search})
	shown := func() cases.Query { q, _ := w.list.Shown(); return q }
	w.practice, err = practice.New(at, tables, practice.Ways{Back: home, Open: o.open, Shown: shown, Changed: w.showRail})
	if err != nil {
		return err
	}
	in := intake.New(at, intake.Ways{
		Part: func(do func()) { w.parting.then(kit.L("window.parting.anyway"), do) }, Opened: w.screens.photos.ReadAhead, Home: home,
	})
	w.menus = &menus{
		window: w.window, guard: &guard{at: at, hidden: w.hidden}, ways: way, opener: o, enter: w.enter, list: w.list,
		shelf:    &shelf{at: at, list: w.list, parting: w.parting, window: w.window, use: w.use},
		arrivals: &arrivals{at: at, warmup: w.screens.warmup, photos: w.screens.photos, intake: in, results: w.practice.TakeResults},
		choices:  &choices{at: at, app: a, kept: kept, changed: func() { w.menus.renew(); w.show() }, retype: func() { w.screens.retype() }},
		papers:   p.papers, charts: p.charts, share: share.New(at, w.list.Shown, o.openThen), quit: quit,
	}
	w.frame = newFrame(at.Desk, w.screens, greet(o, w.menus.shelf, w.menus.arrivals), w.dropUnseen, w.menus.shelf.again)
	return nil
}

// layOut puts the rooms beside the list. They come before it on the way of the Tab key, and a screen before
// its head.
func (w *window) layOut() {
	w.rooms = newRooms(map[roomName]room{
		caseRoom:     {w.frame.content, w.show},
		historyRoom:  {w.history.Content(), w.history.Show},
		practiceRoom: {w.practice.Content(), w.practice.Show},
	})
	w.rail = w.list.Content()
	w.window.SetPadded(false)
	w.window.SetContent(kit.NewWatch(container.New(railed{}, w.rooms.content, w.rail), w.frame.showKept))
	w.window.Canvas().SetOnTypedKey(w.typed)
}

// use turns to a notebook.
func (w *window) use(store *sqlite.Store) {
	w.practice.Drop()
	w.history.Drop()
	w.enter(caseRoom)
	if old := w.at.Desk.Store; old != store {
		defer w.menus.papers.Close(old)
	}
	w.at.Desk.Store, w.at.Desk.Before, w.at.Desk.Gone = store, "", ""
	w.list.Turn()
}

// show paints what the desk holds.
func (w *window) show() {
	if w.at.Desk.Open {
		w.menus.guard.opened()
	}
	w.screens.turn()
	w.frame.show()
	w.list.Show()
}

// listChanged tells the trainer, if one is there, that the list shows other cases.
func (w *window) listChanged() {
	if w.rooms.now == practiceRoom {
		w.practice.CountFound()
	}
}

// leave keeps what is being typed anywhere.
func (w *window) leave() { w.screens.leave() }

// quit ends the program; it may be asked for from the papers, whose window lies over this one.
func (w *window) quit(a fyne.App) {
	w.parting.notebook(kit.L("window.parting.close"), func() {
		w.window.SetCloseIntercept(nil)
		a.Quit()
	})
	if w.parting.asked != nil {
		w.window.RequestFocus()
	}
}
