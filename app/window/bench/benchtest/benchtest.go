// Package benchtest makes a bench for tests: a desk on a new notebook, under a window of the
// toolkit's software driver.
package benchtest

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/desk"
	"loopbook/app/window/asking"
	"loopbook/app/window/bench"
	"loopbook/cases/sqlite"
)

// Made is a bench with what stands behind it.
type Made struct {
	bench.Bench
	App    fyne.App
	Window fyne.Window
	Run    func(work func()) // what is to run apart; at once, if a test doesn't say otherwise
}

// New makes a bench without a case; its crowds have so few cars that they are there at once.
func New(t testing.TB) *Made {
	t.Helper()
	store, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "n.db"), time.Now)
	if err != nil {
		t.Fatal(err)
	}
	m := &Made{App: test.NewTempApp(t), Run: func(work func()) { work() }}
	m.Window = m.App.NewWindow("test")
	m.Window.SetContent(widget.NewLabel(""))
	m.Window.Resize(fyne.NewSize(1280, 800))
	start := func(work func()) { m.Run(work) }
	d, err := desk.New(context.Background(), store, desk.Apart{Start: start, Do: fyne.Do})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { d.Store.Close() })
	d.Mind.Crowds.Draws = 2
	ask := asking.Over(m.Window)
	d.Told = ask.Tell
	m.Bench = bench.Bench{Ctx: context.Background(), Desk: d, Ask: ask, Start: start, Leave: func() {}}
	return m
}
