package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// The desktop's entry starts the program wherever it was built. The Desktop Entry Specification 1.5 ("The
// Exec key", freedesktop.org, from memory) has a value unescaped before its quotes are read.
func TestTheDesktopsEntryStartsTheProgram(t *testing.T) {
	home, data := filepath.Join(t.TempDir(), "the \"bay\" at $5 `now`\\2"), t.TempDir()
	menu := fakeBuild(t, home)
	run := func(args ...string) error {
		cmd := exec.Command("sh", append([]string{menu}, args...)...)
		cmd.Env = append(os.Environ(), "XDG_DATA_HOME="+data)
		return cmd.Run()
	}
	if err := run(); err != nil {
		t.Fatal(err)
	}
	entry := filepath.Join(data, "applications", "loopbook.desktop")
	keys := entryKeys(t, entry)
	unescaped := strings.ReplaceAll(keys["Exec"], `\\`, `\`)
	argument := strings.NewReplacer(`\\`, `\`, `\"`, `"`, `\$`, `$`, "\\`", "`").Replace(strings.Trim(unescaped, `"`))
	if want := filepath.Join(home, "loopbook"); argument != want {
		t.Errorf("starts %s, want %s", argument, want)
	}
	if icon := strings.ReplaceAll(keys["Icon"], `\\`, `\`); icon != filepath.Join(home, "assets", "pictures", "icon.svg") {
		t.Errorf("shows %s", icon)
	}
	if err := run("--remove"); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(entry); !os.IsNotExist(err) {
		t.Errorf("the entry is still there: %v", err)
	}
	if run("--else") == nil {
		t.Error("an option that isn't known was taken")
	}
}

func TestNoEntryForAProgramThatIsntBuilt(t *testing.T) {
	menu := fakeBuild(t, t.TempDir())
	if err := os.Remove(filepath.Join(filepath.Dir(menu), "..", "loopbook")); err != nil {
		t.Fatal(err)
	}
	data := t.TempDir()
	cmd := exec.Command("sh", menu)
	cmd.Env = append(os.Environ(), "XDG_DATA_HOME="+data)
	said, err := cmd.CombinedOutput()
	if err == nil || !strings.Contains(string(said), "app/start.sh") {
		t.Errorf("said %q (%v), want what to do first", said, err)
	}
	if left, _ := os.ReadDir(data); len(left) > 0 {
		t.Error("an entry was left that starts nothing")
	}
}

// fakeBuild is a folder that looks as after a build; it answers the script's path in it.
func fakeBuild(t *testing.T, home string) string {
	t.Helper()
	script, err := os.ReadFile("menu.sh")
	if err != nil {
		t.Fatal(err)
	}
	menu := filepath.Join(home, "app", "menu.sh")
	if err := os.MkdirAll(filepath.Dir(menu), 0o755); err != nil {
		t.Fatal(err)
	}
	for path, text := range map[string][]byte{menu: script, filepath.Join(home, "loopbook"): []byte("#!/bin/sh\n")} {
		if err := os.WriteFile(path, text, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	return menu
}

// entryKeys reads a desktop entry's lines.
func entryKeys(t *testing.T, path string) map[string]string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	keys := map[string]string{}
	for _, line := range strings.Split(string(text), "\n") {
		if key, value, ok := strings.Cut(line, "="); ok {
			keys[key] = value
		}
	}
	return keys
}
