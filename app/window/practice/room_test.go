package practice

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	view "loopbook/app/ui/practice"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/practice"
	"loopbook/cases/query"
	"loopbook/diagram"
)

// withDemo is the room of practice in a notebook with the demo's cases, of which the list shows
// what is asked for.
func withDemo(t testing.TB) (r *Room, m *benchtest.Made, shown *cases.Query) {
	t.Helper()
	m, shown = benchtest.New(t), &cases.Query{}
	m.FillDemo(t)
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	r, err = New(m.Bench, tables, Ways{Back: func() {}, Open: func(string) {}, Shown: func() cases.Query { return *shown }, Changed: func() {}})
	if err != nil {
		t.Fatal(err)
	}
	r.coach.Mind.Crowds.Draws = 2
	return r, m, shown
}

// A trainee plays a class through, and a trainer reads the results.
func TestPracticeIsPlayedThrough(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	n := len(m.Found(t, *shown))
	r.Show()
	r.trainer.makeClass("Tuesday")
	if d, err := r.start(); err != nil || len(d.Classes) != 1 || len(d.Classes[0].Cases) != n || n < 2 {
		t.Fatalf("classes %+v, %v; want one of %d", d.Classes, err, n)
	}
	r.First().(*kit.Field).SetText("Liv")
	r.course.begin("Tuesday")
	if !r.Practises() {
		t.Error("who practises is not said to")
	}
	for left := n; left > 0; left-- {
		s := r.lesson.session
		if s == nil {
			t.Fatalf("no case begins with %d left", left)
		}
		if r.Trains() {
			t.Error("the list, which tells causes, is in sight during practice")
		}
		r.lesson.buy(0)
		r.lesson.buy(len(s.Items()) - 1)
		data := r.lesson.data()
		if want := fmt.Sprintf("Case %d of %d, Tuesday", n-left+1, n); data.Place != want {
			t.Errorf("it is said to be %q, want %q", data.Place, want)
		}
		bought := 0
		for _, g := range data.Groups {
			for _, i := range g.Items {
				if i.Bought && i.Says != "" {
					bought++
				}
			}
		}
		if bought != 2 || s.Minutes() == 0 {
			t.Errorf("%d items say something after two were bought, %g min", bought, s.Minutes())
		}
		r.lesson.answer(s.Truth(), 0.9)
		r.course.next()
	}
	if r.lesson.session != nil || r.Trains() {
		t.Error("after the last case it doesn't end, or the list is in sight before the next one")
	}
	r.view.OnTrainer(true)
	if !r.Trains() {
		t.Error("a trainer has no list to choose from")
	}
	results, err := m.Desk.Store.Results(m.Ctx, "Tuesday")
	if err != nil || len(results) != n || results[0].Trainee != "Liv" || results[0].Bits <= 0 || len(results[0].Bought) != 2 {
		t.Errorf("results %+v, %v", results, err)
	}
	rows := resultRows(results)
	if len(rows) != 1 || rows[0].Right != rows[0].Cases {
		t.Errorf("rows %+v", rows)
	}
	t.Setenv("HOME", t.TempDir())
	path, err := writeResults(r.at, "Tuesday", "")
	if err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(path); err != nil || strings.Count(string(text), "\n") != n+1 {
		t.Errorf("the table %q, %v", text, err)
	}
	r.trainer.move(0, 0)
	if d, err := r.start(); err != nil || len(d.Classes[0].Cases) != n-1 {
		t.Errorf("after taking one out %+v, %v", d.Classes, err)
	}
}

