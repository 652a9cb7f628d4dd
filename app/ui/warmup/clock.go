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

// clock counts from the engine's start while somebody writes down.
type clock struct {
	now     func() time.Time
	start   func()
	tell    func(minutes float64)
	began   time.Time
	cancel  chan struct{} // nil: it stands
	label   *widget.Label
	button  *kit.Button
	content fyne.CanvasObject
}

// newClock makes a clock that stands; start is called as it begins, and tell with the minutes,
// at once and each second.
func newClock(now func() time.Time, start func(), tell func(minutes float64)) *clock {
	c := &clock{now: now, start: start, tell: tell, label: widget.NewLabelWithStyle("0:00", fyne.TextAlignLeading, fyne.TextStyle{Bold: true})}
	c.button = kit.NewButtonWithIcon(kit.L("window.warmup.engine-starts"), theme.MediaPlayIcon(), c.press)
	c.content = container.NewHBox(c.button, c.label)
	return c
}

func (c *clock) runs() bool { return c.cancel != nil }

func (c *clock) press() {
	if c.runs() {
		c.stop()
		return
	}
	c.began, c.cancel = c.now(), make(chan struct{})
	c.button.SetText(kit.L("window.warmup.stop-clock"))
	c.button.SetIcon(theme.MediaStopIcon())
	go tick(c.cancel, func() { fyne.Do(c.show) })
	c.start()
	c.show()
}

func (c *clock) stop() {
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
