// Package practice is the screen on which closed or simulated cases are practised: a
// trainee buys evidence for its minutes and names a cause; a trainer keeps classes.
package practice

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// View is the screen. It shows what it is given and tells what is asked for.
type View struct {
	OnOpenOne   func()            // practise on the open case
	OnSimulated func(Difficulty)  // on a simulated one
	OnClass     func(name string) // through a class
	OnBuy       func(item int)    // a piece of evidence
	OnAnswer    func(cases.Cause, float64)
	OnNext      func() // the class's next case
	OnStop      func() // back to the choice
	OnGiveUp    func() // the case, without an answer
	OnOpenCase  func() // look at the whole case
	OnHandIn    func() // the results of the class that is through

	OnTrainer func(on bool) // the trainer's half is opened or shut

	OnMake   func(name string)  // a class of the cases that the list shows
	OnForget func(name string)  // a class
	OnGive   func(name string)  // a class, to another notebook
	OnUnseal func(name string)  // what of a class came shut
	OnChoose func(name string)  // which class is looked at; "": all
	OnAdd    func()             // the open case to it
	OnMove   func(at, by int)   // a class's case: up, or out where by is 0
	OnRetire func(retired bool) // the open case
	OnExport func()             // the results

	OnTakeResults func() // that another notebook wrote

	start   *start
	session *session
	result  *result
	state   *widget.Label
	content fyne.CanvasObject
}

// New makes the screen; back leads to the case.
func New(back func()) *View {
	v := &View{state: kit.Caption("")}
	v.start, v.session, v.result = newStart(v), newSession(v), newResult(v)
	home := kit.NewQuiet(kit.L("window.practice.back"), theme.NavigateBackIcon(), back)
	title := widget.NewLabel(kit.L("window.practice.title"))
	title.SizeName, title.TextStyle.Bold = theme.SizeNameHeadingText, true
	top := container.NewBorder(nil, nil, title, container.NewHBox(container.NewCenter(v.state), home))
	v.content = kit.Framed(top, nil, nil, nil, container.NewStack(v.start.content, v.session.content, v.result.content))
	v.only(v.start.content)
	return v
}

// Content is the screen's widget.
func (v *View) Content() fyne.CanvasObject { return v.content }

// First is the name of who practises, while it is chosen on what; then the answer, from wherever among all the evidence one
// is, or from there the first evidence; and at last what leads on.
func (v *View) First() fyne.Focusable {
	switch {
	case v.start.content.Visible():
		return v.start.trainee
	case v.result.content.Visible():
		return v.result.onward
	}
	if c := fyne.CurrentApp().Driver().CanvasForObject(v.content); c != nil && c.Focused() != fyne.Focusable(v.session.cause.Select) {
		return v.session.cause.Select
	}
	return kit.First(v.session.items.content)
}

// Trainee is who practises.
func (v *View) Trainee() string { return strings.TrimSpace(v.start.trainee.Text) }

// Tell says what is being reckoned; empty: nothing.
func (v *View) Tell(text string) { v.state.SetText(text) }

// Judge says that the answer is being judged, and takes what can be bought out of use meanwhile.
func (v *View) Judge(on bool) {
	v.session.judge(on)
	v.Tell("")
	if on {
		v.Tell(kit.L("window.practice.judging"))
	}
}

// ShowStart shows the choice.
func (v *View) ShowStart(d Start) {
	v.start.show(d)
	v.only(v.start.content)
}

// Offer says of how many cases a trainer can make a class set: the list of cases shows others now.
func (v *View) Offer(found int) { v.start.offer(found) }

// Begin shows a session that begins, with the focus on the first evidence: what began it is out of sight, and the next
// key would lead out of the room.
func (v *View) Begin(d Session) {
	v.session.begin(d.Causes)
	v.ShowSession(d)
	kit.Focus(kit.First(v.session.items.content))
}

// ShowSession shows a session as it stands.
func (v *View) ShowSession(d Session) {
	v.session.show(d)
	v.only(v.session.content)
}

// ShowResult shows how it ended. Enter goes on from it.
func (v *View) ShowResult(d Result) {
	v.result.show(d)
	v.only(v.result.content)
	kit.Focus(v.result.onward)
}

func (v *View) only(one fyne.CanvasObject) {
	for _, o := range []fyne.CanvasObject{v.start.content, v.session.content, v.result.content} {
		kit.SetVisible(o == one, o)
	}
}