// A class set isn't gone by one press: nothing brings its order back.
func TestAClassSetIsNotGoneByOnePress(t *testing.T) {
	r, m, shown := withDemo(t)
	r.Show()
	r.trainer.makeClass("Tuesday ")
	n := func() int {
		d, err := r.start()
		if err != nil || len(d.Classes) > 1 {
			t.Fatal(d.Classes, err)
		}
		if len(d.Classes) == 0 {
			return 0
		}
		return len(d.Classes[0].Cases)
	}
	all, over := n(), m.Window.Canvas().Overlays()
	press := func(words string) {
		t.Helper()
		if over.Top() == nil {
			t.Fatal("it isn't asked")
		}
		test.Tap(benchtest.ButtonIn(t, over.Top().(*widget.PopUp).Content, kit.L(words)))
	}
	*shown = query.Parse("cause:pump-weak", time.Local).Query
	r.trainer.makeClass("Tuesday")
	if press("window.practice.keep"); n() != all {
		t.Errorf("a set of %d has %d cases, kept", all, n())
	}
	r.trainer.makeClass("Tuesday")
	if press("window.practice.replace"); n() == 0 || n() >= all {
		t.Errorf("a set of %d has %d cases, replaced", all, n())
	}
	r.view.OnForget("Tuesday")
	if press("window.practice.keep"); n() == 0 {
		t.Error("a set that was kept is gone")
	}
	r.view.OnForget("Tuesday")
	if press("window.practice.forget"); n() != 0 {
		t.Error("a set that was to go is there")
	}
}

// A name is held to what a file can hand over where it is typed, and what is too long is told.
func TestAClassSetHasANameThatTravels(t *testing.T) {
	r, m, _ := withDemo(t)
	r.Show()
	r.trainer.makeClass("Tuesday\tevening\x00 ")
	if d, err := r.start(); err != nil || len(d.Classes) != 1 || d.Classes[0].Name != "Tuesday evening" {
		t.Errorf("the sets are %+v, %v", d.Classes, err)
	}
	r.trainer.makeClass(strings.Repeat("evening ", 20))
	if d, err := r.start(); err != nil || len(d.Classes) != 1 || m.Window.Canvas().Overlays().Top() == nil {
		t.Errorf("a name too long: the sets are %+v, %v, and it is told: %v", d.Classes, err, m.Window.Canvas().Overlays().Top() != nil)
	}
}

// A retired case is left out of what a set can be made of, and of what a set has for who goes through it.
func TestRetiredCasesAreLeftOut(t *testing.T) {
	r, m, _ := withDemo(t)
	r.Show()
	r.trainer.makeClass("Tuesday")
	r.view.OnTrainer(true)
	before, err := r.start()
	if err != nil || before.Found < 2 || before.Classes[0].Of < 2 {
		t.Fatal(before, err)
	}
	m.Desk.Load(m.Found(t, query.Parse("stage:closed", time.Local).Query)[0].ID)
	r.view.OnRetire(true)
	after, err := r.start()
	if err != nil || after.Found != before.Found-1 || after.Classes[0].Of != before.Classes[0].Of-1 || len(after.Classes[0].Cases) != len(before.Classes[0].Cases) {
		t.Errorf("%+v are left of %+v, %v", after, before, err)
	}
	if said := kittest.Texts(r.Content()); !strings.Contains(said, kit.L("window.practice.class", "Tuesday", after.Classes[0].Of)) {
		t.Errorf("it says %q", said)
	}
	r.First().(*kit.Field).SetText("Liv")
	if r.course.begin("Tuesday"); r.course.of != after.Classes[0].Of {
		t.Errorf("gone through are %d of %d", r.course.of, after.Classes[0].Of)
	}
}

// A set that is forgotten is looked at no more: the results below are those of all, as they are headed.
func TestAForgottenSetIsLookedAtNoMore(t *testing.T) {
	r, m, _ := withDemo(t)
	r.Show()
	r.trainer.makeClass("Tuesday")
	for _, result := range []cases.Result{{Trainee: "Liv", Class: "Tuesday", CaseID: "a"}, {Trainee: "Ada", CaseID: "b"}} {
		if err := m.Desk.Store.AddResult(m.Ctx, result); err != nil {
			t.Fatal(err)
		}
	}
	if d, err := r.start(); err != nil || d.Chosen != "Tuesday" || len(d.Results) != 1 {
		t.Fatalf("at first it is %+v, %v", d, err)
	}
	r.view.OnForget("Tuesday")
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.forget")))
	if d, err := r.start(); err != nil || d.Chosen != "" || len(d.Results) != 2 || r.trainer.chosen != "" {
		t.Errorf("forgotten it is %+v, %v, and %q is looked at", d, err, r.trainer.chosen)
	}
	r.trainer.handOver("Tuesday", true)
	if said := benchtest.Says(m.Window); !strings.Contains(said, "isn't in the notebook any more") {
		t.Errorf("to hand it over says %q", said)
	}
}

