// Package published reads the tables of published values under testdata, for
// tests. The README files there name each table's source and tolerance.
package published

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// Row is one row of a table, by the names of its columns.
type Row map[string]string

// Rows reads a table by its path under testdata. It fails the test where there
// is none, or none with a row.
func Rows(t testing.TB, name string) []Row {
	t.Helper()
	f, err := os.Open(filepath.Join(root(t), "testdata", filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	cells, err := csv.NewReader(f).ReadAll()
	if err != nil || len(cells) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(cells), err)
	}
	rows := make([]Row, len(cells)-1)
	for i, line := range cells[1:] {
		rows[i] = Row{}
		for j, cell := range line {
			rows[i][cells[0][j]] = cell
		}
	}
	return rows
}

// root is the nearest folder above the test that holds go.mod.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; ; dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if dir == filepath.Dir(dir) {
			t.Fatal("no go.mod above the test")
		}
	}
}

// Number is a cell as a number. It fails the test where it is none.
func (r Row) Number(t testing.TB, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", column, r, err)
	}
	return x
}

// FromMemory reports whether nobody has seen the row's source: such a row may
// not fail a test alone.
func (r Row) FromMemory() bool { return strings.Contains(strings.ToLower(r["status"]), "from memory") }
