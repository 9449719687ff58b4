package report_test

import (
	"bytes"
	"testing"

	"example.org/tundish/check/report"
)

// A stream gives the bytes of the document, with and without anything in it.
func TestStream(t *testing.T) {
	finding := func(file string) report.JSONFinding {
		return report.JSONFinding{File: file, Line: 1, Rule: "x-y", Message: "a <b> & \"c\"", Fixes: []report.JSONFix{{Title: "t", Edits: []report.JSONEdit{{NewText: "n"}}}, {Edits: []report.JSONEdit{}}}}
	}
	type file struct {
		findings []report.JSONFinding
		unknowns []report.JSONUnknown
	}
	open := report.JSONUnknown{File: "a", Rule: "x-y", Needs: "z"}
	for name, files := range map[string][]file{
		"none":  {},
		"empty": {{}, {}},
		"mixed": {{}, {findings: []report.JSONFinding{finding("a"), finding("a")}}, {unknowns: []report.JSONUnknown{open}}, {[]report.JSONFinding{finding("b")}, []report.JSONUnknown{open, open}}, {}},
	} {
		for _, shard := range []*report.Shard{nil, {K: 2, N: 3}} {
			d := report.NewDocument(report.Tool{Name: "x", Version: "1"})
			d.Shard = shard
			var want, got bytes.Buffer
			s := report.NewStream(&got, d.Tool, shard, &bytes.Buffer{})
			for _, f := range files {
				d.Files++
				d.Findings, d.NotEvaluated = append(d.Findings, f.findings...), append(d.NotEvaluated, f.unknowns...)
				if err := s.Add(report.Findings(f.findings), report.Unknowns(f.unknowns)); err != nil {
					t.Fatal(err)
				}
			}
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			if err := d.Write(&want); err != nil || want.String() != got.String() {
				t.Errorf("%s: %v\n%s\n%s", name, err, &want, &got)
			}
		}
	}
}
