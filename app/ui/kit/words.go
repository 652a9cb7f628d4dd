package kit

import (
	"encoding/json"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"

	"loopbook/diagram/say"
)

// registered hands the shipped words to the toolkit, once.
var registered = sync.OnceValue(func() error {
	words, err := say.Catalogue(say.EN)
	if err != nil {
		return err
	}
	raw, err := json.Marshal(words)
	if err != nil {
		return err
	}
	return lang.AddTranslationsForLocale(raw, fyne.Locale("en"))
})

// L is the window's word of that name, of assets/words/en/window-*.json, with
// its places filled. What isn't there shows its name.
func L(key string, args ...any) string {
	if err := registered(); err != nil {
		return err.Error() // shipped data that the tests read
	}
	return say.English().Fill(lang.L(key), args...)
}
