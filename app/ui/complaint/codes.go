package complaint

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

var errYear = errors.New("write the year in four figures")

// codes lists the trouble codes with what they mean, and a field for the next.
type codes struct {
	edit    func(what string, change func(*cases.Case))
	meaning func(code string) string
	list    *fyne.Container
	next    *kit.Field
	fields  []*kit.Field // of the freeze frames
	content fyne.CanvasObject
}

func newCodes(edit func(string, func(*cases.Case)), meaning func(string) string) *codes {
	c := &codes{edit: edit, meaning: meaning, list: container.NewVBox()}
	c.next = kit.NewField("type a code, as P0128", c.add)
	c.content = container.NewVBox(c.list, c.next)
	return c
}

// add keeps every code that was typed, whatever stands between them.
func (c *codes) add(text string) {
	typed := strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return strings.ContainsRune(" ,;", r) })
	c.next.Put("")
	if len(typed) == 0 {
		return
	}
	c.edit("codes", func(k *cases.Case) {
		for _, code := range typed {
			k.Codes = append(k.Codes, cases.Code{Code: code, State: "stored"})
		}
	})
}

func (c *codes) show(k cases.Case, u units.Set) {
	c.list.RemoveAll()
	c.fields = c.fields[:0]
	for i, code := range k.Codes {
		state := widget.NewSelect([]string{"stored", "pending", "permanent"}, nil)
		state.Selected = code.State
		state.OnChanged = func(s string) {
			c.edit("state of "+code.Code, func(k *cases.Case) { k.Codes[i].State = s })
		}
		remove := widget.NewButtonWithIcon("", theme.DeleteIcon(), func() {
			c.edit("code removed", func(k *cases.Case) { k.Codes = slices.Delete(k.Codes, i, i+1) })
		})
		remove.Importance = widget.LowImportance
		name := widget.NewLabel(code.Code)
		name.TextStyle.Bold = true
		c.list.Add(container.NewBorder(nil, nil, container.NewHBox(name, state), remove,
			container.New(kit.Shares{1, 1, 1}, c.frame(i, code.FreezeFrame, u)...)))
		c.list.Add(kit.Paragraphs(kit.Span{Text: c.meaning(code.Code), Small: true, Color: theme.ColorNamePlaceHolder}))
	}
}

// frame is the freeze frame: the engine's state when the code was set.
func (c *codes) frame(i int, at cases.FreezeFrame, u units.Set) []fyne.CanvasObject {
	return []fyne.CanvasObject{
		frameField(c, i, "at "+string(u.Temperature), at.EctC, u.Temp, u.ParseTemp, func(f *cases.FreezeFrame) **diagram.Celsius { return &f.EctC }),
		frameField(c, i, "rpm", at.RPM, whole, units.Number, func(f *cases.FreezeFrame) **float64 { return &f.RPM }),
		frameField(c, i, u.SpeedUnit(), at.SpeedKmh, u.Dist, u.ParseDist, func(f *cases.FreezeFrame) **float64 { return &f.SpeedKmh }),
	}
}

func frameField[T any](c *codes, i int, hint string, value *T, write func(T) string, parse func(string) (T, error), at func(*cases.FreezeFrame) **T) fyne.CanvasObject {
	f := kit.NewField(hint, nil)
	if value != nil {
		f.Put(write(*value))
	}
	f.OnLeft(func(text string) {
		var v *T
		if text != "" {
			parsed, err := parse(text)
			f.SetValidationError(err)
			if err != nil {
				return
			}
			v = &parsed
		}
		c.edit("freeze frame", func(k *cases.Case) { *at(&k.Codes[i].FreezeFrame) = v })
	})
	c.fields = append(c.fields, f)
	return f
}

func whole(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }

func (c *codes) leave() {
	c.next.Leave()
	for _, f := range c.fields {
		f.Leave()
	}
}
