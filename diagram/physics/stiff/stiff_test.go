package stiff_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram/physics/stiff"
)

// problem is one of the Test Set for Initial Value Problem Solvers (Mazzia and
// Magherini, University of Bari, release 2.4), with its reference solution.
type problem struct {
	name string
	y    []float64
	end  float64
	f    func(y, dydt []float64)
	jac  func(y, jac []float64)
	want []float64
}

func problems() []problem {
	return []problem{
		{
			name: "ROBER", // Robertson (1966): three reactions, rates from 0.04 to 3e7
			y:    []float64{1, 0, 0}, end: 1e11,
			f: func(y, d []float64) {
				d[0] = -0.04*y[0] + 1e4*y[1]*y[2]
				d[2] = 3e7 * y[1] * y[1]
				d[1] = -d[0] - d[2]
			},
			jac: func(y, j []float64) {
				j[0], j[1], j[2] = -0.04, 1e4*y[2], 1e4*y[1]
				j[7] = 6e7 * y[1]
				j[3], j[4], j[5] = 0.04, -j[1]-j[7], -j[2]
			},
			want: []float64{0.2083340149701255e-07, 0.8333360770334713e-13, 0.9999999791665050},
		},
		{
			name: "HIRES", // Schäfer (1975): growth of a plant in strong light
			y:    []float64{1, 0, 0, 0, 0, 0, 0, 0.0057}, end: 321.8122,
			f: func(y, d []float64) {
				d[0] = -1.71*y[0] + 0.43*y[1] + 8.32*y[2] + 0.0007
				d[1] = 1.71*y[0] - 8.75*y[1]
				d[2] = -10.03*y[2] + 0.43*y[3] + 0.035*y[4]
				d[3] = 8.32*y[1] + 1.71*y[2] - 1.12*y[3]
				d[4] = -1.745*y[4] + 0.43*y[5] + 0.43*y[6]
				d[5] = -280*y[5]*y[7] + 0.69*y[3] + 1.71*y[4] - 0.43*y[5] + 0.69*y[6]
				d[6] = 280*y[5]*y[7] - 1.81*y[6]
				d[7] = -d[6]
			},
			jac: func(y, j []float64) {
				copy(j, []float64{
					-1.71, 0.43, 8.32, 0, 0, 0, 0, 0,
					1.71, -8.75, 0, 0, 0, 0, 0, 0,
					0, 0, -10.03, 0.43, 0.035, 0, 0, 0,
					0, 8.32, 1.71, -1.12, 0, 0, 0, 0,
					0, 0, 0, 0, -1.745, 0.43, 0.43, 0,
					0, 0, 0, 0.69, 1.71, -280*y[7] - 0.43, 0.69, -280 * y[5],
					0, 0, 0, 0, 0, 280 * y[7], -1.81, 280 * y[5],
					0, 0, 0, 0, 0, -280 * y[7], 1.81, -280 * y[5],
				})
			},
			want: []float64{
				0.7371312573325668e-3, 0.1442485726316185e-3, 0.5888729740967575e-4, 0.1175651343283149e-2,
				0.2386356198831331e-2, 0.6238968252742796e-2, 0.2849998395185769e-2, 0.2850001604814231e-2,
			},
		},
	}
}

// Reference solutions as printed in the test set, by RADAU5 in quadruple
// precision; read in public transcriptions of it.
func TestReferenceSolutions(t *testing.T) {
	for _, p := range problems() {
		in := stiff.New(stiff.System{F: p.f, Jacobian: p.jac}, p.y)
		in.Rel = 1e-8
		for i := range in.Abs {
			in.Abs[i] = 1e-16
		}
		if err := in.To(p.end); err != nil {
			t.Fatal(p.name, err)
		}
		for i, want := range p.want {
			if !(math.Abs(in.Y[i]/want-1) <= 1e-5) {
				t.Errorf("%s: y[%d] = %.10g, want %.10g", p.name, i+1, in.Y[i], want)
			}
		}
		t.Logf("%s: %d steps", p.name, in.Steps)
	}
}

// Robertson's substances only turn into one another: their sum is 1.
func TestSumsAreKept(t *testing.T) {
	p := problems()[0]
	in := stiff.New(stiff.System{F: p.f, Jacobian: p.jac}, p.y)
	if err := in.To(1e6); err != nil {
		t.Fatal(err)
	}
	if sum := in.Y[0] + in.Y[1] + in.Y[2]; !(math.Abs(sum-1) <= 1e-13) {
		t.Errorf("the sum left 1 by %g", sum-1)
	}
}

