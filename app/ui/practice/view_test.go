package practice

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/cases"
)

func buttons(o fyne.CanvasObject, out map[string]*kit.Button) map[string]*kit.Button {
	switch x := o.(type) {
	case *kit.Button:
		out[x.Text] = x
	case *container.Scroll:
		buttons(x.Content, out)
	case *fyne.Container:
		for _, child := range x.Objects {
			if child.Visible() {
				buttons(child, out)
			}
		}
	}
	return out
}

func screen(t *testing.T) *View {
	t.Helper()
	test.NewTempApp(t)
	v := New(func() {})
	w := test.NewTempWindow(t, v.Content())
	w.Resize(fyne.NewSize(1048, 760))
	return v
}

func TestEvidenceIsBoughtAndACauseNamed(t *testing.T) {
	v := screen(t)
	bought, named, sure := -1, cases.Cause(""), 0.0
	v.OnBuy = func(n int) { bought = n }
	v.OnAnswer = func(c cases.Cause, p float64) { named, sure = c, p }
	d := Session{Title: "The complaint", Causes: cases.Words[cases.Cause](), Complaint: []string{"Cold feet"}, Spent: "0 min", Groups: []Group{{Title: "warm idle", Items: []Item{
		{Number: 4, Name: "Upper hose", Cost: "1 min"}, {Number: 5, Name: "Lower hose", Says: "31 °C", Bought: true},
	}}}}
	v.Begin(d)
	all := buttons(v.Content(), map[string]*kit.Button{})
	if all["Lower hose · 1 min"] != nil || all["Upper hose · 1 min"] == nil {
		t.Fatalf("buttons %v", all)
	}
	if b, on := kit.First(v.session.items.content).(*kit.Button); !on || fyne.CurrentApp().Driver().CanvasForObject(b).Focused() != fyne.Focusable(b) || b.Text != "Upper hose · 1 min" {
		t.Errorf("a session begins with the focus on %v", fyne.CurrentApp().Driver().AllWindows()[0].Canvas().Focused())
	}
	test.Tap(all["Upper hose · 1 min"])
	if !all["That's it"].Disabled() {
		t.Error("an answer can be given before a cause is named")
	}
	v.session.cause.SetSelected(cases.Cause("cap-weak").Name())
	v.session.confidence.SetValue(80)
	test.Tap(all["That's it"])
	if bought != 4 || named != "cap-weak" || sure != 0.8 {
		t.Errorf("bought %d, named %s at %g", bought, named, sure)
	}
	v.session.buying.Offset.Y = 80
	v.Begin(d)
	if v.session.buying.Offset.Y != 0 {
		t.Error("the next case begins in the middle of its evidence")
	}
	if v.session.named != "" || v.session.confidence.Value != 50 {
		t.Error("the next case begins with the last one's answer")
	}
}

func TestTheResultIsExplained(t *testing.T) {
	v := screen(t)
	next := false
	v.OnNext = func() { next = true }
	v.ShowResult(Result{Head: "It was: a weak cap", Score: []string{"You said so."}, Lesson: "**Read** the hose", Next: "Next case (2 left)",
		Steps: []Step{{Name: "the complaint alone", Truth: 0.1, First: "10 %"}}})
	if text := kittest.Texts(v.Content()); text == "" {
		t.Error("the result says nothing")
	}
	test.Tap(buttons(v.Content(), map[string]*kit.Button{})["Next case (2 left)"])
	if !next {
		t.Error("the next case isn't asked for")
	}
}

// Enter goes on from a result: nothing had the focus, and a class of twelve took twelve ways to the mouse.
func TestEnterGoesOnFromAResult(t *testing.T) {
	v := screen(t)
	w := test.NewTempWindow(t, v.Content())
	went := ""
	v.OnStop, v.OnNext = func() { went = "done" }, func() { went = "next" }
	for next, want := range map[string]string{"": "done", "Next case (2 left)": "next"} {
		v.ShowResult(Result{Head: "It was: a weak cap", Next: next})
		on := w.Canvas().Focused()
		if on == nil {
			t.Fatal("nothing has the focus")
		}
		if on.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}); went != want {
			t.Errorf("Enter leads to %q, want %q", went, want)
		}
	}
}

