package network_test

import (
	"errors"
	"math"
	"testing"

	"loopbook/diagram/physics/network"
)

func solved(t testing.TB, nodes int, branches []network.Branch, set func(*network.Network)) *network.Network {
	t.Helper()
	n, err := network.New(nodes, branches)
	if err != nil {
		t.Fatal(err)
	}
	if set != nil {
		set(n)
	}
	if err := n.Solve(); err != nil {
		t.Fatal(err)
	}
	if off := imbalance(n); !(off <= 1e-9) {
		t.Errorf("nodes out of balance by %g L/s", off)
	}
	return n
}

// imbalance is the largest flow that any node loses or gains, in L/s.
func imbalance(n *network.Network) float64 {
	worst := 0.0
	for node := range n.PressureKPa {
		sum := n.SupplyLS[node]
		for i, b := range n.Branches {
			if b.From == node {
				sum -= n.FlowLS[i]
			}
			if b.To == node {
				sum += n.FlowLS[i]
			}
		}
		worst = max(worst, math.Abs(sum))
	}
	return worst
}

// sharp makes creeping flow count for nothing, as in the textbooks.
func sharp(n *network.Network) { n.CreepLS = 1e-9 }

// testdata/reference/hydraulics.csv, topic network: sums and intersection. There
// in Pa s²/m⁶ and m³/s; 1e9 of those are 1 kPa/(L/s)².
func TestSeriesParallelAndOperatingPoint(t *testing.T) {
	near := func(what string, got, want, tol float64) {
		if !(math.Abs(got/want-1) <= tol) {
			t.Errorf("%s: got %.10g, want %.10g", what, got, want)
		}
	}
	series := solved(t, 3, []network.Branch{{From: 0, To: 1, Resistance: 2}, {From: 1, To: 2, Resistance: 3}}, func(n *network.Network) {
		sharp(n)
		n.SupplyLS[0], n.SupplyLS[2] = 2, -2
	})
	near("in series", -series.PressureKPa[2]/4, 5, 1e-6)
	parallel := solved(t, 2, []network.Branch{{From: 0, To: 1, Resistance: 2}, {From: 0, To: 1, Resistance: 3}}, func(n *network.Network) {
		sharp(n)
		n.SupplyLS[0], n.SupplyLS[1] = 1, -1
	})
	near("in parallel", -parallel.PressureKPa[1], 0.60612309, 1e-6)
	near("share through the first", parallel.FlowLS[0], 0.55051026, 1e-6)
	rise, drop := network.Pump{ShutOffKPa: 150, Drop: 4, RatedRPM: 2500}.At(2500)
	point := solved(t, 2, []network.Branch{{From: 0, To: 1, RiseKPa: rise, Resistance: drop}, {From: 1, To: 0, Resistance: 5}}, sharp)
	near("operating point", point.FlowLS[0], 4.08248290, 1e-6)
}

// hydraulics.csv, topic pump_affinity: textbook problem 7.33, 126 ft, 400 gpm
// and 17.5 hp at 3500 rpm, taken to 1700 rpm against the same system.
func TestPumpFollowsAffinity(t *testing.T) {
	pump := network.Pump{ShutOffKPa: 200, Drop: (200 - 126) / (400. * 400), RatedRPM: 3500}
	load := 126 / (400. * 400)
	rise, drop := pump.At(1700)
	n := solved(t, 2, []network.Branch{{From: 0, To: 1, RiseKPa: rise, Resistance: drop}, {From: 1, To: 0, Resistance: load}}, sharp)
	flow, head := n.FlowLS[0], n.PressureKPa[1]
	for _, tt := range []struct {
		what      string
		got, want float64
	}{
		{"flow, US gpm", flow, 194.28571428571428},
		{"head, ft", head, 29.725714},
		{"power, hp", 17.5 * flow * head / (400 * 126), 2.005306},
	} {
		if !(math.Abs(tt.got/tt.want-1) <= 1e-6) {
			t.Errorf("%s: got %.9g, want %.9g", tt.what, tt.got, tt.want)
		}
	}
}

