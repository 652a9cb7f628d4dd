package infrared_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// row is one row of a table of published values, by the name of its column.
type row map[string]string

// published reads a table under testdata; its README names source and
// tolerance of each.
func published(t *testing.T, name string) []row {
	t.Helper()
	f, err := os.Open("../../testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	cells, err := csv.NewReader(f).ReadAll()
	if err != nil || len(cells) < 2 {
		t.Fatalf("%s: %d rows, %v", name, len(cells), err)
	}
	rows := make([]row, len(cells)-1)
	for i, line := range cells[1:] {
		rows[i] = row{}
		for j, cell := range line {
			rows[i][cells[0][j]] = cell
		}
	}
	return rows
}

func (r row) number(t *testing.T, column string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		t.Fatalf("%s of %v: %v", column, r, err)
	}
	return x
}
