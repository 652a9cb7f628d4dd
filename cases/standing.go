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
	for n < len(had.Rounds) && n < len(after.Rounds) && reflect.DeepEqual(had.Rounds[n], after.Rounds[n]) {
		n++
	}
	return n
}
