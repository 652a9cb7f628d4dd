package logfile

import (
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"

	"loopbook/diagram/say"
)

// reading is a file on its way through a plan.
type reading struct {
	*plan
	table    *table
	line     timeline
	buckets  *buckets
	rows     int
	timeless tally // without a time that can be read
	long     tally // with more filled cells than columns
	ragged   tally // with fewer cells
	cut      tally // the last line, when it ends early
	another  int   // line of a heading of other columns, where reading ends; 0: none
}

// read goes through the whole file by the plan.
func (p *plan) read(out *Read, from *source, maxSamples int) error {
	r := &reading{plan: p, buckets: newBuckets(maxSamples)}
	r.table = &table{lines: newLines(from, p.layout.end), delim: p.layout.delim}
	r.line = timeline{emit: r.buckets.add, periodS: p.clock.periodS}
	for r.another == 0 {
		cells, err := r.table.next()
		if errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return err
		}
		if r.table.at >= p.layout.firstData {
			r.row(cells)
		}
	}
	r.line.pass()
	out.Rows = r.rows
	out.Log = r.buckets.log(p.series)
	out.Remarks = r.told(from)
	return r.enough(out)
}

func (r *reading) row(cells [][]byte) {
	r.rows++
	width := len(r.layout.header)
	switch {
	case len(cells) > width && filled(cells[width:]):
		r.long.add(r.table.at, nil)
		return
	case len(cells) < width && !r.table.lines.ended && r.rows > 1:
		r.cut.add(r.table.at, nil)
		return
	case len(cells) < width:
		r.ragged.add(r.table.at, nil)
	}
	t, ok := r.clock.seconds(cellAt(cells, r.time.index))
	if !ok && r.isAnother(cells) {
		r.another = r.table.at
		return
	}
	if !ok {
		r.timeless.add(r.table.at, cellAt(cells, r.time.index))
		return
	}
	one := record{line: r.table.at, t: t, values: noValues()}
	for _, s := range r.series {
		one.values[s.at] = s.value(cellAt(cells, s.index), r.table.at)
	}
	r.line.add(one)
}

// isAnother reports whether a row is a heading under which the columns hold something else, or in other units, as where
// a recording was begun anew with other settings.
func (r *reading) isAnother(cells [][]byte) bool {
	says := textsOf(cells)
	again := headed(says, len(r.layout.header))
	same := func(p pick) bool { return strings.EqualFold(again[p.index], p.Header) }
	if !same(r.time) && r.layout.words.keyOf(again[r.time.index]) == "" || !slices.ContainsFunc(says, r.layout.words.namesCoolant) {
		return false
	}
	return !same(r.time) || slices.ContainsFunc(r.series, func(s *series) bool { return !same(s.pick) })
}

// enough refuses what makes no series.
func (r *reading) enough(out *Read) error {
	if len(out.Log.TimeS) >= 2 {
		if slices.ContainsFunc(out.Log.EctC, func(v float64) bool { return !math.IsNaN(v) }) {
			return nil
		}
		return fmt.Errorf("line %d, column %q: no cell from here on holds a temperature: set another column by hand", r.layout.firstData, r.series[0].Header) // the coolant stands first
	}
	if r.timeless.n > 0 {
		return fmt.Errorf("line %d, column %q: %q is no time, and too few others are: set another column by hand", r.timeless.line, r.time.Header, r.timeless.cell)
	}
	return fmt.Errorf("line %d, column %q: fewer than two rows of data whose times go on", r.layout.firstData, r.time.Header)
}

// told are all remarks, from the file as a whole to its rows.
func (r *reading) told(from *source) []say.Text {
	var to []say.Text
	t := from.text
	if t.encoding != "UTF-8" {
		to = append(to, say.Of("log.read-as", t.encoding))
	}
	if t.zeros > 0 {
		to = append(to, say.Of("log.zeros", t.zeros))
	}
	if s := from.unstacked; s != nil {
		to = append(to, say.Of("log.stacked", len(s.signals), strconv.Quote(s.header[s.name])))
		to = s.late.remark(to, "log.late-signal", strconv.Quote(s.late.cell))
	}
	to = append(to, r.remarks...)
	to = r.table.unclosed.remark(to, "log.unclosed")
	to = r.long.remark(to, "log.long")
	to = r.ragged.remark(to, "log.ragged")
	to = r.cut.remark(to, "log.cut")
	if r.another > 0 {
		to = append(to, say.Of("log.another-heading", r.another))
	}
	to = r.timeless.remark(to, "log.timeless", strconv.Quote(r.timeless.cell))
	to = r.line.remark(to)
	for _, s := range r.series {
		to = s.remark(to)
	}
	if b := r.buckets; b.per > 1 {
		to = append(to, say.Of("log.kept", len(b.all), b.per))
	}
	return to
}