func TestATrainerKeepsClasses(t *testing.T) {
	v := screen(t)
	var made, begun string
	v.OnMake = func(name string) { made = name }
	v.OnClass = func(name string) { begun = name }
	d := Start{Why: "No case is open.", Found: 3, Chosen: "Tuesday", Classes: []Class{{Name: "Tuesday", Cases: []string{"a", "b"}}},
		Results: []Row{{Trainee: "Liv", Cases: "2", Right: "1", Score: "-0.5", Minutes: "12 (8)"}}}
	v.OnTrainer = func(bool) { v.ShowStart(d) }
	v.ShowStart(d)
	all := buttons(v.Content(), map[string]*kit.Button{})
	if all["Make a set of 3"] != nil {
		t.Error("what is for the trainer is seen by who practises")
	}
	test.Tap(all["For the trainer: class sets and results…"])
	all = buttons(v.Content(), map[string]*kit.Button{})
	if !all["Practise on this case"].Disabled() {
		t.Error("no case is open, and it can be practised on")
	}
	test.Tap(all["Begin"])
	test.Tap(all["Make a set of 3"])
	if begun != "Tuesday" || made != "" {
		t.Errorf("begun %q, made %q without a name", begun, made)
	}
	for _, o := range test.LaidOutObjects(v.Content()) {
		if f, ok := o.(*kit.Field); ok && f.PlaceHolder == kit.L("window.practice.class-name") {
			f.SetText("  ")
		}
	}
	if test.Tap(all["Make a set of 3"]); made != "" {
		t.Errorf("a class is made that is called %q", made)
	}
	for _, o := range test.LaidOutObjects(v.Content()) {
		if f, ok := o.(*kit.Field); ok && f.PlaceHolder == "name of the class set" {
			f.SetText("Evening")
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
		}
	}
	if made != "Evening" {
		t.Errorf("Enter behind the name makes %q", made)
	}
}

// What is bought says so where its button was, however much it says: no other button
// moves under a hand.
func TestNoButtonMovesWhenEvidenceIsBought(t *testing.T) {
	v := screen(t)
	d := Session{Title: "The complaint", Causes: cases.Words[cases.Cause](), Groups: []Group{
		{Title: "warm idle", Items: []Item{{Number: 0, Name: "Upper hose at the radiator", Cost: "1 min"}, {Number: 1, Name: "Bypass", Cost: "1 min"}, {Number: 2, Name: "Heater supply", Cost: "1 min"}}},
		{Title: "checks", Items: []Item{{Number: 3, Name: "Cap test", Cost: "5 min"}, {Number: 4, Name: "Pressure test", Cost: "15 min"}}},
	}}
	v.Begin(d)
	places := func() map[string]fyne.Position {
		out := map[string]fyne.Position{}
		for name, b := range buttons(v.Content(), map[string]*kit.Button{}) {
			if b.Visible() {
				out[name] = fyne.CurrentApp().Driver().AbsolutePositionForObject(b)
			}
		}
		return out
	}
	before := places()
	long := "holds 80 kPa and no more; it is marked with 120.\nThe vacuum valve sticks, so that the hose was drawn flat as it cooled down overnight."
	d.Groups[0].Items[0].Bought, d.Groups[0].Items[0].Short = true, "104 °C"
	d.Groups[1].Items[0].Bought, d.Groups[1].Items[0].Short = true, "✓"
	d.Told = []Item{{Name: "Cap test", Says: long}}
	v.ShowSession(d)
	after := places()
	if len(after) != len(before)-2 {
		t.Errorf("of %d buttons %d are left, want two less", len(before), len(after))
	}
	for name, at := range after {
		if at != before[name] {
			t.Errorf("%q moved from %v to %v", name, before[name], at)
		}
	}
	if said := kittest.Texts(v.session.told); !strings.Contains(said, long) {
		t.Errorf("told: %q", said)
	}
}