// Half the step leaves an eighth of the error. The solution sin t + 2 is put
// into an equation in which t and y both count, a second follows the first, and
// the time is the third value.
func TestOrderIsThree(t *testing.T) {
	sys := stiff.System{
		F: func(y, d []float64) {
			exact := math.Sin(y[2]) + 2
			d[0] = math.Cos(y[2]) - y[0]*y[0] + exact*exact
			d[1] = y[0] - exact - y[1]
			d[2] = 1
		},
		Jacobian: func(y, j []float64) {
			sin, cos := math.Sincos(y[2])
			j[0], j[2] = -2*y[0], -sin+2*(sin+2)*cos
			j[3], j[4], j[5] = 1, -1, -cos
		},
	}
	errorAt := func(h float64) float64 {
		in := stiff.New(sys, []float64{2, 1, 0})
		in.Rel, in.Abs[2] = 1e9, 1e12 // every step passes, and each reaches as far as it is asked to
		n := int(math.Round(2 / h))
		for i := 1; i <= n; i++ {
			if err := in.To(float64(i) * h); err != nil {
				t.Fatal(err)
			}
		}
		if in.Steps != n {
			t.Fatalf("%d steps of %g, want %d", in.Steps, h, n)
		}
		return math.Abs(in.Y[0]-(math.Sin(2)+2)) + math.Abs(in.Y[1]-math.Exp(-2))
	}
	for h := 0.0125; h > 0.002; h /= 2 {
		if order := math.Log2(errorAt(h) / errorAt(h/2)); !(order > 2.9 && order < 3.1) {
			t.Errorf("order %.2f between steps %g and %g", order, h, h/2)
		}
	}
}

// One lump that is heated and loses heat (testdata/reference/warmup_lumped.csv:
// C = 60 kJ/K, Q = 8 kW, UA = 40 W/K, outside 20 °C): closed form.
func TestHeatedMass(t *testing.T) {
	in := stiff.New(stiff.System{
		F:        func(y, d []float64) { d[0] = (8000 - 40*(y[0]-20)) / 60e3 },
		Jacobian: func(_, j []float64) { j[0] = -40 / 60e3 },
	}, []float64{20})
	for _, tt := range []struct{ s, want float64 }{
		{60, 27.84211}, {120, 35.37673}, {300, 56.25385}, {600, 85.93599}, {900, 110.23767}, {1200, 130.13421},
	} {
		if err := in.To(tt.s); err != nil {
			t.Fatal(err)
		}
		if !(math.Abs(in.Y[0]-tt.want) <= 1e-4) {
			t.Errorf("at %g s %.5f °C, want %.5f", tt.s, in.Y[0], tt.want)
		}
	}
}

func TestStuckIsAnError(t *testing.T) {
	for name, sys := range map[string]stiff.System{
		"no number": {
			F:        func(_, d []float64) { d[0], d[1] = math.NaN(), 1 },
			Jacobian: func(_, _ []float64) {},
		},
		"ends at 1": { // of the second value, which is the time
			F:        func(y, d []float64) { d[0], d[1] = math.Sqrt(1-y[1]), 1 },
			Jacobian: func(y, j []float64) { j[1] = -0.5 / math.Sqrt(1-y[1]) },
		},
	} {
		in := stiff.New(sys, []float64{1, 0})
		if err := in.To(2); !errors.Is(err, stiff.ErrStuck) {
			t.Errorf("%s: %v, want ErrStuck", name, err)
		}
	}
}

func BenchmarkHIRES(b *testing.B) {
	p := problems()[1]
	in := stiff.New(stiff.System{F: p.f, Jacobian: p.jac}, p.y)
	b.ReportAllocs() // want 0
	for i := 0; i < b.N; i++ {
		in.T = 0
		copy(in.Y, p.y)
		if err := in.To(p.end); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(in.Steps)/float64(b.N), "steps/op")
}

// One step of a linear equation y' = −λ·y is the method's stability function,
// R(z) = (1 + (1−2γ)z + (½−2γ+γ²)z²) / (1−γz)² with z = −λh (Verwer et al. 1999),
// whose last term is 0 with this γ, so that what is stiff is gone at once.
func TestLeapHasItsStabilityFunction(t *testing.T) {
	gamma := 1 - 1/math.Sqrt2
	for _, z := range []float64{-0.05, -1, -4e6} {
		in := stiff.New(stiff.System{
			F:        func(y, d []float64) { d[0] = z * y[0] },
			Jacobian: func(_, j []float64) { j[0] = z },
		}, []float64{1})
		if err := in.Leap(1); err != nil {
			t.Fatal(err)
		}
		want := (1 + (1-2*gamma)*z) / ((1 - gamma*z) * (1 - gamma*z))
		if math.Abs(in.Y[0]-want) > 1e-6 {
			t.Errorf("z %g: %g, want %g", z, in.Y[0], want)
		}
	}
}
