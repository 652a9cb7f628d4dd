package checks

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
	"loopbook/diagram"
)

// A check without any value is none: neither one whose entry was refused and taken out again,
// nor one whose only value was.
func TestAnEmptiedCheckIsNotBegun(t *testing.T) {
	d := screen(t)
	first := fields(d.v.sheet.content)[0]
	for _, text := range []string{"x", "", "100", ""} {
		first.SetText(text)
		first.Leave()
		if n, want := len(d.c.Tests), map[bool]int{true: 1}[text == "100"]; n != want {
			t.Errorf("after %q the case has %d checks, want %d", text, n, want)
		}
	}
	stage := selects(d.v.sheet.content)
	stage[len(stage)-1].SetSelectedIndex(2)
	if len(d.c.Tests) != 1 || d.c.Tests[0].Stage != cases.AfterRepair {
		t.Errorf("a chosen stage left %+v", d.c.Tests)
	}
}

// What is typed on after the only value of one of two checks was taken out makes a new one.
func TestAnEmptiedCheckDoesNotTurnToAnother(t *testing.T) {
	d := screen(t)
	a, b := diagram.KPa(100), diagram.KPa(90)
	d.c.Tests = []cases.Test{{Kind: "pressure-hold", StartKPa: &a}, {Kind: "pressure-hold", StartKPa: &b}}
	d.show()
	d.v.turn(0)
	f := fields(d.v.sheet.content)
	f[0].SetText("")
	f[0].Leave()
	f[1].SetText("80")
	f[1].Leave()
	if n := len(d.c.Tests); n != 2 || d.c.Tests[0].EndKPa != nil || d.c.Tests[1].EndKPa == nil || *d.c.Tests[1].EndKPa != 80 {
		t.Errorf("%d checks: %+v", n, d.c.Tests)
	}
}

// Every row keeps its mark in sight, whatever is turned to.
func TestMarksOfTheListStayInSight(t *testing.T) {
	d := screen(t)
	v := diagram.KPa(100)
	d.c.Tests = []cases.Test{{Kind: "pressure-hold", StartKPa: &v, EndKPa: &v}, {Kind: "cap", OpensKPa: &v}, {Kind: "level", State: "low"}}
	marks := func(when string) {
		t.Helper()
		seen := 0
		for _, o := range test.LaidOutObjects(d.window.Content()) {
			if r, ok := o.(*kindRow); ok && r.worst != "" {
				seen++
				if len(r.sign.Objects) != 1 || r.sign.Objects[0].Size().Width < 18 || !r.sign.Objects[0].Visible() {
					t.Errorf("%s the mark of %q isn't seen", when, r.title.Text)
				}
			}
		}
		if seen != 3 {
			t.Errorf("%s %d rows have a mark, want 3", when, seen)
		}
	}
	d.show()
	marks("at first")
	d.v.Again()
	marks("after Again")
	d.window.Content().Hide()
	d.v.Begin("cap")
	d.window.Content().Show()
	d.window.Resize(fyne.NewSize(1040, 700))
	marks("after Begin")
}

// A cap's mark that nothing would be judged by isn't kept: it says so as it is typed, and what to write.
func TestACapsMarkIsHeldToWhatIsBelieved(t *testing.T) {
	d := screen(t)
	d.v.Begin("cap")
	f := fields(d.v.sheet.content)
	for _, text := range []string{"300", "1.1"} {
		f[0].SetText(text)
		f[0].Leave()
		if told := kittest.Texts(d.v.sheet.content); len(d.c.Tests) > 0 || !strings.Contains(told, "write 20 to 250") {
			t.Errorf("%q is kept as %+v, and told: %s", text, d.c.Tests, told)
		}
	}
	f[0].SetText("1.5 bar")
	f[0].Leave()
	if len(d.c.Tests) != 1 || d.c.Tests[0].RatedKPa == nil || *d.c.Tests[0].RatedKPa != 150 {
		t.Errorf("1.5 bar is kept as %+v", d.c.Tests)
	}
}
