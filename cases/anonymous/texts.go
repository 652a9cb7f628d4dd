package anonymous

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"time"

	"loopbook/cases"
)

// texts walks the whole case: texts that a person wrote lose their secrets, and
// keys that the program doesn't know go.
func (m *maker) texts(c *cases.Case) { m.walk("", reflect.ValueOf(c).Elem()) }

func (m *maker) walk(path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		if _, ok := v.Interface().(time.Time); ok {
			return
		}
		for i := range v.NumField() {
			f := v.Type().Field(i)
			key := f.Tag.Get("json")
			switch {
			case f.Type == reflect.TypeFor[cases.Extra]():
				m.unknown(path, v.Field(i))
			case key == "" || key == "-": // a surface's own fields
			case path == "" && slices.Contains([]string{"format", "id"}, key):
			default:
				m.walk(join(path, key), v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			m.walk(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.String:
		if v.Type() == reflect.TypeFor[string]() { // the others are words of the format
			m.text(path, v)
		}
	}
}

func (m *maker) text(path string, v reflect.Value) {
	was := v.String()
	if strings.HasSuffix(path, "].file") || path == "loop.layout" || path == "vehicle.vin" {
		return
	}
	now := m.hide.clean(was)
	if now != was {
		m.goes(Words, path, was, now)
		v.SetString(now)
	}
	if strings.TrimSpace(now) != "" {
		m.stays(FreeText, path, now)
	}
}

// unknown keys go: nobody here can tell what they hold.
func (m *maker) unknown(path string, v reflect.Value) {
	extra := v.Interface().(cases.Extra)
	for _, key := range extra.Keys() {
		m.goes(Unknown, join(path, key), string(extra[key]), "")
	}
	v.SetZero()
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
