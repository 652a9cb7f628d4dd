package complaint

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/cases/evidence"
	"loopbook/diagram/units"
)

var errYear = errors.New("write 1885 to 2100")

// codes lists the trouble codes with what they mean, and a field for the next.
type codes struct {
	edit    func(what string, change func(*cases.Case))
	meaning func(code string) string
	units   units.Set
	list    *fyne.Container
	rows    []*codeRow
	next    *kit.Field
	content fyne.CanvasObject
}

func newCodes(edit func(string, func(*cases.Case)), meaning func(string) string) *codes {
	c := &codes{edit: edit, meaning: meaning, units: units.Metric(), list: container.NewVBox()}
	c.next = kit.NewField(kit.L("window.complaint.code-hint"), c.add)
	c.next.Stay = true // for the next code
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
	c.edit(kit.L("window.complaint.codes-edit"), func(k *cases.Case) {
		for _, code := range typed {
			k.Codes = append(k.Codes, cases.Code{Code: evidence.InLetters(code), State: cases.CodeStates()[0]})
		}
	})
}

// show keeps the rows while the number of codes stays, so that the caret does.
func (c *codes) show(k cases.Case, u units.Set) {
	c.units = u
	if len(c.rows) != len(k.Codes) {
		c.list.RemoveAll()
		c.rows = c.rows[:0]
		for i := range k.Codes {
			row := newCodeRow(c, i)
			c.rows = append(c.rows, row)
			c.list.Add(row.content)
		}
	}
	for i, row := range c.rows {
		row.show(k.Codes[i], c.meaning(k.Codes[i].Code))
	}
}

func (c *codes) leave() {
	c.next.Leave()
	for _, row := range c.rows {
		for _, f := range row.frame {
			f.Leave()
		}
	}
}
