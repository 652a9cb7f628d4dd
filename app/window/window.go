// Package window is the notebook's window: it joins the screens of app/ui to the desk, to the
// library and to each other. It alone opens a display and knows every screen; only main knows it.
package window

import (
	"context"
	"fmt"
	"os"
	"runtime"
	"strings"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/theme"

	"loopbook/app/desk"
	"loopbook/app/library"
	"loopbook/app/ui/alike"
	"loopbook/app/ui/causes"
	"loopbook/app/ui/checks"
	"loopbook/app/ui/complaint"
	"loopbook/app/ui/greeting"
	"loopbook/app/ui/history"
	"loopbook/app/ui/hosemap"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/notebook"
	"loopbook/app/ui/practice"
	"loopbook/app/ui/proof"
	"loopbook/app/ui/repair"
	"loopbook/app/ui/verdict"
	"loopbook/app/ui/whatif"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/app/window/charts"
	"loopbook/app/window/papers"
	"loopbook/app/window/photos"
	"loopbook/app/window/tryout"
	"loopbook/app/window/warmup"
	"loopbook/app/window/words"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/evidence"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
)

// Open shows the notebook at path, or the user's own, until its window is closed.
func Open(ctx context.Context, path string) (err error) {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" {
		return fmt.Errorf("the window needs a display, and there is none here; loopbook --help lists what works without")
	}
	if _, err := diagram.Loops(); err != nil {
		return err
	}
	store, err := library.Open(ctx, path)
	if err != nil {
		return err
	}
	defer noDisplay(&err)
	a := app.NewWithID("loopbook")
	// What is being typed is kept after the signal to end has come.
	w, err := newWindow(context.WithoutCancel(ctx), a, store, func(read func()) { go read() })
	if err != nil {
		store.Close()
		return err
	}
	end := sync.OnceFunc(w.leave)
	go endBySignal(ctx, end)
	w.window.ShowAndRun()
	end()
	w.at.Desk.Stop()
	w.live.End()
	return w.at.Desk.Store.Close()
}

// endPatience is how long the program may take to end after a signal.
const endPatience = 900 * time.Millisecond

// endBySignal keeps what is being typed when the signal to end has come. The
// toolkit hears the signal too and leaves its loop by itself; should it hang on its
// way out, the process ends all the same: what is kept is on the disk by then.
func endBySignal(ctx context.Context, end func()) {
	<-ctx.Done()
	fyne.Do(end)
	time.Sleep(endPatience)
	os.Exit(0)
}

// noDisplay turns the toolkit's panic on a display that doesn't answer into an
// error; any other panic goes on.
func noDisplay(err *error) {
	p := recover()
	if p == nil {
		return
	}
	if text := fmt.Sprint(p); !strings.Contains(text, "GLFW") {
		panic(p)
	}
	*err = fmt.Errorf("the window can't be opened: display %q does not answer", os.Getenv("DISPLAY"))
}

