package exchange

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"loopbook/cases"
)

// resultHeads name the columns of a table of results.
func resultHeads() []string {
	return []string{"finished", "trainee", "class", "case", "title", "named", "truth", "confidence", "score_bits", "minutes", "program_minutes", "looked_at"}
}

// finishedAs is how a table says when; it is UTC, and a spreadsheet reads it as a time.
const finishedAs = "2006-01-02 15:04:05"

// between are what parts the things that were looked at.
const between = "; "

// maxResults bounds a table of results as it is read, in bytes: far more than a school's years.
const maxResults = 16 << 20

var errNoResults = errors.New("isn't a table of results as Loopbook writes one: take it before a spreadsheet has saved it")

// WriteResults writes how people practised as CSV (RFC 4180), for a spreadsheet and for another notebook.
func WriteResults(w io.Writer, results []cases.Result) error {
	rows := [][]string{resultHeads()}
	for _, r := range results {
		cells := []string{
			r.Finished.UTC().Format(finishedAs), r.Trainee, r.Class, r.CaseID, r.Title, string(r.Named), string(r.Truth),
			fmt.Sprintf("%.2f", r.Confidence), fmt.Sprintf("%.2f", r.Bits), fmt.Sprintf("%.1f", r.Minutes), fmt.Sprintf("%.1f", r.BestMinutes),
			strings.Join(r.Bought, between),
		}
		for i, c := range cells {
			cells[i] = Cell(c)
		}
		rows = append(rows, cells)
	}
	return csv.NewWriter(w).WriteAll(rows)
}

// IsResults reports whether a file begins as a table of results, also as a spreadsheet has saved one, of which ReadResults
// tells what is wrong with it.
func IsResults(r io.Reader) bool {
	const enough = 1 << 10 // bytes, for the heads
	text, err := io.ReadAll(io.LimitReader(r, enough))
	line, _, _ := strings.Cut(string(text), "\n")
	heads := strings.FieldsFunc(line, func(c rune) bool { return strings.ContainsRune(",;\t\"\r\ufeff", c) })
	return err == nil && slices.Equal(heads, resultHeads())
}

// ReadResults reads what WriteResults wrote, all of it or none; name is the file's, for errors.
func ReadResults(name string, r io.Reader) ([]cases.Result, error) {
	text, err := readUpTo(r, maxResults)
	if err != nil {
		return nil, within(name, err)
	}
	rows, err := csv.NewReader(bytes.NewReader(text)).ReadAll()
	if err != nil || len(rows) == 0 || !slices.Equal(rows[0], resultHeads()) {
		return nil, fmt.Errorf("%s %w", name, errNoResults)
	}
	var out []cases.Result
	for n, row := range rows[1:] {
		one, err := resultOf(row)
		if err != nil {
			return nil, fmt.Errorf("%s, row %d: %w", name, n+2, err)
		}
		out = append(out, one)
	}
	return out, nil
}

func resultOf(row []string) (r cases.Result, err error) {
	for i, c := range row {
		if bare, marked := strings.CutPrefix(c, "'"); marked && Cell(bare) == c {
			row[i] = bare
		}
	}
	if r.Finished, err = time.Parse(finishedAs, row[0]); err != nil {
		return r, fmt.Errorf("%s is %q, and must be as %s", resultHeads()[0], cases.Clip(row[0]), finishedAs)
	}
	r.Trainee, r.Class, r.CaseID, r.Title = row[1], row[2], row[3], row[4]
	for i, put := range map[int]*cases.Cause{5: &r.Named, 6: &r.Truth} {
		*put = cases.Cause(row[i])
		if !slices.Contains(cases.Words[cases.Cause](), *put) && (i != 5 || row[i] != "") {
			return r, fmt.Errorf("%s is %q, which is no cause", resultHeads()[i], cases.Clip(row[i]))
		}
	}
	for i, put := range map[int]*float64{7: &r.Confidence, 8: &r.Bits, 9: &r.Minutes, 10: &r.BestMinutes} {
		const most = 1e6
		if *put, err = strconv.ParseFloat(row[i], 64); err != nil || !(*put > -most && *put < most) {
			return r, fmt.Errorf("%s is %q, and must be a number", resultHeads()[i], cases.Clip(row[i]))
		}
	}
	if row[11] != "" {
		r.Bought = strings.Split(row[11], between)
	}
	return r, nil
}
