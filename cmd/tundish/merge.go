package main

import (
	"encoding/json"
	"fmt"
	"os"

	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
)

var _ = register(command{
	name: "merge", args: "FILE...",
	summary: "join the JSON output of lint --shard runs to that of one run",
	run:     runMerge,
})

func runMerge(args []string, s std) int {
	fs := flags("merge", s)
	format := fs.String("format", "json", "json, jsonl or sarif")
	failOn := fs.String("fail-on", "error", "the least that counts as failure: error, warning, note or unknown")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() == 0 {
		return badUse(s, "merge needs the JSON output of every shard")
	}
	if err := oneOf("format", *format, "json", "jsonl", "sarif"); err != nil {
		return badUse(s, err.Error())
	}
	if err := oneOf("fail-on", *failOn, "error", "warning", "note", "unknown"); err != nil {
		return badUse(s, err.Error())
	}
	docs := make([]*report.Document, 0, fs.NArg())
	for _, name := range fs.Args() {
		f, err := os.Open(name)
		if err != nil {
			return failed(s, fmt.Errorf("opening %s: %w", name, cause(err)))
		}
		d, err := report.ReadDocument(f)
		f.Close()
		if err != nil {
			return failed(s, fmt.Errorf("reading %s: %w", name, err))
		}
		docs = append(docs, d)
	}
	doc, err := report.Merge(docs)
	if err != nil {
		return badUse(s, err.Error())
	}
	switch *format {
	case "json":
		err = doc.Write(s.out)
	case "sarif":
		err = report.SARIF(s.out, doc, rules.All())
	default:
		enc := json.NewEncoder(s.out)
		enc.SetEscapeHTML(false)
		for i := range doc.Findings {
			if err = enc.Encode(&doc.Findings[i]); err != nil {
				break
			}
		}
	}
	if err != nil {
		return failed(s, err)
	}
	if doc.Fails(*failOn) {
		return exitFindings
	}
	return exitClean
}
