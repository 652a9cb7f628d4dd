package report

import (
	"strings"

	"golang.org/x/text/unicode/bidi"
)

// firstRightToLeft is the first letter of Unicode that is written from the right:
// most texts need no look at the rest.
const firstRightToLeft = 0x0590

// visual is a line in the order that it is read in on paper, where gofpdf puts
// letters from left to right (Unicode Standard Annex 9). Arabic letters stand
// unjoined.
func visual(line string) string {
	if !strings.ContainsFunc(line, func(r rune) bool { return r >= firstRightToLeft && r < 0x2000 || r >= 0xFB1D && r < 0xFF00 }) {
		return line
	}
	var p bidi.Paragraph
	if _, err := p.SetString(line); err != nil {
		return line
	}
	order, err := p.Order()
	if err != nil {
		return line
	}
	var out strings.Builder
	for i := 0; i < order.NumRuns(); i++ {
		run := order.Run(i)
		if run.Direction() == bidi.RightToLeft {
			out.WriteString(bidi.ReverseString(run.String()))
		} else {
			out.WriteString(run.String())
		}
	}
	return out.String()
}
