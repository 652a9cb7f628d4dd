package coolant_test

import (
	"errors"
	"math"
	"math/rand"
	"testing"

	"loopbook/diagram"
	"loopbook/diagram/coolant"
)

// TestChange by plain arithmetic: a tenth of a 10 l system is a litre.
func TestChange(t *testing.T) {
	for _, tt := range []struct {
		capacity         diagram.Litre
		have, want, with coolant.VolumePercent
		litres           diagram.Litre
	}{
		{10, 0, 50, 100, 5},
		{6, 25, 50, 100, 2},
		{8, 60, 45, 0, 2},   // thinned with water
		{6, 30, 40, 50, 3},  // ready mix
		{6, 30, 50, 50, 6},  // the whole filling
		{6, 50, 50, 100, 0}, // nothing to do
		{6, 50, 50, 50, 0},
	} {
		got, err := coolant.Change(tt.capacity, tt.have, tt.want, tt.with)
		if err != nil || math.Abs(float64(got-tt.litres)) > 1e-12 {
			t.Errorf("Change%v = %v, %v", tt, got, err)
		}
	}
}

// TestChangeBringsItAbout: glycol before and after, by the volumes.
func TestChangeBringsItAbout(t *testing.T) {
	rng := rand.New(rand.NewSource(1))
	percent := func() coolant.VolumePercent { return coolant.VolumePercent(100 * rng.Float64()) }
	for i := 0; i < 1000; i++ {
		capacity, have, with := diagram.Litre(1+20*rng.Float64()), percent(), percent()
		want := have + (with-have)*coolant.VolumePercent(rng.Float64())
		litres, err := coolant.Change(capacity, have, want, with)
		if err != nil || !(litres >= 0 && litres <= capacity) {
			t.Fatalf("Change(%v, %v, %v, %v) = %v, %v", capacity, have, want, with, litres, err)
		}
		left := float64(capacity-litres) * float64(have)
		if got := (left + float64(litres)*float64(with)) / float64(capacity); math.Abs(got-float64(want)) > 1e-9 {
			t.Fatalf("Change(%v, %v, %v, %v) = %v, which makes %v", capacity, have, want, with, litres, got)
		}
	}
}

func TestChangeImpossible(t *testing.T) {
	nan := coolant.VolumePercent(math.NaN())
	for _, tt := range []struct {
		capacity         diagram.Litre
		have, want, with coolant.VolumePercent
	}{
		{6, 30, 50, 40}, // too weak to get there
		{6, 50, 40, 60}, // the wrong way
		{6, 30, 40, 30}, // the same again
		{0, 30, 50, 100}, {-1, 30, 50, 100}, {diagram.Litre(math.NaN()), 30, 50, 100},
		{6, -1, 50, 100}, {6, 30, 101, 100}, {6, 30, 50, 101}, {6, nan, 50, 100}, {6, 30, nan, 100}, {6, 30, 50, nan},
	} {
		if got, err := coolant.Change(tt.capacity, tt.have, tt.want, tt.with); !errors.Is(err, coolant.ErrRange) {
			t.Errorf("Change%v = %v, %v, want ErrRange", tt, got, err)
		}
	}
}
