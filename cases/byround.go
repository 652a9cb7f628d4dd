package cases

import (
	"reflect"
	"slices"
)

// ByRound holds what belongs to rounds of a case and isn't kept in it, and goes with them as others are added or deleted. What
// belongs to a round that goes waits until that comes back. The zero value is empty.
type ByRound[T any] struct {
	of   map[int]T
	away []waiting[T]
}

type waiting[T any] struct {
	round Round
	what  T
}

// Of is what belongs to a round; the zero value where nothing does.
func (b *ByRound[T]) Of(round int) T { return b.of[round] }

// Put lets something belong to a round.
func (b *ByRound[T]) Put(round int, what T) {
	if b.of == nil {
		b.of = map[int]T{}
	}
	b.of[round] = what
}

// Drop takes what belongs to a round away from it.
func (b *ByRound[T]) Drop(round int) { delete(b.of, round) }

// Each tells of all that belongs to a round that is there, in no order.
func (b *ByRound[T]) Each(tell func(round int, what T)) {
	for round, what := range b.of {
		tell(round, what)
	}
}

// Begin is told that a round is added: it isn't one that comes back, alike as it may be.
func (b *ByRound[T]) Begin() { b.away = nil }

// Move goes with the rounds from a case to what it is after an edit or a step back.
func (b *ByRound[T]) Move(before, after Case) {
	if len(before.Rounds) == len(after.Rounds) {
		return
	}
	where, left := Where(before, after), b.of
	b.of = nil
	for round, what := range left {
		switch {
		case round < 0 || round >= len(where):
		case where[round] < 0:
			b.away = append(b.away, waiting[T]{kept(before).Rounds[round], what})
		default:
			b.Put(where[round], what)
		}
	}
	for i, r := range kept(after).Rounds {
		at := slices.IndexFunc(b.away, func(w waiting[T]) bool { return reflect.DeepEqual(w.round, r) })
		if at >= 0 && !slices.Contains(where, i) {
			b.Put(i, b.away[at].what)
			b.away = slices.Delete(b.away, at, at+1)
		}
	}
}
