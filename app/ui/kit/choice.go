package kit

import "slices"

// Unknown is what a choice shows while nothing is chosen.
func Unknown() string { return L("window.kit.not-known") }

// Choice is a list to choose a word of the format from, shown in the words of
// the trade. The empty word is "not known" and can be chosen.
type Choice[T ~string] struct {
	*Select
	words []T
	meant map[string]T // by the names ever offered: a list that hangs open has older ones
	quiet bool
	sure  bool // "not known" is no answer
}

// NewChoice makes a list; name gives a word's name and chosen is called when a
// person picks one.
func NewChoice[T ~string](words []T, name func(T) string, chosen func(T)) *Choice[T] {
	c := &Choice[T]{meant: map[string]T{}}
	c.Select = NewSelect(nil, func(picked string) {
		if w, ok := c.meant[picked]; ok && !c.quiet {
			chosen(w)
		}
	})
	c.PlaceHolder = Unknown()
	c.Offer(words, name)
	return c
}

// Offer lists other words, or the same in another order or by other names. What is
// chosen must be Put again.
func (c *Choice[T]) Offer(words []T, name func(T) string) {
	c.words = nil
	var names []string
	if !c.sure {
		c.words, names = []T{""}, []string{Unknown()}
	}
	for _, w := range words {
		c.words, names = append(c.words, w), append(names, name(w))
	}
	for i, n := range names {
		c.meant[n] = c.words[i]
	}
	if !slices.Equal(names, c.Options) {
		c.SetOptions(names)
	}
}

// Sure leaves "not known" out of the list, where that is no answer.
func (c *Choice[T]) Sure() {
	c.sure = true
	c.words = c.words[1:]
	c.SetOptions(c.Options[1:])
}

// Put shows a word as chosen without telling.
func (c *Choice[T]) Put(word T) {
	c.quiet = true
	defer func() { c.quiet = false }()
	if i := slices.Index(c.words, word); i >= 0 && word != "" {
		c.SetSelectedIndex(i)
		return
	}
	c.ClearSelected()
}
