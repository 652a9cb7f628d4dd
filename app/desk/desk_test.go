package desk

import (
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/sqlite"
	"loopbook/diagram"
	"loopbook/diagram/units"
)

// newDesk is a desk on a new notebook, whose crowds are of few cars.
func newDesk(t *testing.T, apart Apart) *Desk {
	t.Helper()
	store, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "n.db"), time.Now)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	d, err := New(context.Background(), store, apart)
	if err != nil {
		t.Fatal(err)
	}
	d.Mind.Crowds.Draws = 2
	d.Told = func(err error) { t.Errorf("told: %v", err) }
	return d
}

// moving moves a desk's notebook away, and back: it can't be written meanwhile.
func moving(t *testing.T, d *Desk) func(from, to string) {
	return func(from, to string) {
		t.Helper()
		if err := os.Rename(d.Store.Path()+from, d.Store.Path()+to); err != nil {
			t.Fatal(err)
		}
	}
}

// notJudged is a desk's way of working apart where nobody asks for causes.
func notJudged() Apart { return Apart{Start: func(func()) {}, Do: inPlace} }

func title(to string) func(*cases.Case) { return func(c *cases.Case) { c.Title = to } }

func addRound(c *cases.Case) {
	c.Rounds = append(c.Rounds, cases.Round{Label: "again", Stage: cases.BeforeRepair})
}

// What is edited is on the disk when Edit returns. Where it can't be, that is told, and the case stands as before.
func TestAnEditIsKeptOrTold(t *testing.T) {
	d := newDesk(t, notJudged())
	d.Begin()
	if !d.Blank() {
		t.Error("a case that was only begun isn't blank")
	}
	d.Edit("title", title("No heat"))
	if kept, err := d.Store.Get(context.Background(), d.Case.ID); err != nil || kept.Title != "No heat" || d.Blank() {
		t.Errorf("kept %q, %v; blank %t", kept.Title, err, d.Blank())
	}
	d.Edit("strength", func(c *cases.Case) { c.Loop.Coolant.VolumePercent = casetest.P(50.0) })
	var told error
	shown := 0
	d.Told, d.Changed = func(err error) { told = err }, func() { shown++ }
	d.Store.Close()
	d.Edit("title", title("lost"))
	what, why := d.Unkept()
	if told == nil || !strings.Contains(told.Error(), "stays on the screen") || d.Case.Title != "lost" || shown != 1 || why == nil || !slices.Equal(what, []string{"title"}) {
		t.Errorf("told %v, the case is %q, shown anew %d times; %q isn't kept, %v", told, d.Case.Title, shown, what, why)
	}
}

// A notebook that can't be read or written is told of, whatever was wanted of it, and nothing else happens.
func TestABrokenNotebookIsTold(t *testing.T) {
	for name, do := range map[string]func(*Desk){
		"load": func(d *Desk) { d.Load("A") }, "begin": (*Desk).Begin, "undo": (*Desk).Undo, "redo": (*Desk).Redo,
		"remove": (*Desk).Remove, "restore": (*Desk).Restore,
	} {
		d := newDesk(t, notJudged())
		d.Begin()
		told := 0
		d.Told = func(error) { told++ }
		d.Store.Close()
		if do(d); told != 1 || !d.Open || d.Gone != "" {
			t.Errorf("%s: told %d times, open %t, gone is %q", name, told, d.Open, d.Gone)
		}
	}
}

// While cars are simulated it is told how far that is. Once they are there what is expected is theirs, and shown.
func TestWhatIsExpectedIsTheModelsOnceItIsThere(t *testing.T) {
	var q pending
	d := newDesk(t, q.waiting())
	d.Begin()
	d.Edit("a walk", func(c *cases.Case) {
		c.Rounds[0].MinutesSinceStart, c.Rounds[0].EngineRPM, c.Rounds[0].EctC = casetest.P(25.0), casetest.P(800.0), casetest.P(diagram.Celsius(90))
	})
	d.Typed(diagram.RadIn, "80")
	source := func() string { return d.Found.Rounds[0].Expected[diagram.RadIn].Source.String() }
	by, shown := source(), 0
	if d.Ranged() || !strings.Contains(d.Progress(), "%") {
		t.Errorf("ranges are there %t, progress %q", d.Ranged(), d.Progress())
	}
	d.Changed = func() { shown++ }
	for len(q) > 0 {
		q.next()
	}
	if !d.Ranged() || d.Progress() != "" || shown == 0 || source() == by {
		t.Errorf("ranges are there %t, progress %q, shown anew %d times, by %q, before by %q", d.Ranged(), d.Progress(), shown, source(), by)
	}
	if d.Close(); d.Progress() != "" || d.Round != -1 {
		t.Errorf("without a case progress %q, round %d", d.Progress(), d.Round)
	}
}

// A step back or forth turns to the round that it is about, and to one that there is.
func TestStepsTurnToTheirRound(t *testing.T) {
	d := newDesk(t, notJudged())
	d.Begin()
	d.Edit("round", addRound)
	d.ShowRound(1)
	d.Typed(diagram.RadIn, "60")
	d.ShowRound(0)
	if d.Undo(); d.Round != 1 || d.Case.Rounds[1].Reading(diagram.RadIn) != nil {
		t.Errorf("back at round %d: %+v", d.Round, d.Case.Rounds)
	}
	d.ShowRound(0)
	if d.Redo(); d.Round != 1 || *d.Case.Rounds[1].Reading(diagram.RadIn).ShownC != 60 {
		t.Errorf("forth at round %d: %+v", d.Round, d.Case.Rounds)
	}
	d.Undo()
	if d.Undo(); d.Round != 0 || len(d.Case.Rounds) != 1 {
		t.Errorf("without the second round at round %d of %d", d.Round, len(d.Case.Rounds))
	}
	for range 3 {
		d.Undo() // to the beginning, where there is nothing to take back
	}
	if !d.Blank() || d.Round != 0 {
		t.Errorf("at the beginning %+v, round %d", d.Case, d.Round)
	}
}

