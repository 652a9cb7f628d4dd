package share

import (
	"strconv"
	"strings"

	"loopbook/app/ui/kit"
	view "loopbook/app/ui/share"
	"loopbook/app/window/words"
	"loopbook/cases/anonymous"
	"loopbook/diagram/units"
)

func previewLines(p anonymous.Preview, u units.Set) (out view.Preview) {
	for _, l := range p.Goes {
		out.Goes = append(out.Goes, view.Line{Where: whereWords(l), Was: lineWords(l.Kind, l.Was, u), Now: lineWords(l.Kind, l.Now, u)})
	}
	for _, l := range p.Stays {
		out.Stays = append(out.Stays, view.Line{Where: whereWords(l), Was: lineWords(l.Kind, l.Was, u)})
	}
	return out
}

// whereWords is a line's place in the case in plain words; of a file its kind and its
// name.
func whereWords(l anonymous.Line) string {
	switch l.Kind {
	case anonymous.Notes, anonymous.LogFile, anonymous.OtherFile, anonymous.PictureOf:
		return kit.L("window.share.kind-"+string(l.Kind)) + " · " + l.Where
	case anonymous.Unknown:
		return kit.L("window.share.kind-"+string(l.Kind)) + " · " + words.Place(l.Where)
	}
	return words.Place(l.Where)
}

// lineWords is what a line says, in a person's words and units.
func lineWords(k anonymous.Kind, text string, u units.Set) string {
	number, err := strconv.ParseFloat(text, 64)
	switch {
	case k == anonymous.Times:
		return words.Moment(text)
	case err != nil:
	case k == anonymous.Odometer:
		return u.DistUnit(number)
	case k == anonymous.Notes:
		return kit.L("window.share.notes", int(number))
	case k == anonymous.LogFile, k == anonymous.OtherFile:
		return kit.L("window.share.kilobytes", int(number+999)/1000)
	}
	return strings.Join(strings.Fields(text), " ")
}
