// Package locale keeps the toolkit from complaining of a plain "C" locale,
// as servers and test machines have it, on every start.
//
// The toolkit reads the locale while packages are initialised, before main can
// act. This package needs little else, so that by the order of initialisation
// in the Go specification (imports first, then by path) it comes before
// "text/template", which the toolkit's translations import.
package locale

import (
	"os"
	"strings"
)

func init() {
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if value := os.Getenv(name); value != "" {
			language, _, _ := strings.Cut(value, ".")
			if language == "C" || language == "POSIX" {
				os.Setenv(name, "en_US.UTF-8")
			}
			return
		}
	}
}
