package practice

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"loopbook/app/library"
	"loopbook/app/ui/kit"
	"loopbook/app/ui/kit/kittest"
	"loopbook/app/window/bench/benchtest"
	"loopbook/cases"
	"loopbook/cases/diagnosis/likelihood"
	"loopbook/cases/query"
)

// Who comes back to a set goes on at the first case that they haven't answered, and begins anew once they are through;
// somebody else begins at the first.
func TestWhoComesBackGoesOn(t *testing.T) {
	r, _, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	r.Show()
	r.trainer.makeClass("Tuesday")
	d, err := r.start()
	if err != nil || len(d.Classes[0].Cases) < 2 {
		t.Fatal(d.Classes, err)
	}
	n := len(d.Classes[0].Cases)
	begin := func(who string) string {
		t.Helper()
		r.stop()
		r.First().(*kit.Field).SetText(who)
		r.course.begin("Tuesday")
		return r.lesson.in.words
	}
	begin("Liv")
	r.lesson.answer("cap-weak", 0.5)
	if got, want := begin("Liv "), kit.L("window.practice.place", 2, n, "Tuesday"); got != want {
		t.Errorf("back again it is %q, want %q", got, want)
	}
	if d, err := r.start(); err != nil || d.Classes[0].Done["Liv"] != 1 || d.Classes[0].Done["Ada"] != 0 {
		t.Errorf("done are %v, %v", d.Classes[0].Done, err)
	}
	first := kit.L("window.practice.place", 1, n, "Tuesday")
	for _, who := range []string{"Ada", ""} {
		if got := begin(who); got != first {
			t.Errorf("%q begins with %q, want %q", who, got, first)
		}
	}
	begin("Liv")
	for range n - 1 {
		r.lesson.answer(r.lesson.session.Truth(), 0.5)
		said := kittest.Texts(r.Content())
		if total := strings.Contains(said, fmt.Sprintf("That was the last of “Tuesday”: %d of %d found", n-1, n)); total != (r.lesson.in.left == 0) {
			t.Errorf("with %d left it says %q", r.lesson.in.left, said)
		}
		r.course.next()
	}
	if got := begin("Liv"); got != first {
		t.Errorf("through, it is %q, want %q", got, first)
	}
	if d, err := r.start(); err != nil || d.Classes[0].Done["Liv"] != 0 {
		t.Errorf("through, done are %v, %v", d.Classes[0].Done, err)
	}
}

// Who gives a case up is asked how: it is left, or its answer is told, which leads on to the next and counts as not found.
func TestWhoGivesUpIsToldTheAnswer(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	r.Show()
	r.trainer.makeClass("Tuesday")
	r.First().(*kit.Field).SetText("Liv")
	press := func(words string) {
		t.Helper()
		r.view.OnGiveUp()
		test.Tap(benchtest.Button(t, m.Window, kit.L(words)))
	}
	r.course.begin("Tuesday")
	if press("window.practice.keep-on"); !r.Practises() {
		t.Error("who keeps on has stopped")
	}
	truth := r.lesson.session.Truth()
	press("window.practice.reveal")
	results, err := m.Desk.Store.Results(m.Ctx, "Tuesday")
	if err != nil || len(results) != 1 || results[0].Named != "" || results[0].Bits != 0 || results[0].Truth != truth {
		t.Errorf("kept is %+v, %v", results, err)
	}
	if rows := resultRows(results); len(rows) != 1 || rows[0].Right != "0" || rows[0].Score != "0.0" {
		t.Errorf("told as %+v", rows)
	}
	if r.course.next(); !strings.Contains(r.lesson.in.words, "2") {
		t.Errorf("it goes on with %q", r.lesson.in.words)
	}
	if press("window.practice.later"); r.Practises() {
		t.Error("who leaves it for later practises on")
	}
	if results, err := m.Desk.Store.Results(m.Ctx, "Tuesday"); err != nil || len(results) != 1 {
		t.Errorf("left for later, kept are %+v, %v", results, err)
	}
}

