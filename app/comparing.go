package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"sort"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"

	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
)

// differences are the places at which two cases say something else, and those at which
// they say the same.
func differences(a, b cases.Case) (differ, same []compare.Row, err error) {
	left, err := placesOf(a)
	if err != nil {
		return nil, nil, err
	}
	right, err := placesOf(b)
	if err != nil {
		return nil, nil, err
	}
	where := map[string]bool{}
	for k := range left {
		where[k] = true
	}
	for k := range right {
		where[k] = true
	}
	names := make([]string, 0, len(where))
	for k := range where {
		names = append(names, k)
	}
	order := keyOrder()
	sort.Slice(names, func(i, j int) bool {
		a, b := order[firstKey(names[i])], order[firstKey(names[j])]
		return a < b || a == b && names[i] < names[j]
	})
	for _, k := range names {
		r := compare.Row{Where: k, Left: left[k], Right: right[k]}
		if r.Left == r.Right {
			same = append(same, r)
		} else {
			differ = append(differ, r)
		}
	}
	return differ, same, nil
}

// keyOrder is where a case's keys stand in the format.
func keyOrder() map[string]int {
	order := map[string]int{}
	of := reflect.TypeFor[cases.Case]()
	for i := range of.NumField() {
		order[of.Field(i).Tag.Get("json")] = i
	}
	return order
}

func firstKey(place string) string {
	first, _, _ := strings.Cut(place, " · ")
	return first
}

// placesOf is every place of a case with what it says, in words. Long series are told by
// their length.
func placesOf(c cases.Case) (map[string]string, error) {
	text, err := cases.Encode(c)
	if err != nil {
		return nil, err
	}
	var whole map[string]any
	if err := json.Unmarshal(text, &whole); err != nil {
		return nil, err
	}
	for _, key := range []string{"format", "version", "id"} {
		delete(whole, key)
	}
	out := map[string]string{}
	walkPlaces(out, "", whole)
	return out, nil
}

// mostInList is how long a list of numbers or words is written out.
const mostInList = 8

func walkPlaces(out map[string]string, at string, v any) {
	switch v := v.(type) {
	case map[string]any:
		for key, inner := range v {
			walkPlaces(out, joinPlace(at, strings.ReplaceAll(key, "_", " ")), inner)
		}
	case []any:
		if len(v) > 0 {
			if _, plain := v[0].(map[string]any); !plain {
				out[at] = listWords(at, v)
				return
			}
		}
		for i, inner := range v {
			walkPlaces(out, joinPlace(at, nameOf(inner, i)), inner)
		}
	case nil:
	default:
		out[at] = tradeName(at, fmt.Sprint(v))
	}
}

// tradeName is a word of the format as people of the trade say it, where its place
// tells what it is.
func tradeName(at, word string) string {
	switch at[strings.LastIndex(at, " ")+1:] {
	case "cause":
		return cases.Cause(word).Name()
	case "symptoms":
		return cases.Symptom(word).Name()
	case "layout":
		return kit.LayoutTitle(word)
	}
	return word
}

func joinPlace(at, key string) string {
	if at == "" {
		return key
	}
	return at + " · " + key
}

func listWords(at string, list []any) string {
	if len(list) > mostInList {
		return kit.L("window.compare.values", len(list))
	}
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = tradeName(at, fmt.Sprint(x))
	}
	return strings.Join(words, ", ")
}

// nameOf tells one thing of a list from the others: by its point, its kind, its code or
// its label, and else by its number.
func nameOf(v any, i int) string {
	object, _ := v.(map[string]any)
	if p, ok := object["point"].(string); ok {
		return say.Place(diagram.Point(p)).String()
	}
	for _, key := range []string{"kind", "code", "label", "name"} {
		if name, ok := object[key].(string); ok && name != "" {
			return fmt.Sprintf("%d %s", i+1, name)
		}
	}
	return fmt.Sprint(i + 1)
}

// showBeside puts two cases side by side.
func (w *window) showBeside(a, b cases.Case) {
	differ, same, err := differences(a, b)
	if err != nil {
		w.tell(err)
		return
	}
	w.ask(w.besideDialog(kit.L("window.compare.title"), compare.New(titleOf(a), titleOf(b), differ, same)))
}

// compareWithLast puts the open case beside the one that was open before it.
func (w *window) compareWithLast() {
	if !w.desk.open || w.before == "" || w.before == w.desk.c.ID {
		w.tell(errors.New(kit.L("window.compare.no-other")))
		return
	}
	other, err := w.desk.store.Get(w.desk.ctx, w.before)
	if err != nil {
		w.tell(err)
		return
	}
	w.showBeside(w.desk.c, other)
}

func (w *window) besideDialog(title string, content fyne.CanvasObject) dialog.Dialog {
	d := dialog.NewCustom(title, kit.L("window.frame.close"), content, w.window)
	d.Resize(w.window.Canvas().Size().Subtract(fyne.NewSize(160, 120)))
	return d
}

func titleOf(c cases.Case) string {
	if c.Title == "" {
		return kit.L("window.notebook.no-title")
	}
	return c.Title
}
