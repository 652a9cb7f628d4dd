package drawing

import (
	"image/color"
	"math"

	"loopbook/diagram"
)

// ScaleLowC and ScaleHighC bound the colours of hoses.
const (
	ScaleLowC  diagram.Celsius = 20
	ScaleHighC diagram.Celsius = 120
)

// cividis is a perceptually even scale that people with and without colour
// vision deficiency see almost alike: Nuñez, Anderton, Renslow (2018), PLoS
// ONE 13(7): e0199239. Ten equally spaced colours of it, from memory; between
// them the course is straight to within what the eye can tell.
var cividis = [...]uint32{
	0x00204D, 0x00336F, 0x39486B, 0x575C6D, 0x707173,
	0x8A8779, 0xA69D75, 0xC4B56C, 0xE4CF5B, 0xFFEA46,
}

// Heat is the ink of a temperature. The colour never stands without its
// number: the number is what counts.
func Heat(c diagram.Celsius) Ink {
	place := float64((c-ScaleLowC)/(ScaleHighC-ScaleLowC)) * float64(len(cividis)-1)
	place = min(max(place, 0), float64(len(cividis)-1))
	i := min(int(place), len(cividis)-2)
	return Ink{Fixed: mix(rgb(cividis[i]), rgb(cividis[i+1]), place-float64(i))}
}

func mix(a, b color.NRGBA, share float64) color.NRGBA {
	part := func(x, y uint8) uint8 { return uint8(math.Round(float64(x) + (float64(y)-float64(x))*share)) }
	return color.NRGBA{R: part(a.R, b.R), G: part(a.G, b.G), B: part(a.B, b.B), A: 0xFF}
}

// Over is black or white, whichever stands out more from an ink under it: the
// higher contrast by WCAG 2.1 relative luminance.
func Over(i Ink) Ink {
	if i.Role != "" {
		return In(Text)
	}
	if luminance(i.Fixed) > 0.179 { // where the contrasts to black and white are equal
		return Ink{Fixed: rgb(0x101010)}
	}
	return Ink{Fixed: rgb(0xFFFFFF)}
}

func luminance(c color.NRGBA) float64 {
	lin := func(v uint8) float64 {
		s := float64(v) / 255
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}