// While an answer is judged nothing looks as if it could be bought or answered; one can give up.
func TestNothingIsBoughtWhileAnAnswerIsJudged(t *testing.T) {
	v := screen(t)
	bought, answers, stopped := 0, 0, 0
	v.OnBuy = func(int) { bought++ }
	v.OnAnswer = func(cases.Cause, float64) { answers++ }
	v.OnGiveUp = func() { stopped++ }
	d := Session{Title: "The complaint", Causes: cases.Words[cases.Cause](), Groups: []Group{{Title: "warm idle", Items: []Item{{Name: "Upper hose", Cost: "1 min"}}}}}
	press := func() {
		for _, b := range []string{"Upper hose · 1 min", "That's it", "Give up"} {
			test.Tap(buttons(v.Content(), map[string]*kit.Button{})[b])
		}
	}
	v.Begin(d)
	v.session.cause.SetSelected(cases.Cause("cap-weak").Name())
	v.Judge(true)
	v.ShowSession(d)
	if press(); bought != 0 || answers != 0 || stopped != 1 {
		t.Errorf("judging: %d bought, %d answers, %d times given up; want only that", bought, answers, stopped)
	}
	if said := kittest.Texts(v.Content()); !strings.Contains(said, "Judging every step") || !v.session.cause.Disabled() || !v.session.confidence.Disabled() {
		t.Errorf("judging, cause and sureness can be changed, or nobody says that it is judged: %q", said)
	}
	v.Judge(false)
	if press(); bought != 1 || answers != 1 {
		t.Errorf("judged: %d bought, %d answers, want one each", bought, answers)
	}
	v.Judge(true)
	v.Begin(d)
	if press(); bought != 2 || answers != 1 {
		t.Errorf("in the next case %d bought, %d answers, want another one bought", bought, answers)
	}
}

// What the evidence said is read whole, in a window of 1280 points too: the names of the hose and of the first
// cause were cut.
func TestTheStepsAreReadWhole(t *testing.T) {
	v := screen(t)
	step := Step{Name: "Upper hose at the radiator, held at 2500 rpm, heater full", Minutes: "12.5 min", Truth: 0.2, First: "22 %; first: heater fault on the air side"}
	v.ShowResult(Result{Head: "It was: a weak cap", Score: []string{"You said so."}, Steps: []Step{step}, Own: []Step{step}})
	if drawn := test.RenderObjectToMarkup(v.Content()); strings.Contains(drawn, "…") || !strings.Contains(drawn, "12.5 min") {
		t.Errorf("a step is cut:\n%s", drawn)
	}
}

// Who has begun a set sees how far they are, once their name is typed, and goes on.
func TestWhoComesBackSeesHowFarTheyAre(t *testing.T) {
	v := screen(t)
	v.ShowStart(Start{Classes: []Class{{Name: "Tuesday", Cases: []string{"a", "b", "c", "retired"}, Of: 3, Done: map[string]int{"Liv": 2}}}})
	v.start.trainee.FocusGained()
	v.start.trainee.SetText(" Liv")
	v.start.trainee.FocusLost()
	if said := kittest.Texts(v.Content()); !strings.Contains(said, "Tuesday, 2 of 3 done") || buttons(v.Content(), map[string]*kit.Button{})["Go on"] == nil {
		t.Errorf("it says %q", said)
	}
	v.start.trainee.FocusGained()
	v.start.trainee.SetText("Ada")
	v.start.trainee.FocusLost()
	if said := kittest.Texts(v.Content()); !strings.Contains(said, "Tuesday, 3 cases") {
		t.Errorf("to somebody else it says %q", said)
	}
}

// Who goes by keys alone comes to the answer from wherever among the evidence they are, and back.
func TestTheKeysOfPracticeLeadToTheAnswer(t *testing.T) {
	v := screen(t)
	v.Begin(Session{Causes: cases.Words[cases.Cause](), Groups: []Group{{Title: "warm idle", Items: []Item{{Name: "Upper hose", Cost: "1 min"}, {Name: "Lower hose", Cost: "1 min"}}}}})
	canvas := fyne.CurrentApp().Driver().CanvasForObject(v.Content())
	canvas.FocusNext()
	canvas.Focus(v.First())
	if canvas.Focused() != fyne.Focusable(v.session.cause.Select) {
		t.Errorf("from the evidence it leads to %T", canvas.Focused())
	}
	canvas.Focus(v.First())
	if b, ok := canvas.Focused().(*kit.Button); !ok || b.Text != "Upper hose · 1 min" {
		t.Errorf("from the answer it leads to %T", canvas.Focused())
	}
	v.ShowResult(Result{Head: "It was: a weak cap"})
	if v.First() != fyne.Focusable(v.result.onward) {
		t.Error("from a result it doesn't lead on")
	}
}
