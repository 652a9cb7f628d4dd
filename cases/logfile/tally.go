package logfile

import (
	"loopbook/cases"
	"loopbook/diagram/say"
)

// tally counts something that was dropped or mended, and keeps the first.
type tally struct {
	n    int
	line int
	cell string
}

func (t *tally) add(line int, cell []byte) {
	if t.n++; t.n == 1 {
		t.line = line
		t.cell = cases.Clip(string(cell))
	}
}

// remark appends what was counted, if there was any: the template's places are
// the count, the line of the first, and what else there is to say.
func (t *tally) remark(to []say.Text, key string, more ...any) []say.Text {
	if t.n == 0 {
		return to
	}
	return append(to, say.Of(key, append([]any{t.n, t.line}, more...)...))
}
