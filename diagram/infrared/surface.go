package infrared

import (
	"encoding/json"
	"fmt"
	"sync"

	"loopbook/assets"
)

// Surface is what the gun is pointed at: its emissivity in 8 to 14 µm, above 0
// to 1, with the range that published values have.
type Surface struct {
	Word               string // of the case format; empty for a stated emissivity
	Low, Typical, High float64
	Source             string
}

// statedSpread either way is what a stated emissivity is trusted to: common
// practice, no source. Makers' tables part by more.
const statedSpread = 0.02

// Stated is a surface whose emissivity someone measured or looked up, trusted
// to 0.02 either way. One not above 0, or above 1, is an error.
func Stated(emissivity float64) (Surface, error) {
	s := Surface{
		Low:     max(emissivity-statedSpread, emissivity/2),
		Typical: emissivity,
		High:    min(emissivity+statedSpread, 1),
		Source:  "stated with the reading",
	}
	return s, s.check()
}

// Named is the surface of a word of the case format, such as rubber or
// aluminium-bare. An unknown word is an error.
func Named(word string) (Surface, error) {
	surfaces, err := named()
	if err != nil {
		return Surface{}, err
	}
	s, ok := surfaces[word]
	if !ok {
		return Surface{}, fmt.Errorf("unknown surface %q", word)
	}
	return s, nil
}

func (s Surface) check() error {
	if !(s.Low > 0 && s.Low <= s.Typical && s.Typical <= s.High && s.High <= 1) {
		return fmt.Errorf("surface %q with emissivity %g (%g to %g): %w", s.Word, s.Typical, s.Low, s.High, ErrRange)
	}
	return nil
}

// named reads the embedded table once; nobody writes to it.
var named = sync.OnceValues(func() (map[string]Surface, error) { return readSurfaces(assets.Emissivity) })

func readSurfaces(data []byte) (map[string]Surface, error) {
	var list []Surface
	if err := json.Unmarshal(data, &list); err != nil {
		return nil, fmt.Errorf("emissivity.json: %w", err)
	}
	surfaces := make(map[string]Surface, len(list))
	for _, s := range list {
		if err := s.check(); err != nil {
			return nil, fmt.Errorf("emissivity.json: %w", err)
		}
		surfaces[s.Word] = s
	}
	return surfaces, nil
}
