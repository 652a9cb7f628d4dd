// Package kit holds the widgets that the screens share: the theme, the widget
// that paints a drawing, fields that tell when they are left, and cards.
package kit

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"loopbook/diagram/drawing"
)

// Light is how bright the screen is to be.
type Light string

// The choices of light. System follows the desktop's own.
const (
	System Light = "system"
	Bright Light = "light"
	Dim    Light = "dark"
)

// Theme is Loopbook's look on Fyne's default.
type Theme struct {
	fyne.Theme
	light Light
	typed float32 // the size of text while a number of the hose map is laid out, else 0
}

// NewTheme makes the look for a choice of light.
func NewTheme(l Light) *Theme { return &Theme{Theme: theme.DefaultTheme(), light: l} }

func (t *Theme) palette(v fyne.ThemeVariant) drawing.Palette {
	if t.light == Dim || (t.light == System && v == theme.VariantDark) {
		return drawing.Dark()
	}
	return drawing.Light()
}

// CurrentPalette is the palette of the app's theme.
func CurrentPalette() drawing.Palette {
	if t, ok := theme.Current().(*Theme); ok {
		return t.palette(fyne.CurrentApp().Settings().ThemeVariant())
	}
	return drawing.Light()
}

var roles = map[fyne.ThemeColorName]drawing.Role{
	theme.ColorNameBackground:          drawing.Paper,
	theme.ColorNamePrimary:             drawing.Accent,
	theme.ColorNameForegroundOnPrimary: drawing.OnAccent,
	theme.ColorNameHyperlink:           drawing.Accent,
	theme.ColorNameInputBackground:     drawing.Card,
	theme.ColorNameInputBorder:         drawing.Edge,
	theme.ColorNamePlaceHolder:         drawing.Soft,
	theme.ColorNameSeparator:           drawing.Rule,
	theme.ColorNameButton:              drawing.PartFill,
	theme.ColorNameMenuBackground:      drawing.Card,
	theme.ColorNameOverlayBackground:   drawing.Card,
	theme.ColorNameHeaderBackground:    drawing.Rail,
	theme.ColorNameSelection:           drawing.Chosen,
	theme.ColorNameError:               drawing.ActText,
	theme.ColorNameWarning:             drawing.LookText,
	theme.ColorNameSuccess:             drawing.FineText,
	theme.ColorNameDisabled:            drawing.Soft,
	theme.ColorNameScrollBar:           drawing.Edge,
}

// Color gives the palette's colour for Fyne's names.
func (t *Theme) Color(n fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	p := t.palette(v)
	if n == theme.ColorNameHover {
		return veil(p[drawing.Text])
	}
	if n == theme.ColorNameForeground {
		return ink(p[drawing.Text])
	}
	if role, ok := roles[n]; ok {
		return p[role]
	}
	variant := theme.VariantLight
	if p[drawing.Paper].R < 0x80 {
		variant = theme.VariantDark
	}
	return t.Theme.Color(n, variant)
}

// ink is the colour of words. A menu's keys are drawn in it at 0.95 of its alpha,
// of which the toolkit takes the low byte: from an alpha of all ones that is a
// fifth, which nobody can read; from one that is a thousandth less it is nearly all.
type ink color.NRGBA

// RGBA gives the colour as opaque as eight bits can tell.
func (i ink) RGBA() (r, g, b, a uint32) {
	r, g, b, _ = color.NRGBA(i).RGBA()
	return r, g, b, 0xffc9
}

// veil is what the toolkit lays over whatever the pointer is on: thin, since a
// button's words are to be read through it on every ground.
func veil(ink color.NRGBA) color.Color {
	ink.A = 0x20
	return ink
}

// Size gives the sizes of the drawing language.
func (t *Theme) Size(n fyne.ThemeSizeName) float32 {
	switch n {
	case theme.SizeNameText:
		if t.typed > 0 {
			return t.typed
		}
		return 14
	case theme.SizeNameCaptionText:
		return 13
	case theme.SizeNameHeadingText:
		return 20
	case theme.SizeNameSubHeadingText:
		return 16
	case theme.SizeNameInnerPadding:
		return 7
	case theme.SizeNamePadding:
		return 4
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 6
	}
	return t.Theme.Size(n)
}

// typedAs lets do find another size of text; 0 is the usual one. A toolkit's entry asks its theme how big its text is,
// and nobody else.
func typedAs(size float32, do func()) {
	t, ok := theme.Current().(*Theme)
	if !ok {
		do()
		return
	}
	before := t.typed
	defer func() { t.typed = before }()
	t.typed = size
	do()
}
