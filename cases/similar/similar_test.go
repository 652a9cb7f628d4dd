package similar_test

import (
	"math"
	"math/rand"
	"slices"
	"sort"
	"testing"

	"loopbook/cases"
	"loopbook/cases/similar"
)

func stuckOpen() cases.Digest {
	return cases.Digest{
		Key: 1, Layout: "inlet-thermostat", Codes: []string{"P0128"}, Symptoms: []cases.Symptom{"slow-warm-up", "cabin-heat-poor"},
		Deltas: []cases.Deviation{{Name: "across-radiator", Z: 1.5}, {Name: "along-upper-hose", Z: 0}, {Name: "heater", Z: -0.5}, {Name: "along-lower-hose", Z: 0}},
	}
}

// A distance must behave as one: none to oneself, the same both ways, and never
// smaller when two cases share less. Properties; print has no figure for them.
func TestDistance(t *testing.T) {
	a := stuckOpen()
	if d := similar.Distance(&a, &a); d != 0 {
		t.Errorf("to itself %g, want 0", d)
	}
	nothing := cases.Digest{}
	if d := similar.Distance(&a, &nothing); d < 0.4 || d > 0.7 {
		t.Errorf("to a case of which nothing is known %g, want about a half", d)
	}
	if d := similar.Distance(&nothing, &cases.Digest{}); d != 0.5 {
		t.Errorf("between two cases of which nothing is known %g, want a half: nothing noted is nothing in common", d)
	}
	opposite := cases.Digest{Layout: "split-head-block", Codes: []string{"P0217"}, Symptoms: []cases.Symptom{"overheats-idle"}}
	for _, x := range a.Deltas {
		opposite.Deltas = append(opposite.Deltas, cases.Deviation{Name: x.Name, Z: x.Z - 4})
	}
	if d := similar.Distance(&a, &opposite); math.Abs(d-1) > 1e-9 {
		t.Errorf("to its opposite %g, want 1", d)
	}
	last := 0.0
	for _, less := range []func(*cases.Digest){
		func(d *cases.Digest) { d.Deltas[0].Z = 0.5 },
		func(d *cases.Digest) { d.Symptoms = d.Symptoms[:1] },
		func(d *cases.Digest) { d.Codes = []string{"P0128", "P0115"} },
		func(d *cases.Digest) { d.Layout = "outlet-thermostat" },
		func(d *cases.Digest) { d.Codes = nil },
	} {
		b := stuckOpen()
		b.Deltas = append([]cases.Deviation{}, b.Deltas...)
		less(&b)
		d := similar.Distance(&a, &b)
		if d <= 0 || d > 1 || d != similar.Distance(&b, &a) {
			t.Errorf("%g one way, %g the other", d, similar.Distance(&b, &a))
		}
		last = max(last, d)
	}
	if last >= 0.5 {
		t.Errorf("one thing unlike of four makes %g", last)
	}
}

// A layout that isn't known is no other layout, and only what both cases have is told to be shared.
func TestWhatIsNotKnownIsNoDifference(t *testing.T) {
	a, unknown, other := stuckOpen(), stuckOpen(), stuckOpen()
	unknown.Layout, other.Layout = "", "split-head-block"
	if d, same, far := similar.Distance(&a, &unknown), similar.Distance(&a, &a), similar.Distance(&a, &other); !(same < d && d < far) {
		t.Errorf("the same layout %g, one that isn't known %g, another %g", same, d, far)
	}
	b := cases.Digest{Key: 9, Codes: []string{"P0115", "P0128", "P0128"}, Symptoms: []cases.Symptom{"fuel-use-up", "slow-warm-up"}}
	f := similar.Like(a, 1)
	f.Look(&b)
	if got := f.Matches()[0].Shares; !slices.Equal(got.Codes, []string{"P0128"}) || !slices.Equal(got.Symptoms, []cases.Symptom{"slow-warm-up"}) || got.Layout {
		t.Errorf("shared are %+v", got)
	}
}

