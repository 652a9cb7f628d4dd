package evidence

import (
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// readingText is one reading as evidence.
func readingText(r Reading) say.Text {
	return say.Of("because.reading", say.Place(r.Point), r.TrueC)
}

// text is the delta's range with its rule.
func (d *Delta) text() say.Text {
	if d.ExpectedLowK == nil && d.ExpectedHighK == nil {
		return say.Of("because.no-range")
	}
	return say.Of("because.range", d.span(), d.Source, d.Class.Text())
}

// span is the delta's range, of which at least one end is known.
func (d *Delta) span() say.Text {
	switch {
	case d.ExpectedLowK == nil:
		return say.Of("span.up-to", *d.ExpectedHighK)
	case d.ExpectedHighK == nil:
		return say.Of("span.at-least", *d.ExpectedLowK)
	}
	return say.Of("span.within", *d.ExpectedLowK, *d.ExpectedHighK)
}

// places are several points within a sentence.
func places(points []diagram.Point) say.Text {
	texts := make([]say.Text, len(points))
	for i, p := range points {
		texts[i] = say.Place(p)
	}
	return say.List(texts...)
}

// endText is an end of a delta within a sentence; the sensor is none of these.
func endText(end string) say.Text { return say.Place(diagram.Point(end)) }

// flag builds a flag of this round.
func (m *moment) flag(id string, s Severity, points []diagram.Point, text say.Text, because ...say.Text) Flag {
	return Flag{ID: id, Round: m.i, Severity: s, Text: text, Because: because, Points: points}
}

// ofCase builds a flag that belongs to no one round.
func ofCase(id string, s Severity, text say.Text, because ...say.Text) Flag {
	return Flag{ID: id, Round: WholeCase, Severity: s, Text: text, Because: because}
}
