package cases_test

import (
	"testing"

	"loopbook/cases"
)

// The two-byte rule of SAE J2012 / ISO 15031-6, by public descriptions; the
// vectors are computed from the rule by hand.
func TestCodeFromBytes(t *testing.T) {
	for _, tt := range []struct {
		a, b byte
		want string
	}{
		{0x01, 0x28, "P0128"}, {0x02, 0x17, "P0217"}, {0x00, 0xB7, "P00B7"}, {0x21, 0x81, "P2181"},
		{0x26, 0x1A, "P261A"}, {0x05, 0x97, "P0597"}, {0x11, 0x28, "P1128"}, {0x41, 0x23, "C0123"},
		{0x81, 0x23, "B0123"}, {0xC1, 0x00, "U0100"}, {0, 0, ""},
	} {
		if got := cases.CodeFromBytes(tt.a, tt.b); got != tt.want {
			t.Errorf("CodeFromBytes(%02X %02X) = %q, want %q", tt.a, tt.b, got, tt.want)
		}
	}
}
