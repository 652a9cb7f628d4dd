package diagnosis_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/trial"
	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

var (
	splitCases = flag.Int("split", 8, "cases of each evidence level")
	splitDraws = flag.Int("draws", 20, "draws of each cause")
)

// otherCar is a car that the crowd was not drawn from: its build is drawn from
// ranges half as wide again and shifted, its faults from worse to light, and what
// it shows has an error of its own at every point.
type otherCar struct {
	rng *rand.Rand
	l   *diagram.Loop
	p   physics.Params
}

func newOtherCar(t testing.TB, rng *rand.Rand, layout string) otherCar {
	t.Helper()
	rows, err := physics.Table()
	if err != nil {
		t.Fatal(err)
	}
	l, err := diagram.LoopByID(layout)
	if err != nil {
		t.Fatal(err)
	}
	return otherCar{rng, l, physics.Pick(rows, func(r physics.Row) float64 {
		if r.Unit == "°C" {
			return r.Typical + (r.High-r.Low)*(rng.Float64()-0.5)
		}
		middle := math.Sqrt(r.Low*r.High) * math.Exp(0.15*rng.NormFloat64())
		v := middle * math.Pow(r.High/r.Low, 1.5*(rng.Float64()-0.5))
		if strings.HasPrefix(r.Unit, "of the ") {
			return min(v, 0.95) // a share leaves something over
		}
		return v
	})}
}

// case_ walks round the car at some moments, with the truth as the verdict.
func (o otherCar) case_(t testing.TB, id int, cause cases.Cause) cases.Case {
	t.Helper()
	air := diagram.Celsius(math.Round(-5 + 40*o.rng.Float64()))
	sim, err := physics.New(o.l, o.p, physics.Fault{Cause: string(cause), Severity: 0.3 + 0.7*math.Sqrt(o.rng.Float64()), Form: o.rng.Float64()},
		physics.Conditions{AmbientC: air, Coolant: coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}})
	if err != nil {
		t.Fatal(err)
	}
	opens := diagram.Celsius(math.Round(*o.p.RatingC(o.l)))
	c := cases.Case{
		Format: cases.Format, Version: cases.Version, ID: fmt.Sprint("other-", id), Verdict: cases.Verdict{Cause: cause},
		Loop: cases.Loop{Layout: o.l.ID, ThermostatOpensC: &opens, Fan: "electric"}, Site: cases.Site{AmbientC: &air},
	}
	errs := map[diagram.Point]float64{}
	for _, at := range o.l.Points {
		errs[at.Point] = o.rng.NormFloat64() * 3 / 70
	}
	bias := o.rng.NormFloat64() * 1.5
	for i, walk := range o.walks() {
		if err := sim.Run(walk.stage, nil); err != nil {
			t.Fatal(err)
		}
		if walk.measured {
			c.Rounds = append(c.Rounds, o.round(sim, i, walk, errs, bias, air))
		}
	}
	return c
}

type walk struct {
	stage    physics.Stage
	heater   cases.Heater
	measured bool
}

// walks are one or two moments of a way from cold.
func (o otherCar) walks() []walk {
	all := []walk{
		{o.p.Idle(300, 0.5), cases.HeaterHalf, false},
		{o.p.Drive(900, 0, 50, 0), cases.HeaterOff, false},
		{o.p.Idle(300, 1), cases.HeaterFull, false},
		{o.p.Raised(200, 1), cases.HeaterFull, false},
		{o.p.Idle(600, 0), cases.HeaterOff, false},
		{o.p.Road(600, 0.5), cases.HeaterHalf, false},
	}
	moments := []int{0, 2, 3, 4, 5}
	all[moments[1+o.rng.Intn(4)]].measured = true
	if o.rng.Intn(2) == 0 {
		all[moments[o.rng.Intn(5)]].measured = true
	}
	return all
}

