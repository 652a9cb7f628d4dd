package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"loopbook/app/ui/kit"
)

// menu holds every shortcut too: while a field has the focus, only the menu's
// shortcuts fire.
//
// A dialog is to be answered first: until then they do nothing but quit, and undo what is typed in it.
func (w *window) menu() *fyne.MainMenu {
	all := w.menus()
	for _, m := range all.Items {
		for _, i := range m.Items {
			_, undo := i.Shortcut.(*fyne.ShortcutUndo)
			if do := i.Action; do != nil && !i.IsQuit && !undo {
				i.Action = func() { w.unasked(do) }
			}
		}
	}
	return all
}

// unasked does something unless a dialog stands over the window; that no case is open is no
// question.
func (w *window) unasked(do func()) {
	if w.missing != nil || w.window.Canvas().Overlays().Top() == nil {
		do()
	}
}

func (w *window) menus() *fyne.MainMenu {
	return fyne.NewMainMenu(
		fyne.NewMenu(kit.L("window.frame.file"),
			key(kit.L("window.frame.new-case"), fyne.KeyN, w.newCase),
			key(kit.L("window.frame.import"), fyne.KeyI, w.chooseImport),
			key(kit.L("window.frame.export"), fyne.KeyE, w.chooseShare),
			key(kit.L("window.frame.print"), fyne.KeyP, w.ofCase(w.papers.Print)),
			fyne.NewMenuItemSeparator(),
			fyne.NewMenuItem(kit.L("window.frame.own"), w.openOwn),
			key(kit.L("window.frame.demo"), fyne.KeyD, w.openDemo),
			fyne.NewMenuItemSeparator(),
			quitItem(w.quit),
		),
		fyne.NewMenu(kit.L("window.frame.edit"),
			item(kit.L("window.frame.undo"), &fyne.ShortcutUndo{}, w.undo), // the toolkit's own names for Ctrl Z and Y
			item(kit.L("window.frame.redo"), &fyne.ShortcutRedo{}, w.ofCase(w.redo)),
			fyne.NewMenuItemSeparator(),
			item(kit.L("window.photos.paste-menu"), &desktop.CustomShortcut{KeyName: fyne.KeyV, Modifier: fyne.KeyModifierShortcutDefault | fyne.KeyModifierShift}, w.ofCase(w.photos.Paste)),
			fyne.NewMenuItemSeparator(),
			key(kit.L("window.frame.find"), fyne.KeyF, w.notebook.FocusSearch),
			fyne.NewMenuItem(kit.L("window.frame.delete-case"), w.ofCase(w.deleteCase)),
			fyne.NewMenuItem(kit.L("window.frame.restore-case"), w.restoreCase),
		),
		fyne.NewMenu(kit.L("window.frame.go"),
			key(kit.L("window.frame.complaint"), fyne.Key1, w.ofCase(func() { w.goTo(complaintTab) })),
			key(kit.L("window.frame.warm-up"), fyne.Key2, w.ofCase(func() { w.goTo(warmUpTab) })),
			key(kit.L("window.frame.hose-map"), fyne.Key3, w.ofCase(w.goToHoseMap)),
			key(kit.L("window.frame.checks"), fyne.Key4, w.ofCase(w.goToChecks)),
			key(kit.L("window.frame.causes"), fyne.Key5, w.ofCase(w.goToCauses)),
			key(kit.L("window.verdict.tab"), fyne.Key6, w.ofCase(func() { w.goTo(verdictTab) })),
			key(kit.L("window.repair.tab"), fyne.Key7, w.ofCase(func() { w.goTo(repairTab) })),
			key(kit.L("window.proof.tab"), fyne.Key8, w.ofCase(func() { w.goTo(proofTab) })),
			key(kit.L("window.photos.tab"), fyne.Key9, w.ofCase(func() { w.goTo(photosTab) })),
			key(kit.L("window.frame.what-if"), fyne.Key0, w.ofCase(w.goToWhatIf)),
			fyne.NewMenuItemSeparator(),
			key(kit.L("window.frame.add-round"), fyne.KeyR, w.ofCase(w.addRound)),
			key(kit.L("window.plot.rounds"), fyne.KeyG, w.ofCase(w.charts.ShowRounds)),
			key(kit.L("window.frame.check-again"), fyne.KeyT, w.ofCase(w.checkAgain)),
			fyne.NewMenuItem(kit.L("window.frame.delete-check"), w.ofCase(w.deleteCheck)),
		),
		w.libraryMenu(),
		w.unitsMenu(),
		w.lightMenu(),
	)
}

// ofCase does what acts on the open case, and says what is missing where none is open.
func (w *window) ofCase(do func()) func() {
	return func() {
		switch {
		case w.at.Desk.Open:
			do()
		case w.window.Canvas().Overlays().Top() == nil: // it may stand there already
			w.missing = w.at.Ask.Notice(kit.L("window.frame.nothing"), kit.L("window.frame.none-open"))
			w.at.Ask.ShowThen(w.missing, func() { w.missing = nil })
		}
	}
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

// undo takes back what is being typed; with nothing typed, the last edit.
func (w *window) undo() {
	if f, ok := w.window.Canvas().Focused().(interface{ Revert() bool }); ok && f.Revert() {
		return
	}
	w.unasked(w.ofCase(w.at.Desk.Undo))
}

func (w *window) redo() {
	w.leave()
	w.at.Desk.Redo()
}

func (w *window) addRound() {
	w.leave()
	w.hosemap.AddRound("", true)
	w.tabs.SelectIndex(hoseMapTab)
}

func (w *window) deleteCase() {
	w.leave()
	w.at.Desk.Remove()
}

func (w *window) restoreCase() {
	w.leave()
	w.at.Desk.Restore()
}

// goTo turns to a page of the open case from wherever one is, but for who practises:
// its answer stands there.
func (w *window) goTo(tab int) {
	if w.trains.session == nil {
		w.enter(caseRoom)
	}
	w.tabs.SelectIndex(tab)
}

// goToHoseMap keeps what is being typed first, so that the hose that is left counts as read.
func (w *window) goToHoseMap() {
	w.leave()
	w.goTo(hoseMapTab)
	kit.Focus(w.hosemap.Unread())
}

func (w *window) goToCauses() {
	w.goTo(causesTab)
	kit.Focus(w.causes.Focus())
}

func (w *window) goToWhatIf() {
	w.goTo(whatIfTab)
	kit.Focus(w.whatif.First())
}

func (w *window) goToChecks() {
	w.goTo(checksTab)
	kit.Focus(w.checks.Focus())
}

func (w *window) checkAgain() {
	w.tabs.SelectIndex(checksTab)
	w.checks.Again()
}

func (w *window) deleteCheck() {
	if w.tabs.SelectedIndex() == checksTab {
		w.checks.Delete()
	}
}
