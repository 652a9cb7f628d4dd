package logfile

import (
	"fmt"
	"slices"
	"strconv"

	"loopbook/diagram/say"
)

// plan makes of what was found how the file is read.
func (c *chooser) plan() (*plan, error) {
	if err := c.checkFound(); err != nil {
		return nil, err
	}
	p := &plan{layout: c.l, time: c.found[Time]}
	clock, u, assumed := clockOf(c.l, &c.samples[p.time.index], c.headings[p.time.index].unit)
	p.clock, p.time.Unit = clock, u.name
	c.found[Time] = p.time
	if assumed {
		c.assumes(p.time, u)
	}
	for at, key := range Keys()[1:] {
		if f, ok := c.found[key]; ok {
			s := c.series(f, at)
			p.series, c.found[key] = append(p.series, s), s.pick
		}
	}
	for _, key := range Keys() {
		if f, ok := c.found[key]; ok && f.Guessed {
			c.remarks = append(c.remarks, say.Of("log.guessed", strconv.Quote(f.Header), columnText(key)))
		}
	}
	p.remarks = slices.Concat(c.l.remarks, c.remarks, c.unused())
	return p, nil
}

// checkFound refuses a file without time or coolant temperature.
func (c *chooser) checkFound() error {
	for _, key := range []string{Time, Ect} {
		if _, ok := c.found[key]; ok {
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

func (c *chooser) unused() []say.Text {
	var names []string
	for i, h := range c.headings {
		if !c.taken[i] {
			names = append(names, h.text)
		}
	}
	if len(names) == 0 {
		return nil
	}
	slices.Sort(names)
	return []say.Text{say.Of("log.unused", len(names), quoted(names))}
}
