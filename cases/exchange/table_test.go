package exchange_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/cases/casetest"
	"loopbook/cases/exchange"
)

// OWASP, "CSV Injection": a cell must not begin with one of these.
func TestNoCellIsAFormula(t *testing.T) {
	var buf bytes.Buffer
	table, err := exchange.NewTable(&buf, [7]string{"id", "opened", "title", "vehicle", "layout", "cause", "changed"})
	if err != nil {
		t.Fatal(err)
	}
	evil := []string{"=HYPERLINK(\"x\")", "+1", "-2+3", "@SUM(A1)", "\t=1", "\r=1", "a=1", "plain, with \"quotes\"\nand lines", ""}
	for _, text := range evil {
		if err := table.Add([]cases.Summary{{ID: text, Title: text, Vehicle: text, Layout: text, Cause: cases.Cause(text), Opened: casetest.Start}}); err != nil {
			t.Fatal(err)
		}
	}
	rows, err := csv.NewReader(&buf).ReadAll() // as RFC 4180 says
	if err != nil || len(rows) != len(evil)+1 {
		t.Fatalf("%d rows, %v; want %d", len(rows), err, len(evil)+1)
	}
	for i, row := range rows[1:] {
		for _, cell := range row {
			if cell != "" && strings.ContainsAny(cell[:1], "=+-@\t\r") {
				t.Errorf("cell %q begins as a formula does", cell)
			}
		}
		if got := strings.TrimPrefix(row[2], "'"); got != strings.ReplaceAll(evil[i], "\r\n", "\n") {
			t.Errorf("title %q became %q", evil[i], row[2])
		}
	}
	if rows[1][1] != "2024-01-08" {
		t.Errorf("opened %q, want 2024-01-08", rows[1][1])
	}
}

// A column of scores adds up in a spreadsheet: its numbers below zero are numbers.
func TestANumberBelowZeroStaysOne(t *testing.T) {
	for text, want := range map[string]string{"-0.94": "-0.94", "-4": "-4", "-": "'-", "-1-1": "'-1-1", "-1.2.3": "'-1.2.3", "-1e9": "'-1e9", "+1": "'+1"} {
		if got := exchange.Cell(text); got != want {
			t.Errorf("Cell(%q) = %q, want %q", text, got, want)
		}
	}
}
