package kit

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/cases"
	"loopbook/diagram/units"
)

// Form is a set of bound fields of a case: each shows its part of the case,
// and changes it when it is left.
type Form struct {
	edit    func(what string, change func(*cases.Case))
	units   units.Set
	id      string // of the case that is shown
	bound   []func(cases.Case)
	texts   []*Field
	retitle []func()
}

// NewForm makes a form; edit changes the case.
func NewForm(edit func(string, func(*cases.Case))) *Form {
	return &Form{edit: edit, units: units.Metric()}
}

// Show puts a case into every field.
func (f *Form) Show(c cases.Case, u units.Set) {
	f.units = u
	if f.id != c.ID {
		f.id = c.ID
		for _, t := range f.texts {
			t.Forget()
		}
	}
	for _, retitle := range f.retitle {
		retitle()
	}
	for _, show := range f.bound {
		show(c)
	}
}

// Leave keeps what is being typed.
func (f *Form) Leave() {
	for _, t := range f.texts {
		t.Leave()
	}
}

// Text binds a line of text.
func (f *Form) Text(label, hint string, at func(*cases.Case) *string) fyne.CanvasObject {
	return f.words(label, NewField(hint, nil), at)
}

func (f *Form) words(label string, field *Field, at func(*cases.Case) *string) fyne.CanvasObject {
	field.onLeft = func(text string) {
		f.edit(label, func(c *cases.Case) { *at(c) = text })
	}
	f.bind(field, func(c cases.Case) { field.Put(*at(&c)) })
	return Labelled(label, field)
}

// First is the form's first field.
func (f *Form) First() fyne.Focusable { return f.texts[0] }

// Last is the form's last field.
func (f *Form) Last() fyne.Focusable { return f.texts[len(f.texts)-1] }

// Chain lets Enter go from each field to the next one, past what is chosen
// between them, which would swallow what is typed; from the last one it goes to
// what then names, or where Tab would go.
func (f *Form) Chain(then func() fyne.Focusable) {
	for i, t := range f.texts {
		t.After = then
		if i+1 < len(f.texts) {
			next := f.texts[i+1]
			t.After = func() fyne.Focusable { return next }
		}
	}
}

// Area binds a text of several lines.
func (f *Form) Area(label, hint string, rows int, at func(*cases.Case) *string) fyne.CanvasObject {
	return f.words(label, NewArea(hint, rows, nil), at)
}

// Quantity binds a number with a unit: title may depend on the units, read
// gives "" where it isn't known, and write tells what can't be.
func (f *Form) Quantity(title func(units.Set) string, read func(*cases.Case, units.Set) string, write func(*cases.Case, string, units.Set) error) fyne.CanvasObject {
	var field *Field
	field = NewField("", func(text string) {
		var trial cases.Case
		err := write(&trial, text, f.units)
		field.Refuse(err)
		if err == nil {
			f.edit(title(f.units), func(c *cases.Case) { _ = write(c, text, f.units) })
		}
	})
	f.retitle = append(f.retitle, func() { field.Title(title(f.units)) })
	f.bind(field, func(c cases.Case) { field.Put(read(&c, f.units)) })
	return Labelled(title(f.units), field)
}

func (f *Form) bind(field *Field, show func(cases.Case)) {
	f.texts = append(f.texts, field)
	f.bound = append(f.bound, show)
}

// Bound binds anything else that shows a part of a case.
func (f *Form) Bound(show func(cases.Case)) { f.bound = append(f.bound, show) }

// Pick binds a word of the format.
func Pick[T ~string](f *Form, label string, words []T, name func(T) string, at func(*cases.Case) *T) fyne.CanvasObject {
	choice := NewChoice(words, name, func(w T) {
		f.edit(label, func(c *cases.Case) { *at(c) = w })
	})
	f.Bound(func(c cases.Case) { choice.Put(*at(&c)) })
	return Labelled(label, choice.Select)
}

// Ticks binds a list of words as ticks in columns.
func Ticks[T ~string](f *Form, label string, words []T, name func(T) string, at func(*cases.Case) *[]T) fyne.CanvasObject {
	grid := container.NewGridWithColumns(2)
	boxes := make([]*Check, len(words))
	quiet := false
	for i, w := range words {
		boxes[i] = NewCheck(name(w), func(on bool) {
			if !quiet {
				f.edit(label, func(c *cases.Case) { *at(c) = Ticked(*at(c), w, on) })
			}
		})
		grid.Add(boxes[i])
	}
	f.Bound(func(c cases.Case) {
		quiet = true
		defer func() { quiet = false }()
		for i, w := range words {
			boxes[i].SetChecked(slices.Contains(*at(&c), w))
		}
	})
	return grid
}

// Ticked is the list with a word put in or taken out.
func Ticked[T comparable](list []T, w T, on bool) []T {
	out := slices.DeleteFunc(append([]T{}, list...), func(x T) bool { return x == w })
	if on {
		out = append(out, w)
	}
	return out
}

// Section is a titled part of a form.
func Section(title string, rows ...fyne.CanvasObject) fyne.CanvasObject {
	return container.NewVBox(append([]fyne.CanvasObject{Heading(title)}, rows...)...)
}
