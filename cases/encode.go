package cases

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"time"
)

// Encode writes c as one compact JSON document: known keys in the format's
// order, what isn't known left out, then the keys that the program doesn't
// know. The same case gives the same bytes.
func Encode(c Case) ([]byte, error) {
	c.Format, c.Version = Format, Version
	var buf bytes.Buffer
	if err := encodeObject(&buf, reflect.ValueOf(c)); err != nil {
		return nil, err
	}
	return buf.Bytes(), nil
}

// EncodeIndented is Encode for people to read.
func EncodeIndented(c Case) ([]byte, error) {
	compact, err := Encode(c)
	if err != nil {
		return nil, err
	}
	var buf bytes.Buffer
	if err := json.Indent(&buf, compact, "", "  "); err != nil {
		return nil, err
	}
	buf.WriteByte('\n')
	return buf.Bytes(), nil
}

func encodeObject(buf *bytes.Buffer, v reflect.Value) error {
	buf.WriteByte('{')
	first := true
	add := func(key string, value []byte) error {
		name, err := json.Marshal(key)
		if err != nil {
			return err
		}
		if !first {
			buf.WriteByte(',')
		}
		first = false
		buf.Write(name)
		buf.WriteByte(':')
		buf.Write(value)
		return nil
	}
	t := v.Type()
	for i := 0; i < t.NumField(); i++ {
		key := t.Field(i).Tag.Get("json")
		if key == "-" {
			continue
		}
		var value bytes.Buffer
		if err := encodeValue(&value, v.Field(i)); err != nil {
			return fmt.Errorf("%s: %w", key, err)
		}
		if value.Len() == 0 {
			continue
		}
		if err := add(key, value.Bytes()); err != nil {
			return err
		}
	}
	extra := v.FieldByName("Extra").Interface().(Extra)
	for _, k := range extra.Keys() {
		if err := add(k, bytes.TrimSpace(extra[k])); err != nil {
			return err
		}
	}
	buf.WriteByte('}')
	return nil
}

// encodeValue writes nothing for a value that isn't known.
func encodeValue(buf *bytes.Buffer, v reflect.Value) error {
	switch x := v.Interface().(type) {
	case time.Time:
		if !x.IsZero() {
			fmt.Fprintf(buf, "%q", x.Format(time.RFC3339Nano))
		}
		return nil
	case Surface:
		return encodeSurface(buf, x)
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return nil
		}
		return encodeScalar(buf, v.Elem())
	case reflect.Struct:
		var inner bytes.Buffer
		if err := encodeObject(&inner, v); err != nil {
			return err
		}
		if inner.String() != "{}" {
			buf.Write(inner.Bytes())
		}
		return nil
	case reflect.Slice:
		if v.Len() == 0 {
			return nil
		}
		return encodeList(buf, v)
	case reflect.String:
		if v.Len() == 0 {
			return nil
		}
	}
	return encodeScalar(buf, v)
}

func encodeList(buf *bytes.Buffer, v reflect.Value) error {
	buf.WriteByte('[')
	for i := 0; i < v.Len(); i++ {
		if i > 0 {
			buf.WriteByte(',')
		}
		item := v.Index(i)
		var err error
		switch item.Kind() {
		case reflect.Struct:
			err = encodeObject(buf, item)
		case reflect.Slice:
			err = encodeList(buf, item)
		default:
			err = encodeScalar(buf, item)
		}
		if err != nil {
			return fmt.Errorf("[%d]: %w", i, err)
		}
	}
	buf.WriteByte(']')
	return nil
}

func encodeScalar(buf *bytes.Buffer, v reflect.Value) error {
	if v.Kind() == reflect.Float64 && math.IsNaN(v.Float()) {
		buf.WriteString("null") // a gap in a series
		return nil
	}
	enc := json.NewEncoder(buf)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v.Interface()); err != nil {
		return err
	}
	buf.Truncate(buf.Len() - 1) // the encoder's line end
	return nil
}

func encodeSurface(buf *bytes.Buffer, s Surface) error {
	switch {
	case s.Word != "":
		fmt.Fprintf(buf, "%q", s.Word)
	case s.Emissivity != 0:
		return encodeScalar(buf, reflect.ValueOf(s.Emissivity))
	}
	return nil
}
