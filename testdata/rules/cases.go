// Package cases holds the plants that test the rules, so that the reference of
// the rules can run them as its examples. Each file tests one rule and is named
// by its id; check/rules/rules_test.go says how such a file is built.
package cases

import (
	"embed"

	"example.org/tundish/lang"
)

// Files are the test files, <id>.txtar, and under common/ what they use.
//
//go:embed *.txtar common
var Files embed.FS

// Today is the date by which the files are judged.
var Today = lang.Date{Year: 2026, Month: 3, Day: 31}
