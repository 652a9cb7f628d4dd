package kit

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"
)

// refusals is the line below a group of fields that tells what they refused and
// why: over a narrow field there is no room for it.
type refusals struct {
	line   *widget.Label
	box    *fyne.Container
	fields []*Field
	why    map[*Field]error
}

// Explained hangs a line below fields that tells what they refused and why. There
// is none while nothing is refused.
func Explained(fields fyne.CanvasObject) fyne.CanvasObject {
	r := &refusals{line: widget.NewLabel(""), why: map[*Field]error{}}
	r.line.Importance, r.line.SizeName, r.line.Wrapping = widget.DangerImportance, theme.SizeNameCaptionText, fyne.TextWrapWord
	r.line.Hide()
	r.take(fields)
	r.box = container.New(Tight{}, fields, r.line)
	return r.box
}

// take makes the line that of every field in o.
func (r *refusals) take(o fyne.CanvasObject) {
	switch o := o.(type) {
	case *Field:
		o.below = r
		r.fields = append(r.fields, o)
	case *fyne.Container:
		for _, inner := range o.Objects {
			r.take(inner)
		}
	}
}

func (r *refusals) tell(f *Field, why error) {
	r.why[f] = why
	var told []string
	for _, at := range r.fields {
		if err := r.why[at]; err != nil {
			told = append(told, L("window.kit.refused", Capital(at.title), reason(err)))
		}
	}
	r.line.SetText(strings.Join(told, " · ")) // a line each would push much away
	r.line.Hidden = len(told) == 0
	r.box.Refresh()
}
