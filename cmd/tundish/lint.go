package main

import (
	"fmt"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "lint", args: "PATH...",
	summary: "tell what is wrong in specifications, by how much, by which source, and what mends it",
	run:     runLint,
})

func runLint(args []string, s std) int {
	fs := flags("lint", s)
	format := fs.String("format", "text", "text or json")
	failOn := fs.String("fail-on", "", "the least that counts as failure: error, warning, note or unknown (default error)")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() == 0 {
		return badUse(s, "lint needs a file, a folder, or - for standard input")
	}
	if err := oneOf("format", *format, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	if *failOn == "" {
		*failOn = "error"
	}
	if err := oneOf("fail-on", *failOn, "error", "warning", "note", "unknown"); err != nil {
		return badUse(s, err.Error())
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	list, err := specs(fs.Args())
	if err != nil {
		return failed(s, err)
	}
	doc := report.NewDocument(report.Tool{Name: "tundish", Version: version})
	text := &report.Text{W: s.out, Color: s.terminal}
	gate := exitClean
	for _, p := range list {
		name, rep, err := lintOne(p, s, day)
		if err != nil {
			fmt.Fprintf(s.err, "tundish: %v\n", err)
			gate = exitFailed
			continue
		}
		doc.Add(name, rep)
		if *format == "text" {
			text.File(name, rep)
		}
		if gate == exitClean && fails(rep, *failOn) {
			gate = exitFindings
		}
	}
	if *format == "json" {
		if err := doc.Write(s.out); err != nil {
			return failed(s, err)
		}
		return gate
	}
	closing(s, len(list), doc)
	return gate
}

func lintOne(p string, s std, day lang.Date) (string, *check.Report, error) {
	name, text, err := readSpec(p, s)
	if err != nil {
		return name, nil, err
	}
	w, err := openWorkspace(folderOf(p))
	if err != nil {
		return name, nil, err
	}
	defer w.close()
	return name, w.checkText(name, text, day, &settings{}), nil
}

// fails reports whether a report reaches the gate.
func fails(rep *check.Report, gate string) bool {
	worst, any := rep.Worst()
	switch gate {
	case "unknown":
		return any || len(rep.Unknowns) > 0
	case "note":
		return any
	case "warning":
		return any && worst >= lang.Warning
	}
	return any && worst >= lang.Error
}

// closing says in one sentence what was read, and that a pass permits nothing.
func closing(s std, files int, doc *report.Document) {
	n := map[string]int{}
	for _, f := range doc.Findings {
		n[f.Severity]++
	}
	what := "1 file"
	if files != 1 {
		what = fmt.Sprintf("%d files", files)
	}
	fmt.Fprintf(s.out, "Read %s: errors %d, warnings %d, notes %d, not evaluated %d. This is no permission to build or to fire: that rests with the registered engineer and the local code.\n",
		what, n["error"], n["warning"], n["note"], len(doc.NotEvaluated))
}
