package main

import (
	"encoding/json"
	"fmt"
	"path"
	"path/filepath"
	"strings"

	"github.com/pmezard/go-difflib/difflib"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/check/sizing"
)

var _ = register(command{
	name: "size", args: "FILE",
	summary: "the smallest standard sizes that keep every rule together, as a diff",
	run:     runSize,
})

// sizeDocument is the JSON form of a proposal.
type sizeDocument struct {
	File    string       `json:"file"`
	Changes []sizeChange `json:"changes"`
	Kept    []sizeChange `json:"kept"`
	Before  sizeCount    `json:"before"`
	After   sizeCount    `json:"after"`
	Diff    string       `json:"diff"`
}

type sizeChange struct {
	Part    string `json:"part"`
	Line    int    `json:"line"`
	From    string `json:"from"`
	To      string `json:"to"`
	Because string `json:"because"`
}

type sizeCount struct {
	Errors       int `json:"errors"`
	Warnings     int `json:"warnings"`
	Notes        int `json:"notes"`
	NotEvaluated int `json:"notEvaluated"`
}

func runSize(args []string, s std) int {
	fs := flags("size", s)
	write := fs.Bool("write", false, "write the sizes into the file")
	form := fs.String("format", "text", "text, diff or json")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "size needs one file, or - for standard input")
	}
	if err := oneOf("format", *form, "text", "diff", "json"); err != nil {
		return badUse(s, err.Error())
	}
	file := fs.Arg(0)
	if *write && file == "-" {
		return badUse(s, "--write needs a file")
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	name, text, w, err := openSpec(file, s)
	if err != nil {
		return failed(s, err)
	}
	defer w.close()
	set := w.loadSettings()
	name = path.Clean(filepath.ToSlash(name))
	p := sizing.Propose(sizing.Input{
		Name: name, Text: text, Load: w.load, Cache: w.cache, Only: -1,
		Check: func(p *plant.Plant) *check.Report {
			p.Problems = append(p.Problems, set.Problems...)
			return check.Run(check.Input{Plant: p, Rules: rules.All(), Today: day, Overrides: set.Overrides})
		},
	})
	doc := sizeDocument{File: name, Changes: changesOf(p.Changes), Kept: changesOf(p.Kept), Before: countOf(p.Before), After: countOf(p.After), Diff: unified(name, text, p.Text)}
	switch *form {
	case "diff":
		fmt.Fprint(s.out, doc.Diff)
	case "json":
		enc := json.NewEncoder(s.out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if err := enc.Encode(&doc); err != nil {
			return failed(s, err)
		}
	default:
		writeSizes(s, &doc)
	}
	if *write && p.Text != text {
		if err := replaceFile(file, p.Text); err != nil {
			return failed(s, err)
		}
	}
	return exitClean
}

// unified is the difference of two texts in the form that patch reads.
func unified(name, a, b string) string {
	// Writing to a string builder cannot fail.
	text, _ := difflib.GetUnifiedDiffString(difflib.UnifiedDiff{A: difflib.SplitLines(a), B: difflib.SplitLines(b), FromFile: name, ToFile: name, Context: 2})
	return text
}

func changesOf(list []sizing.Change) []sizeChange {
	out := []sizeChange{}
	for _, c := range list {
		out = append(out, sizeChange{c.Part, c.Line + 1, c.From, c.To, c.Because})
	}
	return out
}

func countOf(r *check.Report) (n sizeCount) {
	for i := range r.Findings {
		switch r.Findings[i].Severity.String() {
		case "error":
			n.Errors++
		case "warning":
			n.Warnings++
		default:
			n.Notes++
		}
	}
	n.NotEvaluated = len(r.Unknowns)
	return n
}

// writeSizes prints the proposal for a reader: what changes and why, then the
// diff.
func writeSizes(s std, doc *sizeDocument) {
	for _, c := range doc.Changes {
		fmt.Fprintf(s.out, "%s (line %d): %s becomes %s\n", c.Part, c.Line, c.From, c.To)
		fmt.Fprintf(s.out, "    not smaller: %s\n", strings.ReplaceAll(report.Wrap(c.Because, 84), "\n", "\n    "))
	}
	for _, c := range doc.Kept {
		fmt.Fprintf(s.out, "%s (line %d): %s stays\n", c.Part, c.Line, c.From)
		fmt.Fprintf(s.out, "    not smaller: %s\n", strings.ReplaceAll(report.Wrap(c.Because, 84), "\n", "\n    "))
	}
	if len(doc.Changes)+len(doc.Kept) == 0 {
		fmt.Fprintln(s.out, "Nothing of this file can be sized: it states no pipe, flue, vessel, valve or opening with a standard size.")
	}
	if doc.Diff != "" {
		fmt.Fprintf(s.out, "\n%s", doc.Diff)
	}
	fmt.Fprintf(s.out, "\nAs written: errors %d, warnings %d, notes %d, not evaluated %d. With these sizes: errors %d, warnings %d, notes %d, not evaluated %d.\n",
		doc.Before.Errors, doc.Before.Warnings, doc.Before.Notes, doc.Before.NotEvaluated, doc.After.Errors, doc.After.Warnings, doc.After.Notes, doc.After.NotEvaluated)
	fmt.Fprintln(s.out, "No single size can go down without a finding. Sizes answer only for what the rules see; an engineer answers for the plant, and nothing here permits building or firing it.")
}
