package whatif

import (
	"context"
	"sync"
	"sync/atomic"
	"time"

	"fyne.io/fyne/v2"

	view "loopbook/app/ui/whatif"
	"loopbook/diagram/physics/ensemble"
	"loopbook/diagram/units"
)

// How fast time passes in a tryout, and how often it is painted.
const (
	timesReal = 60
	redraw    = 200 * time.Millisecond
)

// live lets a tryout run apart from the window and paints it a few times a
// second. Its methods are called on the Fyne goroutine.
type live struct {
	start func(func()) // runs the car apart from the window
	show  func(view.Shown)
	told  func(error)

	cancel context.CancelFunc
	mu     sync.Mutex
	wish   wish
	shown  atomic.Bool // the last picture has been painted
}

// wish is what a person wants of the car.
type wish struct {
	set    view.Settings
	units  units.Set
	paused bool
	again  again
	moved  bool // since the car looked last
}

// again is from where the car is to start again.
type again int

// fromCold is stone cold, fromWarm where the car comes to rest.
const (
	asItIs again = iota
	fromCold
	fromWarm
)

// newLive drives no car yet; it shows each picture and tells what fails on the Fyne goroutine.
func newLive(start func(func()), show func(view.Shown), told func(error)) *live {
	return &live{start: start, show: show, told: told, cancel: func() {}}
}

// begin runs a car, and ends the one before.
func (l *live) begin(build ensemble.Setting, set view.Settings, u units.Set) {
	l.end()
	ctx, cancel := context.WithCancel(context.Background())
	l.cancel = cancel
	l.want(func(w *wish) { *w = wish{set: set, units: u} })
	l.shown.Store(true)
	l.start(func() {
		ticker := time.NewTicker(redraw)
		defer ticker.Stop()
		if err := l.drive(ctx, build, ticker.C); err != nil {
			fyne.Do(func() {
				if ctx.Err() == nil {
					l.told(err)
				}
			})
		}
	})
}

// end stops the car.
func (l *live) end() { l.cancel() }

// want changes what is wanted.
func (l *live) want(change func(*wish)) {
	l.mu.Lock()
	defer l.mu.Unlock()
	change(&l.wish)
	l.wish.moved = true
}

// wished are the settings that are wanted.
func (l *live) wished() view.Settings {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.wish.set
}

// take is what is wanted, taken by the car.
func (l *live) take() wish {
	l.mu.Lock()
	defer l.mu.Unlock()
	w := l.wish
	l.wish.moved, l.wish.again = false, asItIs
	return w
}

// drive is the car's own goroutine: at each tick it does what is wanted.
func (l *live) drive(ctx context.Context, build ensemble.Setting, ticks <-chan time.Time) error {
	w := l.take()
	car, err := newTryout(build, w.set)
	for stale := true; err == nil; {
		stale = stale && !l.paint(ctx, car, w.units)
		select {
		case <-ctx.Done():
			return nil
		case <-ticks:
		}
		w = l.take()
		stale = stale || w.moved || !w.paused
		err = obey(car, w)
	}
	return err
}

func obey(car *tryout, w wish) error {
	if err := car.turn(w.set); err != nil {
		return err
	}
	switch {
	case w.again == fromCold:
		return car.start()
	case w.again == fromWarm:
		return car.warm()
	case w.paused:
		return nil
	}
	return car.run(timesReal * redraw.Seconds())
}

// paint shows the car, unless the picture before still waits to be painted; it
// reports whether it did.
func (l *live) paint(ctx context.Context, car *tryout, u units.Set) bool {
	if !l.shown.Swap(false) {
		return false
	}
	s := car.shown(u)
	fyne.Do(func() {
		l.shown.Store(true)
		if ctx.Err() == nil {
			l.show(s)
		}
	})
	return true
}
