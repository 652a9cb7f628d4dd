package words

import (
	"loopbook/app/ui/kit"
	"loopbook/cases"
)

// Title is a case's, or that it has none.
func Title(c cases.Case) string {
	if c.Title == "" {
		return kit.L("window.notebook.no-title")
	}
	return c.Title
}
