package kit_test

import (
	"testing"

	"loopbook/app/ui/kit"
)

func TestWordsComeFromTheCatalogue(t *testing.T) {
	if got := kit.L("window.minutes", 3); got != "3 min" {
		t.Errorf(`L("window.minutes", 3) = %q`, got)
	}
	if got := kit.L("window.not-there"); got != "window.not-there" {
		t.Errorf("a missing word shows %q, want its name", got)
	}
}
