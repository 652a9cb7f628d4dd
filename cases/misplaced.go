package cases

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"
	"sync"
)

// Misplacement is a key that stands where it isn't read, though the format has
// it elsewhere.
type Misplacement struct {
	Path    string   // as "symptoms", "rounds[0].cap_kpa"
	Belongs []string // the objects that have it, as "complaint", "rounds[].readings[]"; "" is the top
}

// Misplaced are the case's unknown keys that the format knows elsewhere, in the
// order of their paths. Such a key is kept as any other that isn't known, so a
// slip of whoever wrote the file would go unseen.
func Misplaced(c *Case) []Misplacement {
	out := misplacedIn(reflect.ValueOf(c).Elem())
	slices.SortFunc(out, func(a, b Misplacement) int { return cmp.Compare(a.Path, b.Path) })
	return out
}

// misplacedIn are those of an object and of the objects in it, with their paths
// from it on. Most cases have none, so paths are only written for what is found.
func misplacedIn(v reflect.Value) []Misplacement {
	var out []Misplacement
	for key := range v.FieldByName("Extra").Interface().(Extra) {
		if places := homes()[key]; places != nil {
			out = append(out, Misplacement{key, places})
		}
	}
	t := v.Type()
	for i := 0; i < v.NumField(); i++ {
		f := v.Field(i)
		switch {
		case holdsKeys(f.Type()):
			for _, m := range misplacedIn(f) {
				out = append(out, Misplacement{join(t.Field(i).Tag.Get("json"), m.Path), m.Belongs})
			}
		case f.Kind() == reflect.Slice && holdsKeys(f.Type().Elem()):
			for n := 0; n < f.Len(); n++ {
				for _, m := range misplacedIn(f.Index(n)) {
					at := fmt.Sprintf("%s[%d]", t.Field(i).Tag.Get("json"), n)
					out = append(out, Misplacement{join(at, m.Path), m.Belongs})
				}
			}
		}
	}
	return out
}

// holdsKeys reports whether a type is one of the format's objects.
func holdsKeys(t reflect.Type) bool {
	if t.Kind() != reflect.Struct {
		return false
	}
	_, ok := t.FieldByName("Extra")
	return ok
}

// homes are the objects that have a key, by the key; read from the record's own
// types, once.
var homes = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	addHomes(reflect.TypeOf(Case{}), "", out)
	return out
})

func addHomes(t reflect.Type, path string, out map[string][]string) {
	for i := 0; i < t.NumField(); i++ {
		f := t.Field(i)
		key := f.Tag.Get("json")
		if key == "-" {
			continue
		}
		if !slices.Contains(out[key], path) {
			out[key] = append(out[key], path)
		}
		inner, at := f.Type, join(path, key)
		if inner.Kind() == reflect.Slice {
			inner, at = inner.Elem(), at+"[]"
		}
		if holdsKeys(inner) {
			addHomes(inner, at, out)
		}
	}
}
