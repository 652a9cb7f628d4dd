package library

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// dataDir is where the user's data lie by the custom of the system: the XDG
// Base Directory rule on Linux, the configuration folder elsewhere.
func dataDir() (string, error) {
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "loopbook"), nil
	}
	if runtime.GOOS != "linux" {
		dir, err := os.UserConfigDir()
		return filepath.Join(dir, "Loopbook"), err
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "", fmt.Errorf("no home folder to keep the notebook in; name one with --notebook: %w", err)
	}
	return filepath.Join(home, ".local", "share", "loopbook"), nil
}

// OwnPath is where the user's own notebook lies.
func OwnPath() (string, error) { return inData("notebook.db") }

// DemoPath is where the notebook to try lies.
func DemoPath() (string, error) { return inData("demo.db") }

func inData(name string) (string, error) {
	dir, err := dataDir()
	return filepath.Join(dir, name), err
}
