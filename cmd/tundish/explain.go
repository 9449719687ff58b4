package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/tundish/check/report"
	manual "example.org/tundish/check/report/reference"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "explain", args: "[RULE]",
	summary: "tell what a rule is about, why it matters, what mends it and where it comes from",
	run:     runExplain,
})

func runExplain(args []string, s std) int {
	fs := flags("explain", s)
	format := fs.String("format", "text", "text, json or html; html is the whole reference with an example of each rule, run while it is written")
	out := fs.StringP("output", "o", "-", "the file to write; - is standard output")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if err := oneOf("format", *format, "text", "json", "html"); err != nil {
		return badUse(s, err.Error())
	}
	all := explainable()
	if fs.NArg() == 0 {
		return writeExplained(s, *format, *out, all, false)
	}
	var picked []manual.Rule
	for _, id := range fs.Args() {
		e, ok := pick(all, id)
		if !ok {
			names := make([]string, len(all))
			for i := range all {
				names[i] = all[i].ID
			}
			msg := fmt.Sprintf("there is no rule %q", id)
			if near := lang.Suggest(id, names); near != "" {
				msg += fmt.Sprintf("; did you mean %s?", near)
			}
			return badUse(s, msg)
		}
		picked = append(picked, e)
	}
	return writeExplained(s, *format, *out, picked, true)
}

func writeExplained(s std, format, out string, list []manual.Rule, whole bool) int {
	var b bytes.Buffer
	var err error
	switch format {
	case "json":
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		err = enc.Encode(list)
	case "html":
		err = manual.WriteRulesHTML(&b, list, rules.All(), version)
	default:
		explainText(&b, list, whole)
	}
	if err == nil && out != "-" {
		err = writeNew(out, b.String())
	} else if err == nil {
		_, err = s.out.Write(b.Bytes())
	}
	if err != nil {
		return failed(s, err)
	}
	return exitClean
}

func pick(all []manual.Rule, id string) (manual.Rule, bool) {
	for _, e := range all {
		if e.ID == id {
			return e, true
		}
	}
	return manual.Rule{}, false
}

// explainable lists every rule of the engine and every kind of problem that
// reading a text can give.
func explainable() []manual.Rule { return manual.Rules(rules.All()) }

func explainText(w io.Writer, list []manual.Rule, whole bool) {
	for i, e := range list {
		if !whole {
			fmt.Fprintf(w, "%-34s %-8s %s\n", e.ID, e.Severity, e.Summary)
			continue
		}
		if i > 0 {
			fmt.Fprintln(w)
		}
		fmt.Fprintf(w, "%s (%s, %s, %s)\n\n%s\n", e.ID, e.Severity, e.Group, e.Status, report.Wrap(e.Summary, 78))
		para := func(head, text string) {
			if text != "" {
				fmt.Fprintf(w, "\n%s\n%s\n", head, indent(report.Wrap(text, 74)))
			}
		}
		para("Why", e.Why)
		para("What mends it", e.Mend)
		para("What it does not cover", e.Limits)
		for j, src := range e.Sources {
			if j == 0 {
				fmt.Fprint(w, "\nSource\n")
			}
			line := src.Source + " (" + src.Read + ")"
			if src.Note != "" {
				line += ": " + src.Note
			}
			fmt.Fprintln(w, indent(report.Wrap(line, 74)))
		}
	}
}

func indent(text string) string {
	return "    " + strings.ReplaceAll(text, "\n", "\n    ")
}
