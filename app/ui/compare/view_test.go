package compare

import (
	"fmt"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

// Twice as many rows take some twice as long to be made: each that was added laid out all before it, so that two full
// cases stood side by side only seconds after they were asked for. Wanted: 260 rows in 20 ms.
func TestRowsAreLaidOutOnce(t *testing.T) {
	test.NewTempApp(t)
	made := func(n int) time.Duration {
		rows := make([]Row, n)
		for i := range rows {
			rows[i] = Row{Where: fmt.Sprint("Round ", i), Left: "88 °C", Right: "41 °C"}
		}
		least := time.Hour // of several, since the machine does other things too
		for range 5 {
			start := time.Now()
			New("a", "b", rows, nil)
			least = min(least, time.Since(start))
		}
		return least
	}
	made(20)
	if few, many := made(30), made(240); many > 24*few {
		t.Errorf("30 rows are made in %v, eight times as many in %v", few, many)
	}
}
