// Package likelihood holds what is known of the causes apart from
// temperatures: how often a workshop meets each, what its customer complains
// of, which codes it stores, how each check comes out, and what a check costs.
//
// The numbers are data under assets/diagnosis, each row with its reason and
// the class of its source. They are broad on purpose: nothing in a workshop is
// impossible, and nothing is sure.
package likelihood

import (
	"errors"
	"io/fs"
	"math"
	"slices"
	"sync"

	"loopbook/assets"
	"loopbook/cases"
	"loopbook/diagram/say"
)

// Vector holds one value for each of cases.Words[cases.Cause](), in that order.
type Vector []float64

// Factor is one piece of evidence: the logarithm of its probability given each
// cause. Don't change Log.
type Factor struct {
	Label say.Text // "symptom: slow to warm up"
	Log   Vector
	Check bool // it tells how a check came out
}

// Tables are the likelihoods. They are immutable.
type Tables struct {
	prior    Vector
	symptoms map[cases.Symptom]Factor
	groups   []codeGroup
	standing Factor // a freeze frame of a hot engine, of a car that stood
	driven   Factor // and of one that was driven
	tests    map[cases.TestKind][]Outcome
	findings map[string]Factor
	rules    []rule // of the findings, those that read rounds
	spoken   Vector // how readily they speak together
	silent   Vector // how often none of them does
	checks   []Check
}

// Shipped are the tables that come with the program, read once.
var Shipped = sync.OnceValues(func() (*Tables, error) {
	return Load(assets.Diagnosis)
})

// Load reads and checks the tables that lie under diagnosis/. An error names the file, the row and the key of
// the first fault in each file.
func Load(files fs.FS) (*Tables, error) {
	var t Tables
	err := errors.Join(t.readPrior(files), t.readSymptoms(files), t.readCodes(files), t.readFrames(files), t.readTests(files), t.readFindings(files), t.readChecks(files))
	if err != nil {
		return nil, err
	}
	return &t, nil
}

// Prior is how often a workshop meets each cause; it sums to 1.
func (t *Tables) Prior() Vector { return slices.Clone(t.prior) }

// Flat takes each cause to be as likely as the next; it sums to 1.
func (t *Tables) Flat() Vector {
	v := newVector()
	for i := range v {
		v[i] = 1 / float64(len(v))
	}
	return v
}

// logs are the logarithms of the values.
func (v Vector) logs() Vector {
	out := newVector()
	for i := range v {
		out[i] = math.Log(v[i])
	}
	return out
}

// times is each value so many times.
func (v Vector) times(power float64) Vector {
	out := newVector()
	for i := range v {
		out[i] = power * v[i]
	}
	return out
}

func newVector() Vector { return make(Vector, len(cases.Words[cases.Cause]())) }