// A sealed set is played in a notebook that shows none of it, each case comes into the list by its answer, and a trainer
// opens the rest.
func TestASealedSetIsOpenedByItsAnswers(t *testing.T) {
	home := t.TempDir()
	t.Setenv("HOME", home)
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	r.Show()
	r.trainer.makeClass("Tuesday")
	n := len(m.Found(t, *shown))
	r.view.OnGive("Tuesday")
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.give-trainee")))
	files, err := filepath.Glob(filepath.Join(home, "Documents", "Loopbook", "*.zip"))
	if err != nil || len(files) != 1 || n < 3 {
		t.Fatal(files, err, n)
	}

	other := benchtest.New(t)
	if _, err := library.Take(other.Ctx, other.Desk.Store, files, nil, func(int, int) {}); err != nil {
		t.Fatal(err)
	}
	tables, err := likelihood.Shipped()
	if err != nil {
		t.Fatal(err)
	}
	theirs, err := New(other.Bench, tables, Ways{Back: func() {}, Open: func(string) {}, Shown: func() cases.Query { return cases.Query{} }, Changed: func() {}})
	if err != nil {
		t.Fatal(err)
	}
	theirs.coach.Mind.Crowds.Draws = 2
	listed := func(want int, when string) {
		t.Helper()
		if got := len(other.Found(t, cases.Query{})); got != want {
			t.Errorf("%s the list shows %d cases, want %d", when, got, want)
		}
	}
	theirs.Show()
	listed(0, "taken in")
	d, err := theirs.start()
	if err != nil || len(d.Classes) != 1 || !d.Classes[0].Sealed || !slices.Equal(d.Classes[0].Cases[:2], []string{kit.L("window.practice.shut"), kit.L("window.practice.shut")}) {
		t.Fatalf("under Practice: %+v, %v", d.Classes, err)
	}
	theirs.course.begin("Tuesday")
	theirs.lesson.buy(0)
	listed(0, "begun")
	theirs.lesson.answer("cap-weak", 0.3)
	listed(1, "answered")
	if theirs.lesson.canOpen() {
		t.Error("the list is offered while cases are to come")
	}
	theirs.course.next()
	theirs.stop()
	listed(1, "given up")
	theirs.view.OnUnseal("Tuesday")
	test.Tap(benchtest.Button(t, other.Window, kit.L("window.practice.stay-shut")))
	listed(1, "left shut")
	theirs.view.OnUnseal("Tuesday")
	test.Tap(benchtest.Button(t, other.Window, kit.L("window.practice.unseal")))
	listed(n, "opened")
	if d, err := theirs.start(); err != nil || d.Classes[0].Sealed {
		t.Errorf("once open: %+v, %v", d.Classes, err)
	}
}

// A case counts once for each trainee, by what they named before they knew it; of each case a trainer reads how many found
// it and what the others blamed.
func TestACaseCountsByItsFirstAnswer(t *testing.T) {
	at := func(who, id string, named cases.Cause, bits float64) cases.Result {
		return cases.Result{Trainee: who, CaseID: id, Named: named, Truth: "pump-weak", Bits: bits, Minutes: 10}
	}
	results := []cases.Result{
		at("Liv", "a", "thermostat-stuck-closed", -2), at("Ada", "a", "thermostat-stuck-closed", -2), at("Ben", "a", "", 0), at("Eve", "a", "cap-weak", -1),
		at("Dan", "a", "pump-weak", 3), at("Liv", "a", "pump-weak", 4), at("Liv", "b", "pump-weak", 4),
	}
	for _, row := range resultRows(results) {
		if row.Trainee == "Liv" && (row.Cases != "2" || row.Right != "1" || row.Score != "1.0") {
			t.Errorf("who answered one twice has %+v", row)
		}
	}
	got := toldOf([]string{"b", "c", "a"}, results)
	want := []string{"Found by 1 of 1.", "", "Found by 1 of 5. Named most often instead: thermostat stuck closed (2)."}
	if !slices.Equal(got, want) {
		t.Errorf("of the cases it is told %q, want %q", got, want)
	}
}

