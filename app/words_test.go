package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"loopbook/cases"
	"loopbook/diagram/say"
)

// What the program says has its words and as many arguments as they have places,
// and no word lies in the catalogue that nothing says: a template is named by a literal, or by a literal beginning that
// ends in a point or a hyphen and is joined with a word of the case format.
func TestEveryWordIsThereAndSaid(t *testing.T) {
	words, err := say.Catalogue(say.EN)
	if err != nil {
		t.Fatal(err)
	}
	rooms := roomsOf(words)
	named, begun, calls := namedIn(t)
	for key, at := range named {
		if _, ok := words[key]; !ok && begun[key] == "" && (at.said || rooms[room(key)]) {
			t.Errorf("%s: %q isn't in the catalogue", at.where, key)
		}
	}
	for _, call := range calls {
		if text, ok := words[call.key]; ok && call.args >= 0 && call.args != places(text) {
			t.Errorf("%s: %q is given %d arguments, it has places for %d", call.where, call.key, call.args, places(text))
		}
	}
	for beginning, where := range begun {
		if rooms[room(beginning)] && !slices.ContainsFunc(keys(words), func(k string) bool { return strings.HasPrefix(k, beginning) }) {
			t.Errorf("%s: no name in the catalogue begins with %q", where, beginning)
		}
	}
	for key := range words {
		if _, ok := named[key]; !ok && !slices.ContainsFunc(keys(begun), func(b string) bool { return strings.HasPrefix(key, b) }) {
			t.Errorf("nothing says %q", key)
		}
	}
}

// roomsOf are the names' first words, but for those that are keys of a case too:
// a fault's place looks like a template's name.
func roomsOf(words map[string]string) map[string]bool {
	rooms := map[string]bool{}
	for key := range words {
		rooms[room(key)] = true
	}
	of := reflect.TypeOf(cases.Case{})
	for i := 0; i < of.NumField(); i++ {
		delete(rooms, of.Field(i).Tag.Get("json"))
	}
	return rooms
}

func room(key string) string {
	first, _, _ := strings.Cut(key, ".")
	return first
}

// ruleCode is a name that only the files under testdata/trade know.
var ruleCode = regexp.MustCompile(`\b(REG|DT|TH|IR|WU|HT|PR|CO|SV|SN|FN|SF|CS|BY|AR)\d+\b|\b[RMTV]\d+\b|\bF\d\d[a-z]?\b`)

func TestNoReaderMeetsARuleByItsCode(t *testing.T) {
	for _, l := range say.Langs() {
		words, err := say.Catalogue(l)
		if err != nil {
			t.Fatal(err)
		}
		for key, text := range words {
			if code := ruleCode.FindString(text); code != "" {
				t.Errorf("%s: %q names %s: %s", l, key, code, text)
			}
		}
	}
}

// mention is where a literal stands in the sources, and whether it is given to
// one who says it.
type mention struct {
	where string
	said  bool
}

// saying is a name given to one who says it, with how many arguments; -1 where
// that isn't to be seen.
type saying struct {
	key   string
	args  int
	where string
}

var place = regexp.MustCompile(`\{(\d+)`)

// places is how many arguments a template asks for.
func places(text string) int {
	n := 0
	for _, m := range place.FindAllStringSubmatch(text, -1) {
		at, _ := strconv.Atoi(m[1]) // digits, by the pattern
		n = max(n, at+1)
	}
	return n
}

// name is the shape of a template's name, beginning that of one's first part.
var (
	name      = regexp.MustCompile(`^[a-z][a-z-]*(\.[A-Za-z0-9_-]+)+$`)
	beginning = regexp.MustCompile(`^[a-z][a-z-]*\.([A-Za-z0-9_.-]*[.-])?$`)
)

// namedIn are the literals of the sources that look like names, and the
// beginnings that are joined with something.
func namedIn(t *testing.T) (named map[string]mention, begun map[string]string, calls []saying) {
	t.Helper()
	named, begun = map[string]mention{}, map[string]string{}
	for file := range sources(t) {
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, filepath.Join("..", file), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			where := func() string { return fset.Position(n.Pos()).String() }
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.BinaryExpr:
				if text, ok := literal(n.X); ok && n.Op == token.ADD && beginning.MatchString(text) {
					begun[text] = where()
				}
			case *ast.CallExpr:
				if text, ok := said(n); ok {
					named[text] = mention{where(), true}
					args := len(n.Args) - 1
					if n.Ellipsis.IsValid() {
						args = -1
					}
					calls = append(calls, saying{text, args, where()})
				}
			case *ast.BasicLit:
				if text, ok := literal(n); ok && name.MatchString(text) && !named[text].said {
					named[text] = mention{where(), false}
				}
			}
			return true
		})
	}
	return named, begun, calls
}

// said is the name that is given to say.Of, to a speaker's Of or to the window's
// L.
func said(c *ast.CallExpr) (string, bool) {
	by := ""
	switch f := c.Fun.(type) {
	case *ast.SelectorExpr:
		by = f.Sel.Name
	case *ast.Ident:
		by = f.Name
	}
	if by != "Of" && by != "L" || len(c.Args) == 0 {
		return "", false
	}
	return literal(c.Args[0])
}

func literal(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	text, err := strconv.Unquote(lit.Value)
	return text, err == nil
}

func keys[V any](m map[string]V) []string {
	out := make([]string, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	return out
}

// A check has one name, as a title and within a sentence: who confirms a verdict by it finds it under the name that it was done by.
func TestACheckHasOneName(t *testing.T) {
	for _, lang := range []say.Lang{say.EN, say.DE, say.ES} {
		words, err := say.Catalogue(lang)
		if err != nil {
			t.Fatal(err)
		}
		for _, kind := range cases.Words[cases.TestKind]() {
			title, name := words["check."+string(kind)+".title"], words["test."+string(kind)]
			if title == "" || !strings.EqualFold(title, name) {
				t.Errorf("%s: %s is %q as a title and %q in a sentence", lang, kind, title, name)
			}
		}
	}
}
