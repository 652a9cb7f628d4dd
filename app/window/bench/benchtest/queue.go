package benchtest

import (
	"testing"

	"loopbook/app/desk"
	"loopbook/cases"
)

// Queue holds what was to run apart from the window, to be run when the test says so.
type Queue []func()

// Start keeps work to be run.
func (q *Queue) Start(work func()) { *q = append(*q, work) }

// Next lets the oldest of it run.
func (q *Queue) Next() {
	first := (*q)[0]
	*q = (*q)[1:]
	first()
}

// RunAll runs it all, and what comes of it.
func (q *Queue) RunAll() {
	for len(*q) > 0 {
		q.Next()
	}
}

// Waiting is a desk with an open case, and what is to run apart from it.
func Waiting(t testing.TB, c cases.Case) (*desk.Desk, *Queue) {
	t.Helper()
	m, q := New(t), &Queue{}
	id, err := m.Desk.Store.Put(m.Ctx, c, "test")
	if err != nil {
		t.Fatal(err)
	}
	m.Run = q.Start
	m.Desk.Told = func(err error) { t.Error(err) }
	m.Desk.Load(id)
	return m.Desk, q
}