// A pump in a lift: the R package hydraulics (E. Maurer, 2024), vignette
// section 6. Three points of a curve, h = a + c·Q² by least squares, against
// 30 ft and K = 0.160 (53.285 at 12.051 cubic feet a second).
func TestPublishedPumpAndSystem(t *testing.T) {
	gpm := 231.0 / 1728 / 60 // US gallons a minute in cubic feet a second
	var x, y, xx, xy float64
	for _, p := range [][2]float64{{0, 81}, {5000, 60}, {7850, 20}} {
		q := p[0] * gpm
		x, y, xx, xy = x+q*q, y+p[1], xx+q*q*q*q, xy+q*q*p[1]
	}
	c := (xy - x*y/3) / (xx - x*x/3)
	a := (y - c*x) / 3
	const lift, k = 30, (53.285 - 30) / (12.051 * 12.051)
	n := solved(t, 2, []network.Branch{{From: 0, To: 1, RiseKPa: a, Resistance: -c}, {From: 1, To: 0, RiseKPa: -lift, Resistance: k}}, sharp)
	if q, h := n.FlowLS[0], n.PressureKPa[1]; !(math.Abs(q-12.051) <= 0.001 && math.Abs(h-53.285) <= 0.002) {
		t.Errorf("operating point %.4f, %.4f; want 12.051, 53.285", q, h)
	}
}

// A water network of ten pipes in three loops: the same vignette, section 7,
// by three rounds of Hardy Cross, printed to 1e-4 m³/s. Supplies and demands are
// those of its first guess. Its second loop is still open by 0.032 m of head, and
// one more round would move that loop by 2e-4 m³/s: hence the tolerance.
func TestPublishedPipeNetwork(t *testing.T) {
	const a, b, c, d, e, f, g, h = 0, 1, 2, 3, 4, 5, 6, 7
	pipes := []struct {
		from, to     int
		k, published float64
	}{
		{a, b, 159.7828, 0.0383}, {b, c, 535.9666, 0.0383}, {c, d, 669.9582, 0.0232}, {d, e, 669.9582, -0.0258},
		{e, a, 535.9666, -0.0417}, {d, f, 2430.5356, 0.0090}, {f, g, 207.7883, 0.0041}, {g, e, 2430.5356, -0.0159},
		{c, h, 2430.5356, 0.0151}, {h, f, 207.7883, -0.0049},
	}
	var branches []network.Branch
	for _, p := range pipes {
		branches = append(branches, network.Branch{From: p.from, To: p.to, Resistance: p.k})
	}
	n := solved(t, 8, branches, func(n *network.Network) {
		n.CreepLS = 1e-9
		n.SupplyLS[a], n.SupplyLS[d], n.SupplyLS[g], n.SupplyLS[h] = 0.08, -0.04, -0.02, -0.02
	})
	for i, p := range pipes {
		if got := n.FlowLS[i]; !(math.Abs(got-p.published) <= 2.5e-4) {
			t.Errorf("pipe %d: %.5f, published %.4f m³/s", i+1, got, p.published)
		}
	}
	for i, loop := range [][]int{{1, 2, 3, 4, 5}, {-4, 6, 7, 8}, {-3, 9, 10, -6}} {
		head := 0.0
		for _, pipe := range loop {
			j := max(pipe, -pipe) - 1
			head += float64(pipe) / float64(j+1) * pipes[j].k * n.FlowLS[j] * math.Abs(n.FlowLS[j])
		}
		if math.Abs(head) > 1e-9 {
			t.Errorf("loop %d is open by %g m", i+1, head)
		}
	}
}

// loop is shaped like a cooling loop: pump, engine, radiator by a valve,
// bypass by the other side of the valve, heater.
func loop(lift, rpm float64) []network.Branch {
	rise, drop := network.Pump{ShutOffKPa: 60, Drop: 6, RatedRPM: 3000}.At(rpm)
	return []network.Branch{
		{From: 0, To: 1, RiseKPa: rise, Resistance: drop + 4},
		{From: 1, To: 2, Resistance: network.Valve(6, lift, 1e-3)},
		{From: 2, To: 0, Resistance: 3},
		{From: 1, To: 0, Resistance: network.Valve(60, 1-lift, 0.05)},
		{From: 1, To: 0, Resistance: 150},
		{From: 2, To: 0, Resistance: 4000},
	}
}

