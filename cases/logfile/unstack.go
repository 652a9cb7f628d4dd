package logfile

import (
	"bytes"
	"io"
	"strings"
)

// unstacked hands a stacked text on with a column for each signal. A row ends when a signal comes again, and stands in the
// line of its last value, so that what is told of a line is true of the file.
type unstacked struct {
	*stack
	table *table
	row   [][]byte
	began bool // the row has a value
	last  int  // line of its last value
	line  int  // lines written
	late  tally
	out   bytes.Buffer
	err   error
}

func (s *stack) unstack(text io.Reader) *unstacked {
	return &unstacked{stack: s, table: &table{lines: newLines(text, s.end), delim: s.delim}, row: make([][]byte, len(s.kept)+len(s.signals))}
}

func (s *unstacked) Read(p []byte) (int, error) {
	for s.out.Len() == 0 {
		if s.err != nil {
			return 0, s.err
		}
		cells, err := s.table.next()
		if err != nil {
			s.err = err
			s.pass()
		} else if s.table.at >= s.firstData {
			s.take(cells)
		}
	}
	return s.out.Read(p)
}

func (s *unstacked) take(cells [][]byte) {
	name := cellAt(cells, s.name)
	at, known := s.place[string(name)]
	if !known {
		if !missing(name) {
			s.late.add(s.table.at, name)
		}
		return
	}
	at += len(s.kept)
	if s.row[at] != nil {
		s.pass()
	}
	if !s.began {
		for i, from := range s.kept {
			s.row[i] = bytes.Clone(cellAt(cells, from))
		}
	}
	s.row[at] = append([]byte{}, cellAt(cells, s.value)...)
	s.began, s.last = true, s.table.through
}

// pass writes the row.
func (s *unstacked) pass() {
	if !s.began {
		return
	}
	for ; s.line < s.last-1; s.line++ {
		s.out.WriteByte('\n')
	}
	for i, c := range s.row {
		if i > 0 {
			s.out.WriteByte(s.delim)
		}
		if bytes.IndexByte(c, s.delim) >= 0 || bytes.IndexByte(c, '"') >= 0 {
			c = []byte(`"` + strings.ReplaceAll(string(c), `"`, `""`) + `"`)
		}
		s.out.Write(c)
		s.row[i] = nil
	}
	s.out.WriteByte('\n')
	s.line, s.began = s.line+1, false
}
