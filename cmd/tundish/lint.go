package main

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"runtime/debug"
	"slices"
	"strings"
	"sync"

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
	show     lang.Severity
	day      lang.Date
	jobs     int
	baseline report.Baseline
	tool     report.Tool
	shard    *report.Shard
	stream   *report.Stream   // of the format json
	doc      *report.Document // of formats that need every finding at once
	files    []string         // for the formats that list them
	count    int
	// What the closing line of the text counts.
	severities [4]int
	unknowns   int
	byRule     map[string]*tally
	code       int
	written    error // the first error of the output
	stop       context.CancelFunc
	in         *inputs
	bar        *bar
}

// lintMemory is where the collector of a run becomes busier than it likes to be,
// so that the process stays under 64 MB.
const lintMemory = 41 << 20

func runLint(args []string, s std) int {
	if os.Getenv("GOMEMLIMIT") == "" {
		defer debug.SetMemoryLimit(debug.SetMemoryLimit(lintMemory))
	}
	r := &lintRun{s: s, in: newInputs(s), tool: report.Tool{Name: "tundish", Version: version}, byRule: map[string]*tally{}}
	defer r.in.close()
	fs := flags("lint", s)
	code, done := r.prepare(fs, args)
	if done {
		return code
	}
	total := r.in.jobs.len()
	ctx, stop := context.WithCancel(context.Background())
	if total > 1 {
		// An interrupt ends the run with what is done; a second one ends it at once.
		ctx, stop = signal.NotifyContext(ctx, os.Interrupt)
	}
	defer stop()
	r.stop = stop
	open := &spool{}
	defer open.close()
	switch r.format {
	case "json":
		r.stream = report.NewStream(s.out, r.tool, r.shard, open)
	case "sarif", "junit":
		r.doc = report.NewDocument(r.tool)
	}
	r.bar = newBar(s, total)
	work := r.say
	if r.baseline != nil { // which findings are new depends on those before them
		work = func(_ job, v verdict) said { return said{verdict: v} }
	}
	n := judgeAll(ctx, r.in.jobs.all(), min(r.jobs, total), r.day, work, r.take)
	r.bar.end()
	if r.written == nil && n < total {
		stop()
		fmt.Fprintf(s.err, "tundish: interrupted after %d of %d files; the rest was not checked\n", n, total)
		r.code = exitFailed
	}
	return r.finish()
}

