package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/signal"
	"runtime"

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
	jobs     int
	baseline report.Baseline
	doc      *report.Document
	text     *report.Text
	files    []string // for the formats that list them
	count    int
	// What the closing line of the text counts.
	severities map[lang.Severity]int
	unknowns   int
	code       int
	in         *inputs
	bar        *bar
}

func runLint(args []string, s std) int {
	r := &lintRun{s: s, in: newInputs(s), severities: map[lang.Severity]int{}}
	defer r.in.close()
	fs := flags("lint", s)
	code, done := r.prepare(fs, args)
	if done {
		return code
	}
	// An interrupt ends the run with what is done; a second one ends it at once.
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	r.bar = newBar(s, len(r.in.jobs))
	n := judgeAll(ctx, r.in.jobs, r.jobs, r.day, r.take)
	r.bar.end()
	if n < len(r.in.jobs) {
		stop()
		fmt.Fprintf(s.err, "tundish: interrupted after %d of %d files; the rest was not checked\n", n, len(r.in.jobs))
		r.code = exitFailed
	}
	return r.finish()
}

func (r *lintRun) prepare(fs *pflag.FlagSet, args []string) (code int, done bool) {
	format := fs.String("format", "text", "text, json, jsonl, sarif or junit")
	failOn := fs.String("fail-on", "", "the least that counts as failure: error, warning, note or unknown (default: the project's gate, else error)")
	baseline := fs.String("baseline", "", "the JSON output of an earlier run; only findings that are not in it count")
	jobs := fs.IntP("jobs", "j", runtime.GOMAXPROCS(0), "how many files are checked side by side; the output does not depend on it")
	filesFrom := fs.String("files-from", "", "a file that lists paths, one on a line; - reads the list from standard input")
	shard := fs.String("shard", "", "k/n: the k-th of n equal parts of the files, for runs side by side; merge joins their JSON output")
	today := todayFlag(fs)
	if code, done := parse(fs, args, r.s); done {
		return code, true
	}
	if fs.NArg() == 0 && *filesFrom == "" {
		return badUse(r.s, "lint needs a file, a folder, an archive, or - for standard input"), true
	}
	if *jobs < 1 || *jobs > 1024 {
		return badUse(r.s, "--jobs takes a number from 1 to 1024"), true
	}
	if err := oneOf("format", *format, "text", "json", "jsonl", "sarif", "junit"); err != nil {
		return badUse(r.s, err.Error()), true
	}
	if err := oneOf("fail-on", *failOn, "", "error", "warning", "note", "unknown"); err != nil {
		return badUse(r.s, err.Error()), true
	}
	var err error
	if r.day, err = parseToday(*today); err != nil {
		return badUse(r.s, err.Error()), true
	}
	if *baseline != "" {
		f, err := os.Open(*baseline)
		if err != nil {
			return failed(r.s, fmt.Errorf("opening %s: %w", *baseline, cause(err))), true
		}
		defer f.Close()
		if r.baseline, err = report.ReadBaseline(f); err != nil {
			return failed(r.s, err), true
		}
	}
	if err = r.in.add(fs.Args(), *filesFrom); err != nil {
		return failed(r.s, err), true
	}
	r.format, r.failOn, r.jobs = *format, *failOn, *jobs
	r.doc = report.NewDocument(report.Tool{Name: "tundish", Version: version})
	r.text = &report.Text{W: r.s.out, Color: r.s.terminal}
	if *shard != "" {
		k, n, ok := parseShard(*shard)
		if !ok {
			return badUse(r.s, "--shard takes k/n, the k-th of n parts, such as 2/4"), true
		}
		r.in.shard(k, n)
		r.doc.Shard = &report.Shard{K: k, N: n}
	}
	return 0, false
}

// forget drops what was printed already, so that memory does not grow with the
// archive.
func (r *lintRun) forget(before int) {
	r.doc.Findings, r.doc.NotEvaluated = r.doc.Findings[:before], r.doc.NotEvaluated[:0]
}

// take prints one file's report; judgeAll calls it in order of path.
func (r *lintRun) take(j *job, rep *check.Report, err error) {
	r.bar.step()
	if err != nil {
		fmt.Fprintf(r.s.err, "tundish: %v\n", err)
		r.code = exitFailed
	}
	if rep == nil {
		return
	}
	for i := range rep.Findings {
		if rep.Findings[i].Rule == "not-finished" {
			r.code = exitFailed
		}
	}
	r.count++
	before := len(r.doc.Findings)
	if r.format == "junit" {
		r.files = append(r.files, j.name)
	}
	if r.format != "text" || r.baseline != nil {
		r.doc.Add(j.name, rep)
	}
	if r.baseline != nil {
		r.onlyNew(rep, before)
	}
	for i := range rep.Findings {
		r.severities[rep.Findings[i].Severity]++
	}
	r.unknowns += len(rep.Unknowns)
	switch r.format {
	case "text":
		r.text.File(j.name, rep)
		r.forget(before)
	case "jsonl":
		enc := json.NewEncoder(r.s.out)
		enc.SetEscapeHTML(false)
		for i := before; i < len(r.doc.Findings); i++ {
			if err := enc.Encode(&r.doc.Findings[i]); err != nil {
				r.code = exitFailed
			}
		}
		r.forget(before)
	}
	gate := r.failOn
	if gate == "" && j.gate != "" {
		gate = j.gate
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

func (r *lintRun) finish() int {
	var err error
	switch r.format {
	case "json":
		err = r.doc.Write(r.s.out)
	case "sarif":
		err = report.SARIF(r.s.out, r.doc, rules.All())
	case "junit":
		err = report.JUnit(r.s.out, r.doc, r.files)
	case "text":
		r.closing()
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
func (r *lintRun) closing() {
	what := "1 file"
	if r.count != 1 {
		what = fmt.Sprintf("%d files", r.count)
	}
	fmt.Fprintf(r.s.out, "Read %s: errors %d, warnings %d, notes %d, not evaluated %d. This is no permission to build or to fire: that rests with the registered engineer and the local code.\n",
		what, r.severities[lang.Error], r.severities[lang.Warning], r.severities[lang.Note], r.unknowns)
}
