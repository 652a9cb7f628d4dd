package checks

import (
	"loopbook/diagram"
	"loopbook/diagram/drawing"
)

func kPa(v diagram.KPa) *diagram.KPa { return &v }

func shapeName(s drawing.Shape) string {
	switch s.(type) {
	case drawing.Wedge:
		return "wedge"
	case drawing.Label:
		return "label"
	}
	return ""
}
