package simulation

import (
	"errors"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/physics"
)

// Car is what to simulate. The same car gives the same case.
type Car struct {
	Layout    string
	Cause     cases.Cause
	Severity  float64 // 0 hardly there, 1 as bad as it gets
	AmbientC  diagram.Celsius
	AltitudeM diagram.Metre
	Seed      int64 // draws the car's build and the gun's errors
}

func (c Car) fault() physics.Fault {
	return physics.Fault{Cause: string(c.Cause), Severity: c.Severity}
}

// strength is of the coolant that every simulated car is filled with.
const strength = 50

// ErrNoHeater says that the loop's thermostat has no heater, which was to be at fault: the car would be a sound one, and its
// answer wrong.
var ErrNoHeater = errors.New("its thermostat has no heater that could be at fault: take the layout heated-thermostat")

// Simulate runs the car through the steps from a cold start and answers the case that a technician would write down: the
// complaint and the codes, a scan tool's log, the rounds, every workshop check, and the answer.
func Simulate(car Car, steps []Step) (cases.Case, error) {
	d, rng, err := start(car, steps)
	if err != nil {
		return cases.Case{}, err
	}
	c := paper(car, steps, d.loop, d.params)
	gun := newGun(rng, car.AmbientC)
	ill, err := d.along(car.fault(), nil, func(s *physics.Sim, step Step) {
		c.Rounds = append(c.Rounds, gun.round(s, d.loop, step, step.stage(d.params)))
	})
	if err != nil {
		return cases.Case{}, err
	}
	well, err := d.along(physics.Fault{}, nil, nil)
	if err != nil {
		return cases.Case{}, err
	}
	opensC := *c.Loop.ThermostatOpensC
	c.Logs = []cases.Log{ill.log}
	c.Codes = codes(car, ill, well, opensC)
	c.Complaint = complaint(car, ill, well, opensC, len(c.Codes) > 0)
	c.Tests = bench{car, rng, ill, well, &c.Loop}.checks()
	return c, nil
}

// start draws the car's build; what is left of the dice is for who measures it.
func start(car Car, steps []Step) (drive, *rand.Rand, error) {
	l, err := diagram.LoopByID(car.Layout)
	if err != nil {
		return drive{}, nil, err
	}
	if car.Cause == "thermostat-heater-fault" && !l.Heated() {
		return drive{}, nil, fmt.Errorf("%s: %w", l.ID, ErrNoHeater)
	}
	rng := rand.New(rand.NewSource(car.Seed))
	params, err := build(rng)
	return drive{car, l, params, steps}, rng, err
}

// build draws an ordinary car: each parameter about its typical value, within
// its range.
func build(rng *rand.Rand) (physics.Params, error) {
	rows, err := physics.Table()
	return physics.Pick(rows, func(r physics.Row) float64 {
		v := r.Typical + rng.NormFloat64()*(r.High-r.Low)/6
		return min(max(v, r.Low), r.High)
	}), err
}

// paper is the case before its rounds: what is known of the car, and the
// answer as its verdict.
func paper(car Car, steps []Step, l *diagram.Loop, p physics.Params) cases.Case {
	opens, capKPa := diagram.Celsius(math.Round(*p.RatingC(l))), diagram.KPa(math.Round(p.CapKPa/10)*10)
	half := float64(strength)
	return cases.Case{
		Format: cases.Format, Version: cases.Version,
		ID:      fmt.Sprintf("simulated-%d-%08x", car.Seed, mark(car, steps)), // without the answer
		Title:   "Simulated car " + fmt.Sprint(car.Seed),
		Vehicle: cases.Vehicle{Model: "simulated"},
		Loop: cases.Loop{
			Layout: l.ID, ThermostatOpensC: &opens, CapKPa: &capKPa, Fan: "electric",
			Coolant: cases.Coolant{Base: cases.EthyleneGlycol, VolumePercent: &half},
		},
		Site:    cases.Site{AmbientC: &car.AmbientC, AltitudeM: &car.AltitudeM},
		Verdict: cases.Verdict{Cause: car.Cause, Note: fmt.Sprintf("Simulated with a severity of %g.", car.Severity)},
		Tags:    []string{"simulated", cases.TaughtTag}, // no car of the shop's
	}
}

// mark tells one simulated case from another: a trainer makes the same fault mild
// and bad, on several loops, and a notebook takes two cases of one id for two
// versions of one case.
func mark(car Car, steps []Step) uint32 {
	h := fnv.New32a()
	fmt.Fprintf(h, "with checks %+v %+v", car, steps)
	return h.Sum32()
}
