package experience

import (
	"cmp"
	"math"
	"slices"

	"loopbook/cases"
)

// bins of how sure the program was.
const bins = 5

// Guesses hold what the program thought likeliest against the verdicts.
type Guesses struct {
	N, Right int
	LogLoss  float64 // mean of −ln of the chance that the verdict was given; the larger, the more wrong
	Bins     []Bin
	Wrong    []Wrong // the most frequent first
}

// Bin is the cases in which the program was about that sure of its first cause.
type Bin struct {
	Low, High float64 // chances
	N, Right  int
	MeanP     float64 // what it claimed
	Where     []cases.Condition
}

// Fits reports whether what was claimed lies within what the few cases allow.
func (b Bin) Fits() bool {
	low, high := Share(b.Right, b.N)
	return b.N == 0 || b.MeanP >= low && b.MeanP <= high
}

// Wrong is a first guess with what it turned out to be.
type Wrong struct {
	First, Truth cases.Cause
	N            int
	Where        []cases.Condition
}

type guessTally struct {
	n, right int
	loss     float64
	bins     [bins]Bin
	wrong    map[[2]cases.Cause]int
}

func newGuessTally() guessTally { return guessTally{wrong: map[[2]cases.Cause]int{}} }

// leastP keeps a verdict that was held impossible from making the mean infinite.
const leastP = 1e-4

func (g *guessTally) look(d *cases.Digest) {
	if d.Guess.First == "" {
		return
	}
	g.n++
	g.loss -= math.Log(max(d.Guess.TruthP, leastP))
	b := &g.bins[min(int(d.Guess.FirstP*bins), bins-1)]
	b.N++
	b.MeanP += d.Guess.FirstP
	if d.Guess.First == d.Cause {
		g.right++
		b.Right++
		return
	}
	g.wrong[[2]cases.Cause{d.Guess.First, d.Cause}]++
}

func (g *guessTally) result() Guesses {
	out := Guesses{N: g.n, Right: g.right}
	if g.n > 0 {
		out.LogLoss = g.loss / float64(g.n)
	}
	for i, b := range g.bins {
		b.Low, b.High = float64(i)/bins, float64(i+1)/bins
		b.Where = []cases.Condition{{Field: cases.BySure, Low: 100 * b.Low, High: 100*b.High - 0.01}}
		if i == bins-1 {
			b.Where[0].High = 100
		}
		if b.N > 0 {
			b.MeanP /= float64(b.N)
		}
		out.Bins = append(out.Bins, b)
	}
	for pair, n := range g.wrong {
		out.Wrong = append(out.Wrong, Wrong{pair[0], pair[1], n, []cases.Condition{is(cases.ByGuess, string(pair[0])), is(cases.ByCause, string(pair[1]))}})
	}
	slices.SortFunc(out.Wrong, func(a, b Wrong) int {
		return cmp.Or(b.N-a.N, cmp.Compare(a.First, b.First), cmp.Compare(a.Truth, b.Truth))
	})
	return out
}

// Share is the range that the true share lies in with 95 % if k of n were seen:
// Wilson's score interval (1927).
func Share(k, n int) (low, high float64) {
	if n == 0 {
		return 0, 1
	}
	const z = 1.959964
	p, m := float64(k)/float64(n), float64(n)
	middle := (p + z*z/(2*m)) / (1 + z*z/m)
	half := z / (1 + z*z/m) * math.Sqrt(p*(1-p)/m+z*z/(4*m*m))
	return max(middle-half, 0), min(middle+half, 1)
}
