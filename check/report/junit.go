package report

import (
	"fmt"
	"io"

	"github.com/jstemmer/go-junit-report/v2/junit"
)

// JUnit writes a lint run as JUnit XML: a suite for each file, a case for each
// finding (failed) and for each rule that lacked input (skipped, with what it
// needs). A file without either has one passed case, so that it is seen.
func JUnit(w io.Writer, d *Document, files []string) error {
	suites := junit.Testsuites{Name: d.Tool.Name}
	found := map[string][]*JSONFinding{}
	open := map[string][]*JSONUnknown{}
	names := append([]string(nil), files...)
	known := map[string]bool{}
	for _, f := range files {
		known[f] = true
	}
	note := func(f string) {
		if !known[f] {
			known[f] = true
			names = append(names, f)
		}
	}
	for i := range d.Findings {
		f := &d.Findings[i]
		note(f.File)
		found[f.File] = append(found[f.File], f)
	}
	for i := range d.NotEvaluated {
		u := &d.NotEvaluated[i]
		note(u.File)
		open[u.File] = append(open[u.File], u)
	}
	for id, name := range names {
		s := junit.Testsuite{Name: name, ID: id, File: name, Time: "0"}
		for _, f := range found[name] {
			s.AddTestcase(junit.Testcase{
				Name: fmt.Sprintf("%s at %d:%d", f.Rule, f.Line, f.Column), Classname: name,
				Failure: &junit.Result{Message: f.Message, Type: f.Severity, Data: junitText(f)},
			})
		}
		for _, u := range open[name] {
			s.AddTestcase(junit.Testcase{
				Name: fmt.Sprintf("%s at %d", u.Rule, u.Line), Classname: name,
				Skipped: &junit.Result{Message: "not evaluated, needs " + u.Needs},
			})
		}
		if s.Tests == 0 {
			s.AddTestcase(junit.Testcase{Name: "no finding", Classname: name})
		}
		suites.AddSuite(s)
	}
	if _, err := io.WriteString(w, `<?xml version="1.0" encoding="UTF-8"?>`+"\n"); err != nil {
		return err
	}
	return suites.WriteXML(w)
}

func junitText(f *JSONFinding) string {
	return fmt.Sprintf("found: %s\nlimit: %s\nsource: %s (%s)\nmend: %s", f.Found, f.Limit, f.Source, f.Read, f.Mend)
}
