package ensemble

import (
	"context"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// The first slots of a look; the layout's points follow in its order.
const (
	ECT       = iota // what the sensor shows, °C
	FanDuty          // part of the last minutes that the fan ran
	FirstSlot        // of the layout's points
)

// dutyS is over how long the fan's part is taken.
const dutyS = 180

// Ensemble is what a crowd of cars shows. It doesn't change once it is given
// out.
type Ensemble struct {
	Setting Setting
	N       int // draws of each cause
	whole   int // that are or will be simulated
	stops   int
	slots   int
	walls   []float64 // of each draw
	shown   []float32 // by draw, cause, stop and slot
}

// Look is what a draw with a cause shows at a stop: ECT, FanDuty, then the
// layout's points in their order, coolant or air in °C.
func (e *Ensemble) Look(cause, draw, stop int) []float32 {
	at := ((draw*len(e.Setting.Causes)+cause)*e.stops + stop) * e.slots
	return e.shown[at : at+e.slots]
}

// Ahead is the number of the first stop that might come next; the others follow in
// the setting's order. Only the draws from AheadFrom on reach them.
func (e *Ensemble) Ahead() int { return e.Setting.Stops() }

// aheadDraws is how many draws tell what comes next: to choose a check fewer
// are enough than to judge by.
const aheadDraws = 50

// AheadFrom is the first draw that reaches the stops ahead. They are the last ones: a first answer
// by part of the crowd needn't wait for what comes next.
func (e *Ensemble) AheadFrom() int { return max(e.whole-aheadDraws, 0) }

// Wall is by how much of its excess over ambient a hose's outside stands under
// its coolant on the draw's car.
func (e *Ensemble) Wall(draw int) float64 { return e.walls[draw] }

// Slot is a point's place in a look, or -1.
func (e *Ensemble) Slot(p diagram.Point) int {
	for i, at := range e.Setting.Loop.Points {
		if at.Point == p {
			return FirstSlot + i
		}
	}
	return -1
}

// AmbientC is the air outside at a stop.
func (e *Ensemble) AmbientC(stop int) diagram.Celsius {
	for _, s := range e.Setting.Starts {
		if stop < len(s.Stops) {
			return s.AmbientC
		}
		stop -= len(s.Stops)
	}
	return e.Setting.Starts[len(e.Setting.Starts)-1].AmbientC // of a stop ahead
}

// batch is how many draws are waited for at once.
const batch = 20

// Run simulates that many draws of each cause on all cores. So far tells, if
// not nil, the first of them and what part of all they are, each time there are more; it is called
// by the caller's goroutine. When ctx ends, so does Run, with its error.
func Run(ctx context.Context, s Setting, draws int, soFar func(first *Ensemble, part float64)) (*Ensemble, error) {
	rows, err := physics.Table()
	if err != nil {
		return nil, err
	}
	e := &Ensemble{Setting: s, N: draws, whole: draws, stops: s.Stops() + len(s.Ahead), slots: FirstSlot + len(s.Loop.Points)}
	e.shown = make([]float32, draws*len(s.Causes)*e.stops*e.slots)
	e.walls = make([]float64, draws)
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	done := e.start(ctx, cancel, rows)
	for n := 0; n < draws; {
		n = min(n+batch, draws)
		for _, d := range done[:n] {
			d.Wait()
		}
		if err := context.Cause(ctx); err != nil {
			return nil, err
		}
		if soFar != nil {
			soFar(e.first(n), float64(n)/float64(draws))
		}
	}
	return e, nil
}

// first is the ensemble of the first n draws.
func (e *Ensemble) first(n int) *Ensemble {
	part := *e
	part.N = n
	return &part
}

// start lets every core take draws in their order, and answers what to wait
// for by draw. Once ctx has ended the rest is passed over.
func (e *Ensemble) start(ctx context.Context, fail context.CancelCauseFunc, rows []physics.Row) []*sync.WaitGroup {
	done := make([]*sync.WaitGroup, e.whole)
	for i := range done {
		done[i] = new(sync.WaitGroup)
		done[i].Add(1)
	}
	var next atomic.Int64
	for range runtime.GOMAXPROCS(0) {
		go func() {
			for n := int(next.Add(1)) - 1; n < e.whole; n = int(next.Add(1)) - 1 {
				if err := e.fill(ctx, n, e.Setting.draw(n, rows)); err != nil {
					fail(err)
				}
				done[n].Done()
			}
		}()
	}
	return done
}

// fill simulates one draw with every cause. Causes that no temperature tells
// show what the first one that is simulated of them does.
func (e *Ensemble) fill(ctx context.Context, number int, d draw) error {
	e.walls[number] = d.wall
	silent := -1
	for cause, name := range e.Setting.Causes {
		if ctx.Err() != nil {
			return ctx.Err()
		}
		runtime.Gosched() // a window waits for a core too
		f := d.fault(name)
		switch quiet := f.Silent(e.Setting.Loop, d.params); {
		case quiet && silent >= 0:
			copy(e.of(cause, number), e.of(silent, number))
			continue
		case quiet:
			silent = cause
		}
		if err := e.visit(cause, number, d, f); err != nil {
			return fmt.Errorf("draw %d, %s: %w", number, name, err)
		}
	}
	return nil
}

// of are all looks at a draw with a cause.
func (e *Ensemble) of(cause, draw int) []float32 {
	at := (draw*len(e.Setting.Causes) + cause) * e.stops * e.slots
	return e.shown[at : at+e.stops*e.slots]
}

// visit simulates a draw with a cause past all of the stops.
func (e *Ensemble) visit(cause, number int, d draw, f physics.Fault) error {
	s, at := e.Setting, 0
	for i, start := range s.Starts {
		sim, err := physics.New(s.Loop, d.params, f, physics.Conditions{
			AmbientC: start.AmbientC, AltitudeM: s.AltitudeM, Coolant: s.Coolant, Fan: s.Fan, FanSwitch: d.switched,
		})
		if err != nil {
			return err
		}
		sim.Hurry()
		cold := sim.Moment()
		look := func(stop Stop, first bool) error {
			duty, err := reach(sim, d.way(stop, first))
			e.note(e.Look(cause, number, at), sim, duty)
			at++
			return err
		}
		for n, stop := range start.Stops {
			if err := look(stop, n == 0); err != nil {
				return err
			}
		}
		if i < len(s.Starts)-1 || number < e.AheadFrom() {
			continue
		}
		here := sim.Moment()
		for _, stop := range s.Ahead {
			from := here
			if stop.FromCold {
				from = cold
			}
			sim.Return(from)
			if err := look(stop, stop.FromCold || len(start.Stops) == 0); err != nil {
				return err
			}
		}
	}
	return nil
}

// reach drives a car through stages and answers the part of their last minutes
// that its fan ran.
func reach(sim *physics.Sim, way []physics.Stage) (duty float64, err error) {
	ran, from, end := 0.0, 0.0, sim.Seconds()
	for _, stage := range way {
		end += stage.Seconds
	}
	for _, stage := range way {
		last := sim.Seconds()
		if err := sim.Run(stage, func(s *physics.Sim) {
			if now := s.Seconds(); now > end-dutyS {
				from += now - last
				if s.FanRuns() {
					ran += now - last
				}
			}
			last = s.Seconds()
		}); err != nil {
			return 0, err
		}
	}
	return ran / max(from, 1), nil
}

// note fills a look with what the car shows now.
func (e *Ensemble) note(look []float32, sim *physics.Sim, duty float64) {
	look[ECT], look[FanDuty] = float32(sim.ECT()), float32(duty)
	for j, at := range e.Setting.Loop.Points {
		c, _ := sim.At(at.Point)
		look[FirstSlot+j] = float32(c)
	}
}