func (r *lintRun) prepare(fs *pflag.FlagSet, args []string) (code int, done bool) {
	format := fs.String("format", "text", "text, json, jsonl, sarif or junit")
	show := fs.String("show", "note", "the least that is printed: error, warning or note; the counts and the exit code do not change by it")
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
	if err := oneOf("show", *show, "error", "warning", "note"); err != nil {
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
	r.format, r.failOn, r.jobs, r.show = *format, *failOn, *jobs, severityOf(*show)
	if *shard != "" {
		k, n, ok := parseShard(*shard)
		if !ok {
			return badUse(r.s, "--shard takes k/n, the k-th of n parts, such as 2/4"), true
		}
		r.in.jobs.shard(k, n)
		r.shard = &report.Shard{K: k, N: n}
	}
	return 0, false
}

// said is what one file adds to the output. It is made beside the judging of other
// files, so that only text waits for its turn.
type said struct {
	verdict           // of a run against a baseline alone
	err        error  // why the file has no report
	text, open []byte // in the format of the run
	findings   []report.JSONFinding
	unknowns   []report.JSONUnknown
	rules      []ruleTally // in no order
	severities [4]int
	questions  int
	read       bool
	broke      bool // the tool decided nothing about it
	gates      bool
}

// tally counts the findings of a rule, and the files that have one.
type tally struct {
	severity        lang.Severity
	findings, files int
}

// ruleTally is the tally of a rule in one file.
type ruleTally struct {
	rule string
	tally
}

// maxKeptText is the longest text whose memory is used again.
const maxKeptText = 64 << 10

// texts are what the files said in words, each used again when it is printed.
var texts = sync.Pool{New: func() any { return new([]byte) }}

// overviewFrom is the number of files from which the text ends with the rules that
// found most.
const overviewFrom = 20

// say puts a verdict into the words of the format.
func (r *lintRun) say(j job, v verdict) said {
	if v.rep == nil {
		return said{err: v.err}
	}
	list := report.NewDocument(r.tool)
	if r.format != "text" {
		list.Add(j.name, v.rep)
	}
	return r.put(j, v, list)
}

// put is say with the findings at hand in their JSON form.
func (r *lintRun) put(j job, v verdict, list *report.Document) said {
	rep := v.rep
	out := said{err: v.err, read: true, questions: len(rep.Unknowns)}
	for i := range rep.Findings {
		f := &rep.Findings[i]
		out.severities[f.Severity]++
		out.broke = out.broke || f.Rule == "not-finished"
		k := slices.IndexFunc(out.rules, func(c ruleTally) bool { return c.rule == f.Rule })
		if k < 0 {
			k = len(out.rules)
			out.rules = append(out.rules, ruleTally{f.Rule, tally{files: 1}})
		}
		c := &out.rules[k]
		c.severity, c.findings = max(c.severity, f.Severity), c.findings+1
	}
	gate := r.failOn
	if gate == "" {
		gate = v.gate
	}
	out.gates = fails(rep, gate)
	r.leaveOut(rep, list)
	switch r.format {
	case "text":
		b := *texts.Get().(*[]byte)
		out.text = (&report.Text{Color: r.s.terminal}).Append(b[:0], j.name, rep)
	case "json":
		out.text, out.open = report.Findings(list.Findings), report.Unknowns(list.NotEvaluated)
	case "jsonl":
		var b bytes.Buffer
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		for i := range list.Findings {
			if err := enc.Encode(&list.Findings[i]); err != nil {
				out.err = err
			}
		}
		out.text = b.Bytes()
	default:
		out.findings, out.unknowns = list.Findings, list.NotEvaluated
	}
	rep.Release() // all that is printed is text by now
	return out
}

// leaveOut drops what is below --show, once it has been counted. Open questions
// are no findings; who asks for warnings or errors alone does not get their list.
func (r *lintRun) leaveOut(rep *check.Report, list *report.Document) {
	if r.show == lang.Note {
		return
	}
	kept, left := rep.Findings[:0], list.Findings[:0]
	for i := range rep.Findings {
		if rep.Findings[i].Severity < r.show {
			continue
		}
		kept = append(kept, rep.Findings[i])
		if i < len(list.Findings) {
			left = append(left, list.Findings[i])
		}
	}
	rep.Findings, list.Findings = kept, left
	rep.Unknowns, list.NotEvaluated = rep.Unknowns[:0], list.NotEvaluated[:0]
}

// take adds what a file said to the output; judgeAll calls it in order of path.
func (r *lintRun) take(j job, a said) {
	r.bar.step()
	if a.rep != nil {
		a = r.onlyNew(j, a.verdict)
	} else if a.verdict.err != nil {
		a.err = a.verdict.err
	}
	if a.err != nil {
		fmt.Fprintf(r.s.err, "tundish: %v\n", a.err)
		r.code = exitFailed
	}
	if !a.read {
		return
	}
	r.count++
	for i, n := range a.severities {
		r.severities[i] += n
	}
	r.unknowns += a.questions
	for _, c := range a.rules {
		t := r.byRule[c.rule]
		if t == nil {
			t = &tally{}
			r.byRule[c.rule] = t
		}
		t.severity, t.findings, t.files = max(t.severity, c.severity), t.findings+c.findings, t.files+c.files
	}
	switch {
	case a.broke:
		r.code = exitFailed
	case a.gates && r.code == exitClean:
		r.code = exitFindings
	}
	switch {
	case r.written != nil:
	case r.stream != nil:
		r.written = r.stream.Add(a.text, a.open)
	case r.doc != nil:
		r.doc.Findings, r.doc.NotEvaluated = append(r.doc.Findings, a.findings...), append(r.doc.NotEvaluated, a.unknowns...)
		if r.format == "junit" {
			r.files = append(r.files, j.name)
		}
	case len(a.text) > 0:
		_, r.written = r.s.out.Write(a.text)
	}
	if r.written != nil {
		r.stop() // nobody reads on
	}
	if text := a.text; r.format == "text" && cap(text) > 0 && cap(text) <= maxKeptText {
		texts.Put(&text)
	}
}

// onlyNew drops the findings that the baseline covers.
func (r *lintRun) onlyNew(j job, v verdict) said {
	list := report.NewDocument(r.tool)
	list.Add(j.name, v.rep)
	rep := v.rep
	left, kept := list.Findings[:0], rep.Findings[:0]
	for i := range rep.Findings {
		if f := list.Findings[i]; r.baseline.New(&f) {
			left, kept = append(left, f), append(kept, rep.Findings[i])
		}
	}
	list.Findings, rep.Findings = left, kept
	return r.put(j, v, list)
}

func (r *lintRun) finish() int {
	if r.written == nil {
		switch r.format {
		case "json":
			r.written = r.stream.Close()
		case "sarif":
			r.written = report.SARIF(r.s.out, r.doc, rules.All())
		case "junit":
			r.written = report.JUnit(r.s.out, r.doc, r.files)
		case "text":
			r.written = r.closing()
		}
	}
	if r.written != nil {
		return failed(r.s, fmt.Errorf("writing the output: %w", cause(r.written)))
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

// overview lists the rules of an archive by severity and count: the findings of
// thousands of files are no list to read.
func (r *lintRun) overview() error {
	if r.count < overviewFrom || len(r.byRule) == 0 {
		return nil
	}
	ids := make([]string, 0, len(r.byRule))
	width := 0
	for id := range r.byRule {
		ids = append(ids, id)
		width = max(width, len(id))
	}
	slices.SortFunc(ids, func(a, b string) int {
		x, y := r.byRule[a], r.byRule[b]
		return cmp.Or(cmp.Compare(y.severity, x.severity), cmp.Compare(y.findings, x.findings), cmp.Compare(a, b))
	})
	var b strings.Builder
	for _, id := range ids {
		t := r.byRule[id]
		fmt.Fprintf(&b, "%-7s  %-*s  %6d in %d of %d files\n", t.severity, width, id, t.findings, t.files, r.count)
	}
	b.WriteByte('\n')
	_, err := io.WriteString(r.s.out, b.String())
	return err
}

// severityOf reads a word that a flag took.
func severityOf(word string) lang.Severity {
	for _, s := range [...]lang.Severity{lang.Note, lang.Warning, lang.Error} {
		if s.String() == word {
			return s
		}
	}
	return lang.Note
}

// closing says in one sentence what was read, and that a pass permits nothing.
func (r *lintRun) closing() error {
	if err := r.overview(); err != nil {
		return err
	}
	what := "1 file"
	if r.count != 1 {
		what = fmt.Sprintf("%d files", r.count)
	}
	_, err := fmt.Fprintf(r.s.out, "Read %s: errors %d, warnings %d, notes %d, not evaluated %d. This is no permission to build or to fire: that rests with the registered engineer and the local code.\n",
		what, r.severities[lang.Error], r.severities[lang.Warning], r.severities[lang.Note], r.unknowns)
	return err
}
