package cases

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"reflect"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"loopbook/diagram"
)

// MaxBytes bounds a case document: a day of logging at 1 Hz is a twelfth of it.
const MaxBytes = 32 << 20

// Decode reads one case document and checks it. An error is an Invalid, which
// lists every fault with its place, or tells that the text isn't JSON.
func Decode(text []byte) (Case, error) {
	if len(text) > MaxBytes {
		return Case{}, Invalid{{Problem: fmt.Sprintf("larger than %d MB: this is no case file", MaxBytes>>20)}}
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	if len(bytes.TrimSpace(text)) == 0 {
		return Case{}, Invalid{{Problem: "the file is empty"}}
	}
	if !utf8.Valid(text) {
		return Case{}, Invalid{{Problem: "the file is not UTF-8 text"}}
	}
	if err := wellFormed(text); err != nil {
		return Case{}, Invalid{{Problem: err.Error()}}
	}
	if bytes.Count(text, []byte(":")) > maxKeys { // no less than there are keys
		return Case{}, Invalid{{Problem: "has too many keys: this is no case file"}}
	}
	var c Case
	var d decoder
	d.object(text, "", reflect.ValueOf(&c).Elem())
	d.check(&c)
	if len(d.faults) > 0 {
		return Case{}, d.faults
	}
	return c, nil
}

// wellFormed reports the line of the first fault in the JSON text.
func wellFormed(text []byte) error {
	dec := json.NewDecoder(bytes.NewReader(text))
	var whole json.RawMessage
	err := dec.Decode(&whole)
	var syntax *json.SyntaxError
	switch {
	case errors.As(err, &syntax):
		return fmt.Errorf("line %d: not JSON: %w", lineOf(text, syntax.Offset), err)
	case errors.Is(err, io.ErrUnexpectedEOF):
		return fmt.Errorf("line %d: the file ends too early", lineOf(text, int64(len(text))))
	case err != nil:
		return fmt.Errorf("not JSON: %w", err)
	}
	if rest := bytes.TrimSpace(text[dec.InputOffset():]); len(rest) > 0 {
		return fmt.Errorf("line %d: text after the end of the case", lineOf(text, dec.InputOffset()))
	}
	return nil
}

func lineOf(text []byte, offset int64) int {
	return 1 + bytes.Count(text[:min(offset, int64(len(text)))], []byte("\n"))
}

// decoder fills the record from well-formed JSON by the structs' own json
// names, and collects faults with their paths. (encoding/json alone would stop
// at the first fault, drop unknown keys, and not know the units.)
type decoder struct {
	faults  Invalid
	objects int // in lists, so far
}

// Bounds of a document's lists and faults: a hostile file of the size allowed
// would else take a hundred times its own memory.
const (
	maxObjects = 100_000 // rounds, readings and the like together
	maxNumbers = 1e6     // in one series: eleven days at 1 Hz
	maxKeys    = 1e6     // of all objects together
	maxFaults  = 1000
)

func (d *decoder) fault(path, format string, args ...any) {
	if len(d.faults) == maxFaults {
		return
	}
	d.faults = append(d.faults, FieldError{path, fmt.Sprintf(format, args...)})
}

func (d *decoder) object(raw []byte, path string, v reflect.Value) {
	var keys map[string]json.RawMessage
	if json.Unmarshal(raw, &keys) != nil {
		d.fault(path, "must be an object, not %s", kindOf(raw))
		return
	}
	t := v.Type()
	for i := 0; i < t.NumField(); i++ {
		key := t.Field(i).Tag.Get("json")
		value, present := keys[key]
		delete(keys, key)
		if !present || isNull(value) {
			continue
		}
		d.value(value, join(path, key), key, v.Field(i))
	}
	if len(keys) > 0 {
		v.FieldByName("Extra").Set(reflect.ValueOf(Extra(keys)))
	}
}

func (d *decoder) value(raw []byte, path, key string, v reflect.Value) {
	switch v.Addr().Interface().(type) {
	case *time.Time:
		d.time(raw, path, v)
		return
	case *Surface:
		d.surface(raw, path, v)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		d.value(raw, path, key, v.Elem())
	case reflect.Struct:
		d.object(raw, path, v)
	case reflect.Slice:
		d.list(raw, path, key, v)
	case reflect.Float64:
		d.number(raw, path, key, v)
	default: // string, int and bool
		if json.Unmarshal(raw, v.Addr().Interface()) != nil {
			d.fault(path, "must be %s, not %s", wanted(v.Kind()), kindOf(raw))
			return
		}
		d.word(path, v)
	}
}

func (d *decoder) list(raw []byte, path, key string, v reflect.Value) {
	if d.tooMany(raw, v.Type().Elem().Kind()) {
		d.fault(path, "has too many items: this is no case file")
		return
	}
	var items []json.RawMessage
	if json.Unmarshal(raw, &items) != nil {
		d.fault(path, "must be a list, not %s", kindOf(raw))
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
	for i, item := range items {
		at := v.Index(i)
		if isNull(item) {
			if at.Kind() != reflect.Float64 {
				d.fault(fmt.Sprintf("%s[%d]", path, i), "must not be null")
			} else {
				at.SetFloat(math.NaN()) // a gap in a series
			}
			continue
		}
		d.value(item, fmt.Sprintf("%s[%d]", path, i), key, at)
	}
}

// tooMany counts a list's items before they take any memory.
func (d *decoder) tooMany(raw []byte, kind reflect.Kind) bool {
	objects := kind == reflect.Struct
	if !objects && len(raw) < 2*maxNumbers { // the shortest item and its comma
		return false
	}
	var items []struct{}
	_ = json.Unmarshal(raw, &items) // of any kind: their number alone is asked for
	if objects {
		d.objects += len(items)
		return d.objects > maxObjects
	}
	return len(items) > maxNumbers
}

func (d *decoder) number(raw []byte, path, key string, v reflect.Value) {
	var f float64
	if json.Unmarshal(raw, &f) != nil {
		d.fault(path, "must be a number, not %s", kindOf(raw))
		return
	}
	if strings.HasSuffix(key, "_c") && !diagram.Celsius(f).Plausible() {
		d.fault(path, "%g °C can't be: must be between %g and %g °C", f, float64(diagram.MinC), float64(diagram.MaxC))
		return
	}
	v.SetFloat(f)
}

func (d *decoder) word(path string, v reflect.Value) {
	w, ok := v.Interface().(word)
	if !ok || v.String() == "" {
		return
	}
	known := w.words()
	if !slices.Contains(known, v.String()) {
		d.fault(path, "unknown word %q: must be one of %s", Clip(v.String()), strings.Join(known, ", "))
	}
}

func (d *decoder) time(raw []byte, path string, v reflect.Value) {
	var s string
	if json.Unmarshal(raw, &s) != nil {
		d.fault(path, "must be a time as text, not %s", kindOf(raw))
		return
	}
	if s == "" {
		return
	}
	t, err := time.Parse(time.RFC3339Nano, s)
	if err != nil {
		d.fault(path, "%q is no time: must be as 2026-11-25T09:30:00Z (RFC 3339 with a zone)", Clip(s))
		return
	}
	v.Set(reflect.ValueOf(t))
}

func (d *decoder) surface(raw []byte, path string, v reflect.Value) {
	text := strings.TrimSpace(string(raw))
	if k := kindOf(raw); k != "text" && k != "a number" {
		d.fault(path, "must be a word or a number, not %s", k)
		return
	}
	var s string
	if json.Unmarshal(raw, &s) == nil {
		text = s
	}
	surface, err := ParseSurface(text)
	if err != nil {
		d.fault(path, "%q %v", Clip(text), errSurface)
		return
	}
	v.Set(reflect.ValueOf(surface))
}

func isNull(raw []byte) bool { return string(bytes.TrimSpace(raw)) == "null" }

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func wanted(k reflect.Kind) string {
	switch k {
	case reflect.String:
		return "text"
	case reflect.Bool:
		return "true or false"
	}
	return "a whole number"
}

func kindOf(raw []byte) string {
	switch raw = bytes.TrimSpace(raw); raw[0] {
	case '{':
		return "an object"
	case '[':
		return "a list"
	case '"':
		return "text"
	case 't', 'f':
		return "true or false"
	case 'n':
		return "null"
	}
	return "a number"
}

// Clip keeps an error line readable whatever was in the file.
func Clip(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most]) + "…"
	}
	return s
}
