package cases_test

import (
	"errors"
	"strings"
	"testing"

	"loopbook/cases"
)

func TestCheckFileName(t *testing.T) {
	for _, good := range []string{"photos/1.jpg", "logs/warm-up.csv", "photos/Kühler vorn.jpg", "x"} {
		if err := cases.CheckFileName(good); err != nil {
			t.Errorf("CheckFileName(%q): %v", good, err)
		}
	}
	for _, bad := range []string{
		"", ".", "..", "/etc/passwd", "../up.jpg", "photos/../../up.jpg", "photos//1.jpg", "photos/",
		`photos\1.jpg`, "C:/1.jpg", "photos/a\x00b", "photos/\xff", "case.json", "Case.JSON", strings.Repeat("x", 201),
	} {
		if err := cases.CheckFileName(bad); !errors.Is(err, cases.ErrFileName) {
			t.Errorf("CheckFileName(%q) = %v, want ErrFileName", bad, err)
		}
	}
}
