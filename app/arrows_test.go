package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The house's arrows run one way: app → report → cases → diagram → assets.
// Neighbours under cases/ don't know each other, nor do screens, nor the window's parts. Within app,
// main → window → its parts → desk → mind and library, the parts → screens, and main → command → mind and
// library; the toolkit is the window's, its parts' and the screens'.
func TestArrowsRunOneWay(t *testing.T) {
	floors := map[string]int{"assets": 0, "diagram": 1, "cases": 2, "report": 3, "app": 4}
	for file, imports := range sources(t) {
		room := filepath.ToSlash(filepath.Dir(file))
		for _, path := range imports {
			switch {
			case strings.HasPrefix(path, "fyne.io/") && !paints(room):
				t.Errorf("%s imports %s: the toolkit stays in the window and its screens", file, path)
			case strings.HasPrefix(path, "fyne.io/fyne/v2/app") && room != "app/window":
				t.Errorf("%s imports %s: only the window opens a display", file, path)
			case (path == "database/sql" || strings.Contains(path, "sqlite3")) && room != "cases/sqlite":
				t.Errorf("%s imports %s: SQL stays in cases/sqlite", file, path)
			}
			other, ours := strings.CutPrefix(path, "loopbook/")
			if !ours {
				continue
			}
			if floors[top(other)] > floors[top(room)] {
				t.Errorf("%s imports %s: that arrow runs upwards", file, path)
			}
			if neighbours("cases/", room, other) && !(inDiagnosis(room) && (other == "cases/evidence" || inDiagnosis(other))) {
				t.Errorf("%s imports its neighbour %s: join them one floor up", file, path)
			}
			if neighbours("app/ui/", room, other) && other != "app/ui/kit" {
				t.Errorf("%s imports the screen %s: the window joins screens", file, path)
			}
			if may, why := inApp(room, other); !may {
				t.Errorf("%s imports %s: %s", file, path, why)
			}
		}
	}
}

// paints: the window, its rooms and the screens may know the toolkit.
func paints(room string) bool { return within(room, "app/window") || within(room, "app/ui") }

// inApp tells whether a room may import another one of app, and why not.
func inApp(room, other string) (may bool, why string) {
	switch {
	case top(other) != "app":
		return true, ""
	case other == "app/window", other == "app/command":
		return room == "app", "only main knows both ways in"
	case other == "app/window/bench/benchtest":
		return false, "it is there for tests"
	case within(other, "app/window"):
		return within(room, "app/window") && (room == "app/window" || plain(other) || other == "app/window/bench" && !plain(room)), "the window joins its parts"
	case within(other, "app/ui"):
		return paints(room) && (!within(room, "app/window") || plain(room) || fills(room, other)), "a part of the window fills the screen of its own name"
	case within(room, "app/ui"):
		return false, "a screen takes data in and gives callbacks out"
	case other == "app/desk":
		return within(room, "app/window") && !plain(room), "only the window and its parts sit at the desk"
	}
	return room != "app/mind" && room != "app/library", "it knows none of app's rooms"
}

// fills: a part of the window fills the screen of its own name, the window itself greets; two cases side by
// side, and the kit, are anybody's.
func fills(part, screen string) bool {
	switch screen {
	case "app/ui/kit", "app/ui/compare":
		return true
	case "app/ui/greeting":
		return part == "app/window"
	}
	return strings.TrimPrefix(screen, "app/ui/") == strings.TrimPrefix(part, "app/window/")
}

// plain: what the parts of the window share without a case.
func plain(room string) bool {
	return room == "app/window/asking" || room == "app/window/filename" || room == "app/window/words"
}

// within: a room itself, or one in it.
func within(room, of string) bool { return room == of || strings.HasPrefix(room, of+"/") }

// inDiagnosis: diagnosis and the rooms within it, which read evidence.
func inDiagnosis(room string) bool {
	return within(room, "cases/diagnosis")
}

func top(room string) string {
	first, _, _ := strings.Cut(room, "/")
	return first
}

func neighbours(under, a, b string) bool {
	return a != b && strings.HasPrefix(a, under) && strings.HasPrefix(b, under)
}

// sources are the imports of each file of the program, tests left out.
func sources(t *testing.T) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		name, _ := filepath.Rel("..", path)
		for _, s := range f.Imports {
			p, err := strconv.Unquote(s.Path.Value)
			if err != nil {
				return err
			}
			out[filepath.ToSlash(name)] = append(out[filepath.ToSlash(name)], p)
		}
		return nil
	})
	if err != nil || len(out) < 20 {
		t.Fatalf("reading the sources: %d files, %v", len(out), err)
	}
	return out
}
