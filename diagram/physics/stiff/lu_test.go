package stiff_test

import (
	"math"
	"math/rand"
	"testing"

	"loopbook/diagram/physics/stiff"
)

// What is put into the equations comes out of them, with an empty diagonal too,
// where nothing goes without swapping rows, and with many zeros.
func TestEquationsAreSolved(t *testing.T) {
	dice := rand.New(rand.NewSource(1))
	for try := 0; try < 300; try++ {
		n := 2 + dice.Intn(9)
		jac, want, b := make([]float64, n*n), make([]float64, n), make([]float64, n)
		diagonal := float64(try % 3) // 0: only what the Jacobian has
		for i := range want {
			want[i] = dice.NormFloat64()
			for j := range want {
				if i != j && dice.Intn(3) > 0 {
					jac[i*n+j] = dice.NormFloat64()
				}
			}
		}
		for i := range b {
			b[i] = diagonal * want[i]
			for j := range want {
				b[i] -= jac[i*n+j] * want[j]
			}
		}
		x, ok := stiff.Solve(jac, diagonal, b)
		if !ok {
			continue // a row or a column of zeros
		}
		for i := range b { // what is left over, since a matrix may be near to having no inverse
			left := b[i] - diagonal*x[i]
			for j := range x {
				left += jac[i*n+j] * x[j]
			}
			if !(math.Abs(left) <= 1e-9*(1+largest(x))) {
				t.Fatalf("try %d, %d equations: row %d is left with %g", try, n, i, left)
			}
		}
	}
	if _, ok := stiff.Solve([]float64{1, 1, 1, 1}, 0, []float64{1, 2}); ok {
		t.Error("two equations that contradict each other are solved")
	}
	if x, ok := stiff.Solve([]float64{0, -2, -4, 0}, 0, []float64{6, 8}); !ok || x[0] != 2 || x[1] != 3 {
		t.Errorf("2y = 6 and 4x = 8 give %v, %t", x, ok)
	}
}

// largest is the largest of the values, whatever their sign.
func largest(x []float64) float64 {
	most := 0.0
	for _, v := range x {
		most = max(most, math.Abs(v))
	}
	return most
}
