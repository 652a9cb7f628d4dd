package logfile

import (
	"bytes"
	"math"
)

// form is how a column tells the time.
type form int

const (
	noTime  form = iota
	counted      // a number
	short        // a:b, minutes and seconds or hours and minutes
	shortS       // a:b.c, minutes and seconds
	clocked      // hh:mm:ss
	dated        // with a date
)

// periodS is after how long a clock of this form begins again at the earliest.
func (f form) periodS() float64 {
	switch f {
	case short, shortS:
		return hourS
	case clocked:
		return dayS
	}
	return math.Inf(1)
}

const (
	dayS  = 86400
	hourS = 3600
)

// stamp is a time of day, a date, or both, as a cell has them.
type stamp struct {
	form     form
	seconds  float64 // since midnight; of short forms as minutes and seconds
	days     int64   // since 1970, if dated
	zoneS    float64
	halfDays int // 1 for am, 2 for pm
}

// readStamp reads a time stamp in one of the forms ISO 8601 and the usual
// local ones: date and time in any order, or one of them alone.
func readStamp(cell []byte, monthFirst bool) (stamp, bool) {
	var s stamp
	cell = trimLeft(plainBlanks(cell))
	for parts := 0; len(cell) > 0; parts++ {
		var part []byte
		part, cell = cutPart(cell)
		if parts > 4 || !s.add(part, monthFirst) {
			return stamp{}, false
		}
	}
	if s.halfDays > 0 && (s.form == noTime || s.seconds >= 13*hourS) {
		return stamp{}, false
	}
	if s.halfDays > 0 && s.seconds >= 12*hourS {
		s.seconds -= 12 * hourS
	}
	if s.halfDays == 2 {
		s.seconds += 12 * hourS
	}
	return s, s.form != noTime
}

// plainBlanks has blanks where lines mustn't break as others: some write them before AM.
func plainBlanks(cell []byte) []byte {
	for _, blank := range []string{"\u00a0", "\u202f"} {
		if bytes.Contains(cell, []byte(blank)) {
			cell = bytes.ReplaceAll(cell, []byte(blank), []byte{' '})
		}
	}
	return cell
}

// cutPart cuts at a blank, or at the T between date and time.
func cutPart(cell []byte) (part, rest []byte) {
	for i, c := range cell {
		between := i > 0 && i+1 < len(cell) && isDigit(cell[i-1]) && isDigit(cell[i+1])
		if c == ' ' || (c == 'T' || c == 't' || c == '_') && between {
			return cell[:i], trimLeft(cell[i+1:])
		}
	}
	return cell, nil
}

func (s *stamp) add(part []byte, monthFirst bool) bool {
	switch {
	case s.addWord(part):
		return true
	case (part[0] == '+' || part[0] == '-') && len(part) > 1: // a zone by itself
		_, zoneS, ok := cutZone(append([]byte{'0'}, part...))
		s.zoneS = zoneS
		return ok && s.form != noTime
	case bytes.IndexByte(part, ':') > 0:
		return s.addClock(part)
	}
	days, ok := readDate(part, monthFirst)
	if !ok || s.form == dated {
		return false
	}
	if s.form == short || s.form == shortS { // beside a date it is the hour
		s.seconds *= 60
	}
	s.days, s.form = days, dated
	return true
}

func (s *stamp) addWord(part []byte) bool {
	switch string(bytes.ToLower(part)) {
	case "am", "a.m.", "a.":
		s.halfDays = 1
	case "pm", "p.m.", "p.":
		s.halfDays = 2
	case "m.": // as Spanish has it: p. m.
		return s.halfDays > 0
	case "z", "utc", "gmt":
	default:
		return false
	}
	return true
}

// addClock reads a:b, a:b.c, hh:mm:ss, hh:mm:ss.fff and hh:mm:ss:fff with a
// zone behind it.
func (s *stamp) addClock(part []byte) bool {
	part, zoneS, ok := cutZone(part)
	if !ok || s.form == short || s.form == shortS || s.form == clocked {
		return false
	}
	groups, n, fraction, ok := readGroups(part)
	if !ok || n < 2 {
		return false
	}
	value, is := groups[0]*60+groups[1]+fraction, short
	switch {
	case n > 2:
		value, is = groups[0]*hourS+groups[1]*60+groups[2]+groups[3]/1000+fraction, clocked
	case bytes.ContainsAny(part, ".,"):
		is = shortS
	case s.form == dated:
		value *= 60
	}
	s.seconds, s.zoneS = value, zoneS
	s.form = max(s.form, is)
	return groups[1] < 60 && (n < 3 || groups[2] < 61)
}

// cutZone takes Z, +01:00, -0100 or +01 off the end.
func cutZone(part []byte) (clock []byte, zoneS float64, ok bool) {
	if last := part[len(part)-1]; last == 'Z' || last == 'z' {
		return part[:len(part)-1], 0, true
	}
	i := bytes.LastIndexAny(part, "+-")
	if i <= 0 {
		return part, 0, true
	}
	digits := bytes.ReplaceAll(part[i+1:], []byte{':'}, nil)
	hhmm, rest, ok := readInt(digits)
	if !ok || len(rest) > 0 || len(digits) > 4 {
		return nil, 0, false
	}
	if len(digits) <= 2 {
		hhmm *= 100
	}
	zoneS = float64(hhmm/100*hourS + hhmm%100*60)
	if part[i] == '-' {
		zoneS = -zoneS
	}
	return part[:i], zoneS, true
}

// readGroups reads up to four whole numbers between colons and a fraction.
func readGroups(b []byte) (groups [4]float64, n int, fraction float64, ok bool) {
	for n < len(groups) {
		v, rest, ok := readInt(b)
		if !ok {
			return groups, n, 0, false
		}
		groups[n] = float64(v)
		n++
		if len(rest) == 0 {
			return groups, n, 0, true
		}
		b = rest[1:]
		if rest[0] == '.' || rest[0] == ',' {
			fraction, ok = readFraction(b)
			return groups, n, fraction, ok && n < len(groups)
		}
		if rest[0] != ':' {
			break
		}
	}
	return groups, n, 0, false
}

func readInt(b []byte) (v int, rest []byte, ok bool) {
	i := 0
	for i < len(b) && i < 9 && isDigit(b[i]) {
		v = v*10 + int(b[i]-'0')
		i++
	}
	return v, b[i:], i > 0
}

func readFraction(b []byte) (v float64, ok bool) {
	mantissa, digits := uint64(0), 0
	for _, c := range b {
		if !isDigit(c) {
			return 0, false
		}
		if digits < 15 {
			mantissa = mantissa*10 + uint64(c-'0')
			digits++
		}
	}
	return scaled(mantissa, -digits), true
}
