// Package kittest helps the screens' tests to see what a person would.
package kittest

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Texts gathers what a container says, a line each.
func Texts(o fyne.CanvasObject) string {
	switch o := o.(type) {
	case *widget.Label:
		return o.Text
	case fmt.Stringer: // prose
		return o.String()
	case *container.Scroll:
		return Texts(o.Content)
	case *fyne.Container:
		var out []string
		for _, child := range o.Objects {
			if child.Visible() {
				out = append(out, Texts(child))
			}
		}
		return strings.Join(out, "\n")
	}
	return ""
}
