package stiff

// Solve is x of (diagonal·1 − jac)·x = b, and false where there is none.
func Solve(jac []float64, diagonal float64, b []float64) (x []float64, ok bool) {
	m := newLU(len(b))
	if !m.factor(jac, diagonal) {
		return nil, false
	}
	x = append(x, b...)
	m.solve(x)
	return x, true
}
