package logfile

import "fmt"

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

// many words a count: "1 row", "12 rows".
func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// remark appends what was counted, if there was any.
func (t *tally) remark(to []string, what, format string, args ...any) []string {
	if t.n == 0 {
		return to
	}
	return append(to, many(t.n, what)+" "+fmt.Sprintf(format, args...)+fmt.Sprintf(" (the first in line %d)", t.line))
}
