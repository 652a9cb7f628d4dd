package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/desk"
	"loopbook/app/ui/kit"
	"loopbook/app/window/words"
)

// head is the line over a case: what it is, undo and redo, and the quiet sign
// that what was typed is kept.
type head struct {
	title, vehicle, kept *widget.Label
	progress             *widget.Label // of what is computed for the case
	undo, redo           *kit.Button
	again                *kit.Button // writes what couldn't be; seen only then
	sign                 *fyne.Container
	content              fyne.CanvasObject
}

func newHead(undo, redo, again func()) *head {
	h := &head{title: widget.NewLabel(""), vehicle: kit.Small(""), kept: kit.Small(""), progress: kit.Caption(""), sign: container.NewCenter()}
	h.title.SizeName, h.title.TextStyle.Bold, h.title.Truncation = theme.SizeNameHeadingText, true, fyne.TextTruncateEllipsis
	h.kept.Truncation = fyne.TextTruncateOff
	h.undo = kit.NewQuiet(kit.L("window.frame.undo"), theme.ContentUndoIcon(), undo)
	h.redo = kit.NewQuiet(kit.L("window.frame.redo"), theme.ContentRedoIcon(), redo)
	h.again = kit.NewButton(kit.L("window.frame.again"), again)
	h.again.Hide()
	right := container.NewHBox(h.undo, h.redo, container.NewCenter(container.NewHBox(h.sign, h.kept)), h.again)
	under := container.NewBorder(nil, nil, nil, h.progress, h.vehicle) // so that the title has its room while something is computed
	h.content = container.NewBorder(nil, nil, nil, right, container.New(kit.Tight{More: 6}, h.title, under))
	return h
}

func (h *head) show(d *desk.Desk) {
	h.title.SetText(d.Case.Title)
	if d.Case.Title == "" {
		h.title.SetText(kit.L("window.frame.new-case"))
	}
	h.vehicle.SetText(words.Vehicle(d.Case, d.Units))
	_, why := d.Unkept()
	kit.SetEnabled(d.History.CanUndo || why != nil, h.undo)
	kit.SetEnabled(d.History.CanRedo && why == nil, h.redo)
}

// showKept says since when all is kept and what was taken back last, that nothing will be in a notebook that may only be read,
// or that something isn't kept: where, unless that is in sight; what isn't on the disk comes first.
func (h *head) showKept(d *desk.Desk, refused bool, where string) {
	sign := "fine"
	h.kept.Importance = widget.SuccessImportance
	text := kit.L("window.frame.kept", d.History.Saved.Local().Format("15:04"))
	if d.Back { // it may be of a screen that isn't looked at
		text = kit.L("window.frame.taken-back", kit.Cut(d.History.RedoWhat, longestBack))
	}
	if d.Store.ReadOnly() {
		sign, h.kept.Importance, text = "look", widget.WarningImportance, kit.L("window.frame.read-only")
	}
	if refused {
		sign, h.kept.Importance, text = "act", widget.DangerImportance, kit.L("window.frame.not-all-kept")
	}
	if refused && where != "" {
		text = kit.L("window.frame.not-all-kept-at", where)
	}
	h.again.Hide()
	if _, why := d.Unkept(); why != nil {
		sign, h.kept.Importance, text = "act", widget.DangerImportance, kit.L("window.frame.unkept")
		h.again.Show()
	}
	h.kept.SetText(text)
	h.sign.Objects = []fyne.CanvasObject{kit.Sign(sign)}
	h.sign.Refresh()
}

// longestBack is as wide as what was taken back is told: the title wants room too.
const longestBack = 220
