package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"loopbook/app/ui/kit"
	"loopbook/app/window/charts"
	"loopbook/app/window/notebook"
	"loopbook/app/window/papers"
	"loopbook/app/window/share"
)

// menus lead to everything that can be done.
type menus struct {
	window   fyne.Window
	guard    *guard
	ways     *ways
	opener   *opener
	shelf    *shelf
	arrivals *arrivals
	choices  *choices
	papers   *papers.Papers
	charts   *charts.Charts
	share    *share.Sharing
	list     *notebook.List
	enter    func(roomName)
	quit     func()
}

// menu holds every shortcut too: while a field has the focus, only the menu's
// shortcuts fire.
//
// A dialog is to be answered first: until then they do nothing but quit, and undo what is typed in it.
func (m *menus) menu() *fyne.MainMenu {
	all := fyne.NewMainMenu(m.all()...)
	for _, one := range all.Items {
		for _, i := range one.Items {
			_, undo := i.Shortcut.(*fyne.ShortcutUndo)
			if do := i.Action; do != nil && !i.IsQuit && !undo {
				i.Action = func() { m.guard.unasked(do) }
			}
		}
	}
	return all
}

// dropped takes files that were dropped on the window, unless a dialog is to be answered first or somebody practises:
// they would go unseen into the case that is practised on.
func (m *menus) dropped(files []fyne.URI) {
	m.guard.unasked(m.guard.seen(func() { m.arrivals.take(files) }))
}

// renew shows the menu as what is chosen in it is now.
func (m *menus) renew() { m.window.SetMainMenu(m.menu()) }

func (m *menus) all() []*fyne.Menu {
	return []*fyne.Menu{m.fileMenu(), m.editMenu(), m.goMenu(), m.libraryMenu(), m.choices.unitsMenu(), m.choices.lightMenu()}
}

func (m *menus) fileMenu() *fyne.Menu {
	return fyne.NewMenu(kit.L("window.frame.file"),
		key(kit.L("window.frame.new-case"), fyne.KeyN, m.guard.seen(m.opener.begin)),
		item(kit.L("window.frame.same-vehicle"), &desktop.CustomShortcut{KeyName: fyne.KeyN, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}, m.guard.ofCase(m.opener.again)),
		key(kit.L("window.frame.import"), fyne.KeyI, m.guard.seen(m.arrivals.choose)),
		key(kit.L("window.frame.export"), fyne.KeyE, m.guard.seen(m.share.Choose)),
		key(kit.L("window.frame.print"), fyne.KeyP, m.guard.ofCase(m.papers.Print)),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem(kit.L("window.frame.own"), m.shelf.openOwn),
		key(kit.L("window.frame.demo"), fyne.KeyD, m.shelf.openDemo),
		fyne.NewMenuItemSeparator(),
		quitItem(m.quit),
	)
}

func (m *menus) editMenu() *fyne.Menu {
	return fyne.NewMenu(kit.L("window.frame.edit"),
		item(kit.L("window.frame.undo"), &fyne.ShortcutUndo{}, m.undo), // the toolkit's own names for Ctrl Z and Y
		item(kit.L("window.frame.redo"), &fyne.ShortcutRedo{}, m.guard.ofCase(m.opener.redo)),
		fyne.NewMenuItemSeparator(),
		item(kit.L("window.photos.paste-menu"), &desktop.CustomShortcut{KeyName: fyne.KeyV, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}, m.guard.ofCase(m.arrivals.photos.Paste)),
		fyne.NewMenuItemSeparator(),
		key(kit.L("window.frame.find"), fyne.KeyF, m.guard.seen(m.list.Focus)),
		fyne.NewMenuItem(kit.L("window.frame.delete-case"), m.guard.ofCase(m.opener.remove)),
		fyne.NewMenuItem(kit.L("window.frame.restore-case"), m.guard.seen(m.opener.restore)),
	)
}

func (m *menus) goMenu() *fyne.Menu {
	w, ofCase := m.ways, m.guard.ofCase
	to := func(tab int) func() { return ofCase(func() { w.turnTo(tab) }) }
	return fyne.NewMenu(kit.L("window.frame.go"),
		key(kit.L("window.frame.complaint"), fyne.Key1, to(complaintTab)),
		key(kit.L("window.frame.warm-up"), fyne.Key2, to(warmUpTab)),
		key(kit.L("window.frame.hose-map"), fyne.Key3, to(hoseMapTab)),
		key(kit.L("window.frame.checks"), fyne.Key4, to(checksTab)),
		key(kit.L("window.frame.causes"), fyne.Key5, to(causesTab)),
		key(kit.L("window.verdict.tab"), fyne.Key6, to(verdictTab)),
		key(kit.L("window.repair.tab"), fyne.Key7, to(repairTab)),
		key(kit.L("window.proof.tab"), fyne.Key8, to(proofTab)),
		key(kit.L("window.photos.tab"), fyne.Key9, to(photosTab)),
		key(kit.L("window.frame.what-if"), fyne.Key0, to(whatIfTab)),
		fyne.NewMenuItemSeparator(),
		key(kit.L("window.frame.add-round"), fyne.KeyR, ofCase(w.addRound)),
		key(kit.L("window.plot.rounds"), fyne.KeyG, ofCase(m.charts.ShowRounds)),
		key(kit.L("window.frame.check-again"), fyne.KeyT, ofCase(w.checkAgain)),
		fyne.NewMenuItem(kit.L("window.frame.delete-check"), ofCase(w.deleteCheck)),
	)
}

// libraryMenu is what the notebook can do as a whole.
func (m *menus) libraryMenu() *fyne.Menu {
	return fyne.NewMenu(kit.L("window.library.menu"),
		key(kit.L("window.alike.title"), fyne.KeyL, m.guard.ofCase(func() { m.ways.turnTo(alikeTab) })),
		key(kit.L("window.compare.menu"), fyne.KeyB, m.guard.seen(m.opener.compare)),
		key(kit.L("window.history.menu"), fyne.KeyH, m.guard.seen(func() { m.enter(historyRoom) })),
		key(kit.L("window.practice.menu"), fyne.KeyJ, func() { m.enter(practiceRoom) }),
		fyne.NewMenuItem(kit.L("window.share.taught-menu"), m.guard.ofCase(m.share.ChooseTaught)),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem(kit.L("window.share.folder"), m.guard.seen(m.arrivals.intake.ChooseFolder)),
	)
}

func key(label string, k fyne.KeyName, do func()) *fyne.MenuItem {
	return item(label, &desktop.CustomShortcut{KeyName: k, Modifier: fyne.KeyModifierShortcutDefault}, do)
}

func item(label string, s fyne.Shortcut, do func()) *fyne.MenuItem {
	m := fyne.NewMenuItem(label, do)
	m.Shortcut = s
	return m
}

func quitItem(do func()) *fyne.MenuItem {
	m := key(kit.L("window.frame.quit"), fyne.KeyQ, do)
	m.IsQuit = true
	return m
}

// undo takes back what is being typed; with nothing typed, the last edit, or that the case was deleted.
func (m *menus) undo() {
	if f, ok := m.window.Canvas().Focused().(interface{ Revert() bool }); ok && f.Revert() {
		return
	}
	if m.guard.at.Desk.Gone != "" {
		m.guard.unasked(m.guard.seen(m.opener.restore))
		return
	}
	m.guard.unasked(m.guard.ofCase(m.opener.undo))
}
