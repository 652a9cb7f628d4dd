// Package whatif drives a simulated car of the open case's loop, as it is asked to on the screen
// of What if, and gives that screen what it shows.
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

// Live lets a tryout run apart from the window and paints it a few times a
// second. Its methods are called on the Fyne goroutine.
type Live struct {
	start func(func()) // runs the car apart from the window
	show  func(view.Shown)
	told  func(error)

	cancel context.CancelFunc
	mu     sync.Mutex
	wish   Wish
	shown  atomic.Bool // the last picture has been painted
}

// Wish is what a person wants of the car.
type Wish struct {
	Set    view.Settings
	units  units.Set
	Paused bool
	Again  again
	moved  bool // since the car looked last
}

// again is from where the car is to start again.
type again int

// FromCold is stone cold, FromWarm where the car comes to rest.
const (
	asItIs again = iota
	FromCold
	FromWarm
)

// newLive drives no car yet; it shows each picture and tells what fails on the Fyne goroutine.
func newLive(start func(func()), show func(view.Shown), told func(error)) *Live {
	return &Live{start: start, show: show, told: told, cancel: func() {}}
}

// Begin runs a car, and ends the one before.
func (l *Live) Begin(build ensemble.Setting, set view.Settings, u units.Set) {
	l.End()
	ctx, cancel := context.WithCancel(context.Background())
	l.cancel = cancel
	l.Want(func(w *Wish) { *w = Wish{Set: set, units: u} })
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

// End stops the car.
func (l *Live) End() { l.cancel() }

// Want changes what is wanted.
func (l *Live) Want(change func(*Wish)) {
	l.mu.Lock()
	defer l.mu.Unlock()
	change(&l.wish)
	l.wish.moved = true
}

// take is what is wanted, taken by the car.
func (l *Live) take() Wish {
	l.mu.Lock()
	defer l.mu.Unlock()
	w := l.wish
	l.wish.moved, l.wish.Again = false, asItIs
	return w
}

// drive is the car's own goroutine: at each tick it does what is wanted.
func (l *Live) drive(ctx context.Context, build ensemble.Setting, ticks <-chan time.Time) error {
	w := l.take()
	car, err := newTryout(build, w.Set)
	for stale := true; err == nil; {
		stale = stale && !l.paint(ctx, car, w.units)
		select {
		case <-ctx.Done():
			return nil
		case <-ticks:
		}
		w = l.take()
		stale = stale || w.moved || !w.Paused
		err = obey(car, w)
	}
	return err
}

func obey(car *tryout, w Wish) error {
	if err := car.turn(w.Set); err != nil {
		return err
	}
	switch {
	case w.Again == FromCold:
		return car.start()
	case w.Again == FromWarm:
		return car.warm()
	case w.Paused:
		return nil
	}
	return car.run(timesReal * redraw.Seconds())
}

// paint shows the car, unless the picture before still waits to be painted; it
// reports whether it did.
func (l *Live) paint(ctx context.Context, car *tryout, u units.Set) bool {
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
