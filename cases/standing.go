package cases

import "reflect"

// Copy is a case as it is kept and read again, apart from the one it is of: a change that can't be kept leaves nothing behind.
func Copy(c Case) (Case, error) {
	text, err := Encode(c)
	if err != nil {
		return Case{}, err
	}
	return Decode(text)
}

// Standing is how many rounds, from the first on, a case has after an edit or a step back as it had them before. A case as it
// is edited may hold an empty list where a kept one holds none, so before is read as it is kept; one that can't be kept tells of
// no change.
func Standing(before, after Case) (n int) {
	had, err := Copy(before)
	if err != nil {
		return len(after.Rounds)
	}
	return alike(had.Rounds, after.Rounds)
}

// alike is how many rounds, from the first on, are the same in both.
func alike(a, b []Round) (n int) {
	for n < min(len(a), len(b)) && reflect.DeepEqual(a[n], b[n]) {
		n++
	}
	return n
}

// Where tells of each of a case's rounds which it is after others were added or deleted; -1: it is gone.
func Where(before, after Case) []int { return where(kept(before), kept(after)) }

func where(had, has []Round) []int {
	first, last := alike(had, has), 0
	for first+last < min(len(had), len(has)) && reflect.DeepEqual(had[len(had)-1-last], has[len(has)-1-last]) {
		last++
	}
	out := make([]int, len(had))
	for i := range out {
		switch {
		case i < first:
			out[i] = i
		case i >= len(had)-last:
			out[i] = i + len(has) - len(had)
		default:
			out[i] = -1
		}
	}
	return out
}

// kept are a case's rounds as they are kept, or as they are where it can't be.
func kept(c Case) []Round {
	if as, err := Copy(c); err == nil {
		return as.Rounds
	}
	return c.Rounds
}
