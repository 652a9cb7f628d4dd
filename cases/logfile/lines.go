package logfile

import (
	"bytes"
	"fmt"
	"io"
)

const (
	maxLineBytes  = 1 << 20
	maxJoinedRows = 16 // lines that one quoted cell may span
)

// lines cuts a text into lines. What it returns is valid until the next call.
type lines struct {
	r          io.Reader
	end        byte // of a line
	buf        []byte
	mark, next int   // of the current line, and of the one behind it
	err        error // of r
	ended      bool  // the current line has its end
}

func newLines(r io.Reader, end byte) *lines {
	return &lines{r: r, end: end, buf: make([]byte, 0, 2*chunkBytes)}
}

// linesOf cuts a text that is all there.
func linesOf(text []byte, end byte) *lines {
	return &lines{end: end, buf: text, err: io.EOF}
}

// lineEnd is a line feed unless the text only has carriage returns.
func lineEnd(head []byte) byte {
	if bytes.IndexByte(head, '\n') < 0 && bytes.IndexByte(head, '\r') >= 0 {
		return '\r'
	}
	return '\n'
}

// line moves on by one line.
func (l *lines) line() ([]byte, error) {
	l.mark = l.next
	return l.extend()
}

// extend adds the line that follows to the current one.
func (l *lines) extend() ([]byte, error) {
	from := l.next
	for {
		if i := bytes.IndexByte(l.buf[from:], l.end); i >= 0 {
			l.next = from + i + 1
			l.ended = true
			return bytes.TrimRight(l.buf[l.mark:l.next-1], "\r"), nil
		}
		from = len(l.buf)
		if from-l.mark > maxLineBytes {
			return nil, errLongLine
		}
		if l.err != nil {
			return l.last()
		}
		from -= l.fill()
	}
}

var errLongLine = fmt.Errorf("is longer than %d MB: this is no table, export the log as CSV", maxLineBytes>>20)

func (l *lines) last() ([]byte, error) {
	if l.next == len(l.buf) {
		return nil, l.err
	}
	l.next = len(l.buf)
	l.ended = false
	return bytes.TrimRight(l.buf[l.mark:], "\r"), nil
}

// fill reads on, and says by how much the current line moved to the front.
func (l *lines) fill() (moved int) {
	if moved = l.mark; moved > 0 {
		l.buf = l.buf[:copy(l.buf, l.buf[l.mark:])]
		l.mark, l.next = 0, l.next-moved
	}
	if cap(l.buf)-len(l.buf) < chunkBytes {
		l.buf = append(make([]byte, 0, 2*cap(l.buf)), l.buf...)
	}
	n, err := l.r.Read(l.buf[len(l.buf):cap(l.buf)])
	l.buf, l.err = l.buf[:len(l.buf)+n], err
	return moved
}

// current is the line that was last returned, as far as it was extended.
func (l *lines) current() []byte {
	return bytes.TrimRight(l.buf[l.mark:l.next], "\r\n")
}

// backTo takes back extensions: the current line ends at next again.
func (l *lines) backTo(next int) {
	l.next = next
	l.ended = true
}