// The way back to the case leads past no question that isn't answered: the answer stands there.
func TestTheWayBackShowsNoAnswer(t *testing.T) {
	r, m, _ := withDemo(t)
	went := 0
	r.ways.Back = func() { went++ }
	r.Show()
	back := func() { test.Tap(benchtest.ButtonIn(t, r.Content(), kit.L("window.practice.back"))) }
	if back(); went != 1 {
		t.Errorf("before a case one is back %d times", went)
	}
	c, err := m.Desk.Store.Get(m.Ctx, m.Found(t, query.Parse("cause:pump-weak stage:closed", time.Local).Query)[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	r.course.alone(c)
	if back(); went != 1 || !r.Practises() {
		t.Errorf("unanswered, one is back %d times, practising %t", went, r.Practises())
	}
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.keep-on")))
	r.lesson.answer("cap-weak", 0.4)
	if back(); went != 2 {
		t.Errorf("answered, one is back %d times", went)
	}
}

// Within a set that was handed over open, the list beside the case has the answers of those to come: whoever goes there is
// asked first. At its last case nobody is.
func TestTheWayBackTellsOfAnswersToCome(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak,thermostat-stuck-open stage:closed", time.Local).Query
	went := 0
	r.ways.Back = func() { went++ }
	r.Show()
	r.trainer.makeClass("Tuesday")
	back := func() { test.Tap(benchtest.ButtonIn(t, r.Content(), kit.L("window.practice.back"))) }
	r.course.begin("Tuesday")
	r.lesson.answer("cap-weak", 0.4)
	back()
	if said := benchtest.Says(m.Window); went != 0 || !strings.Contains(said, kit.L("window.practice.answers-lie", "Tuesday")) {
		t.Fatalf("with cases to come one is back %d times; it says %q", went, said)
	}
	test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.keep-on")))
	back()
	if test.Tap(benchtest.Button(t, m.Window, kit.L("window.practice.back-anyway"))); went != 1 {
		t.Errorf("all the same, one is back %d times", went)
	}
	for r.lesson.in.left > 0 {
		r.course.next()
		r.lesson.answer("cap-weak", 0.4)
	}
	if back(); went != 2 {
		t.Errorf("after the last, one is back %d times", went)
	}
}

// The open case joins the set that is looked at, once, and only one that can be practised.
func TestTheOpenCaseJoinsASet(t *testing.T) {
	r, m, shown := withDemo(t)
	*shown = query.Parse("cause:pump-weak stage:closed", time.Local).Query
	r.Show()
	r.trainer.makeClass("Tuesday")
	test.Tap(benchtest.ButtonIn(t, r.Content(), kit.L("window.practice.to-trainer")))
	n := len(m.Found(t, *shown))
	m.Desk.Load(m.Found(t, query.Parse("cause:thermostat-stuck-open stage:closed", time.Local).Query)[0].ID)
	r.Show()
	add := func() { test.Tap(benchtest.ButtonIn(t, r.Content(), kit.L("window.practice.add"))) }
	for range 2 {
		add()
	}
	d, err := r.start()
	if err != nil || len(d.Classes[0].Cases) != n+1 || !d.Classes[0].HasOpen {
		t.Errorf("the set is %+v, %v; want %d cases", d.Classes, err, n+1)
	}
	m.Desk.Load(m.Found(t, query.Parse("stage:open", time.Local).Query)[0].ID)
	r.Show()
	add()
	if d, err := r.start(); err != nil || len(d.Classes[0].Cases) != n+1 {
		t.Errorf("with a case without a verdict it is %+v, %v", d.Classes, err)
	}
}
