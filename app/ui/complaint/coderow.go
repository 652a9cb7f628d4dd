package complaint

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// codeRow is one code: its state, its freeze frame, and what it means.
type codeRow struct {
	codes   *codes
	at      int    // in the case
	code    string // that is shown
	name    *widget.Label
	state   *kit.Select
	frame   []*kit.Field // temperature, engine speed, road speed
	told    string       // the words in meaning
	meaning *fyne.Container
	content fyne.CanvasObject
}

func newCodeRow(c *codes) *codeRow {
	r := &codeRow{codes: c, name: widget.NewLabel(""), meaning: container.NewStack()}
	r.name.TextStyle.Bold = true
	r.state = kit.NewSelect(cases.CodeStates(), nil)
	remove := kit.NewRemove(func() {
		c.edit(kit.L("window.complaint.code-removed"), func(k *cases.Case) { k.Codes = slices.Delete(k.Codes, r.at, r.at+1) })
	})
	r.frame = []*kit.Field{
		kit.NewField("", func(text string) { r.keep(0, text) }),
		kit.NewField("", func(text string) { r.keep(1, text) }),
		kit.NewField("", func(text string) { r.keep(2, text) }),
	}
	frame := container.New(kit.Shares{1, 1, 1})
	for i, title := range []string{"", kit.L("window.complaint.rpm"), ""} { // the units' come as they are shown
		frame.Add(kit.Labelled(title, r.frame[i]))
	}
	below := func(o fyne.CanvasObject) fyne.CanvasObject { return container.NewVBox(layout.NewSpacer(), o) }
	left, right := below(container.NewHBox(r.name, r.state)), below(remove)
	line := container.New(layout.NewBorderLayout(nil, nil, left, right), left, frame, right) // in the order that Tab goes
	r.content = container.NewVBox(kit.Explained(line), r.meaning)
	return r
}

func (r *codeRow) show(code cases.Code) {
	u := r.codes.units
	r.code = code.Code
	r.state.OnChanged = nil
	r.state.SetSelected(code.State)
	r.state.OnChanged = func(s string) {
		r.codes.edit(kit.L("window.complaint.code-state", code.Code), func(k *cases.Case) { k.Codes[r.at].State = s })
	}
	r.frame[0].Title(kit.L("window.complaint.at", string(u.Temperature)))
	r.frame[2].Title(u.SpeedUnit())
	f := code.FreezeFrame
	r.frame[0].Put(kit.Written(f.EctC, u.Temp))
	r.frame[1].Put(kit.Written(f.RPM, whole))
	r.frame[2].Put(kit.Written(f.SpeedKmh, u.Dist))
	r.tell(code.Code)
}

// tell says what the code means. What has the form of no code is kept as it was
// typed, and marked. The words stand while they are the same, with the lines they have.
func (r *codeRow) tell(code string) {
	words := r.codes.words
	told := words.Code(code)
	if r.told == told && r.name.Text == code {
		return
	}
	r.told = told
	r.name.Importance = widget.MediumImportance
	r.meaning.Objects = []fyne.CanvasObject{kit.Aside(told)}
	if !words.IsCode(code) {
		r.name.Importance = widget.WarningImportance
		r.meaning.Objects[0] = kit.Warning(words.Code(code))
	}
	r.name.SetText(code)
	r.meaning.Refresh()
}

// keep reads a field of the freeze frame into the case, or marks it.
func (r *codeRow) keep(field int, text string) {
	read := func(f *cases.FreezeFrame) error {
		switch field {
		case 0:
			return kit.Set(&f.EctC, text, kit.ParseCoolant(r.codes.units))
		case 1:
			return kit.Set(&f.RPM, text, kit.ParseRPM)
		}
		return kit.Set(&f.SpeedKmh, text, kit.ParseSpeed(r.codes.units))
	}
	err := read(&cases.FreezeFrame{})
	r.frame[field].Refuse(err)
	if err == nil {
		r.codes.edit(kit.L("window.complaint.freeze-frame"), func(k *cases.Case) { _ = read(&k.Codes[r.at].FreezeFrame) })
	}
}

func whole(v float64) string { return strconv.FormatFloat(v, 'f', 0, 64) }
