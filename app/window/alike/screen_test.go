package alike

import (
	"testing"
	"time"

	"loopbook/app/library"
)

// A case that came from a file without its day has none: it was told as of the year 1.
func TestACaseWithoutItsDayHasNone(t *testing.T) {
	day := time.Date(2026, 11, 27, 12, 0, 0, 0, time.Local)
	for opened, want := range map[time.Time]string{{}: "", day: "27 Nov 2026"} {
		a := library.Lookalike{}
		a.Opened = opened
		if got := rows([]library.Lookalike{a})[0].When; got != want {
			t.Errorf("opened %v: %q, want %q", opened, got, want)
		}
	}
}
