// Package window is the notebook's window: it makes the parts below it, joins them to the desk and to each
// other, and lays them out. It alone opens a display; only main knows it.
package window

import (
	"context"
	"fmt"
	"os"
	"runtime"
	"strings"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"loopbook/app/library"
	"loopbook/assets"
	"loopbook/diagram"
)

// Open shows the notebook at path, or the user's own, until its window is closed.
func Open(ctx context.Context, path string) (err error) {
	if runtime.GOOS == "linux" && os.Getenv("DISPLAY") == "" {
		return fmt.Errorf("the window needs a display, and there is none here; loopbook --help lists what works without")
	}
	if _, err := diagram.Loops(); err != nil {
		return err
	}
	store, refused := library.Open(ctx, path)
	defer noDisplay(&err)
	a := app.NewWithID("loopbook")
	a.SetIcon(fyne.NewStaticResource("icon.png", assets.Icon))
	if refused != nil {
		newRefusal(a, refused).ShowAndRun()
		return refused
	}
	// What is being typed is kept after the signal to end has come.
	w, err := newWindow(context.WithoutCancel(ctx), a, store, func(read func()) { go read() })
	if err != nil {
		store.Close()
		return err
	}
	end := sync.OnceFunc(w.leave)
	go endBySignal(ctx, end)
	w.window.ShowAndRun()
	end()
	w.at.Desk.Stop()
	w.screens.whatif.End()
	return w.at.Desk.Store.Close()
}

// endPatience is how long the program may take to end after a signal.
const endPatience = 900 * time.Millisecond

// endBySignal keeps what is being typed when the signal to end has come. The
// toolkit hears the signal too and leaves its loop by itself; should it hang on its
// way out, the process ends all the same: what is kept is on the disk by then.
func endBySignal(ctx context.Context, end func()) {
	<-ctx.Done()
	fyne.Do(end)
	time.Sleep(endPatience)
	os.Exit(0)
}

// noDisplay turns the toolkit's panic on a display that doesn't answer into an
// error; any other panic goes on.
func noDisplay(err *error) {
	p := recover()
	if p == nil {
		return
	}
	if text := fmt.Sprint(p); !strings.Contains(text, "GLFW") {
		panic(p)
	}
	*err = fmt.Errorf("the window can't be opened: display %q does not answer", os.Getenv("DISPLAY"))
}
