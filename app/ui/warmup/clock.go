package warmup

import (
	"fmt"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
)

// clock counts from the engine's start while somebody writes down. It doesn't start into the
// rows of another start.
type clock struct {
	now     func() time.Time
	fits    func(minutes float64) bool
	start   func()
	tell    func(minutes float64)
	began   time.Time
	cancel  chan struct{} // nil: it stands
	label   *widget.Label
	button  *kit.Button
	refusal *widget.Label
	moved   func() // what stands under the clock
	content fyne.CanvasObject
}

// newClock makes a clock that stands; fits says whether it may say so many minutes, start is
// called as it begins, and tell with the minutes, at once and each second.
func newClock(now func() time.Time, fits func(minutes float64) bool, start func(), tell func(minutes float64)) *clock {
	c := &clock{now: now, fits: fits, moved: func() {}, start: start, tell: tell, label: widget.NewLabelWithStyle("0:00", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})}
	c.button = kit.NewButtonWithIcon(kit.L("window.warmup.engine-starts"), theme.MediaPlayIcon(), c.press)
	c.refusal = kit.Small(kit.L("window.warmup.other-start"))
	c.refusal.Importance, c.refusal.Truncation, c.refusal.Wrapping = widget.DangerImportance, fyne.TextTruncateOff, fyne.TextWrapWord
	c.refusal.Hide()
	c.content = container.NewVBox(container.NewHBox(c.button, c.label), c.refusal)
	return c
}

func (c *clock) runs() bool { return c.cancel != nil }

func (c *clock) press() {
	if c.runs() {
		c.stop()
		return
	}
	if !c.fits(0) {
		c.refuse(true)
		return
	}
	c.began, c.cancel = c.now(), make(chan struct{})
	c.button.SetText(kit.L("window.warmup.stop-clock"))
	c.button.SetIcon(theme.MediaStopIcon())
	go tick(c.cancel, func() { fyne.Do(c.show) })
	c.start()
	c.show()
}

// refuse tells, or no longer, that the rows are of another start.
func (c *clock) refuse(on bool) {
	if c.refusal.Visible() == on {
		return
	}
	kit.Reveal(c.refusal, on, c.content.Size().Width)
	c.moved()
}

// check stops the clock over rows of another start.
func (c *clock) check() {
	if c.runs() && !c.fits(c.now().Sub(c.began).Minutes()) {
		c.stop()
		c.refuse(true)
	}
}

func (c *clock) stop() {
	c.refuse(false)
	if c.cancel == nil {
		return
	}
	close(c.cancel)
	c.cancel = nil
	c.button.SetText(kit.L("window.warmup.engine-starts"))
	c.button.SetIcon(theme.MediaPlayIcon())
}

func (c *clock) show() {
	if c.cancel == nil {
		return
	}
	gone := c.now().Sub(c.began)
	c.label.SetText(fmt.Sprintf("%d:%02d", int(gone.Minutes()), int(gone.Seconds())%60))
	c.tell(gone.Minutes())
}

// tick calls each once a second until it is cancelled.
func tick(cancelled <-chan struct{}, each func()) {
	t := time.NewTicker(time.Second)
	defer t.Stop()
	for {
		select {
		case <-cancelled:
			return
		case <-t.C:
			each()
		}
	}
}
