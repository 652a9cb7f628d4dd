package report

import (
	"io"

	"loopbook/diagram/say"
)

// writeRecord writes the technician's record: all that the case holds and what
// its measurements say. What the findings lack is written without a verdict.
func writeRecord(w io.Writer, m Material, o Options) error {
	s, err := newSheet(m, o, about{title: title(m.Case), subject: say.Of("record.subject"), foot: say.Of("record.foot", caseName(m.Case))})
	if err != nil {
		return err
	}
	s.shopHead(m.Shop, m.Case.Opened)
	s.head(say.Of("record.head"))
	s.cautions()
	s.vehicle()
	s.fitted()
	s.complaint()
	s.troubleCodes(0)
	s.rounds()
	s.warmUps()
	s.wholeCase()
	s.tests()
	s.causes()
	s.beside()
	s.next()
	s.verdict()
	s.repair()
	s.proof()
	s.boiling()
	s.photos()
	s.kept()
	s.sources()
	s.blanks()
	s.signatures()
	return s.write(w)
}
