package words

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"loopbook/app/ui/compare"
	"loopbook/app/ui/kit"
	"loopbook/cases"
	"loopbook/diagram"
	"loopbook/diagram/say"
	"loopbook/diagram/units"
)

// Differences are the places at which two cases say something else, and those at which
// they say the same.
func Differences(a, b cases.Case, u units.Set) (differ, same []compare.Row, err error) {
	left, err := placesOf(a, u)
	if err != nil {
		return nil, nil, err
	}
	right, err := placesOf(b, u)
	if err != nil {
		return nil, nil, err
	}
	var places []string // without the names that a person may have changed
	keys := map[string][]string{}
	for _, side := range []map[string]told{left, right} {
		for where, t := range side {
			if keys[where] == nil {
				places = append(places, where)
			}
			keys[where] = t.keys
		}
	}
	order := keyOrder()
	slices.SortFunc(places, func(x, y string) int {
		return cmp.Or(cmp.Compare(order[keys[x][0]], order[keys[y][0]]), slices.Compare(keys[x], keys[y]), cmp.Compare(x, y))
	})
	for _, where := range places {
		r := compare.Row{Where: named(where, left[where].where, right[where].where), Left: left[where].says, Right: right[where].says}
		switch l, other := left[where].raw, right[where].raw; {
		case l == other:
			same = append(same, r)
		case r.Left == r.Right: // rounded alike
			r.Left, r.Right = l, other
			fallthrough
		default:
			differ = append(differ, r)
		}
	}
	return differ, same, nil
}

// named is a place with the name that both cases, or the one that has it, give what it is in.
func named(where, left, right string) string {
	switch {
	case left == right || right == "":
		return left
	case left == "":
		return right
	}
	return where
}

// keyOrder is where a case's keys stand: first what the car showed and what was made of it, then all else as in the format.
func keyOrder() map[string]int {
	order := map[string]int{}
	shows := []string{"complaint", "codes", "rounds", "logs", "tests", "verdict", "repair"}
	for i, key := range shows {
		order[key] = i - len(shows)
	}
	of := reflect.TypeFor[cases.Case]()
	for i := range of.NumField() {
		if key := of.Field(i).Tag.Get("json"); order[key] == 0 {
			order[key] = i
		}
	}
	return order
}

// told is what a case says at a place.
type told struct {
	keys  []string // that lead to it
	where string
	raw   string // as the format has it: two that are rounded alike may differ
	says  string
}

// placesOf is every place of a case, in words without labels, with what it says. Long series are told by
// their length.
func placesOf(c cases.Case, u units.Set) (map[string]told, error) {
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
	t := &teller{units: u, out: map[string]told{}}
	t.object(spot{}, whole)
	return t.out, nil
}

// teller walks through a case's document.
type teller struct {
	units units.Set
	out   map[string]told
}

// mostInList is how long a list of numbers or words is written out.
const mostInList = 8

func (t *teller) object(at spot, object map[string]any) {
	for key, v := range object {
		inner := at.key(key)
		list, isList := v.([]any)
		switch {
		case v == nil:
		case !isList:
			t.value(inner, v)
		case len(list) > 0 && !isObject(list[0]):
			t.tell(inner, list, t.listWords(inner, list))
		default:
			for i, one := range list {
				name, by := nameOf(one)
				t.value(inner.item(i, name, isLabel(by)), unnamed(one, by))
			}
		}
	}
}

func (t *teller) value(at spot, v any) {
	if object, ok := v.(map[string]any); ok {
		t.object(at, object)
		return
	}
	t.tell(at, v, at.value(v, t.units))
}

func (t *teller) tell(at spot, v any, says string) {
	t.out[at.sureWords()] = told{at.keys, at.words(), fmt.Sprint(v), says}
}

func isObject(v any) bool {
	_, is := v.(map[string]any)
	return is
}

func (t *teller) listWords(at spot, list []any) string {
	if len(list) > mostInList {
		return kit.L("window.compare.values", len(list))
	}
	words := make([]string, len(list))
	for i, x := range list {
		words[i] = at.value(x, t.units)
	}
	return strings.Join(words, ", ")
}

// nameOf tells one thing of a list from the others: by its point, its kind or its code, or by what a person named it. By is
// the key that has the name.
func nameOf(v any) (name, by string) {
	object, _ := v.(map[string]any)
	for _, by := range []string{"point", "kind", "code", "label", "name"} {
		word, _ := object[by].(string)
		switch {
		case word == "":
			continue
		case by == "point":
			word = say.Place(diagram.Point(word)).String()
		case by == "kind":
			word = cases.TestKind(word).Name()
		}
		return word, by
	}
	return "", ""
}

// isLabel reports whether a key's name is one that a person gave.
func isLabel(by string) bool { return by == "label" || by == "name" }

// unnamed is a thing without what it was named by, which would be told twice, unless that is all there is of it; a label is
// told of its own.
func unnamed(v any, by string) any {
	object, _ := v.(map[string]any)
	if len(object) > 1 && !isLabel(by) {
		object = maps.Clone(object)
		delete(object, by)
		return object
	}
	return v
}
