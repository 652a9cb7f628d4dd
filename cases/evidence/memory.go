package evidence

import (
	"encoding/binary"
	"hash/maphash"
	"math"
	"sync"

	"loopbook/diagram"
	"loopbook/diagram/warmup"
)

// keptWarmUps is how many logs' results are kept: those of some cases looked at
// in turn.
const keptWarmUps = 64

// warmUpMemory keeps what logs came to: a case is judged anew at every edit, and
// its logs are the same ones. It may be used from several goroutines.
type warmUpMemory struct {
	seed maphash.Seed

	mu    sync.Mutex
	kept  map[uint64]warmup.Result
	order []uint64 // of keys, the oldest first
}

func newWarmUpMemory() *warmUpMemory {
	return &warmUpMemory{seed: maphash.MakeSeed(), kept: map[uint64]warmup.Result{}}
}

// analyse is warmup.Analyse, once for the same content. The result is shared and
// isn't to be changed.
func (m *warmUpMemory) analyse(s warmup.Series, o warmup.Options) warmup.Result {
	key := m.key(s, o)
	m.mu.Lock()
	r, ok := m.kept[key]
	m.mu.Unlock()
	if ok {
		return r
	}
	r = warmup.Analyse(s, o)
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, had := m.kept[key]; !had {
		m.order = append(m.order, key)
	}
	m.kept[key] = r
	if len(m.order) > keptWarmUps {
		delete(m.kept, m.order[0])
		m.order = m.order[1:]
	}
	return r
}

// key is a hash of all that the result depends on.
func (m *warmUpMemory) key(s warmup.Series, o warmup.Options) uint64 {
	var h maphash.Hash
	h.SetSeed(m.seed)
	put := func(v float64) {
		var b [8]byte
		binary.LittleEndian.PutUint64(b[:], math.Float64bits(v))
		_, _ = h.Write(b[:]) // never fails
	}
	for _, column := range [][]float64{s.TimeS, s.EctC, s.RPM, s.SpeedKmh, s.IntakeC} {
		put(float64(len(column)))
		for _, v := range column {
			put(v)
		}
	}
	for _, c := range []*diagram.Celsius{o.OpensC, o.AmbientC} {
		if c == nil {
			put(math.NaN())
			continue
		}
		put(float64(*c))
	}
	return h.Sum64()
}