func (o otherCar) round(s *physics.Sim, i int, w walk, errs map[diagram.Point]float64, bias float64, air diagram.Celsius) cases.Round {
	minutes, ect := math.Round(s.Seconds()/60), diagram.Celsius(math.Round(float64(s.ECT())+2*o.rng.NormFloat64()))
	rpm, speed := w.stage.RPM, w.stage.SpeedKmh
	r := cases.Round{Label: fmt.Sprint("walk ", i), Stage: cases.BeforeRepair, MinutesSinceStart: &minutes, EngineRPM: &rpm, SpeedKmh: &speed,
		Heater: w.heater, Fan: cases.FanOff, EctC: &ect}
	if s.FanRuns() {
		r.Fan = cases.FanOn
	}
	for _, at := range o.l.Points {
		c, ok := s.At(at.Point)
		if !ok || o.rng.Float64() < 0.3 {
			continue
		}
		excess := float64(c - air)
		shown := float64(c) + excess*errs[at.Point] + o.rng.NormFloat64()*1.5
		if !at.Point.Air() {
			shown += bias
			if at.Point != diagram.Housing {
				shown -= 0.05 * excess
			}
		}
		v := diagram.Celsius(math.Round(shown*10) / 10)
		r.Readings = append(r.Readings, cases.Reading{Point: at.Point, ShownC: &v})
	}
	return r
}

// others are cars of all causes in turn, one in five of them healthy. What the
// customer says, what codes there are and how checks come out is that of a trial
// car with the same cause.
func others(t testing.TB, seed int64, n int, level trial.Level) []cases.Case {
	t.Helper()
	rng := rand.New(rand.NewSource(seed))
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	told := map[cases.Cause][]cases.Case{}
	for _, c := range trial.Cases(seed, 20*n, level) {
		told[c.Verdict.Cause] = append(told[c.Verdict.Cause], c)
	}
	causes := cases.Words[cases.Cause]()
	out := make([]cases.Case, n)
	for i := range out {
		l, cause := loops[rng.Intn(len(loops))], cases.Healthy
		if i%5 != 0 {
			cause = causes[rng.Intn(len(causes))]
		}
		if cause == "thermostat-heater-fault" && !l.Heated() {
			cause = "thermostat-early"
		}
		out[i] = newOtherCar(t, rng, l.ID).case_(t, i, cause)
		says := told[cause][rng.Intn(len(told[cause]))]
		out[i].Complaint, out[i].Codes, out[i].Tests, out[i].Loop.CapKPa = says.Complaint, says.Codes, says.Tests, says.Loop.CapKPa
	}
	return out
}

// The diagnosis on cars that neither its tables nor its crowds were made from,
// by how much was gathered. The bounds are loose, for a handful of cars; with
// -split 200 -draws 200 the figures are worth reading.
func TestOtherCars(t *testing.T) { hold(t, "other", others) }

func TestTrialCars(t *testing.T) {
	hold(t, "trial", func(_ testing.TB, seed int64, n int, level trial.Level) []cases.Case {
		return trial.Cases(seed, n, level)
	})
}

func hold(t *testing.T, name string, cars func(testing.TB, int64, int, trial.Level) []cases.Case) {
	for _, tt := range []struct {
		level        trial.Level
		gathered     string
		first, three int // per cent, at least
	}{
		{trial.Temperatures, "temperatures", 10, 25},
		{trial.OneSymptom, "and one symptom", 20, 40},
		{trial.Complaint, "several rounds, symptoms, codes", 25, 45},
		{trial.Checks, "and checks", 35, 60},
	} {
		made := cars(t, 11, *splitCases, tt.level)
		all := judgeAll(t, made)
		s := scored(all)
		t.Logf("%s cars, %s: %v", name, tt.gathered, s)
		thumbFirst, thumbThree := byThumb(made)
		t.Logf("by rules of thumb: first %.0f %%, among three %.0f %%", thumbFirst, thumbThree)
		if s.part(s.three) < thumbThree-50/math.Sqrt(float64(s.n)) { // of a handful of cars one more or less is chance
			t.Errorf("%s cars, %s: among three %.0f %%, rules of thumb have %.0f %%", name, tt.gathered, s.part(s.three), thumbThree)
		}
		if testing.Verbose() && *splitCases >= 50 {
			t.Log("\n" + confusion(all))
		}
		if s.part(s.first) < float64(tt.first) || s.part(s.three) < float64(tt.three) {
			t.Errorf("%s cars, %s: %v; want first %d %%, among three %d %%", name, tt.gathered, s, tt.first, tt.three)
		}
	}
}
