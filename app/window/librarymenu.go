package window

import (
	"fyne.io/fyne/v2"

	"loopbook/app/ui/kit"
)

// libraryMenu is what the notebook can do as a whole.
func (w *window) libraryMenu() *fyne.Menu {
	return fyne.NewMenu(kit.L("window.library.menu"),
		key(kit.L("window.alike.title"), fyne.KeyL, w.ofCase(func() {
			w.enter(caseRoom)
			w.tabs.SelectIndex(alikeTab)
		})),
		key(kit.L("window.compare.menu"), fyne.KeyB, w.compareWithLast),
		key(kit.L("window.history.menu"), fyne.KeyH, func() { w.enter(historyRoom) }),
		key(kit.L("window.practice.menu"), fyne.KeyJ, func() { w.enter(practiceRoom) }),
		fyne.NewMenuItemSeparator(),
		fyne.NewMenuItem(kit.L("window.share.folder"), w.chooseFolder),
	)
}
