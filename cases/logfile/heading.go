package logfile

import (
	"strconv"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// heading is what the text above a column tells.
type heading struct {
	text  string
	words []string
	unit  unit // stated above, below or behind the values; or none
	key   string
	score int
	other bool // names another quantity
}

func (l *layout) headings(samples []sample) []heading {
	out := make([]heading, len(l.header))
	for i, text := range l.header {
		h := heading{text: text}
		name, u, stated := cutUnit(text)
		h.words = fold(name)
		if !stated && i < len(l.units) {
			u = l.units[i]
		}
		if u.name == "" {
			u, _ = unitOf(samples[i].suffix)
		}
		h.unit = u
		h.key, h.score = l.words.named(h.words)
		h.other = l.words.others(h.words)
		if whole, ok := unitOf(text); ok && whole.of == revolutions { // U/min names an engine's speed, not a minimum
			h.key, h.score, h.other = RPM, 100, false
		}
		out[i] = h
	}
	return out
}

func (c *chooser) headingLine() int { return max(1, c.l.headerLine) }

func quoted(names []string) say.Text {
	const shown = 8
	out := make([]say.Text, 0, shown+1)
	for i, n := range names {
		if i == shown {
			out = append(out, say.Of("log.more", len(names)-shown))
			break
		}
		out = append(out, say.Own(strconv.Quote(cases.Clip(n))))
	}
	return say.List(out...)
}

// columnText is what a log's column holds.
func columnText(key string) say.Text { return say.Of("log-column." + key) }

// plainName is columnText in English, for errors.
func plainName(key string) string { return columnText(key).String() }