// The finder must answer what sorting all of them would.
func TestFinderKeepsTheNearest(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	like := stuckOpen()
	var all []cases.Digest
	for i := range 3000 {
		all = append(all, random(r, int64(i+2)))
	}
	all = append(all, like) // itself
	f := similar.Like(like, 20)
	for i := range all {
		f.Look(&all[i])
	}
	sort.SliceStable(all, func(i, j int) bool { return similar.Distance(&like, &all[i]) < similar.Distance(&like, &all[j]) })
	got := f.Matches()
	if len(got) != 20 || all[0].Key != like.Key {
		t.Fatalf("%d matches, the first of all is %d", len(got), all[0].Key)
	}
	for i, m := range got {
		if want := similar.Distance(&like, &all[i+1]); m.Key == like.Key || math.Abs(m.Distance-want) > 1e-12 {
			t.Errorf("match %d is %d at %g, want %g", i, m.Key, m.Distance, want)
		}
	}
}

func random(r *rand.Rand, key int64) cases.Digest {
	d := cases.Digest{Key: key}
	layouts := []string{"", "inlet-thermostat", "outlet-thermostat"}
	d.Layout = layouts[r.Intn(3)]
	for _, c := range []string{"P0128", "P0217", "P0115"} {
		if r.Intn(3) == 0 {
			d.Codes = append(d.Codes, c)
		}
	}
	for _, s := range cases.Words[cases.Symptom]() {
		if r.Intn(6) == 0 {
			d.Symptoms = append(d.Symptoms, s)
		}
	}
	for _, name := range []string{"across-radiator", "along-upper-hose", "heater", "along-lower-hose"} {
		if r.Intn(2) == 0 {
			d.Deltas = append(d.Deltas, cases.Deviation{Name: name, Z: r.NormFloat64()})
		}
	}
	return d
}

func TestWhatIsShared(t *testing.T) {
	like, other := stuckOpen(), stuckOpen()
	other.Key, other.Cause = 2, "thermostat-stuck-open"
	other.Symptoms = other.Symptoms[:1]
	f := similar.Like(like, 3)
	f.Look(&other)
	m := f.Matches()[0]
	if m.Cause != "thermostat-stuck-open" || !m.Shares.Layout || len(m.Shares.Codes) != 1 || len(m.Shares.Symptoms) != 1 || len(m.Shares.Out) != 2 || m.Shares.Inside != 2 {
		t.Errorf("Matches = %+v; want the layout, a code, a symptom and two differences that are out and two that aren't", m)
	}
}

func BenchmarkLook100000(b *testing.B) {
	r := rand.New(rand.NewSource(1))
	all := make([]cases.Digest, 100_000)
	for i := range all {
		all[i] = random(r, int64(i+2))
	}
	b.ResetTimer()
	for i := 0; i < b.N; i++ {
		f := similar.Like(stuckOpen(), 20)
		for j := range all {
			f.Look(&all[j])
		}
	}
}

// A code that is stored and pending stands in a list twice and is one thing in common: counted as two, the case was nearer than
// the same one (a distance below 0), and stood before it.
func TestACodeNotedTwiceIsOne(t *testing.T) {
	a, twice := stuckOpen(), stuckOpen()
	twice.Key, twice.Codes = 2, []string{"P0128", "P0128"}
	twice.Symptoms = []cases.Symptom{"slow-warm-up", "slow-warm-up", "cabin-heat-poor"}
	if one, other := similar.Distance(&a, &twice), similar.Distance(&twice, &a); one != 0 || other != 0 {
		t.Errorf("a code noted twice makes the distance %g one way, %g the other, want 0", one, other)
	}
	f := similar.Like(twice, 1)
	f.Look(&a)
	if got := f.Matches()[0].Shares.Symptoms; !slices.Equal(got, a.Symptoms) {
		t.Errorf("they share %v, want %v", got, a.Symptoms)
	}
}
