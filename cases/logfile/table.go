package logfile

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
)

// table cuts a text into rows of cells. What it returns is valid until the
// next call.
type table struct {
	lines    *lines
	delim    byte
	at       int // line that the current row begins in, from 1
	through  int // line that it ends in
	cells    [][]byte
	unclosed tally // quotes that were opened and never closed
}

// next is the next row that isn't blank.
func (t *table) next() ([][]byte, error) {
	for {
		line, err := t.lines.line()
		t.at = t.through + 1
		if errors.Is(err, errLongLine) {
			return nil, fmt.Errorf("line %d: %w", t.at, err)
		} else if err != nil {
			return nil, err
		}
		t.through = t.at
		if len(trim(line)) > 0 {
			return t.split(line), nil
		}
	}
}

func (t *table) split(line []byte) [][]byte {
	if bytes.IndexByte(line, '"') < 0 {
		t.cells = appendPlain(t.cells[:0], line, t.delim)
		return t.cells
	}
	var open bool
	t.cells, open = appendQuoted(t.cells[:0], line, t.delim)
	if open && !t.join() {
		t.unclosed.add(t.at, nil)
		t.cells = appendPlain(t.cells[:0], bytes.ReplaceAll(t.lines.current(), []byte{'"'}, nil), t.delim)
	}
	return t.cells
}

// join looks for the end of a quoted cell in the lines that follow. When it
// isn't near, the quote is a slip and must not swallow the file.
func (t *table) join() bool {
	alone := t.lines.next
	for added := 1; added <= maxJoinedRows; added++ {
		moved := t.lines.mark
		line, err := t.lines.extend()
		alone -= moved - t.lines.mark
		if err != nil {
			break
		}
		var open bool
		if t.cells, open = appendQuoted(t.cells[:0], line, t.delim); !open {
			t.through += added
			return true
		}
	}
	t.lines.backTo(alone)
	return false
}

func appendPlain(cells [][]byte, line []byte, delim byte) [][]byte {
	for {
		i := bytes.IndexByte(line, delim)
		if i < 0 {
			return append(cells, line)
		}
		cells = append(cells, line[:i])
		line = line[i+1:]
	}
}

// appendQuoted splits a line in which a cell that begins with a quote goes on
// to the next single one. It says whether a quote is still open at the end.
func appendQuoted(cells [][]byte, line []byte, delim byte) (_ [][]byte, open bool) {
	for {
		if start := bytes.TrimLeft(line, " "); len(start) > 0 && start[0] == '"' {
			cell, rest, closed := unquote(start[1:], delim)
			if !closed {
				return append(cells, cell), true
			}
			cells = append(cells, cell)
			line = rest
			if i := bytes.IndexByte(line, delim); i >= 0 {
				line = line[i+1:]
				continue
			}
			return cells, false
		}
		i := bytes.IndexByte(line, delim)
		if i < 0 {
			return append(cells, line), false
		}
		cells = append(cells, line[:i])
		line = line[i+1:]
	}
}

// unquote takes what stands behind an opening quote. The closing one is the
// first that a delimiter or the end follows.
func unquote(s []byte, delim byte) (cell, rest []byte, closed bool) {
	doubled := false
	for i := 0; i < len(s); i++ {
		if s[i] != '"' {
			continue
		}
		if i+1 < len(s) && s[i+1] == '"' {
			doubled = true
			i++
			continue
		}
		if after := bytes.TrimLeft(s[i+1:], " "); len(after) > 0 && after[0] != delim {
			continue
		}
		cell = s[:i]
		if doubled {
			cell = bytes.ReplaceAll(cell, []byte(`""`), []byte(`"`))
		}
		return cell, s[i+1:], true
	}
	return s, nil, false
}

func cellAt(cells [][]byte, i int) []byte {
	if i >= len(cells) {
		return nil
	}
	return trim(cells[i])
}

func textsOf(cells [][]byte) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = string(trim(c))
	}
	return out
}

func filled(cells [][]byte) bool {
	return slices.ContainsFunc(cells, func(c []byte) bool { return len(trim(c)) > 0 })
}

func trim(b []byte) []byte { return bytes.TrimRight(trimLeft(b), " \t\r") }

func trimLeft(b []byte) []byte { return bytes.TrimLeft(b, " \t") }
