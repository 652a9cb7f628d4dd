package desk

import (
	"reflect"

	"loopbook/cases"
)

// turned is the first round that a step back or forth brought or changed; -1 where it did
// neither. A case as it is edited may hold an empty list where a kept one holds none, so
// both are read as they are kept.
func turned(before, after cases.Case) int {
	had, err := copyOf(before)
	if err != nil {
		return -1
	}
	for i, r := range after.Rounds {
		if i >= len(had.Rounds) || !reflect.DeepEqual(had.Rounds[i], r) {
			return i
		}
	}
	return -1
}
