package checks

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

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

// texts gathers what a container says.
func texts(o fyne.CanvasObject) string {
	switch o := o.(type) {
	case *widget.Label:
		return o.Text
	case *widget.RichText:
		return o.String()
	case *fyne.Container:
		var out []string
		for _, child := range o.Objects {
			if child.Visible() {
				out = append(out, texts(child))
			}
		}
		return strings.Join(out, "\n")
	}
	return ""
}
