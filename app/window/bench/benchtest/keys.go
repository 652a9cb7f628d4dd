package benchtest

import "fyne.io/fyne/v2"

// TabAndEscape moves the focus on a number of times and presses Escape.
func TabAndEscape(c fyne.Canvas, times int) {
	for range times {
		c.FocusNext()
	}
	c.Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
}
