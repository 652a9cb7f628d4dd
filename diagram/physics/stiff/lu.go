package stiff

import "math"

// luMatrix is a small matrix in triangular factors, row by row, with its rows
// swapped so that no pivot is small. Zeros at either side of the diagonal are
// passed over: a network's matrix is mostly zero.
type luMatrix struct {
	n     int
	a     []float64
	swap  []int
	inv   []float64 // of each pivot
	left  []int     // where each row begins
	right []int     // where it goes on behind the diagonal
}

func newLU(n int) luMatrix {
	return luMatrix{n, make([]float64, n*n), make([]int, n), make([]float64, n), make([]int, n), make([]int, n)}
}

// factor takes apart diagonal·1 − jac and reports whether it has an inverse.
func (m *luMatrix) factor(jac []float64, diagonal float64) bool {
	n, a := m.n, m.a
	for i, x := range jac {
		a[i] = -x
	}
	for i := 0; i < n; i++ {
		a[i*n+i] += diagonal
	}
	for j := 0; j < n; j++ {
		m.pivot(j)
		p := a[j*n+j]
		if p == 0 || math.IsNaN(p) || math.IsInf(p, 0) {
			return false
		}
		m.inv[j] = 1 / p
		m.right[j] = skip(a[j*n:j*n+n], j+1)
		from := a[j*n+m.right[j] : j*n+n]
		for i := j + 1; i < n; i++ {
			if a[i*n+j] == 0 {
				continue
			}
			l := a[i*n+j] * m.inv[j]
			a[i*n+j] = l
			to := a[i*n+m.right[j] : i*n+n]
			for k, x := range from {
				to[k] -= l * x
			}
		}
	}
	for i := range m.left {
		m.left[i] = skip(a[i*n:i*n+i], 0)
	}
	return true
}

// skip is where row has its first value other than zero, from a place on.
func skip(row []float64, from int) int {
	for from < len(row) && row[from] == 0 {
		from++
	}
	return from
}

// pivot brings the row of the largest value in column j up to row j, unless
// the one that stands there is a tenth of it: rows left in place stay sparse.
func (m *luMatrix) pivot(j int) {
	n, a, best := m.n, m.a, j
	for i := j + 1; i < n; i++ {
		if math.Abs(a[i*n+j]) > math.Abs(a[best*n+j]) {
			best = i
		}
	}
	if math.Abs(a[j*n+j]) >= 0.1*math.Abs(a[best*n+j]) {
		best = j
	}
	m.swap[j] = best
	if best != j {
		for k := 0; k < n; k++ {
			a[j*n+k], a[best*n+k] = a[best*n+k], a[j*n+k]
		}
	}
}

// solve turns b into the solution.
func (m *luMatrix) solve(b []float64) {
	n, a := m.n, m.a
	for i, s := range m.swap {
		b[i], b[s] = b[s], b[i]
	}
	for i := 1; i < n; i++ {
		sum := b[i]
		from := m.left[i]
		for k, l := range a[i*n+from : i*n+i] {
			sum -= l * b[from+k]
		}
		b[i] = sum
	}
	for i := n - 1; i >= 0; i-- {
		sum := b[i]
		from := m.right[i]
		for k, u := range a[i*n+from : i*n+n] {
			sum -= u * b[from+k]
		}
		b[i] = sum * m.inv[i]
	}
}
