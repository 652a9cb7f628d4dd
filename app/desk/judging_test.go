package desk

import (
	"fmt"
	"strings"
	"testing"

	"loopbook/app/mind"
	"loopbook/cases"
	"loopbook/diagram"
)

// pending holds what was to run apart from the window, to be run in any order.
type pending []func()

func (q *pending) start(f func()) { *q = append(*q, f) }

// waiting runs what is to run apart when the test says so, atOnce before anything else.
func (q *pending) waiting() Apart { return Apart{Start: q.start, Do: inPlace} }

func rightAway() Apart { return Apart{Start: inPlace, Do: inPlace} }

func inPlace(do func()) { do() }

// newJudge judges by a crowd of few cars.
func newJudge(t *testing.T, apart Apart) *judging {
	t.Helper()
	m, err := mind.New()
	if err != nil {
		t.Fatal(err)
	}
	m.Crowds.Draws = 2
	return newJudging(m, apart)
}

func warmIdle(housing diagram.Celsius) cases.Case {
	minutes := 25.0
	return cases.Case{ID: "A", Loop: cases.Loop{Layout: "outlet-thermostat"}, Rounds: []cases.Round{{
		Label: "warm idle", MinutesSinceStart: &minutes, Readings: []cases.Reading{{Point: diagram.Housing, ShownC: &housing}},
	}}}
}

func judgeNow(t *testing.T, j *judging, c cases.Case) {
	t.Helper()
	if err := j.judge(c, j.mind.Analyst.Analyse(&c)); err != nil {
		t.Fatal(err)
	}
}

func TestATypedTemperatureOnlyReweighs(t *testing.T) {
	gathered := 0
	j := newJudge(t, rightAway())
	j.gathered = func() { gathered++ }
	judgeNow(t, j, warmIdle(90))
	if j.answer.Crowd == nil || j.answer.Thought.Ranking.Draws != 2 || j.progress() != "" {
		t.Fatalf("judged by %d draws, %q; want the whole crowd of 2", j.answer.Thought.Ranking.Draws, j.progress())
	}
	before := j.answer.Thought.Ranking.Causes
	judgeNow(t, j, warmIdle(55))
	if gathered != 1 {
		t.Errorf("the crowd was simulated %d times for two temperatures, want once", gathered)
	}
	if after := j.answer.Thought.Ranking.Causes; after[0].Probability == before[0].Probability {
		t.Errorf("another temperature left %+v first", after[0])
	}
	cold := warmIdle(55)
	air := diagram.Celsius(-10)
	cold.Rounds[0].AmbientC = &air
	judgeNow(t, j, cold)
	if gathered != 2 {
		t.Errorf("after another weather the crowd was simulated %d times, want twice", gathered)
	}
}

func TestOvertakenAnswersAreDropped(t *testing.T) {
	var q pending
	j := newJudge(t, q.waiting())
	judgeNow(t, j, warmIdle(90))
	other := warmIdle(90)
	other.Loop.Layout = "inlet-thermostat"
	judgeNow(t, j, other)
	for len(q) > 0 { // the last first
		next := q[len(q)-1]
		q = q[:len(q)-1]
		next()
	}
	if a := j.answer; a.Case == nil || a.Case.Loop.Layout != "inlet-thermostat" || a.Crowd.Setting.Loop.ID != "inlet-thermostat" {
		t.Errorf("the answer is of %+v, want the newer layout's", a.Case)
	}
}

func TestAClosedCaseIsAnsweredNoMore(t *testing.T) {
	var q pending
	j := newJudge(t, q.waiting())
	judgeNow(t, j, warmIdle(90))
	j.stop()
	j.changed = func() { t.Error("a closed case was answered") }
	for _, next := range q {
		next()
	}
}

func TestReasonsAreOfTheCauseThatIsChosen(t *testing.T) {
	j := newJudge(t, rightAway())
	judgeNow(t, j, warmIdle(90))
	j.choose("pump-weak")
	if got := j.answer.Chosen.Cause; got != "pump-weak" {
		t.Errorf("reasons are of %q, want pump-weak", got)
	}
	if n := len(j.answer.Thought.Ranking.Causes); n != len(cases.Words[cases.Cause]()) {
		t.Errorf("the ranking has %d causes left", n)
	}
}

