package logfile

import (
	"fmt"
	"slices"
	"strings"
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
	all, others := phrases(), foreign()
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
		h.key, h.score = named(h.words, all, others)
		h.other = slices.ContainsFunc(h.words, func(w string) bool { return others[w] })
		out[i] = h
	}
	return out
}

func (c *chooser) headingLine() int { return max(1, c.l.headerLine) }

func quoted(names []string) string {
	const shown = 8
	out := make([]string, 0, shown+1)
	for i, n := range names {
		if i == shown {
			out = append(out, fmt.Sprintf("and %d more", len(names)-shown))
			break
		}
		out = append(out, fmt.Sprintf("%q", clip(n)))
	}
	return strings.Join(out, ", ")
}

func plainName(key string) string {
	switch key {
	case Time:
		return "the time"
	case Ect:
		return "the coolant temperature"
	case RPM:
		return "the engine speed"
	case Speed:
		return "the vehicle speed"
	case Intake:
		return "the intake air temperature"
	}
	return "the engine load"
}
