package report

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/image/font/sfnt"
)

// missing stands for a letter that the font lacks, so that the gap is seen.
const missing = '▯'

// glyphs knows which letters a font has.
type glyphs struct {
	font *sfnt.Font
	buf  *sfnt.Buffer
}

func readGlyphs(ttf []byte) (glyphs, error) {
	font, err := sfnt.Parse(ttf)
	if err != nil {
		return glyphs{}, fmt.Errorf("paper: font: %w", err)
	}
	return glyphs{font, &sfnt.Buffer{}}, nil
}

// has reports whether the font can write r. gofpdf takes no rune above U+FFFF.
func (g glyphs) has(r rune) bool {
	if r > 0xFFFF {
		return false
	}
	i, err := g.font.GlyphIndex(g.buf, r)
	return err == nil && i != 0
}

// clean makes a text writable: other control characters than line ends go, a
// letter that the font lacks becomes a box.
func (p *paper) clean(text string, s style) string {
	font := p.plain
	if s.bold {
		font = p.bold
	}
	text = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\t", " ").Replace(text)
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r < 0x7F && r >= ' ':
			return r
		case unicode.IsControl(r):
			return -1
		case !font.has(r):
			return missing
		}
		return r
	}, text)
}

// wrap breaks a text at its line ends and at blanks into lines that are no
// wider than width; a word that is wider is broken anywhere. A text with
// nothing in it is one empty line.
func wrap(text string, width float64, measure func(string) float64) []string {
	var lines []string
	blank := measure(" ")
	for _, paragraph := range strings.Split(strings.TrimRight(text, "\n "), "\n") {
		line, used := "", 0.0
		for _, word := range glued(strings.Split(paragraph, " ")) {
			w := measure(word)
			switch {
			case word == "":
				continue
			case line != "" && used+blank+w <= width:
				line, used = line+" "+word, used+blank+w
				continue
			case line != "":
				lines = append(lines, line)
			}
			var full []string
			full, line, used = breakWord(word, w, width, measure)
			lines = append(lines, full...)
		}
		lines = append(lines, line)
	}
	return lines
}

// glued joins a number to the unit behind it, so that no line ends between them.
func glued(words []string) []string {
	out := words[:0:0]
	for _, w := range words {
		last := len(out) - 1
		if last >= 0 && isUnit(w) && endsInDigit(out[last]) {
			out[last] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

func isUnit(word string) bool {
	switch strings.TrimRight(word, ".,;:)") {
	case "°C", "°F", "K", "F°", "kPa", "psi", "bar", "km", "mi", "km/h", "mph", "rpm", "/min", "min", "h", "s", "%", "mm", "V", "Ω", "L", "l", "m":
		return true
	}
	return false
}

func endsInDigit(word string) bool {
	return word != "" && word[len(word)-1] >= '0' && word[len(word)-1] <= '9'
}

// breakWord cuts a word into full lines and the rest with its width.
func breakWord(word string, w, width float64, measure func(string) float64) (full []string, rest string, used float64) {
	if w <= width {
		return nil, word, w
	}
	start := 0
	for i, r := range word {
		step := measure(string(r))
		if used+step > width && i > start {
			full = append(full, word[start:i])
			start, used = i, 0
		}
		used += step
	}
	return full, word[start:], used
}

// lines is a text, cleaned and wrapped.
func (p *paper) lines(text string, width float64, s style) []string {
	return wrap(p.clean(text, s), width, func(t string) float64 { return p.measure(t, s) })
}

// measure is the width of a clean text.
func (p *paper) measure(text string, s style) float64 {
	p.font(s)
	return p.pdf.GetStringWidth(text)
}

// font chooses a style's font; gofpdf would write each choice into the page, even
// one that is only measured with.
func (p *paper) font(s style) {
	if s.ink = ""; s == p.chosen {
		return
	}
	p.chosen = s
	weight := ""
	if s.bold {
		weight = "B"
	}
	p.pdf.SetFont(family, weight, s.size)
}

// put writes a clean text with the left top of its line at (x, y).
func (p *paper) put(x, y float64, text string, s style) {
	if text == "" {
		return
	}
	p.font(s)
	c := p.palette[s.ink]
	p.pdf.SetTextColor(int(c.R), int(c.G), int(c.B))
	p.pdf.Text(x, y+s.lead()*0.5+s.size*0.36, visual(text))
}
