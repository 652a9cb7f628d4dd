package trial

import (
	"math/rand"
	"slices"
)

// dice draws what differs from car to car.
type dice struct{ *rand.Rand }

func (d dice) between(low, high float64) float64 { return low + (high-low)*d.Float64() }

// about is typical, up to that part more or less.
func (d dice) about(typical, part float64) float64 { return typical * d.between(1-part, 1+part) }

func (d dice) chance(p float64) bool { return d.Float64() < p }

// normal is an error of that standard deviation.
func (d dice) normal(sd float64) float64 { return sd * d.NormFloat64() }

func pick[T any](d dice, from ...T) T { return from[d.Intn(len(from))] }

// weighted is a word and how often it is met beside the others of its list.
type weighted struct {
	word   string
	weight float64
}

// draw takes up to n different words, the weightier ones more often.
func draw(d dice, n int, from []weighted) []string {
	left := slices.Clone(from)
	var out []string
	for len(out) < n && len(left) > 0 {
		total := 0.0
		for _, w := range left {
			total += w.weight
		}
		at, i := d.between(0, total), 0
		for ; i < len(left)-1 && at >= left[i].weight; i++ {
			at -= left[i].weight
		}
		out = append(out, left[i].word)
		left = slices.Delete(left, i, i+1)
	}
	return out
}
