package logfile

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"loopbook/diagram/say"
)

// plan is which column is what, and how it is read.
type plan struct {
	layout  *layout
	time    pick
	clock   clock
	series  []*series
	remarks []say.Text
}

// pick is a column that was chosen for a key.
type pick struct {
	Column
	index int
}

// chooser finds a column for each key: set by hand, by name, then by values.
type chooser struct {
	l        *layout
	samples  []sample
	headings []heading
	byHand   map[string]string
	taken    map[int]bool
	found    map[string]pick
	remarks  []say.Text
}

func (c *chooser) choose() (*plan, error) {
	c.headings = c.l.headings(c.samples)
	if err := c.checkKeys(); err != nil {
		return nil, err
	}
	for _, find := range []func(string) (pick, bool, error){c.fromHand, c.fromName, c.fromValues} {
		for _, key := range Keys() {
			if _, done := c.found[key]; done || c.leftOut(key) {
				continue
			}
			p, ok, err := find(key)
			if err != nil {
				return nil, err
			}
			if ok {
				c.taken[p.index] = true
				c.found[key] = p
			}
		}
	}
	return c.plan()
}

// told are the columns that were found, even if others weren't.
func (c *chooser) told() (out []Column) {
	for _, key := range Keys() {
		if p, ok := c.found[key]; ok {
			out = append(out, p.Column)
		}
	}
	return out
}

func (c *chooser) checkKeys() error {
	for key := range c.byHand {
		if !slices.Contains(Keys(), key) {
			return fmt.Errorf("columns set by hand: %q is none of %s", key, strings.Join(Keys(), ", "))
		}
	}
	return nil
}

func (c *chooser) leftOut(key string) bool {
	text, set := c.byHand[key]
	return set && text == ""
}

func (c *chooser) fromHand(key string) (pick, bool, error) {
	text, set := c.byHand[key]
	if !set {
		return pick{}, false, nil
	}
	for i, h := range c.headings {
		if strings.EqualFold(strings.TrimSpace(text), h.text) {
			return c.pick(key, i, false), true, c.hasValues(i)
		}
	}
	return pick{}, false, fmt.Errorf("line %d: no column %q, which was set by hand for %s: the columns are %s", c.headingLine(), text, key, quoted(c.l.header))
}

// hasValues refuses a column that was set by hand and holds nothing to read.
func (c *chooser) hasValues(i int) error {
	s := &c.samples[i]
	if s.numbers+s.stamps > 0 {
		return nil
	}
	if s.text.n == 0 && !c.l.whole {
		return nil // it may begin later
	}
	if s.text.n == 0 {
		return fmt.Errorf("line %d, column %q: is blank, here and below: set another column by hand", c.l.firstData, c.headings[i].text)
	}
	return fmt.Errorf("line %d, column %q: %q is no number, nor is any cell below: set another column by hand", s.text.line, c.headings[i].text, s.text.cell)
}

func (c *chooser) pick(key string, i int, guessed bool) pick {
	return pick{Column{Key: key, Header: c.headings[i].text, Guessed: guessed}, i}
}

// candidates are free columns, the best first. The text of the heading
// settles a tie, so that the order of columns doesn't matter.
func (c *chooser) candidates(score func(i int) float64) []int {
	var out []int
	scores := make([]float64, len(c.headings))
	for i := range c.headings {
		if !c.taken[i] {
			scores[i] = score(i)
		}
		if scores[i] > 0 {
			out = append(out, i)
		}
	}
	slices.SortStableFunc(out, func(a, b int) int {
		return cmp.Or(cmp.Compare(scores[b], scores[a]), cmp.Compare(c.headings[a].text, c.headings[b].text))
	})
	return out
}

func (c *chooser) fromName(key string) (pick, bool, error) {
	all := c.candidates(func(i int) float64 {
		if c.headings[i].key != key {
			return 0
		}
		score := float64(c.headings[i].score)
		if key == Time { // the finest of several clocks
			rises, falls := c.samples[i].steps()
			score += 1000 * math.Round(10*float64(rises)/float64(1+rises+falls+c.still(i)))
		}
		return score
	})
	for _, i := range all {
		if c.plausible(key, i) {
			return c.pick(key, i, false), true, nil
		}
		c.remarks = append(c.remarks, say.Of("log.named-like", strconv.Quote(c.headings[i].text), columnText(key)))
	}
	return pick{}, false, nil
}

// still counts the steps on which a column doesn't move.
func (c *chooser) still(i int) int {
	rises, falls := c.samples[i].steps()
	return max(0, c.samples[i].numbers+c.samples[i].stamps-1-rises-falls)
}
