package main

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"example.org/tundish/lang"
)

const stdinName = "<standard input>"

// readSpec reads a specification by its path, or standard input for "-".
func readSpec(p string, s std) (name, text string, err error) {
	if p == "-" {
		text, err = readLimited(s.in)
		return stdinName, text, err
	}
	f, err := os.Open(p)
	if err != nil {
		return p, "", fmt.Errorf("opening %s: %w", p, cause(err))
	}
	defer f.Close()
	text, err = readLimited(f)
	if err != nil {
		return p, "", fmt.Errorf("reading %s: %w", p, cause(err))
	}
	return p, text, nil
}

// openSpec reads a specification and opens the workspace it stands in; the caller
// closes that.
func openSpec(file string, s std) (name, text string, w *workspace, err error) {
	if name, text, err = readSpec(file, s); err != nil {
		return "", "", nil, err
	}
	if w, err = openWorkspace(folderOf(file)); err != nil {
		return "", "", nil, err
	}
	return name, text, w, nil
}

// folderOf is where the workspace of a spec starts to be looked for.
func folderOf(p string) string {
	if p == "-" {
		return "."
	}
	if st, err := os.Stat(p); err == nil && st.IsDir() {
		return p
	}
	return filepath.Dir(p)
}

// todayFlag adds --today: the engine has no clock, so rules about dates need it.
func todayFlag(fs *pflag.FlagSet) *string {
	return fs.String("today", "", "the date to judge expiry and drift by, YYYY-MM-DD; without it such rules say not evaluated")
}

func parseToday(text string) (lang.Date, error) {
	if text == "" {
		return lang.Date{}, nil
	}
	d, ok := lang.ParseDate(text)
	if !ok || d.Day == 0 {
		return d, fmt.Errorf("--today takes a date such as 2026-03-31, not %q", text)
	}
	return d, nil
}