// The difficulties differ by how likely the program holds the truth.
func TestSimulatedCasesOfEachDifficulty(t *testing.T) {
	r, m, _ := withDemo(t)
	for _, how := range view.Difficulties() {
		c, ok := simulated(m.Ctx, r.coach, 7, how)
		if !ok {
			t.Errorf("no %s car was found", how)
			continue
		}
		p := r.coach.Mind.Guess(c).TruthP
		if how == view.Easy && p < 0.5 || how == view.Hard && p > 0.5 {
			t.Errorf("of a %s car the truth is held %g likely", how, p)
		}
		if len(c.Tests) != len(cases.Words[cases.TestKind]()) {
			t.Errorf("a %s car has %d checks to buy", how, len(c.Tests))
		}
	}
}

// An answer that is still being judged when its case is given up doesn't hold up the next case.
func TestACaseGivenUpDoesNotHoldUpTheNext(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak stage:closed", time.Local).Query
	found := m.Found(t, *shown)
	if len(found) == 0 {
		t.Fatal("no case to practise on")
	}
	c, err := m.Desk.Store.Get(m.Ctx, found[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	var q benchtest.Queue
	m.Run = q.Start
	r.Show()
	r.course.alone(c)
	r.lesson.answer("pump-weak", 0.9)
	r.lesson.buy(0)
	if bought := r.lesson.session.Bought(); !r.lesson.judging || len(bought) != 0 {
		t.Errorf("while the answer is judged %d items are bought", len(bought))
	}
	r.stop()
	r.course.alone(c)
	next := r.lesson.session
	r.lesson.buy(0)
	r.lesson.answer("pump-weak", 0.9)
	if len(next.Bought()) != 1 || !r.lesson.judging {
		t.Fatalf("in the next case %d items are bought, judging %t", len(next.Bought()), r.lesson.judging)
	}
	q.Next() // the way through the case that was given up
	q.Next() // its answer
	if r.lesson.session != next || !r.lesson.judging {
		t.Error("the case that was given up ends the judging of the next")
	}
	if q.RunAll(); r.lesson.judging {
		t.Error("all is judged, and the judging goes on")
	}
}

// A check of which too little was noted passes nothing: it isn't told as one that found nothing wrong.
func TestAHalfNotedCheckIsNoPass(t *testing.T) {
	r, m, _ := withDemo(t)
	start := diagram.KPa(100)
	c := m.Desk.Case
	c.Tests = []cases.Test{{Kind: cases.PressureTest, StartKPa: &start}}
	if says := r.lesson.teller.itemSays(c, practice.Item{Kind: practice.Test, Check: cases.PressureTest}); says != "Too little was noted to tell." {
		t.Errorf("a hold without its end says %q", says)
	}
}

// Who buys a log sees no curve: that the engine got hot on the way is told in words, or it looked sound.
func TestALogTellsHowHotItGot(t *testing.T) {
	r, m, _ := withDemo(t)
	c := m.Desk.Case
	log := cases.Log{}
	for s := 0.0; s <= 2400; s += 10 {
		log.TimeS, log.EctC = append(log.TimeS, s), append(log.EctC, min(20+s/10, 88))
		if s >= 2000 {
			log.EctC[len(log.EctC)-1] = 107
		}
	}
	c.Logs = []cases.Log{log}
	if says := r.lesson.teller.itemSays(c, practice.Item{Kind: practice.Log}); !strings.Contains(says, "Hottest: 107 °C") {
		t.Errorf("the log says %q", says)
	}
}

// The whole case is offered where the notebook has it, and not beside the answers of the cases to come.
func TestTheWholeCaseIsOfferedWhereItLeadsSomewhere(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	known, err := m.Desk.Store.Get(m.Ctx, m.Found(t, *shown)[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	strange := known
	strange.ID = "simulated"
	for _, tt := range []struct {
		c    cases.Case
		left int
		want bool
	}{{known, 0, true}, {known, 1, false}, {strange, 0, false}} {
		if r.lesson.begin(tt.c, place{left: tt.left}); r.lesson.canOpen() != tt.want {
			t.Errorf("case %s with %d left is offered: %v, want %v", tt.c.ID, tt.left, !tt.want, tt.want)
		}
	}
}

// A set leaves for another trainer's notebook as a file, which says where it is.
func TestAClassSetLeavesAsAFile(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	r.Show()
	r.trainer.makeClass("Tuesday/evening")
	r.view.OnGive("Tuesday/evening")
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.give-trainer")))
	files, err := filepath.Glob(filepath.Join(home, "Documents", "Loopbook", "*.zip"))
	if err != nil || len(files) != 1 || !strings.Contains(benchtest.Says(m.Window), files[0]) {
		t.Fatalf("files %v, %v; it says %q", files, err, benchtest.Says(m.Window))
	}
	other := benchtest.New(t)
	took, err := library.Take(other.Ctx, other.Desk.Store, files, nil, func(int, int) {})
	if err != nil || len(took.Classes) != 1 || took.Classes[0].Name != "Tuesday/evening" || len(took.Classes[0].Cases) != len(m.Found(t, *shown)) {
		t.Errorf("taken in as %+v, %v", took.Classes, err)
	}
}

// A round's heading says once how long after the start it was, and an answer is chosen among what the loop can have.
func TestHeadingsAndAnswersFitTheCase(t *testing.T) {
	for minutes, want := range map[float64]string{5: "5 min from cold", 7: "5 min from cold, 7 min after the start"} {
		if got := roundWords(cases.Round{Label: "5 min from cold", MinutesSinceStart: &minutes}, 0); got != want {
			t.Errorf("after %v min the round is headed %q, want %q", minutes, got, want)
		}
	}
	const heater = "thermostat-heater-fault"
	for layout, want := range map[string]bool{"outlet-thermostat": false, "heated-thermostat": true} {
		if got := slices.Contains(answers(cases.Loop{Layout: layout}, "pump-weak"), heater); got != want {
			t.Errorf("%s offers a dead heater: %v", layout, got)
		}
	}
	if !slices.Contains(answers(cases.Loop{Layout: "outlet-thermostat"}, heater), heater) {
		t.Error("a loop that was noted wrongly doesn't offer the truth")
	}
}

// A hard car misleads, but all its evidence leads near the truth: of this one it would have held the truth under 1 % likely.
func TestAHardCarCanBeFound(t *testing.T) {
	if testing.Short() {
		t.Skip("simulates loops")
	}
	r, m, _ := withDemo(t)
	r.coach.Mind.Crowds.Draws = 20
	c := oneInvented(86)
	if p := r.coach.Mind.Guess(c).TruthP; p >= 0.25 {
		t.Fatalf("the truth is held %g likely: no hard car", p)
	}
	if fair, err := r.coach.Fair(m.Ctx, c); err != nil || fair {
		t.Errorf("a hopeless car is fair: %t, %v", fair, err)
	}
	c, ok := simulated(m.Ctx, r.coach, 7, view.Hard)
	if !ok {
		t.Fatal("no hard car was found")
	}
	if fair, err := r.coach.Fair(m.Ctx, c); err != nil || !fair {
		t.Errorf("the hard car of %s is fair: %t, %v", c.Verdict.Cause, fair, err)
	}
}

// While a car is made another press makes no second, which would take the place of the first with all that was bought; and
// what was begun meanwhile stays.
func TestOneCarIsMadeAtATime(t *testing.T) {
	r, m, _ := withDemo(t)
	var q benchtest.Queue
	m.Run = q.Start
	r.Show()
	r.view.OnSimulated(view.Easy)
	r.view.OnSimulated(view.Easy)
	if len(q) != 1 {
		t.Fatalf("two presses make %d cars", len(q))
	}
	if q.Next(); !r.Practises() {
		t.Fatal("no car is practised on")
	}
	r.stop()
	r.view.OnSimulated(view.Easy)
	c, err := m.Desk.Store.Get(m.Ctx, m.Found(t, query.Parse("cause:pump-weak stage:closed", time.Local).Query)[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	r.course.alone(c)
	q.RunAll()
	if r.lesson.session == nil || r.lesson.session.Whole().ID != c.ID {
		t.Error("a car that came late took the place of the case that is practised on")
	}
}
