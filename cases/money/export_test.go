package money

import "strings"

// Codes lists the codes that ParseCurrency knows.
func Codes() []string {
	all := strings.Fields(codes)
	for i, c := range all {
		all[i] = c[:3]
	}
	return all
}