// What can't be read stays beside its round, is read again in other units, and goes with its round.
func TestWhatCantBeReadStays(t *testing.T) {
	d := newDesk(t, notJudged())
	d.Begin()
	d.Edit("round", addRound)
	d.ShowRound(1)
	d.Typed(diagram.RadIn, "6o")
	d.Typed(diagram.RadOut, "194") // no coolant by °C, 90 °C by °F
	d.ShowRound(0)
	if len(d.Slips()) != 0 {
		t.Errorf("another round has %v", d.Slips())
	}
	d.Use(units.US())
	d.ShowRound(1)
	if at := d.Case.Rounds[1].Reading(diagram.RadOut); at == nil || *at.ShownC != 90 || len(d.Slips()) != 1 || d.Slips()[diagram.RadIn].Text != "6o" {
		t.Errorf("in °F %+v, beside it %v", at, d.Slips())
	}
	d.Typed(diagram.RadIn, "-")
	if at := d.Case.Rounds[1].Reading(diagram.RadIn); at == nil || !at.CantReach() || len(d.Slips()) != 0 {
		t.Errorf("out of reach %+v, beside it %v", at, d.Slips())
	}
	d.Typed(diagram.RadIn, "6o")
	beside := func(when string, want ...int) {
		t.Helper()
		var got []int
		d.EachSlip(func(round int, _ diagram.Point, _ Slip) { got = append(got, round) })
		if !slices.Equal(got, want) {
			t.Errorf("%s: there are slips beside the rounds %v, want %v", when, got, want)
		}
	}
	d.Edit("first round away", func(c *cases.Case) { c.Rounds = c.Rounds[1:] })
	beside("with another round gone", 0)
	d.Undo()
	beside("with the other one back", 1)
	d.Edit("second round away", func(c *cases.Case) { c.Rounds = c.Rounds[:1] })
	beside("with the round gone")
	d.Undo()
	beside("with the round back", 1)
	gone := d.Case.Rounds[1]
	d.Edit("second round away", func(c *cases.Case) { c.Rounds = c.Rounds[:1] })
	d.Edit("another one, alike", func(c *cases.Case) { c.Rounds = append(c.Rounds, gone) })
	beside("with one that is alike")
}

// A case that was deleted is named, by what stands for a title where it has none, and comes back.
func TestDeletedAndBroughtBack(t *testing.T) {
	d := newDesk(t, notJudged())
	d.Begin()
	id := d.Case.ID
	if d.Remove(); d.Open || d.Gone == "" {
		t.Errorf("open %t, gone is %q", d.Open, d.Gone)
	}
	if d.Restore(); !d.Open || d.Case.ID != id || d.Gone != "" {
		t.Errorf("open %t, %q; gone is %q", d.Open, d.Case.ID, d.Gone)
	}
	d.Edit("title", title("No heat"))
	if d.Remove(); d.Gone != "No heat" {
		t.Errorf("gone is %q", d.Gone)
	}
}

// A case is judged by how the notebook's other cases came out, never by its own verdict, nor by those that
// another case was to be judged by.
func TestOddsAreOfTheOtherCases(t *testing.T) {
	var q pending
	d := newDesk(t, q.waiting())
	ids := make([]string, 3)
	for i, cause := range []cases.Cause{"pump-weak", "pump-weak", ""} {
		c := cases.Case{Opened: time.Now().UTC().Truncate(time.Second), Verdict: cases.Verdict{Cause: cause}}
		if cause != "" {
			c.Verdict.ConfirmedBy = "pump-drive"
		}
		var err error
		if ids[i], err = d.Store.Put(context.Background(), c, "begun"); err != nil {
			t.Fatal(err)
		}
	}
	for _, order := range [][]string{{ids[2], ids[0]}, {ids[0], ids[2]}} {
		for _, id := range order {
			d.Load(id)
		}
		for len(q) > 0 { // the newest first: an older count comes in when another case is open
			last := q[len(q)-1]
			q = q[:len(q)-1]
			last()
		}
		want := 2
		if d.Case.Verdict.Cause != "" {
			want = 1
		}
		if got := d.Odds.Cases(); got != want {
			t.Errorf("case %q is judged by %d others, want %d", d.Case.Verdict.Cause, got, want)
		}
	}
}

// A verdict keeps what was held likeliest before it.
func TestAVerdictKeepsTheGuess(t *testing.T) {
	d := newDesk(t, rightAway())
	d.Begin()
	d.Typed(diagram.Housing, "55")
	likeliest := d.Answer().Thought.Ranking.Causes[0].Cause
	d.Edit("verdict", func(c *cases.Case) { c.Verdict.Cause = "cap-weak" })
	if kept, err := d.Store.Digest(context.Background(), d.Case.ID); err != nil || kept.Guess.First != likeliest || !(kept.Guess.TruthP > 0 && kept.Guess.TruthP <= kept.Guess.FirstP) {
		t.Errorf("kept %+v, %v; likeliest was %s", kept.Guess, err, likeliest)
	}
}
