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
	had, has := kept(before), kept(after)
	to, left := where(had, has), b.of
	b.of = nil
	for round, what := range left {
		switch {
		case round < 0 || round >= len(to):
		case to[round] < 0:
			b.away = append(b.away, waiting[T]{had[round], what})
		default:
			b.Put(to[round], what)
		}
	}
	for i, r := range has {
		at := slices.IndexFunc(b.away, func(w waiting[T]) bool { return reflect.DeepEqual(w.round, r) })
		if at >= 0 && !slices.Contains(to, i) {
			b.Put(i, b.away[at].what)
			b.away = slices.Delete(b.away, at, at+1)
		}
	}
}
