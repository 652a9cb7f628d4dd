package simulation

import (
	"math"
	"math/rand"

	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/thermistor"
)

// bench is the workshop that checks the ill car, after its way. What follows from the model is computed by it,
// against the sound car where a hand judges; what the model doesn't know is set by the fault and how bad it is
// (judgement). Nobody slips there: each check shows what there is.
type bench struct {
	car       Car
	rng       *rand.Rand
	ill, well *course
	loop      *cases.Loop
}

// checks are all that the format knows, each once.
func (b bench) checks() []cases.Test {
	var out []cases.Test
	for _, kind := range cases.Words[cases.TestKind]() {
		t := cases.Test{Kind: kind, Stage: cases.BeforeRepair}
		b.fill(&t)
		out = append(out, t)
	}
	return out
}

func (b bench) fill(t *cases.Test) {
	gas := b.car.Cause == "combustion-leak"
	switch t.Kind {
	case cases.PressureTest:
		b.hold(t)
	case cases.CapTest:
		b.cap(t)
	case cases.GasTest:
		t.Result = choose[cases.GasResult](gas, "positive", "negative")
	case cases.CoolantTest:
		b.sample(t)
	case cases.BenchTest:
		b.heatedWater(t)
	case cases.SensorTest:
		b.resistance(t)
	case cases.FanTest:
		b.fan(t)
	case cases.LevelTest:
		t.State = b.level()
	case cases.PumpTest:
		b.drive(t)
	case cases.HoseTest:
		t.LowerCollapses = ptr(b.car.Cause == "lower-hose-collapse")
	case cases.CoreTest:
		b.face(t)
	case cases.BubblesTest:
		t.Seen = ptr(gas)
	case cases.HeaterTest:
		t.Flows = b.heaterFlow()
	}
}

func ptr[T any](v T) *T { return &v }

func choose[T any](yes bool, a, b T) T {
	if yes {
		return a
	}
	return b
}

// about is v with an error of that standard deviation, as an instrument shows it that parts a unit in so many.
func (b bench) about(v, sd, parts float64) float64 {
	return math.Round((v+b.rng.NormFloat64()*sd)*parts) / parts
}

// hold: what a leak takes in five minutes of a cold engine.
func (b bench) hold(t *cases.Test) {
	start, lost := float64(*b.loop.CapKPa), 0.0
	switch b.car.Cause {
	case "external-leak":
		lost = start * (0.15 + 0.6*b.car.Severity)
	case "combustion-leak":
		lost = start * (0.05 + 0.3*b.car.Severity)
	}
	end := min(start, b.about(start-lost, 0.4, 1))
	t.StartKPa, t.EndKPa, t.Minutes = ptr(diagram.KPa(start)), ptr(diagram.KPa(end)), ptr(5.0)
}

func (b bench) cap(t *cases.Test) {
	rated := *b.loop.CapKPa
	opens := float64(rated)
	if b.car.Cause == "cap-weak" {
		opens = float64(b.ill.sim.CapKPa())
	}
	opens = max(0, b.about(opens, 0.02*float64(rated), 1))
	t.RatedKPa, t.OpensKPa = &rated, ptr(diagram.KPa(opens))
	t.Holds, t.VacuumValveOK = ptr(opens >= 0.9*float64(rated)), ptr(b.car.Cause != "cap-vacuum-stuck")
}

// sample: a mixture at fault is sludge here, which is the form that the model drives.
func (b bench) sample(t *cases.Test) {
	t.VolumePercent, t.PH = ptr(b.about(strength, 1, 1)), ptr(b.about(8.3, 0.3, 10))
	t.Looks = choose[cases.Looks](b.car.Cause == "coolant-mix-wrong", "sludge", "clear")
}

// The valve in a pan, and what a good one does by its mark (TH2, TH3 of testdata/trade/numbers.csv).
const (
	liftMM   = 9.0
	liftByMM = 8.0
	fullK    = 13
)

func (b bench) heatedWater(t *cases.Test) {
	opens := *b.loop.ThermostatOpensC
	for c := opens - 38; c <= min(opens+18, 99); c += 4 { // from where the earliest are shut
		t.Points = append(t.Points, cases.BenchPoint{
			WaterC: ptr(c), LiftMM: ptr(math.Round(10*liftMM*b.ill.sim.LiftIn(c)) / 10), Heating: ptr(true),
		})
	}
	t.RatedOpensC, t.RatedFullC, t.RatedLiftMM = &opens, ptr(opens+fullK), ptr(liftByMM)
}

func (b bench) resistance(t *cases.Test) {
	ohm := func(c diagram.Celsius) *float64 { return ptr(math.Round(thermistor.CommonOhm(c))) }
	for _, c := range []diagram.Celsius{20, 50, 80, 95} {
		t.Points = append(t.Points, cases.BenchPoint{TempC: ptr(c), Ohm: ohm(b.ill.sim.SensorAt(c))})
		t.Reference = append(t.Reference, cases.OhmPoint{TempC: ptr(c), Ohm: ohm(c)})
	}
}

func (b bench) fan(t *cases.Test) {
	told := b.ill.sim.FanObeys(false) // one that never stops is told to
	t.Commanded, t.Runs = &told, ptr(b.ill.sim.FanObeys(told) == told)
	if c := b.ill.fanC; told && *t.Runs && !math.IsNaN(c) {
		t.StartsC = ptr(diagram.Celsius(math.Floor(c)))
	}
}

func (b bench) level() cases.LevelState {
	bad := b.car.Severity >= 0.5
	switch b.car.Cause {
	case "coolant-low-air":
		return choose[cases.LevelState](b.car.Severity >= 0.9, "empty", "low")
	case "external-leak", "combustion-leak", "cap-weak", "cap-vacuum-stuck":
		return choose[cases.LevelState](bad, "low", "full")
	}
	return choose[cases.LevelState](b.ill.boiledOver(b.well), "low", "full")
}

// drive: a weak pump has a slipping belt, a worn shaft, or an impeller that nobody sees.
func (b bench) drive(t *cases.Test) {
	way := b.rng.Intn(3)
	weak := b.car.Cause == "pump-weak"
	t.BeltOK, t.Play, t.Weep = ptr(!weak || way != 0), ptr(weak && way == 1), ptr(weak && way == 1)
}

// face is the radiator's, from its hot side to its cold one, top row first; blocked tubes lie low, where sludge
// settles, and give no heat.
func (b bench) face(t *cases.Test) {
	const rows, columns = 4, 5
	in, _ := b.ill.sim.At(diagram.RadIn)
	out, _ := b.ill.sim.At(diagram.RadOut)
	blocked := b.car.Cause == "radiator-restricted" || b.car.Cause == "coolant-mix-wrong"
	for i := range rows {
		row := make([]float64, columns)
		for j := range row {
			c := float64(in) - float64(in-out)*(float64(j)+0.5)/columns
			if blocked && i >= rows/2 {
				c -= 0.6 * b.car.Severity * (c - float64(b.car.AmbientC))
			}
			row[j] = b.about(c, repeatK, 1)
		}
		t.ShownC = append(t.ShownC, row)
	}
}

// heaterFlow is judged by hand against what a sound car's would be.
func (b bench) heaterFlow() cases.HeaterFlow {
	switch part := b.ill.sim.HeaterLS() / b.well.sim.HeaterLS(); {
	case part < 0.03:
		return "none"
	case part < 0.6:
		return "weak"
	}
	return "full"
}
