package cases

import (
	"encoding/hex"
	"fmt"
	"strings"
)

// InLetters is a trouble code in letters, as lists have it: also where it was noted as the
// two bytes that the vehicle sends, in hexadecimal.
func InLetters(code string) string {
	word := strings.ToUpper(strings.TrimSpace(code))
	if two, err := hex.DecodeString(strings.ReplaceAll(strings.TrimPrefix(word, "0X"), " ", "")); err == nil && len(two) == 2 {
		return CodeFromBytes(two[0], two[1])
	}
	return word
}

// CodeFromBytes writes a code that the vehicle sends as two bytes in letters:
// the rule of SAE J2012 / ISO 15031-6, by public descriptions of it. Two zero
// bytes are padding and give "".
func CodeFromBytes(a, b byte) string {
	if a == 0 && b == 0 {
		return ""
	}
	return fmt.Sprintf("%c%d%X%02X", "PCBU"[a>>6], a>>4&3, a&15, b)
}
