package logfile

import "loopbook/diagram/say"

// tally counts something that was dropped or mended, and keeps the first.
type tally struct {
	n    int
	line int
	cell string
}

func (t *tally) add(line int, cell []byte) {
	if t.n++; t.n == 1 {
		t.line = line
		t.cell = clip(string(cell))
	}
}

// clip shortens a text of a file for a message.
func clip(s string) string {
	const longest = 40
	if r := []rune(s); len(r) > longest {
		return string(r[:longest]) + "…"
	}
	return s
}

// remark appends what was counted, if there was any: the template's places are
// the count, the line of the first, and what else there is to say.
func (t *tally) remark(to []say.Text, key string, more ...any) []say.Text {
	if t.n == 0 {
		return to
	}
	return append(to, say.Of(key, append([]any{t.n, t.line}, more...)...))
}
