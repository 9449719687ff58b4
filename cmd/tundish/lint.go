package main

import (
	"encoding/json"
	"fmt"
	"os"

	"github.com/spf13/pflag"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "lint", args: "PATH...",
	summary: "tell what is wrong in specifications, by how much, by which source, and what mends it",
	run:     runLint,
})

// lintRun is one run of lint.
type lintRun struct {
	s        std
	format   string
	failOn   string // of the flag; empty: the project's gate, else error
	day      lang.Date
	baseline report.Baseline
	doc      *report.Document
	text     *report.Text
	files    []string
	code     int
	spaces   map[string]*lintSpace // by root
}

// lintSpace is a workspace with its settings.
type lintSpace struct {
	*workspace
	set *check.Settings
}

func runLint(args []string, s std) int {
	r := &lintRun{s: s, spaces: map[string]*lintSpace{}}
	fs := flags("lint", s)
	list, code, done := r.prepare(fs, args)
	if done {
		return code
	}
	defer r.close()
	for _, p := range list {
		r.one(p)
	}
	return r.finish(len(list))
}

func (r *lintRun) prepare(fs *pflag.FlagSet, args []string) (list []string, code int, done bool) {
	format := fs.String("format", "text", "text, json, jsonl, sarif or junit")
	failOn := fs.String("fail-on", "", "the least that counts as failure: error, warning, note or unknown (default: the project's gate, else error)")
	baseline := fs.String("baseline", "", "the JSON output of an earlier run; only findings that are not in it count")
	today := todayFlag(fs)
	if code, done := parse(fs, args, r.s); done {
		return nil, code, true
	}
	if fs.NArg() == 0 {
		return nil, badUse(r.s, "lint needs a file, a folder, or - for standard input"), true
	}
	if err := oneOf("format", *format, "text", "json", "jsonl", "sarif", "junit"); err != nil {
		return nil, badUse(r.s, err.Error()), true
	}
	if err := oneOf("fail-on", *failOn, "", "error", "warning", "note", "unknown"); err != nil {
		return nil, badUse(r.s, err.Error()), true
	}
	var err error
	if r.day, err = parseToday(*today); err != nil {
		return nil, badUse(r.s, err.Error()), true
	}
	if *baseline != "" {
		f, err := os.Open(*baseline)
		if err != nil {
			return nil, failed(r.s, fmt.Errorf("opening %s: %w", *baseline, cause(err))), true
		}
		defer f.Close()
		if r.baseline, err = report.ReadBaseline(f); err != nil {
			return nil, failed(r.s, err), true
		}
	}
	list, err = specs(fs.Args())
	if err != nil {
		return nil, failed(r.s, err), true
	}
	r.format, r.failOn = *format, *failOn
	r.doc = report.NewDocument(report.Tool{Name: "tundish", Version: version})
	r.text = &report.Text{W: r.s.out, Color: r.s.terminal}
	return list, 0, false
}

func (r *lintRun) close() {
	for _, w := range r.spaces {
		w.close()
	}
}

// space opens the workspace of a path, once for each root.
func (r *lintRun) space(p string) (*lintSpace, error) {
	root := workspaceRoot(folderOf(p))
	if w := r.spaces[root]; w != nil {
		return w, nil
	}
	w, err := openWorkspace(folderOf(p))
	if err != nil {
		return nil, err
	}
	sp := &lintSpace{w, w.loadSettings()}
	r.spaces[root] = sp
	return sp, nil
}

// one lints one file; a file that cannot be read does not stop the rest.
func (r *lintRun) one(p string) {
	name, text, err := readSpec(p, r.s)
	var w *lintSpace
	if err == nil {
		w, err = r.space(p)
	}
	if err != nil {
		fmt.Fprintf(r.s.err, "tundish: %v\n", err)
		r.code = exitFailed
		return
	}
	rep := w.checkText(name, text, r.day, w.set)
	r.files = append(r.files, name)
	before := len(r.doc.Findings)
	r.doc.Add(name, rep)
	if r.baseline != nil {
		r.onlyNew(rep, before)
	}
	switch r.format {
	case "text":
		r.text.File(name, rep)
	case "jsonl":
		enc := json.NewEncoder(r.s.out)
		enc.SetEscapeHTML(false)
		for i := before; i < len(r.doc.Findings); i++ {
			if err := enc.Encode(&r.doc.Findings[i]); err != nil {
				r.code = exitFailed
			}
		}
	}
	gate := r.failOn
	if gate == "" {
		gate = w.set.Gate
	}
	if r.code == exitClean && fails(rep, gate) {
		r.code = exitFindings
	}
}

// onlyNew drops the findings that the baseline covers.
func (r *lintRun) onlyNew(rep *check.Report, before int) {
	keptDoc := r.doc.Findings[:before]
	kept := rep.Findings[:0]
	for i := range rep.Findings {
		if f := r.doc.Findings[before+i]; r.baseline.New(&f) {
			keptDoc = append(keptDoc, f)
			kept = append(kept, rep.Findings[i])
		}
	}
	r.doc.Findings, rep.Findings = keptDoc, kept
}

func (r *lintRun) finish(files int) int {
	var err error
	switch r.format {
	case "json":
		err = r.doc.Write(r.s.out)
	case "sarif":
		err = report.SARIF(r.s.out, r.doc, rules.All())
	case "junit":
		err = report.JUnit(r.s.out, r.doc, r.files)
	case "text":
		closing(r.s, files, r.doc)
	}
	if err != nil {
		return failed(r.s, err)
	}
	return r.code
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
