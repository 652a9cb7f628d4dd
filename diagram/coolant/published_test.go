package coolant_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"

	"loopbook/diagram/coolant"
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

// fromMemory reports whether nobody has seen the row's source.
func (r row) fromMemory() bool { return strings.Contains(strings.ToLower(r["status"]), "from memory") }

func (r row) base() coolant.Base {
	return map[string]coolant.Base{"EG": coolant.EthyleneGlycol, "PG": coolant.PropyleneGlycol}[r["fluid"]]
}

// mixture is the row's, by its mass column where that is filled.
func (r row) mixture(t *testing.T) coolant.Mixture {
	t.Helper()
	if r["mass_percent"] == "" {
		return coolant.Mixture{Base: r.base(), Strength: coolant.VolumePercent(r.number(t, "volume_percent"))}
	}
	m, err := coolant.FromMass(r.base(), coolant.MassPercent(r.number(t, "mass_percent")))
	if err != nil {
		t.Fatal(err)
	}
	return m
}
