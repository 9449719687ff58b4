package main

import (
	"os"
	"path/filepath"

	"example.org/tundish/check"
)

// loadSettings reads the project file in the root of the workspace; without one
// the settings are empty.
func (w *workspace) loadSettings() *check.Settings {
	name := filepath.Join(w.root, projectFile)
	b, err := os.ReadFile(name)
	if err != nil {
		return check.ReadSettings(nil)
	}
	return check.ReadSettings(w.parse(filepath.ToSlash(name), string(b)))
}
