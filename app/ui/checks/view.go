// Package checks is the screen of the workshop checks: which there are, which
// are done and how they came out, and a form for each with what to do first,
// its caution, its limits, and what a pass doesn't prove.
package checks

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram/units"
)

// Info is what is known of a kind of check, ready to be read.
type Info struct {
	Title     string
	Minutes   string
	Needs     string // of the engine; "": anything
	Text      string // how it is done
	Caution   string
	Accepts   string // by which limits, and from where they are
	NotProven string // by a pass
}

// Result is how a check came out, ready to be read.
type Result struct {
	Says     string // the outcome; "" is not judged yet
	Severity string // "act", "look", "note", or "" where all is well
	Told     []Told
	Sums     [][2]string // what a number is, and the number
}

// Told is one finding with its reasons.
type Told struct {
	Text    string
	Because []string
}

// Found is what is to be minded before the engine runs for a check.
type Found struct {
	Hot bool // it was so hot that it had to be switched off
	Low bool // its coolant was low
}

// Words are what the screen asks for.
type Words struct {
	// Info is of a kind of check, on a car with that fan.
	Info   func(kind cases.TestKind, fan cases.FanKind, found Found, u units.Set) Info
	Result func(*cases.Case, *cases.Test, units.Set) Result
	// TopUp tells how much to drain and to fill for a wanted strength, with
	// coolant of another one, in percent.
	TopUp func(c *cases.Case, t *cases.Test, want, with float64, u units.Set) string
	Stage func(*cases.Case, cases.TestKind) cases.Stage // of a check that is begun now
	Save  kit.Saver                                     // of charts
}

// View is the screen.
type View struct {
	edit func(what string, change func(*cases.Case))
	say  Words

	c       cases.Case
	units   units.Set
	found   Found
	kind    cases.TestKind
	nth     int // of the tests of this kind
	list    *kindList
	sheet   *sheet
	right   *fyne.Container
	content fyne.CanvasObject
}

// New makes the screen; edit changes the case.
func New(edit func(string, func(*cases.Case)), say Words) *View {
	v := &View{edit: edit, say: say, units: units.Metric(), kind: cases.Words[cases.TestKind]()[0], right: container.NewStack()}
	v.list = newKindList(v)
	v.content = container.New(beside{256}, container.New(layout.NewCustomPaddedLayout(listOver, 0, 0, 0), v.list), v.right)
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// Focus is the list of checks.
func (v *View) Focus() fyne.Focusable { return v.list }

// Show paints a case with what was found of its engine. Call it on the Fyne goroutine.
func (v *View) Show(c cases.Case, found Found, u units.Set) {
	other := c.ID != v.c.ID
	v.c, v.found, v.units = c, found, u
	if other {
		v.nth = max(len(v.tests(v.kind))-1, 0)
	}
	v.nth = min(v.nth, len(v.tests(v.kind)))
	if other || v.sheet == nil || v.sheet.kind != v.kind || v.sheet.nth != v.nth || v.sheet.units != u || v.sheet.fan != c.Loop.Fan {
		v.exchange()
	}
	v.list.show()
	v.sheet.show()
}

// exchange puts another form in place of the one there is, and takes the caret out of that.
func (v *View) exchange() {
	before := v.right.Objects
	v.sheet = newSheet(v)
	v.right.Objects = []fyne.CanvasObject{v.sheet.content}
	v.right.Refresh()
	for _, gone := range before {
		kit.Hand(gone, v.list)
	}
}

// Leave keeps what is being typed.
func (v *View) Leave() {
	if v.sheet != nil {
		v.sheet.leave()
	}
}

// tests are the places of a kind's checks in the case.
func (v *View) tests(kind cases.TestKind) []int {
	var at []int
	for i, t := range v.c.Tests {
		if t.Kind == kind {
			at = append(at, i)
		}
	}
	return at
}

// place is where the shown check stands in the case, or will.
func (v *View) place() int {
	if at := v.tests(v.kind); v.nth < len(at) {
		return at[v.nth]
	}
	return len(v.c.Tests)
}

// choose turns to a kind, at its last check.
func (v *View) choose(kind cases.TestKind) {
	v.Leave()
	v.kind, v.nth = kind, max(len(v.tests(kind))-1, 0)
	v.Show(v.c, v.found, v.units)
}

// turn shows another check of the kind; one past the last is a new one.
func (v *View) turn(nth int) {
	v.Leave()
	v.nth = nth
	v.Show(v.c, v.found, v.units)
}

// Again begins another check of the shown kind.
func (v *View) Again() {
	v.turn(len(v.tests(v.kind)))
	v.FocusForm()
}

// Begin turns to a kind's form, a check begun or an empty one, and answers its first field.
func (v *View) Begin(kind cases.TestKind) fyne.Focusable {
	v.choose(kind)
	return v.sheet.first
}

// Delete takes the shown check out of the case. What is being typed of it is kept first: undoing brings both back.
func (v *View) Delete() {
	v.Leave()
	at := v.place()
	if at >= len(v.c.Tests) {
		return
	}
	v.sheet = nil // what was refused there goes with it
	v.nth = max(v.nth-1, 0)
	v.edit(kit.L("window.checks.deleted", v.kind.Name()), func(c *cases.Case) { c.Tests = slices.Delete(c.Tests, at, at+1) })
	kit.Focus(v.list)
}

// FocusForm puts the caret into the form.
func (v *View) FocusForm() { kit.Focus(v.sheet.first) }

// info is what is known of a kind of check, for the engine of the case.
func (v *View) info(kind cases.TestKind) Info {
	return v.say.Info(kind, v.c.Loop.Fan, v.found, v.units)
}

// result is how one check came out.
func (v *View) result(at int) Result {
	if at >= len(v.c.Tests) {
		return Result{}
	}
	return v.say.Result(&v.c, &v.c.Tests[at], v.units)
}

// listOver lets the list's first words begin where the form's title does.
const listOver = 10

// beside gives the left its width and the rest to the right. The left comes
// first on the way of the Tab key.
type beside struct{ left float32 }

// MinSize is that of both.
func (b beside) MinSize(o []fyne.CanvasObject) fyne.Size {
	l, r := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(b.left+r.Width, max(l.Height, r.Height))
}

// Layout puts both beside each other.
func (b beside) Layout(o []fyne.CanvasObject, room fyne.Size) {
	o[0].Move(fyne.Position{})
	o[0].Resize(fyne.NewSize(b.left, room.Height))
	o[1].Move(fyne.NewPos(b.left, 0))
	o[1].Resize(fyne.NewSize(room.Width-b.left, room.Height))
}

// severity of a kit.Card for an outcome.
func severity(r Result) string {
	if r.Severity == "" {
		return "fine"
	}
	return r.Severity
}

// headline is the outcome in a few words.
func headline(r Result) string {
	switch {
	case r.Says != "":
		return kit.Capital(r.Says)
	case len(r.Told) > 0:
		return kit.L("window.checks.look")
	}
	return kit.L("window.checks.not-enough")
}
