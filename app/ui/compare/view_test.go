package compare

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2/test"
)

// BenchmarkRows240 makes two full cases' rows. Wanted: 20 ms; it was 240 ms while each row that was added laid out all
// before it.
func BenchmarkRows240(b *testing.B) {
	test.NewTempApp(b)
	rows := make([]Row, 240)
	for i := range rows {
		rows[i] = Row{Where: fmt.Sprint("Round ", i), Left: "88 °C", Right: "41 °C"}
	}
	b.ResetTimer()
	for range b.N {
		New("a", "b", rows, nil)
	}
}
