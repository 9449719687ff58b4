package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.org/tundish/check/report"
	manual "example.org/tundish/check/report/reference"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "explain", args: "[RULE...] | --language [WORD...]",
	summary: "tell what a rule is about, why it matters, what mends it and where it comes from; or what the language knows",
	run:     runExplain,
})

func runExplain(args []string, s std) int {
	fs := flags("explain", s)
	format := fs.String("format", "text", "text, json, html or markdown; the examples of rules are run while the page is written")
	out := fs.StringP("output", "o", "-", "the file to write; - is standard output")
	language := fs.Bool("language", false, "tell of the statements of the language instead of the rules, all or those that start with the words given")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if err := oneOf("format", *format, "text", "json", "html", "markdown"); err != nil {
		return badUse(s, err.Error())
	}
	if *language {
		return explainLanguage(s, *format, *out, fs.Args())
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
	return writePage(s, out, func(w io.Writer) error {
		switch format {
		case "json":
			return writeJSON(w, list)
		case "html":
			return manual.WriteRulesHTML(w, list, rules.All(), version)
		case "markdown":
			return manual.WriteRulesMarkdown(w, list, rules.All(), version)
		}
		return explainText(w, list, whole)
	})
}

// explainLanguage tells of the statements that start with the words given; of all
// without any.
func explainLanguage(s std, format, out string, words []string) int {
	all := manual.OfLanguage(lang.Language())
	l := all
	if len(words) > 0 {
		l = &manual.Language{}
	}
	for _, word := range words {
		cut := all.Only(word)
		if len(cut.Blocks) == 0 {
			msg := fmt.Sprintf("no statement starts with %q", word)
			if near := lang.Suggest(word, all.Keywords()); near != "" {
				msg += fmt.Sprintf("; did you mean %s?", near)
			}
			return badUse(s, msg)
		}
		l.Blocks = append(l.Blocks, cut.Blocks...)
	}
	return writePage(s, out, func(w io.Writer) error {
		switch format {
		case "json":
			return writeJSON(w, l)
		case "html":
			return l.WriteHTML(w, version)
		case "markdown":
			return l.WriteMarkdown(w, version)
		}
		return l.WriteText(w)
	})
}

func writeJSON(w io.Writer, v any) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(v)
}

// writePage writes to a file, whole or not at all, or to standard output.
func writePage(s std, out string, page func(io.Writer) error) int {
	var b bytes.Buffer
	err := page(&b)
	switch {
	case err != nil:
	case out == "-":
		_, err = s.out.Write(b.Bytes())
	default:
		err = writeNew(out, b.String())
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

func explainText(w io.Writer, list []manual.Rule, whole bool) error {
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
		x, err := e.Example(rules.All())
		if errors.Is(err, manual.ErrNoExample) {
			continue
		}
		if err != nil {
			return err
		}
		explainExample(w, x)
	}
	return nil
}

// explainExample prints an example, run just now.
func explainExample(w io.Writer, x *manual.Example) {
	fmt.Fprint(w, "\nExample\n")
	if x.About != "" {
		fmt.Fprintln(w, indent(report.Wrap(x.About, 74)))
	}
	for _, l := range x.Lines {
		if l.Sign == "~" {
			l.Text = "..."
			l.Sign = " "
		}
		fmt.Fprintln(w, strings.TrimRight("    "+l.Sign+" "+l.Text, " "))
	}
	for _, f := range x.Findings {
		fmt.Fprintln(w, indent(report.Wrap(f.Severity+": "+f.Message, 74)))
	}
	fmt.Fprintln(w, indent(report.Wrap(x.Where(), 74)))
}

func indent(text string) string {
	return "    " + strings.ReplaceAll(text, "\n", "\n    ")
}
