package kit

import (
	"fyne.io/fyne/v2/widget"
)

// Unknown is what a choice shows while nothing is chosen.
func Unknown() string { return L("window.kit.not-known") }

// Choice is a list to choose a word of the format from, shown in the words of
// the trade. The empty word is "not known" and can be chosen.
type Choice[T ~string] struct {
	*widget.Select
	words []T
	quiet bool
}

// NewChoice makes a list; name gives a word's name and chosen is called when a
// person picks one.
func NewChoice[T ~string](words []T, name func(T) string, chosen func(T)) *Choice[T] {
	c := &Choice[T]{words: append([]T{""}, words...)}
	names := []string{Unknown()}
	for _, w := range words {
		names = append(names, name(w))
	}
	c.Select = widget.NewSelect(names, func(string) {
		if i := c.SelectedIndex(); !c.quiet && i >= 0 {
			chosen(c.words[i])
		}
	})
	c.PlaceHolder = Unknown()
	return c
}

// Put shows a word as chosen without telling.
func (c *Choice[T]) Put(word T) {
	c.quiet = true
	defer func() { c.quiet = false }()
	for i, w := range c.words {
		if w == word {
			if i == 0 {
				c.ClearSelected()
				return
			}
			c.SetSelectedIndex(i)
			return
		}
	}
	c.ClearSelected()
}