// window joins the screens to the desk.
type window struct {
	app    fyne.App
	window fyne.Window
	prefs  preferences
	at     bench.Bench
	pages  *pages

	notebook  *notebook.View
	complaint *complaint.View
	warmup    *warmup.Screen
	charts    *charts.Charts
	hosemap   *hosemap.View
	checks    *checks.View
	causes    *causes.View
	whatif    *whatif.View
	live      *tryout.Live
	tried     string // the case whose loop What if was begun with
	verdict   *verdict.View
	repair    *repair.View
	proof     *proof.View
	proofs    *proofs
	photos    *photos.Photos
	papers    *papers.Papers
	tables    *likelihood.Tables
	head      *head
	tabs      *container.AppTabs
	case_     fyne.CanvasObject
	greeting  fyne.CanvasObject
	rooms     *rooms
	rail      fyne.CanvasObject // the list of cases
	before    string            // the case that was open before this one
	missing   dialog.Dialog     // says that no case is open; nil: it isn't said
	history   *history.View
	practice  *practice.View
	trains    *practising
	alike     *alike.View
	ranking   func() // stops what ranks the closed cases; nil: nothing does
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
	w := &window{app: a, prefs: preferences{a.Preferences()}, tables: tables}
	a.Settings().SetTheme(kit.NewTheme(w.prefs.light()))
	w.window = a.NewWindow("Loopbook")
	w.window.SetMaster()
	w.at = bench.Bench{Ctx: ctx, Desk: d, Ask: asking.Over(w.window), Start: start, Leave: w.leave}
	d.Units = w.prefs.units()
	w.charts = charts.New(w.at)
	told := words.Checks(tables)
	told.Stage, told.Save = stageNow, w.charts.Save
	w.checks = checks.New(d.Edit, told)
	if err := w.makePractice(); err != nil {
		return nil, err
	}
	smaller := library.NewSmaller()
	w.papers = papers.New(w.at, a, smaller, w.quit)
	w.warmup = warmup.New(w.at, w.tab(warmUpTab), a.Preferences(), w.charts.Save)
	w.photos = photos.New(w.at, w.tab(photosTab), smaller, a.Clipboard().Content)
	w.makeScreens()
	w.use(store)
	w.window.SetMainMenu(w.menu())
	w.window.SetOnDropped(func(_ fyne.Position, files []fyne.URI) { w.importURIs(files) })
	w.window.SetCloseIntercept(w.quit)
	w.window.Resize(fyne.NewSize(1280, 800))
	return w, nil
}

func (w *window) makeScreens() {
	d := w.at.Desk
	w.makeNotebook()
	w.complaint = complaint.New(d.Edit, complaint.Words{Code: d.Mind.Analyst.CodeMeaning, IsCode: evidence.IsCode, Coolant: words.Coolant, VIN: words.VIN})
	w.makeRepair()
	w.makeProof()
	w.hosemap = hosemap.New()
	w.hosemap.Edit, w.hosemap.OnReading, w.hosemap.OnRound = d.Edit, d.Typed, d.ShowRound
	w.hosemap.OnLayout = func(id string) { d.Edit(kit.L("window.frame.layout-edit"), func(c *cases.Case) { c.Loop.Layout = id }) }
	w.hosemap.OnCauses = w.goToCauses
	w.makeCauses()
	w.makeWhatIf()
	w.makeAlike()
	w.head = newHead(d.Undo, d.Redo)
	w.tabs = container.NewAppTabs(
		container.NewTabItem(kit.L("window.frame.complaint"), w.complaint.Content()),
		container.NewTabItem(kit.L("window.frame.warm-up"), w.warmup.Content()),
		container.NewTabItem(kit.L("window.frame.hose-map"), w.hosemap.Content()),
		container.NewTabItem(kit.L("window.frame.checks"), w.checks.Content()),
		container.NewTabItem(kit.L("window.frame.causes"), w.causes.Content()),
		container.NewTabItem(kit.L("window.verdict.tab"), w.verdict.Content()),
		container.NewTabItem(kit.L("window.repair.tab"), w.repair.Content()),
		container.NewTabItem(kit.L("window.proof.tab"), w.proof.Content()),
		container.NewTabItem(kit.L("window.photos.tab"), w.photos.Content()),
		container.NewTabItem(kit.L("window.frame.what-if"), w.whatif.Content()),
		container.NewTabItem(kit.L("window.alike.tab"), w.alike.Content()),
	)
	w.tabs.SelectIndex(hoseMapTab)
	w.tabs.OnUnselected = func(left *container.TabItem) {
		if d.Open && left.Content == w.warmup.Content() {
			w.warmup.Leave()
		}
	}
	w.tabs.OnSelected = func(*container.TabItem) {
		w.showTab()
		w.showKept()
	}
	w.case_ = container.NewBorder(w.head.content, nil, nil, nil, w.tabs)
	w.greeting = greeting.New(
		greeting.Choice{Title: kit.L("window.frame.new-case"), Text: kit.L("window.frame.begin-text"), Button: kit.L("window.frame.begin"), Key: "Ctrl N", Icon: theme.DocumentCreateIcon(), Do: w.newCase},
		greeting.Choice{Title: kit.L("window.frame.demo"), Text: kit.L("window.frame.demo-text"), Button: kit.L("window.frame.demo-open"), Key: "Ctrl D", Icon: theme.StorageIcon(), Do: w.openDemo},
		greeting.Choice{Title: kit.L("window.frame.import-title"), Text: kit.L("window.frame.import-text"), Button: kit.L("window.frame.import-choose"), Key: "Ctrl I", Icon: theme.DownloadIcon(), Do: w.chooseImport},
	)
	d.Changed, d.Told = w.show, w.at.Ask.Tell
	d.Kept = func() { w.pages.ask(w.pages.query) } // another title may be found now
	w.makeHistory()
	w.rooms = newRooms(map[roomName]fyne.CanvasObject{
		caseRoom: container.NewStack(w.greeting, w.case_), historyRoom: w.history.Content(), practiceRoom: w.practice.Content(),
	})
	w.rail = kit.Wide(232, w.notebook.Content())
	w.window.SetPadded(false)
	// The rooms come before the list of cases on the way of the Tab key, and a screen before its head.
	w.window.SetContent(kit.NewWatch(container.NewBorder(nil, nil, w.rail, nil, w.rooms.content), w.showKept))
	w.window.Canvas().SetOnTypedKey(w.typed)
}

