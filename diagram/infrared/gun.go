package infrared

import (
	"errors"
	"fmt"
	"math"

	"loopbook/diagram"
)

// Sentinels of this package: a setting or temperature that can't be, and a
// reading that no temperature from −60 to 400 °C explains.
var (
	ErrRange      = errors.New("outside the possible range")
	ErrNoSolution = errors.New("no surface temperature explains the reading")
)

// Gun is how an infrared thermometer is set: its emissivity, above 0 to 1, and
// the temperature it takes for reflected surroundings.
//
// It is taken to balance s L(shown) + (1−s) L(reflected), s its emissivity and
// L the radiance in the band, against what it sees: e L(true) + (1−e)
// L(surroundings), e the surface's. A gun with no setting for the reflected
// temperature takes its own, which is the air's.
type Gun struct {
	Emissivity float64
	ReflectedC diagram.Celsius
}

// doubtfulK is the uncertainty from which a corrected temperature is too vague
// to judge by: just under the smallest difference that the trade judges by,
// 5.6 K across the engine (DT1 in testdata/trade/numbers.csv).
const doubtfulK diagram.DeltaK = 5

// Corrected is a surface's true temperature and how far it moves, either way,
// when the emissivity goes from the middle to an end of its range.
type Corrected struct {
	TrueC      diagram.Celsius
	UncertainK diagram.DeltaK
}

// Doubtful reports whether the temperature is too vague to judge by.
func (c Corrected) Doubtful() bool { return !(c.UncertainK <= doubtfulK) }

// Correct is the true temperature of the surface from what the gun showed,
// with the surroundings that the surface mirrors. It solves Gun's balance to
// 1e-5 K; the error of a real instrument is a hundred thousand times that.
//
// The uncertainty is the derivative of the answer by the emissivity, times
// half the range of that. It grows with the difference from the surroundings
// and with 1/e, so bare metal near the air's temperature is still worth a
// reading and a hot one is not.
func (g Gun) Correct(shown diagram.Celsius, s Surface, surroundings diagram.Celsius) (Corrected, error) {
	if err := g.check(s, shown, surroundings); err != nil {
		return Corrected{}, err
	}
	mirrored := radianceC(surroundings)
	seen := g.Emissivity*radianceC(shown) + (1-g.Emissivity)*radianceC(g.ReflectedC)
	own := mirrored + (seen-mirrored)/s.Typical
	kelvin := diagram.Kelvin(temperature(own))
	if !kelvin.Celsius().Plausible() {
		return Corrected{}, fmt.Errorf("%g °C shown, emissivity %g, among %g °C: %w",
			float64(shown), s.Typical, float64(surroundings), ErrNoSolution)
	}
	byEmissivity := math.Abs(own-mirrored) / (s.Typical * slope(float64(kelvin), own))
	return Corrected{kelvin.Celsius(), diagram.DeltaK(byEmissivity * (s.High - s.Low) / 2)}, nil
}

func (g Gun) check(s Surface, t, surroundings diagram.Celsius) error {
	if !(g.Emissivity > 0 && g.Emissivity <= 1) {
		return fmt.Errorf("gun set to emissivity %g: %w", g.Emissivity, ErrRange)
	}
	if err := s.check(); err != nil {
		return err
	}
	for _, t := range [...]diagram.Celsius{t, surroundings, g.ReflectedC} {
		if !t.Plausible() {
			return fmt.Errorf("%g °C: %w", float64(t), ErrRange)
		}
	}
	return nil
}

func radianceC(t diagram.Celsius) float64 { return radiance(float64(t.Kelvin())) }
