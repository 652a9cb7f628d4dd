package evidence

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// bleedCold: a bleed line carries coolant to its bottle as long as the engine is hot. One that stays as cold as the air
// outside is blocked, or ends above the level (common practice).
func (m *moment) bleedCold() []Flag {
	line, ok := m.at(diagram.BottleBleed)
	if !ok || !m.isHot() || !m.asCold(line) || m.shut != nil {
		return nil
	}
	return []Flag{m.flag("bleed-line-cold", Look, []diagram.Point{diagram.BottleBleed}, say.Of("flag.bleed-line-cold"),
		m.engineText(), readingText(line), m.outsideText(UsualAmbientC), say.Of("because.bleed-line-cold"))}
}
