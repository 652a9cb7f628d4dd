package logfile

import (
	"slices"
	"strings"
)

// plausible reports whether a column's values can be what its name says.
func (c *chooser) plausible(key string, i int) bool {
	s := &c.samples[i]
	if key == Time {
		return s.advances(0.4) // midnight and slips among few rows count as falls
	}
	if c.ofAnother(key, i) {
		return false
	}
	const most = 0.6 // of the values; the others may be a broken sensor's
	if s.numbers == 0 && s.text.n == 0 && !c.l.whole {
		return true // it may begin later
	}
	u := c.unitFor(key, i)
	low, high := usual(key)
	if s.numbers == 0 || s.share(u, low, high) < most {
		return false
	}
	all := s.present()
	return key != RPM || slices.Max(all) >= 300 || slices.Max(all) == 0 // else thousands, or no revolutions
}

// ofAnother reports whether a column's unit is of something else than its name, as a sensor's volts beside its °C.
// A degree alone is a slip of the pen.
func (c *chooser) ofAnother(key string, i int) bool {
	u := c.headings[i].unit
	return u.name != "" && u.name != "°" && !strings.EqualFold(u.name, "deg") && u.of != dimensionOf(key)
}

// usual is the range in which the values of a key lie, in the log's unit.
func usual(key string) (low, high float64) {
	switch key {
	case Ect, Intake:
		return -45, 160
	case RPM:
		return 0, 12_000
	case Speed:
		return -1, 350
	}
	return 0, 150
}

// bounds are what a value must keep to be kept at all: those of the case
// format for temperatures, for the others what no road vehicle does.
func bounds(key string) (low, high float64) {
	switch key {
	case Ect, Intake:
		return -60, 400
	case RPM:
		return 0, 20_000
	case Speed:
		return -5, 500
	}
	return -1, 1000
}

// advances reports whether values go on like a time does, seldom back.
func (s *sample) advances(mostFalls float64) bool {
	all := s.present()
	rises, falls := s.steps()
	return len(all) >= 2 && rises > 0 && float64(falls) <= mostFalls*float64(rises+falls) && len(all) > s.text.n
}

// unitFor is the stated unit if it fits the key, else the one that the values
// look like, else the usual one.
func (c *chooser) unitFor(key string, i int) unit {
	u := c.headings[i].unit
	if u.of == dimensionOf(key) && u.name != "" {
		return u
	}
	switch {
	case dimensionOf(key) == temperature && u.name == "" && (c.samples[i].looksFahrenheit() || c.inFahrenheit()):
		u, _ = unitOf("°F")
		return u
	case key == Load && u.name == "" && c.samples[i].looksShare():
		return unit{"0 to 1", share, 100, 0}
	}
	return assumedUnit(key)
}

// inFahrenheit reports whether the file has °F where it tells a unit at all.
func (c *chooser) inFahrenheit() bool {
	told := func(name string) bool {
		return slices.ContainsFunc(c.headings, func(h heading) bool { return h.unit.name == name })
	}
	return told("°F") && !told("°C")
}

// looksFahrenheit: a tenth of the values is hotter than any coolant in °C, and
// none than in °F.
func (s *sample) looksFahrenheit() bool {
	u, _ := unitOf("°C")
	return s.share(u, 135, 300) >= 0.1 && s.share(u, -50, 300) >= 0.98 && s.share(u, 213, 216) < 0.02 // 215 °C is a sensor's end of scale
}

// looksShare: between 0 and 1, with parts.
func (s *sample) looksShare() bool {
	u := assumedUnit(Load)
	return s.share(u, 0, 1.2) == 1 && s.share(u, 0.01, 0.99) > 0.1
}

// fromValues takes the one column whose values look like the key. Columns that
// are named as another quantity don't come into question, and where two look
// alike none is taken, but for the time.
func (c *chooser) fromValues(key string) (pick, bool, error) {
	all := c.candidates(func(i int) float64 {
		h := c.headings[i]
		if h.other || h.key != "" || h.unit.name != "" && h.unit.of != dimensionOf(key) {
			return 0
		}
		if key != Time && key != Ect && c.l.headerLine > 0 && !h.opaque() {
			return 0
		}
		return c.samples[i].looksLike(key)
	})
	if len(all) == 0 || len(all) > 1 && key != Time && key != Ect {
		return pick{}, false, nil
	}
	if key == Ect && len(all) > 1 && c.samples[all[0]].looksLike(key) == c.samples[all[1]].looksLike(key) {
		return pick{}, false, nil
	}
	return c.pick(key, all[0], true), true, nil
}

// opaque reports whether a heading says nothing: numbers and words for a column.
func (h heading) opaque() bool {
	return !slices.ContainsFunc(h.words, func(w string) bool {
		switch w {
		case "column", "channel", "ch", "kanal", "spalte", "canal", "columna", "data", "field", "input", "series":
			return false
		}
		return len(w) > 2
	})
}

// looksLike scores how much values are like those of a key; 0 if they can't be.
func (s *sample) looksLike(key string) float64 {
	rises, falls := s.steps()
	if key == Time {
		if !s.advances(0.01) {
			return 0
		}
		if s.stamps > s.numbers {
			return 2e6
		}
		return float64(rises)
	}
	all := s.present()
	if s.numbers < 3 || s.stamps > 0 || !(slices.Max(all) > slices.Min(all)) {
		return 0
	}
	low, high := slices.Min(all), slices.Max(all)
	switch {
	case key == Ect && low >= -45 && high >= 40 && high <= 150 && s.restlessness() <= 4:
		return max(0.1, all[len(all)-1]-all[0]) // the one that warms most
	case key == RPM && low >= 0 && high >= 900 && high <= 10_000 && falls > 0 && medianOf(all) >= 400:
		return 1
	case key == Speed && low == 0 && high > 105 && high <= 300 && medianOf(all) < 150 && falls > 0:
		return 1
	case key == Intake && low >= -45 && high <= 90 && s.restlessness() <= 8 && falls > 0:
		return 1
	}
	return 0
}
