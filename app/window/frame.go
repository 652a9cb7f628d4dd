package window

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"loopbook/app/desk"
	"loopbook/app/ui/greeting"
	"loopbook/app/ui/kit"
)

// frame holds the open case's screens under its head; where no case is open it greets.
type frame struct {
	desk     *desk.Desk
	head     *head
	screens  *screens
	open     fyne.CanvasObject
	greeting *greeting.View
	content  fyne.CanvasObject
}

// newFrame shows no case yet; left is called when another screen was looked at, again to write what couldn't be.
func newFrame(d *desk.Desk, s *screens, greeting *greeting.View, left, again func()) *frame {
	f := &frame{desk: d, head: newHead(d.Undo, d.Redo, again), screens: s, greeting: greeting}
	f.open = container.NewBorder(f.head.content, nil, nil, nil, s.tabs)
	f.content = container.NewStack(f.greeting.Content, f.open)
	s.watch(func() {
		left()
		f.showScreen()
	})
	return f
}

// show paints what the desk holds.
func (f *frame) show() {
	if !f.desk.Open {
		f.screens.show()
		f.open.Hide()
		f.greeting.Deleted(f.desk.Gone)
		f.greeting.Content.Show()
		return
	}
	f.greeting.Content.Hide()
	f.open.Show()
	f.head.show(f.desk)
	f.showScreen()
}

// showScreen paints the screen that is looked at.
func (f *frame) showScreen() {
	f.screens.show()
	f.showProgress()
	f.showKept()
}

// showAnswer paints what the case is held to be, and how far that is computed.
func (f *frame) showAnswer() {
	f.showProgress()
	f.screens.showAnswer()
}

// showProgress says how far the causes are computed.
func (f *frame) showProgress() { f.head.progress.SetText(f.desk.Progress()) }

// showKept says whether all is kept that was typed, and where it isn't.
func (f *frame) showKept() {
	refused, where := f.screens.unkept()
	f.head.showKept(f.desk, refused, where)
}

// greet offers what can be begun with.
func greet(o *opener, s *shelf, a *arrivals) *greeting.View {
	return greeting.New(
		greeting.Choice{Title: kit.L("window.frame.new-case"), Text: kit.L("window.frame.begin-text"), Button: kit.L("window.frame.begin"), Key: "Ctrl N", Icon: theme.DocumentCreateIcon(), Do: o.begin},
		greeting.Choice{Title: kit.L("window.frame.demo"), Text: kit.L("window.frame.demo-text"), Button: kit.L("window.frame.demo-open"), Key: "Ctrl D", Icon: theme.StorageIcon(), Do: s.openDemo},
		greeting.Choice{Title: kit.L("window.frame.import-title"), Text: kit.L("window.frame.import-text"), Button: kit.L("window.frame.import-choose"), Key: "Ctrl I", Icon: theme.DownloadIcon(), Do: a.choose},
	)
}
