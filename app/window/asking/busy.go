package asking

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// Busy shows that something is under way, which a person may stop: by the button, or by Escape.
type Busy struct {
	Ctx    context.Context // ends when it is stopped
	text   *widget.Label
	dialog dialog.Dialog
}

// Busy shows that something is under way until its Done is called.
func (a *Asker) Busy(ctx context.Context, text string) *Busy {
	ctx, cancel := context.WithCancel(ctx)
	b := &Busy{Ctx: ctx, text: widget.NewLabel(text)}
	d := dialog.NewCustomWithoutButtons(kit.L("window.share.busy"), kit.Wide(360, b.text), a.over)
	d.SetButtons([]fyne.CanvasObject{kit.NewButton(kit.L("window.share.stop"), d.Hide)})
	b.dialog = d
	a.ShowThen(d, cancel)
	return b
}

// Say tells how far it is.
func (b *Busy) Say(text string) { b.text.SetText(text) }

// Done ends it, and tells whether a person had stopped it.
func (b *Busy) Done() (stopped bool) {
	if b.Ctx.Err() != nil {
		return true // and its dialog is gone
	}
	b.dialog.Hide()
	return false
}
