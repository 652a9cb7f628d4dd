package physics_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
	"loopbook/diagram/physics"
)

const (
	outlet = "outlet-thermostat"
	inlet  = "inlet-thermostat"
	bottle = "inlet-thermostat-bottle"
	oil    = "outlet-thermostat-oil-cooler"
	heated = "heated-thermostat"
)

func layouts(t testing.TB) []*diagram.Loop {
	t.Helper()
	loops, err := diagram.Loops()
	if err != nil {
		t.Fatal(err)
	}
	return loops
}

func at(ambient diagram.Celsius) physics.Conditions {
	return physics.Conditions{AmbientC: ambient, Coolant: coolant.Mixture{Base: coolant.EthyleneGlycol, Strength: 50}}
}

func typical(t testing.TB) physics.Params {
	t.Helper()
	p, err := physics.Typical()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func car(t testing.TB, layout string, f physics.Fault, c physics.Conditions) *physics.Sim {
	t.Helper()
	l, err := diagram.LoopByID(layout)
	if err != nil {
		t.Fatal(err)
	}
	s, err := physics.New(l, typical(t), f, c)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func run(t testing.TB, s *physics.Sim, st physics.Stage, look func(*physics.Sim)) {
	t.Helper()
	if err := s.Run(st, look); err != nil {
		t.Fatal(err)
	}
}

func point(t testing.TB, s *physics.Sim, p diagram.Point) float64 {
	t.Helper()
	c, ok := s.At(p)
	if !ok {
		t.Fatalf("no point %s", p)
	}
	return float64(c)
}

// Heat in is heat out and heat stored, to 1e-6 of what passed, healthy or
// boiling over.
func TestEnergyBalances(t *testing.T) {
	p := typical(t)
	for _, l := range layouts(t) {
		layout := l.ID
		for _, cause := range []string{"none", "thermostat-stuck-closed", "fan-always-running", "pump-weak"} {
			s := car(t, layout, physics.Fault{Cause: cause, Severity: 0.7}, at(20))
			start := s.StoredKJ()
			run(t, s, p.Idle(900, 1), nil)
			run(t, s, p.Road(600, 0.5), nil)
			if off := s.StoredKJ() - start - s.TakenKJ(); !(math.Abs(off) <= 1e-6*math.Abs(s.TakenKJ())) || s.TakenKJ() < 1000 {
				t.Errorf("%s, %s: %g kJ missing of %g", layout, cause, off, s.TakenKJ())
			}
		}
	}
}

// warmIdleS is how long a typical car idles from cold until it stands at its rating and throttles, before
// its fan is needed: what the trade means by warm idle (WIDLE).
const warmIdleS = 45 * 60

// The trade's figures for a healthy car (common practice, no source, but where
// said): rows of the trade's number table and of its healthy signature. They stand
// for ordinary ratings; a heated thermostat has its own.
func TestHealthyAsTheTradeHasIt(t *testing.T) {
	p, belt := typical(t), at(20)
	belt.Fan = physics.ViscousFan // let go it still drags the air that holds an engine at its rating; an electric one cycles
	for _, l := range layouts(t) {
		if l.Heated() {
			continue
		}
		layout := l.ID
		within := func(row, what string, got, low, high float64) {
			t.Helper()
			if !(got >= low && got <= high) {
				t.Errorf("%s: %s %s is %.1f, want %g to %g", layout, row, what, got, low, high)
			}
		}
		idle := car(t, layout, physics.Fault{}, at(20))
		run(t, idle, p.Idle(300, 0), nil)
		low, rating := diagram.RadOut, *p.RatingC(l)
		if l.Thermostat == diagram.Outlet {
			low = diagram.RadIn
		}
		within("DT8", "ECT over the radiator-side hose, 5 min", float64(idle.ECT())-point(t, idle, low), 20, 70)
		within("WU3", "minutes to target at idle", minutes(t, idle, p.Idle(2400, 0), rating), 10, 25)
		idle = car(t, layout, physics.Fault{}, belt)
		run(t, idle, p.Idle(warmIdleS, 0), nil)
		drop := point(t, idle, diagram.RadIn) - point(t, idle, diagram.RadOut)
		within("DT2", "drop across the radiator, idle", drop, 8, 40)
		within("TH11", "ECT at idle over the rating", float64(idle.ECT())-rating, -3, 10)
		run(t, idle, p.Idle(300, 1), nil)
		within("DT10", "heater drop, full blower", point(t, idle, diagram.HeaterIn)-point(t, idle, diagram.HeaterOut), 2, 15)
		within("HT1", "vent air, full heat", point(t, idle, diagram.Vent), 50, 65)

		raised, standing := car(t, layout, physics.Fault{}, at(20)), car(t, layout, physics.Fault{}, at(30))
		run(t, raised, p.Idle(1500, 0), nil)
		within("DT3", "drop across the radiator while the fan runs, 2500 rpm", fanDrop(t, raised, p.Raised(1500, 0)), 5, 25)
		run(t, standing, p.Idle(1800, 0), nil)
		within("F00, HIDLE_FAN", "drop across the radiator while the fan runs, idle", fanDrop(t, standing, p.Idle(2400, 0)), 8, 30)

		road := car(t, layout, physics.Fault{}, at(20))
		within("WU1", "minutes to target on the road", minutes(t, road, p.Road(1500, 0), rating), 5, 12)

		hot := car(t, layout, physics.Fault{}, at(38))
		run(t, hot, p.Raised(1800, 0), nil)
		on, off := fanSwings(t, hot, p.Raised(1800, 0))
		within("FN1 (published)", "fan on at", on, 93, 99)
		within("FN2 (published)", "fan off at", off, 87, 93)
	}
}

// Where a viscous clutch engages and lets go, by the air behind the radiator
// (trade table FN6 and FN7, published), and how the other fans turn.
func TestFansOfOtherKinds(t *testing.T) {
	p := typical(t)
	for kind, runs := range map[physics.FanKind]bool{physics.FixedFan: true, physics.NoFan: false, physics.ViscousFan: true} {
		c := at(38)
		c.Fan = kind
		s := car(t, outlet, physics.Fault{}, c)
		engaged, before, was := math.NaN(), 0.0, s.FanRuns()
		run(t, s, physics.Stage{Seconds: 2400, RPM: 2500, HeatKW: 16}, func(s *physics.Sim) {
			if s.FanRuns() && !was {
				engaged = before
			}
			before, was = point(t, s, diagram.AirOff), s.FanRuns()
		})
		if kind == physics.ViscousFan && !(engaged >= 74 && engaged <= 84) {
			t.Errorf("the clutch engages at %.1f °C of air, published 74 to 82", engaged)
		}
		if s.FanRuns() != runs {
			t.Errorf("%s: runs %v, want %v", kind, s.FanRuns(), runs)
		}
		if hot := float64(s.ECT()) > p.FanOnC+5; hot == runs {
			t.Errorf("%s: ECT %.1f", kind, float64(s.ECT()))
		}
	}
	c := at(20)
	c.Fan = "steam"
	l, err := diagram.LoopByID(outlet)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := physics.New(l, p, physics.Fault{}, c); !errors.Is(err, physics.ErrFan) {
		t.Errorf("fan by steam: %v, want ErrFan", err)
	}
}

// A fan that goes by the engine's sensor runs on what a bad one says (F18: fan on early; F17: late;
// common practice). One that goes by a switch of its own (V23, published: on at 93 to 98 °C) heeds the
// coolant.
func TestFanSwitchHeedsTheCoolant(t *testing.T) {
	for _, tt := range []struct {
		cause    string
		switched bool
		air      diagram.Celsius
		stage    func(p physics.Params) physics.Stage
		runs     bool
	}{
		{"sensor-reads-high", false, 10, func(p physics.Params) physics.Stage { return p.Idle(1500, 1) }, true},
		{"sensor-reads-high", true, 10, func(p physics.Params) physics.Stage { return p.Idle(1500, 1) }, false},
		{"sensor-reads-low", false, 38, func(p physics.Params) physics.Stage { return p.Raised(1200, 0) }, false},
		{"sensor-reads-low", true, 38, func(p physics.Params) physics.Stage { return p.Raised(1200, 0) }, true},
	} {
		c := at(tt.air)
		c.FanSwitch = tt.switched
		s, ran := car(t, outlet, physics.Fault{Cause: tt.cause, Severity: 0.8}, c), false
		run(t, s, tt.stage(typical(t)), func(s *physics.Sim) { ran = ran || s.FanRuns() })
		if ran != tt.runs {
			t.Errorf("%s, a switch of its own %v: the fan runs %v, want %v", tt.cause, tt.switched, ran, tt.runs)
		}
	}
}

// minutes is when the ECT comes within 3 K of the rating in a stage that goes
// on from where the car is.
func minutes(t testing.TB, s *physics.Sim, st physics.Stage, rating float64) float64 {
	reached := math.Inf(1)
	run(t, s, st, func(s *physics.Sim) {
		if float64(s.ECT()) >= rating-3 {
			reached = min(reached, s.Seconds()/60)
		}
	})
	return reached
}

// fanDrop is the mean drop across the radiator while the fan runs in a stage; NaN if it doesn't.
func fanDrop(t testing.TB, s *physics.Sim, st physics.Stage) float64 {
	sum, seconds, before := 0.0, 0.0, s.Seconds()
	run(t, s, st, func(s *physics.Sim) {
		if step := s.Seconds() - before; s.FanRuns() {
			sum += step * (point(t, s, diagram.RadIn) - point(t, s, diagram.RadOut))
			seconds += step
		}
		before = s.Seconds()
	})
	return sum / seconds
}

// fanSwings is where the fan starts and stops, by the sensor; NaN if it
// doesn't.
func fanSwings(t testing.TB, s *physics.Sim, st physics.Stage) (on, off float64) {
	on, off = math.NaN(), math.NaN()
	was := s.FanRuns()
	run(t, s, st, func(s *physics.Sim) {
		if s.FanRuns() != was {
			was = s.FanRuns()
			if was {
				on = float64(s.ECT())
			} else {
				off = float64(s.ECT())
			}
		}
	})
	return on, off
}

// A shut thermostat ends at the boiling point that its cap and altitude allow
// (package coolant, held to published tables), and steam keeps it there.
func TestBoilsWhereCapAndAltitudeSay(t *testing.T) {
	p := typical(t)
	for _, altitude := range []diagram.Metre{0, 2000} {
		c := at(20)
		c.AltitudeM = altitude
		want, err := c.Coolant.BoilUnderCapC(diagram.KPa(p.CapKPa), altitude)
		if err != nil {
			t.Fatal(err)
		}
		s := car(t, outlet, physics.Fault{Cause: "thermostat-stuck-closed", Severity: 1}, c)
		run(t, s, p.Road(3600, 0), nil)
		if over := float64(s.ECT() - want); !s.Boils() || !(over >= 0 && over < 4) {
			t.Errorf("at %g m: %.1f K over the boiling point, boils %v", float64(altitude), over, s.Boils())
		}
	}
}

// Straight to rest gives what a long run from cold gives; in the cold, where no fan cycles and no valve hunts.
func TestSettleMeetsTheLongRun(t *testing.T) {
	p := typical(t)
	for _, l := range layouts(t) {
		layout := l.ID
		s, long := car(t, layout, physics.Fault{}, at(-10)), car(t, layout, physics.Fault{}, at(-10))
		rests, err := s.Settle(p.Idle(0, 0))
		if err != nil || !rests {
			t.Fatalf("%s: rests %v, %v", layout, rests, err)
		}
		run(t, long, p.Idle(9000, 0), nil)
		for _, q := range []diagram.Point{diagram.EngineOut, diagram.RadIn, diagram.RadOut, diagram.HeaterOut} {
			if a, b := point(t, s, q), point(t, long, q); math.Abs(a-b) > 2.5 { // the valve has play
				t.Errorf("%s: %s %.1f at rest, %.1f after a long run", layout, q, a, b)
			}
		}
	}
}

func TestBadInputIsNamed(t *testing.T) {
	l, err := diagram.LoopByID(outlet)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range []physics.Fault{{Cause: "gremlins", Severity: 0.5}, {Cause: "pump-weak", Severity: 1.2}, {Cause: "pump-weak", Severity: math.NaN()}, {Cause: "pump-weak", Severity: 0.5, Form: 2}} {
		if _, err := physics.New(l, typical(t), f, at(20)); !errors.Is(err, physics.ErrCause) {
			t.Errorf("%v: %v, want ErrCause", f, err)
		}
	}
	if _, err := physics.New(l, typical(t), physics.Fault{}, at(80)); !errors.Is(err, coolant.ErrRange) {
		t.Errorf("ambient 80: %v, want ErrRange", err)
	}
	for _, text := range []string{`[]`, `[{"name":"Pump"}]`, `[{"name":"CapKPa","unit":"kPa","low":3,"typical":2,"high":4,"class":"sum","reason":"x"}]`} {
		if _, err := physics.ParseTable([]byte(text)); !errors.Is(err, physics.ErrParams) {
			t.Errorf("%s: %v, want ErrParams", text, err)
		}
	}
}

// Every car that the table allows runs, at the corners of its ranges too.
func TestCornersRun(t *testing.T) {
	rows, err := physics.Table()
	if err != nil {
		t.Fatal(err)
	}
	for _, l := range layouts(t) {
		layout := l.ID
		for seed := 0; seed < 64; seed++ {
			bits := seed*2654435761 + 12345
			p := physics.Pick(rows, func(r physics.Row) float64 {
				bits = bits*1103515245 + 12345
				return []float64{r.Low, r.Typical, r.High}[(bits>>16&0xffff)%3]
			})
			cause := causes()[seed%len(causes())]
			s, err := physics.New(l, p, physics.Fault{Cause: cause, Severity: 1}, at(diagram.Celsius(-20+seed)))
			if err != nil {
				t.Fatal(err)
			}
			for _, st := range []physics.Stage{p.Idle(600, 1), p.Raised(300, 0), p.Road(900, 0.5), p.Idle(600, 0)} {
				run(t, s, st, nil)
			}
			if c := s.ECT(); !(c > -40 && c < 150) {
				t.Errorf("%s, draw %d, %s: ECT %g", layout, seed, cause, float64(c))
			}
		}
	}
}

// causes are the case format's, "none" among them.
func causes() []string {
	return strings.Fields(`none thermostat-stuck-open thermostat-stuck-closed thermostat-late thermostat-early radiator-restricted
		radiator-airflow fan-not-running pump-weak coolant-low-air lower-hose-collapse bypass-open heater-core-restricted
		heater-valve-shut combustion-leak cap-weak external-leak sensor-reads-low sensor-reads-high coolant-mix-wrong
		fan-always-running thermostat-heater-fault cap-vacuum-stuck heater-air-side`)
}

// A worse fault shows no less, within a kelvin: what a diagnosis may take for
// granted.
func TestSeverityShows(t *testing.T) {
	for _, tt := range []struct {
		cause, what string
		sign        float64
	}{
		{"thermostat-stuck-open", "ROAD ect", -1},
		{"thermostat-early", "WIDLE ect", -1},
		{"thermostat-late", "WARM-UP peak", 1},
		{"radiator-restricted", "HILL ect", 1},
		{"radiator-airflow", "HILL ect", 1},
		{"pump-weak", "CABIN heater", 1},
		{"lower-hose-collapse", "HILL radiator", 1},
		{"heater-core-restricted", "CABIN heater", 1},
		{"heater-air-side", "CABIN vent", -1},
		{"coolant-mix-wrong", "HILL ect", 1},
	} {
		for _, layout := range []string{outlet, inlet, oil, heated} {
			last := tt.sign * visit(t, layout, physics.Fault{})[tt.what]
			for _, grave := range []float64{0.3, 0.6, 0.9} {
				now := tt.sign * visit(t, layout, physics.Fault{Cause: tt.cause, Severity: grave})[tt.what]
				if now < last-1 {
					t.Errorf("%s, %s at %.1f: %s %.1f after %.1f", layout, tt.cause, grave, tt.what, tt.sign*now, tt.sign*last)
				}
				last = now
			}
		}
	}
}

// A warm-up of 25 minutes from 20 °C at idle.
func BenchmarkWarmUp25Minutes(b *testing.B) {
	l, err := diagram.LoopByID(bottle)
	if err != nil {
		b.Fatal(err)
	}
	p := typical(b)
	b.ReportAllocs()
	for i := 0; i < b.N; i++ { // goal: 2 ms
		s, err := physics.New(l, p, physics.Fault{}, at(20))
		if err != nil {
			b.Fatal(err)
		}
		run(b, s, p.Idle(1500, 0.3), nil)
	}
}

// A hurried run shows within three kelvins what a fine one does, taken over
// minutes: the valve hunts, and no two runs are at the same moment of that.
func TestHurryStaysNear(t *testing.T) {
	p := typical(t)
	points := []diagram.Point{diagram.EngineOut, diagram.RadIn, diagram.RadOut, diagram.HeaterOut}
	for _, layout := range []string{outlet, inlet, bottle} {
		for _, cause := range []string{"none", "thermostat-stuck-open", "pump-weak", "fan-always-running"} {
			fault := physics.Fault{Cause: cause, Severity: 0.6}
			fine, coarse := car(t, layout, fault, at(20)), car(t, layout, fault, at(20))
			coarse.Hurry()
			for _, st := range []physics.Stage{p.Idle(1500, 0), p.Raised(300, 1), p.Road(900, 0.5)} {
				want, got := lately(t, fine, st, points), lately(t, coarse, st, points)
				for i, q := range points {
					if math.Abs(got[i]-want[i]) > 3 {
						t.Errorf("%s, %s: %s %.1f fine, %.1f in a hurry", layout, cause, q, want[i], got[i])
					}
				}
			}
		}
	}
}

// lately runs a stage and takes each point's mean over its last minutes.
func lately(t testing.TB, s *physics.Sim, st physics.Stage, points []diagram.Point) []float64 {
	t.Helper()
	sums, from, last := make([]float64, len(points)), s.Seconds()+st.Seconds-180, s.Seconds()
	whole := 0.0
	run(t, s, st, func(s *physics.Sim) {
		if d := s.Seconds() - last; s.Seconds() > from {
			whole += d
			for i, q := range points {
				sums[i] += d * point(t, s, q)
			}
		}
		last = s.Seconds()
	})
	for i := range sums {
		sums[i] /= whole
	}
	return sums
}
