package coolant

import (
	"fmt"

	"loopbook/diagram"
)

// FreezeC is where the first ice forms: ASHRAE's table for inhibited glycols,
// which is what a can of coolant holds, between rows in a straight line. Plain
// glycol and water freeze lower, by 2 to 3 K at 50 to 60 % of ethylene glycol.
//
// It is known to 60 % by volume. For ethylene glycol the table ends at 57.8 %
// and the last segment runs on to 60 %. Above that the curve turns (stronger
// mixtures freeze sooner) and the answer is an error.
func (m Mixture) FreezeC() (diagram.Celsius, error) {
	g, err := m.glycol()
	if err != nil {
		return 0, err
	}
	if m.Strength > g.freeze {
		return 0, fmt.Errorf("freezing point of %s at %g %%, known to %g %%: %w",
			m.Base, float64(m.Strength), float64(g.freeze), ErrRange)
	}
	return diagram.Celsius(line(g.freezing(), float64(m.Strength), volume, freeze)), nil
}

// FromFreeze is the weaker of the mixtures that freeze at t, the inverse of
// FreezeC. A t above 0 °C, or below where FreezeC ends, is an error.
func FromFreeze(base Base, t diagram.Celsius) (Mixture, error) {
	m := Mixture{Base: base}
	g, err := m.glycol()
	if err != nil {
		return Mixture{}, err
	}
	if base != Water {
		m.Strength = VolumePercent(line(g.freezing(), float64(t), freeze, volume))
	} else if t != 0 {
		return Mixture{}, fmt.Errorf("water that freezes at %g °C: %w", float64(t), ErrRange)
	}
	if !(m.Strength >= 0 && m.Strength <= g.freeze) {
		return Mixture{}, fmt.Errorf("%s that freezes at %g °C: %w", base, float64(t), ErrRange)
	}
	return m, nil
}
