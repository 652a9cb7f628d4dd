package coolant

// strengthRow is one row of ASHRAE's table of freezing points.
type strengthRow struct {
	mass   MassPercent
	volume VolumePercent
	freeze float64 // °C
}

func mass(r strengthRow) float64   { return float64(r.mass) }
func volume(r strengthRow) float64 { return float64(r.volume) }
func freeze(r strengthRow) float64 { return r.freeze }

// ashraeEG and ashraePG: ASHRAE Handbook – Fundamentals, chapter on secondary
// coolants (2001 data set), aqueous solutions of ethylene and of propylene
// glycol. The copy is testdata/reference/glycol_freeze.csv. The last row is pure
// glycol, where mass and volume are both 100 by definition.
var (
	ashraeEG = []strengthRow{
		{0, 0, 0}, {5, 4.4, -1.4}, {10, 8.9, -3.2}, {15, 13.6, -5.4}, {20, 18.1, -7.8},
		{25, 22.9, -10.7}, {30, 27.7, -14.1}, {35, 32.6, -17.9}, {40, 37.5, -22.3},
		{45, 42.5, -27.5}, {50, 47.6, -33.8}, {55, 52.7, -41.1}, {60, 57.8, -48.3}, {100, 100, 0},
	}
	ashraePG = []strengthRow{
		{0, 0, 0}, {5, 4.8, -1.6}, {10, 9.6, -3.3}, {15, 14.5, -5.1}, {20, 19.4, -7.1},
		{25, 24.4, -9.6}, {30, 29.4, -12.7}, {35, 34.4, -16.4}, {40, 39.6, -21.1},
		{45, 44.7, -26.7}, {50, 49.9, -33.5}, {55, 55, -41.6}, {60, 60, -51.1}, {100, 100, 0},
	}
)

// freezing is the table without pure glycol, which belongs to no curve.
func (g glycol) freezing() []strengthRow { return g.table[:len(g.table)-1] }

// line interpolates y at x in a straight line between rows whose x moves one
// way, up or down. Outside the rows the end segment runs on.
func line[R any](rows []R, at float64, x, y func(R) float64) float64 {
	up := x(rows[len(rows)-1]) > x(rows[0])
	i := 1
	for i < len(rows)-1 && (x(rows[i]) < at) == up {
		i++
	}
	a, b := rows[i-1], rows[i]
	return y(a) + (y(b)-y(a))*(at-x(a))/(x(b)-x(a))
}
