// Package logfile reads a time series of a warm-up from a CSV file of any make
// into the case record's log.
//
// The file is read once, as a stream, in constant memory. Its first 4 MB tell
// encoding, delimiter, decimal mark, heading, units and which column is what:
// by its name first, by its values where the names say nothing. Names and
// values must agree. A column that is only told from later rows isn't found;
// it can be set by hand. A table that has a row for each value, with the
// signal's name in a cell, is read as one that has a column for each signal.
//
// A long file is thinned while it is read. Rows are gathered in buckets of
// equal row count; when there are more buckets than asked for, neighbours are
// merged and the count doubles. A bucket becomes one sample: the mean of its
// times and of its values. What is lost: everything quicker than a bucket, so
// short peaks of speed, revolutions and load. A temperature that strays more
// than 5 K beyond both neighbouring buckets is kept as it was, so that a
// jumping sensor stays visible.
//
// Whatever is dropped, mended or assumed is told in Read.Remarks with counts.
package logfile

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// DefaultSamples is how many samples a log keeps unless asked otherwise.
const DefaultSamples = 20_000

// The keys of the columns that are read.
const (
	Time   = "time"
	Ect    = "ect"
	RPM    = "rpm"
	Speed  = "speed"
	Intake = "intake"
	Load   = "load"
)

// Keys lists the keys of the columns in the order in which they are told.
func Keys() []string { return []string{Time, Ect, RPM, Speed, Intake, Load} }

// Options say how a file is to be read. The zero value finds out all by itself.
type Options struct {
	Map        map[string]string // key to the text of its heading; an empty text leaves the key out
	Progress   func(bytes int64) // told how much of the file has been read; may be nil
	MaxSamples int               // at most so many samples are kept, 2 or more; 0 means DefaultSamples
}

// Column is what was taken for what.
type Column struct {
	Key     string
	Header  string
	Unit    string // as the file has it, or as it was assumed (told in the remarks)
	Guessed bool   // by values rather than by name
}

// Read is what came out of a file.
type Read struct {
	Log     cases.Log // times are seconds from the first row, increasing; NaN is a gap
	Columns []Column
	Header  []string
	Rows    int        // of data, with those that were left out
	Remarks []say.Text // what was dropped, mended or assumed
	Preview [][]string // the first data rows
}

// From reads a stream. With an error that isn't of reading itself, Header, Columns and
// Preview still hold what was found, so that the other columns can be set by hand.
func From(ctx context.Context, name string, r io.Reader, o Options) (Read, error) {
	out, err := from(&meter{ctx: ctx, r: r, told: o.Progress}, o)
	out.Log.Name = name
	if err != nil {
		return out, fmt.Errorf("%s: %w", name, err)
	}
	return out, nil
}

// FromFile reads the file at path; the log bears the file's name.
func FromFile(ctx context.Context, path string, o Options) (Read, error) {
	f, err := os.Open(path)
	if err != nil {
		return Read{}, fmt.Errorf("opening the log: %w", err)
	}
	defer f.Close() // was only read
	return From(ctx, filepath.Base(path), f, o)
}

func from(r io.Reader, o Options) (Read, error) {
	text, err := openText(r)
	if err != nil {
		return Read{}, err
	}
	all := &source{Reader: text, text: text}
	head, err := all.peek()
	if err != nil {
		return Read{}, err
	}
	l, err := findLayout(head)
	if err != nil {
		return Read{}, err
	}
	if s, err := l.findStack(head); err != nil {
		return Read{}, err
	} else if s != nil {
		all.unstacked = s.unstack(all.Reader)
		all.Reader, l = all.unstacked, s.wide()
		if head, err = all.peek(); err != nil {
			return Read{}, err
		}
		l.whole = len(head) < headBytes
	}
	out := Read{Header: l.header}
	samples, err := l.sample(head, &out)
	if err != nil {
		return out, err
	}
	c := &chooser{l: l, samples: samples, byHand: o.Map, taken: map[int]bool{}, found: map[string]pick{}}
	p, err := c.choose()
	out.Columns = c.told()
	if err != nil {
		return out, err
	}
	return out, p.read(&out, all, o.MaxSamples)
}

// meter counts what passes and stops when the context ends.
type meter struct {
	ctx  context.Context
	r    io.Reader
	n    int64
	told func(int64)
}

func (m *meter) Read(p []byte) (int, error) {
	if err := m.ctx.Err(); err != nil {
		return 0, err
	}
	n, err := m.r.Read(p)
	m.n += int64(n)
	if m.told != nil && n > 0 {
		m.told(m.n)
	}
	return n, err
}
