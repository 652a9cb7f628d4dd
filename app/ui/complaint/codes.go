package complaint

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

var errYear = errors.New("write 1885 to 2100")

// codes lists the trouble codes with what they mean, and a field for the next.
type codes struct {
	edit    func(what string, change func(*cases.Case))
	words   Words
	units   units.Set
	id      string // of the case that is shown
	all     []cases.Code
	grown   func() // lays out what holds the rows
	list    *fyne.Container
	rows    []*codeRow
	next    *kit.Field
	content fyne.CanvasObject
}

func newCodes(edit func(string, func(*cases.Case)), words Words) *codes {
	c := &codes{edit: edit, words: words, units: units.Metric(), list: container.NewVBox()}
	c.next = kit.NewField(kit.L("window.complaint.code-hint"), c.add)
	c.next.Stay = true // for the next code
	c.content = container.NewVBox(c.list, c.next)
	return c
}

// add keeps every code that was typed, whatever stands between them. One that stands there already isn't typed twice,
// unless that is in another state.
func (c *codes) add(text string) {
	typed, more := c.next.Typed(), c.fresh(text)
	c.next.Put("")
	if len(more) == 0 {
		return
	}
	c.edit(kit.L("window.complaint.codes-edit"), func(k *cases.Case) { k.Codes = append(k.Codes, more...) })
	if typed { // the next one is too, and the rows pushed its field down
		c.grown()
		kit.InSight(c.next)
	}
}

// fresh are the codes in a text that the case doesn't have.
func (c *codes) fresh(text string) (more []cases.Code) {
	has := func(all []cases.Code, one cases.Code) bool {
		return slices.ContainsFunc(all, func(k cases.Code) bool { return k.Code == one.Code && k.State == one.State })
	}
	for _, word := range strings.FieldsFunc(strings.ToUpper(text), func(r rune) bool { return strings.ContainsRune(" ,;", r) }) {
		if one := (cases.Code{Code: c.read(word), State: cases.CodeStates()[0]}); !has(c.all, one) && !has(more, one) {
			more = append(more, one)
		}
	}
	return more
}

// read takes a letter O for the nought that was meant: no code has one.
func (c *codes) read(typed string) string {
	if with := cases.InLetters(strings.ReplaceAll(typed, "O", "0")); c.words.IsCode(with) {
		return with
	}
	return cases.InLetters(typed)
}

// show keeps the rows of the codes that stay, with the caret and what was refused in them.
func (c *codes) show(k cases.Case, u units.Set) {
	c.units, c.all = u, k.Codes
	if c.id != k.ID {
		c.id, c.rows = k.ID, nil
		c.list.RemoveAll() // no code is no row too
	}
	before := c.rows
	c.rows = c.rowsFor(k.Codes)
	if !slices.Equal(before, c.rows) {
		c.list.RemoveAll()
		for _, row := range c.rows {
			c.list.Add(row.content)
		}
	}
	for i, row := range c.rows {
		row.show(k.Codes[i])
	}
}

// rowsFor are the rows of codes, those that are there where they fit: a code in the same state goes before one whose state
// was changed.
func (c *codes) rowsFor(list []cases.Code) []*codeRow {
	out, left := make([]*codeRow, len(list)), slices.Clone(c.rows)
	for _, fits := range []func(*codeRow, cases.Code) bool{
		func(r *codeRow, k cases.Code) bool { return r.code == k.Code && r.state.Selected == k.State },
		func(r *codeRow, k cases.Code) bool { return r.code == k.Code },
	} {
		for i, code := range list {
			at := slices.IndexFunc(left, func(r *codeRow) bool { return fits(r, code) })
			if out[i] == nil && at >= 0 {
				out[i] = left[at]
				left = slices.Delete(left, at, at+1)
			}
		}
	}
	for i, row := range out {
		if row == nil {
			out[i] = newCodeRow(c)
		}
		out[i].at = i
	}
	return out
}

func (c *codes) leave() {
	c.next.Leave()
	for _, row := range c.rows {
		for _, f := range row.frame {
			f.Leave()
		}
	}
}
