package warmup

import "math"

// noiseK2 is what a value's square is off by at least: whole kelvins leave
// 1/12 K². outlierSds is how far off a value may lie before it is left out.
const (
	noiseK2    = 0.1
	outlierSds = 3
)

// broken fits two lines that meet to some bins; a weight of 0 leaves one out.
type broken struct {
	bins   []bin
	weight []float64
}

// elbow is where two lines meet.
type elbow struct {
	clock, c      float64
	before, after float64 // slopes, K/s
	misfit        float64
}

func newBroken(bins []bin) broken {
	f := broken{bins: bins, weight: make([]float64, len(bins))}
	for i := range f.weight {
		f.weight[i] = 1
	}
	return f
}

// best tries each time between the second value and the last but one, in
// quarters of a step.
func (f broken) best() elbow {
	best := elbow{misfit: math.Inf(1)}
	for i := 1; i+2 < len(f.bins); i++ {
		step := (f.bins[i+1].clock - f.bins[i].clock) / 4
		for q := 0.0; q < 4; q++ {
			if e := f.fit(f.bins[i].clock + q*step); e.misfit < best.misfit {
				best = e
			}
		}
	}
	return best
}

// fit is the best pair of lines that meet at a time, by least squares.
func (f broken) fit(clock float64) elbow {
	var m normal
	for i, b := range f.bins {
		d := b.clock - clock
		m.add(min(d, 0), max(d, 0), b.ect, f.weight[i])
	}
	e := elbow{clock: clock}
	e.c, e.before, e.after = m.solve()
	for i, b := range f.bins {
		d := b.ect - e.at(b.clock)
		e.misfit += f.weight[i] * d * d
	}
	return e
}

func (e elbow) at(clock float64) float64 {
	d := clock - e.clock
	return e.c + e.before*min(d, 0) + e.after*max(d, 0)
}

// normal gathers the normal equations of c + a·u + b·v = y.
type normal struct{ n, u, v, uu, vv, uv, y, uy, vy float64 }

func (m *normal) add(u, v, y, w float64) {
	m.n, m.u, m.v, m.y = m.n+w, m.u+w*u, m.v+w*v, m.y+w*y
	m.uu, m.vv, m.uv = m.uu+w*u*u, m.vv+w*v*v, m.uv+w*u*v
	m.uy, m.vy = m.uy+w*u*y, m.vy+w*v*y
}

// solve answers NaN where the values don't hold both lines.
func (m normal) solve() (c, a, b float64) {
	uu, vv, uv := m.uu-m.u*m.u/m.n, m.vv-m.v*m.v/m.n, m.uv-m.u*m.v/m.n
	uy, vy := m.uy-m.u*m.y/m.n, m.vy-m.v*m.y/m.n
	det := uu*vv - uv*uv
	a, b = (uy*vv-vy*uv)/det, (vy*uu-uy*uv)/det
	return (m.y - a*m.u - b*m.v) / m.n, a, b
}

// without leaves out what lies far off the lines.
func (f broken) without(e elbow) broken {
	sd := math.Sqrt(e.misfit/float64(len(f.bins))) + math.Sqrt(noiseK2)
	out := broken{f.bins, make([]float64, len(f.bins))}
	for i, b := range f.bins {
		if math.Abs(b.ect-e.at(b.clock)) <= outlierSds*sd {
			out.weight[i] = 1
		}
	}
	return out
}

// trust is how much better the break explains the values than an engine that
// comes smoothly to where its losses meet its heat.
func (f broken) trust(e elbow) float64 {
	smooth := f.smoothMisfit()
	gain := (smooth - e.misfit) / (smooth + noiseK2*float64(len(f.bins)))
	return max(0, min(1, 1.5*gain))
}

// smoothMisfit is that of the best exponential approach to any level.
func (f broken) smoothMisfit() float64 {
	first, span := f.bins[0].clock, f.bins[len(f.bins)-1].clock-f.bins[0].clock
	best := math.Inf(1)
	for tau := span / 20; tau < 20*span; tau *= 1.2 {
		var n, se, see, sy, sey, syy float64
		for _, b := range f.bins {
			e, y := math.Exp((first-b.clock)/tau), b.ect-f.bins[0].ect
			n, se, see, sy, sey, syy = n+1, se+e, see+e*e, sy+y, sey+e*y, syy+y*y
		}
		ee, ey := see-se*se/n, sey-se*sy/n
		best = min(best, syy-sy*sy/n-ey*ey/ee)
	}
	return max(0, best)
}
