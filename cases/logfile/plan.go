package logfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"loopbook/diagram/say"
)

// plan makes of what was found how the file is read.
func (c *chooser) plan(found map[string]pick) (*plan, error) {
	if err := c.checkFound(found); err != nil {
		return nil, err
	}
	p := &plan{layout: c.l, time: found[Time]}
	s := &c.samples[p.time.index]
	u, assumed := unit{}, false
	p.clock, u, assumed = clockOf(c.l, s, c.headings[p.time.index].unit)
	p.time.Unit = u.name
	if assumed {
		c.assumes(p.time, u)
	}
	for at, key := range Keys()[1:] {
		if f, ok := found[key]; ok {
			p.series = append(p.series, c.series(f, at))
		}
	}
	for _, key := range Keys() {
		if f, ok := found[key]; ok && f.Guessed {
			c.remarks = append(c.remarks, say.Of("log.guessed", strconv.Quote(f.Header), columnText(key)))
		}
	}
	p.remarks = slices.Concat(c.l.remarks, c.remarks, c.unused(found))
	return p, nil
}

// checkFound refuses a file without time or coolant temperature.
func (c *chooser) checkFound(found map[string]pick) error {
	for _, key := range []string{Time, Ect} {
		if _, ok := found[key]; ok {
			continue
		}
		if c.leftOut(key) {
			return fmt.Errorf("columns set by hand: a log needs %s, it can't be left out", plainName(key))
		}
		for _, i := range c.candidates(func(i int) float64 { return float64(c.headings[i].score) }) {
			if c.headings[i].key == key {
				return c.implausible(key, i)
			}
		}
		return fmt.Errorf("line %d: none of the columns %s is %s: set it by hand",
			c.headingLine(), quoted(c.l.header), plainName(key))
	}
	return nil
}

// implausible says why a column isn't what its name tells.
func (c *chooser) implausible(key string, i int) error {
	const advice = "mend the column or set another by hand"
	s := &c.samples[i]
	switch all := s.present(); {
	case key != Time && c.ofAnother(key, i):
		return fmt.Errorf("line %d, column %q: %s can't be a unit of %s: %s",
			c.headingLine(), c.headings[i].text, c.headings[i].unit.name, plainName(key), advice)
	case s.text.n > 0:
		return fmt.Errorf("line %d, column %q: %q can't be read as %s, and most cells are like it: %s",
			s.text.line, c.headings[i].text, s.text.cell, plainName(key), advice)
	case len(all) == 0:
		return fmt.Errorf("line %d, column %q: is blank, here and below: %s", c.l.firstData, c.headings[i].text, advice)
	case key == Time:
		return fmt.Errorf("line %d, column %q: the time stands still or goes back here and below: %s", c.l.firstData, c.headings[i].text, advice)
	default:
		return fmt.Errorf("line %d, column %q: values from %g to %g can't be %s: %s",
			c.l.firstData, c.headings[i].text, slices.Min(all), slices.Max(all), plainName(key), advice)
	}
}

func (c *chooser) series(f pick, at int) *series {
	u := c.unitFor(f.Key, f.index)
	if stated := c.headings[f.index].unit; stated.name != u.name {
		if stated.name != "" {
			c.remarks = append(c.remarks, say.Of("log.no-unit-of", strconv.Quote(f.Header), stated.name, columnText(f.Key)))
		}
		c.assumes(f, u)
	}
	f.Unit = u.name
	low, high := bounds(f.Key)
	return &series{pick: f, at: at, unit: u, low: low, high: high, suffix: []byte(c.samples[f.index].suffix), decimal: c.l.decimal}
}

func (c *chooser) assumes(f pick, u unit) {
	c.remarks = append(c.remarks, say.Of("log.no-unit", strconv.Quote(f.Header), u.name))
}

func (c *chooser) unused(found map[string]pick) []say.Text {
	var names []string
	for i, h := range c.headings {
		if !slices.ContainsFunc(Keys(), func(key string) bool { f, ok := found[key]; return ok && f.index == i }) {
			names = append(names, h.text)
		}
	}
	if len(names) == 0 {
		return nil
	}
	slices.SortFunc(names, strings.Compare)
	return []say.Text{say.Of("log.unused", len(names), quoted(names))}
}
