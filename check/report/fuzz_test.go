package report_test

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"example.org/tundish/check/report"
)

const (
	shard1 = `{"tool":{"name":"tundish","version":"1"},"shard":{"k":1,"n":2},"files":1,"findings":[{"file":"a.plant","line":1,"column":1,"endLine":1,"endColumn":2,"rule":"x-y","severity":"error","part":"U1","message":"m","fixes":[{"title":"t","edits":[{"line":1,"column":1,"endLine":1,"endColumn":2,"newText":"n"}]}]}],"notEvaluated":[{"file":"a.plant","line":1,"rule":"x-y","needs":"z"}]}`
	shard2 = `{"tool":{"name":"tundish","version":"1"},"shard":{"k":2,"n":2},"files":0,"findings":null,"notEvaluated":[]}`
)

// FuzzMerge: the output of earlier runs, whatever stands in it, is read or
// refused; what is read prints in every format and counts as its own baseline.
func FuzzMerge(f *testing.F) {
	f.Add(shard1, shard2)
	f.Add(strings.Replace(shard1, "\"column\":1", "\"column\":-9", 1), `{"tool":{"name":"x"},"shard":{"k":-1,"n":0}}`)
	f.Add("{}", "null")
	f.Add("[", strings.Repeat("[", 200))
	f.Fuzz(func(t *testing.T, a, b string) {
		var docs []*report.Document
		for _, s := range []string{a, b} {
			if _, err := report.ReadBaseline(strings.NewReader(s)); err == nil && s == "" {
				t.Fatal("nothing was taken for a baseline")
			}
			d, err := report.ReadDocument(strings.NewReader(s))
			if err != nil {
				continue
			}
			docs = append(docs, d)
			for _, write := range []func(io.Writer) error{
				d.Write,
				func(w io.Writer) error { return report.SARIF(w, d, nil) },
				func(w io.Writer) error { return report.JUnit(w, d, []string{"a.plant"}) },
			} {
				if err := write(io.Discard); err != nil {
					t.Fatal(err)
				}
			}
			var out bytes.Buffer
			if err := d.Write(&out); err != nil {
				t.Fatal(err)
			}
			base, err := report.ReadBaseline(&out)
			if err != nil {
				t.Fatal(err)
			}
			for i := range d.Findings {
				if base.New(&d.Findings[i]) {
					t.Fatalf("new in its own baseline: %+v", d.Findings[i])
				}
			}
		}
		if len(docs) == 0 {
			return
		}
		if d, err := report.Merge(docs); err == nil && len(d.Findings) > len(a)+len(b) {
			t.Fatal("more findings than text")
		}
	})
}