// Nothing moves without a pump, a shut valve lets its leak through, and the
// solution is one from any start.
func TestRobust(t *testing.T) {
	still := solved(t, 3, loop(0.5, 0), nil)
	for i, q := range still.FlowLS {
		if math.Abs(q) > 1e-12 {
			t.Errorf("branch %d flows %g without a pump", i, q)
		}
	}
	shut := solved(t, 3, loop(0, 900), nil)
	open := solved(t, 3, loop(1, 900), nil)
	if leak := shut.FlowLS[1] / open.FlowLS[1]; !(leak > 0 && leak < 0.01) {
		t.Errorf("a shut valve passes %g of an open one", leak)
	}
	want := append([]float64(nil), shut.FlowLS...)
	for _, start := range []float64{-50, -1e-9, 1e-9, 3, 1000} {
		n := solved(t, 3, loop(0, 900), func(n *network.Network) {
			for i := range n.FlowLS {
				n.FlowLS[i] = start * float64(1-2*(i%2))
			}
		})
		for i, q := range n.FlowLS {
			if math.Abs(q-want[i]) > 1e-9 {
				t.Errorf("from %g: branch %d flows %g, want %g", start, i, q, want[i])
			}
		}
	}
}

// Wide open a valve is its full resistance, shut what its leak lets through, and half open a hole of half the area, of
// which the same flow takes four times the pressure (Borda and Carnot: by the square of the area).
func TestValveByItsArea(t *testing.T) {
	const tight = 1e-9
	for _, tt := range []struct{ lift, leak, times float64 }{
		{1, 0.02, 1}, {1.5, 0.02, 1}, {0, 0.02, 2500}, {-1, 0.02, 2500}, {0, 1, 1}, {0.5, tight, 4}, {0.25, tight, 16},
	} {
		if got := network.Valve(3, tt.lift, tt.leak); math.Abs(got/(3*tt.times)-1) > 1e-6 {
			t.Errorf("Valve(3, %g, %g) = %g, want %g", tt.lift, tt.leak, got, 3*tt.times)
		}
	}
}

func TestBadNetworks(t *testing.T) {
	for name, try := range map[string]func() error{
		"no nodes":     func() error { _, err := network.New(0, nil); return err },
		"no such node": func() error { _, err := network.New(2, []network.Branch{{From: 0, To: 2, Resistance: 1}}); return err },
		"an island":    func() error { _, err := network.New(3, []network.Branch{{From: 0, To: 1, Resistance: 1}}); return err },
		"no resistance": func() error {
			n, err := network.New(2, []network.Branch{{From: 0, To: 1, RiseKPa: 1}, {From: 1, To: 0, Resistance: math.NaN()}})
			if err != nil {
				return err
			}
			return n.Solve()
		},
	} {
		if err := try(); !errors.Is(err, network.ErrNetwork) {
			t.Errorf("%s: %v, want ErrNetwork", name, err)
		}
	}
}

func TestSolvingAgainAllocatesNothing(t *testing.T) {
	n := solved(t, 3, loop(0.3, 900), nil)
	lift := 0.3
	if got := testing.AllocsPerRun(100, func() {
		lift = math.Mod(lift+0.17, 1)
		n.Branches[1].Resistance = network.Valve(6, lift, 1e-3)
		if err := n.Solve(); err != nil {
			t.Fatal(err)
		}
	}); got != 0 {
		t.Errorf("%g allocations a solution", got)
	}
}

// A thermostat that moves by a hundredth of its lift between solutions.
func BenchmarkSolveAgain(b *testing.B) {
	n := solved(b, 3, loop(0.3, 900), nil)
	b.ReportAllocs() // want 0
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		n.Branches[1].Resistance = network.Valve(6, 0.3+0.01*float64(i%10), 1e-3)
		if err := n.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}