// The tabs by their place.
const (
	complaintTab = iota
	warmUpTab
	hoseMapTab
	checksTab
	causesTab
	verdictTab
	repairTab
	proofTab
	photosTab
	whatIfTab
	alikeTab
)

// use turns to a notebook.
func (w *window) use(store *sqlite.Store) {
	w.leaveLibrary()
	if old := w.at.Desk.Store; old != store {
		defer old.Close()
	}
	w.at.Desk.Store = store
	w.pages = newPages(store, w.at.Start)
	w.pages.told, w.pages.filled = w.at.Ask.Tell, w.notebook.Refresh
	w.pages.changed = w.answered
	w.notebook.Row = w.pages.row
	w.at.Desk.Close()
	w.notebook.SetText("")
	w.showSearches()
	w.bringUpToDate()
	w.pages.ask(cases.Query{})
}

// answered shows a search's answer; a notebook opens at its newest case.
func (w *window) answered() {
	if !w.at.Desk.Open && w.pages.total > 0 && w.pages.query.IsZero() {
		if s, ok := w.pages.row(0); ok {
			w.at.Desk.Load(s.ID)
		}
	}
	w.countFilters()
	w.list()
}

// show paints what the desk holds.
func (w *window) show() {
	d := w.at.Desk
	if !d.Open {
		w.showWhatIf()
		w.case_.Hide()
		w.greeting.Show()
		w.list()
		return
	}
	if w.missing != nil {
		w.missing.Hide()
	}
	w.greeting.Hide()
	w.case_.Show()
	w.head.show(d)
	w.showTab()
	w.showKept()
	w.list()
}

// showKept says whether all is kept that stands on the screen.
func (w *window) showKept() {
	slip := w.tabs.SelectedIndex() == hoseMapTab && len(w.at.Desk.Slips) > 0
	w.head.showKept(w.at.Desk, slip || kit.Refusing(w.tabs))
}

// list shows the rows of the search, and which of them is open.
func (w *window) list() {
	w.notebook.Show(w.pages.total, w.pages.find(w.at.Desk.Case.ID), w.pages.readAs)
}

// leave keeps what is being typed anywhere.
func (w *window) leave() {
	if !w.at.Desk.Open {
		return
	}
	w.hosemap.Leave()
	w.complaint.Leave()
	w.warmup.Leave()
	w.checks.Leave()
	w.verdict.Leave()
	w.repair.Leave()
	w.proof.Leave()
	w.photos.Leave()
}

func (w *window) quit() {
	w.leave()
	w.window.SetCloseIntercept(nil)
	w.app.Quit()
}

func (w *window) newCase() {
	w.leave()
	w.at.Desk.Begin()
	w.tabs.SelectIndex(complaintTab)
	kit.Focus(w.complaint.First())
}