func TestAFewConfirmedCasesDontCountUnasked(t *testing.T) {
	for _, tt := range []struct {
		learn Learning
		n     int
		want  bool
	}{{LearnUsual, 9, false}, {LearnUsual, 10, true}, {LearnYes, 1, true}, {LearnNo, 50, false}, {LearnYes, 0, false}} {
		o := Odds{Learn: tt.learn, confirmed: map[cases.Cause]int{"pump-weak": tt.n}}
		if got := o.Prior().Confirmed != nil; got != tt.want {
			t.Errorf("%d cases, choice %q: learns %t, want %t", tt.n, tt.learn, got, tt.want)
		}
	}
	demo := Odds{confirmed: map[cases.Cause]int{"pump-weak": 40}, Invented: true}
	if demo.Learns() {
		t.Error("a demo's invented cases count unasked")
	}
}

// A case whose layout nobody knows is judged by its complaint all the same.
func TestWithoutALayoutTheComplaintCounts(t *testing.T) {
	j := newJudge(t, rightAway())
	judgeNow(t, j, cases.Case{ID: "A", Complaint: cases.Complaint{Symptoms: []cases.Symptom{"overheats-idle"}}})
	if r := j.answer.Thought.Ranking; r.Blank || r.Stage != cases.BeforeRepair {
		t.Errorf("blank: %t, stage %q", r.Blank, r.Stage)
	}
}

// next lets the oldest of what was to run apart from the window run.
func (q *pending) next() {
	first := (*q)[0]
	*q = (*q)[1:]
	first()
}

func order(a Answer) string {
	var out []string
	for _, c := range a.Thought.Ranking.Causes {
		out = append(out, string(c.Cause))
	}
	return strings.Join(out, " ")
}

// While a case's cars are being simulated its causes stand still: at first they are
// ranked without the model, later as they were before the change, and each answer
// says so. They are ranked anew once, when all cars are there.
func TestCausesStandStillUntilAllCarsAreThere(t *testing.T) {
	var q pending
	j := newJudge(t, q.waiting())
	judgeNow(t, j, warmIdle(55))
	if len(q) != 2 {
		t.Fatalf("%d things are under way, want the first answer and the cars", len(q))
	}
	q.next()
	if a := j.answer; a.Standing != noCars || a.Thought.Ranking.Draws != 0 {
		t.Fatalf("the first answer is %q, by %d draws; want one without cars", a.Standing, a.Thought.Ranking.Draws)
	}
	first, changes := order(j.answer), 0
	j.changed = func() { changes++ }
	q.next()
	if changes != 0 || order(j.answer) != first {
		t.Errorf("the answer changed %d times while the cars were simulated", changes)
	}
	q.next()
	if a := j.answer; a.Standing != byAll || a.Thought.Ranking.Draws != 2 || changes != 1 {
		t.Fatalf("the answer is %q, by %d draws, after %d changes", a.Standing, a.Thought.Ranking.Draws, changes)
	}
	whole, cold := order(j.answer), warmIdle(55)
	air := diagram.Celsius(-10)
	cold.Rounds[0].AmbientC = &air
	judgeNow(t, j, cold)
	q.next()
	cars := q[0]
	q = q[1:]
	j.choose("pump-weak")
	q.next()
	if a := j.answer; a.Standing != heldFor || order(a) != whole || a.Chosen.Cause != "pump-weak" {
		t.Errorf("in other weather the answer is %q with the reasons of %q; want the one before with those of pump-weak", a.Standing, a.Chosen.Cause)
	}
	cars()
	q.next()
	if a := j.answer; a.Standing != byAll || a.Case.Rounds[0].AmbientC == nil {
		t.Errorf("with its cars the answer is %q, of %+v", a.Standing, a.Case.Rounds[0])
	}
}

// A case that was never answered by cars is, once, by the first of them: half a second is
// soon enough to be of use, and the whole crowd may take some.
func TestACaseIsFirstAnsweredByTheFirstCars(t *testing.T) {
	j := newJudge(t, rightAway())
	j.mind.Crowds.Draws = 3 * firstDraws / 2
	var got []string
	j.changed = func() {
		got = append(got, fmt.Sprint(j.answer.Standing, " ", j.answer.Thought.Ranking.Draws))
	}
	judgeNow(t, j, warmIdle(55))
	want := fmt.Sprint([]string{"no-cars 0", fmt.Sprint("first-cars ", firstDraws), fmt.Sprint("by-all ", 3*firstDraws/2)})
	if fmt.Sprint(got) != want {
		t.Errorf("answered %v, want %v", got, want)
	}
	got = nil
	cold := warmIdle(55)
	air := diagram.Celsius(-10)
	cold.Rounds[0].AmbientC = &air
	judgeNow(t, j, cold)
	want = fmt.Sprint([]string{fmt.Sprint("held ", 3*firstDraws/2), fmt.Sprint("by-all ", 3*firstDraws/2)})
	if fmt.Sprint(got) != want {
		t.Errorf("in other weather answered %v, want %v", got, want)
	}
}
