// Package bench is what every part of the window works at.
package bench

import (
	"context"

	"loopbook/app/desk"
	"loopbook/app/window/asking"
)

// Bench is the desk with the open case, and what a part of the window needs beside it.
type Bench struct {
	Ctx   context.Context // of what is asked of the notebook
	Desk  *desk.Desk
	Ask   *asking.Asker
	Start func(work func()) // runs what takes a while apart from the window; the work comes back by fyne.Do
	Leave func()            // keeps what is being typed, wherever that is
}

// Tab is a part's own place among the tabs of the open case.
type Tab struct {
	Open    func()
	InSight func() bool
}
