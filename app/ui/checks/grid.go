package checks

import (
	"fmt"
	"math"
	"strings"

	"loopbook/diagram"
	"loopbook/diagram/units"
)

// mostPlaces bounds a pasted grid.
const mostPlaces = 2500

// parseGrid reads a face: one line for each row, top first. Places are parted
// by tabs, or semicolons, or commas with a blank behind, or blanks, or commas;
// whichever of them comes first in this list and is there at all. A dash or
// nothing between two partings is a gap. Short rows end in gaps.
func parseGrid(text string, u units.Set) ([][]float64, error) {
	var rows [][]float64
	most, places := 0, 0
	for i, line := range strings.Split(strings.ReplaceAll(text, "\r", ""), "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		var row []float64
		for j, cell := range cells(line) {
			v, err := parsePlace(cell, u)
			if err != nil {
				return nil, fmt.Errorf("line %d, place %d, %q is no temperature", i+1, j+1, strings.TrimSpace(cell))
			}
			row = append(row, v)
		}
		rows = append(rows, row)
		most, places = max(most, len(row)), places+len(row)
	}
	if places > mostPlaces {
		return nil, fmt.Errorf("%d places are more than a face needs, %d at most", places, mostPlaces)
	}
	for i := range rows {
		for len(rows[i]) < most {
			rows[i] = append(rows[i], math.NaN())
		}
	}
	return rows, nil
}

func cells(line string) []string {
	for _, by := range []string{"\t", ";", ", "} {
		if strings.Contains(line, by) {
			return strings.Split(line, by)
		}
	}
	if fields := strings.Fields(line); len(fields) > 1 {
		return fields
	}
	return strings.Split(line, ",")
}

func parsePlace(cell string, u units.Set) (float64, error) {
	switch strings.TrimSpace(cell) {
	case "", "-", "–":
		return math.NaN(), nil
	}
	c, err := u.ParseTemp(cell)
	return float64(c), err
}

// gridText writes a face as parseGrid reads it.
func gridText(rows [][]float64, u units.Set) string {
	var b strings.Builder
	for i, row := range rows {
		if i > 0 {
			b.WriteByte('\n')
		}
		for j, v := range row {
			if j > 0 {
				b.WriteString("  ")
			}
			b.WriteString(placeText(v, u))
		}
	}
	return b.String()
}

func placeText(v float64, u units.Set) string {
	if math.IsNaN(v) {
		return "-"
	}
	return u.Temp(diagram.Celsius(v))
}
