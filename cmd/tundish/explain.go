package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "explain", args: "[RULE]",
	summary: "tell what a rule is about, why it matters, what mends it and where it comes from",
	run:     runExplain,
})

// explained is the JSON form of one rule.
type explained struct {
	ID       string            `json:"id"`
	Group    string            `json:"group"`
	Severity string            `json:"severity"`
	Status   string            `json:"status"`
	Since    string            `json:"since"`
	Summary  string            `json:"summary"`
	Why      string            `json:"why"`
	Mend     string            `json:"mend"`
	Limits   string            `json:"limits"`
	Sources  []explainedSource `json:"sources"`
}

type explainedSource struct {
	Source string `json:"source"`
	Read   string `json:"read"`
	Note   string `json:"note"`
}

func runExplain(args []string, s std) int {
	fs := flags("explain", s)
	format := fs.String("format", "text", "text or json")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if err := oneOf("format", *format, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	all := explainable()
	if fs.NArg() == 0 {
		return printExplained(s, *format, all, false)
	}
	var picked []explained
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
	return printExplained(s, *format, picked, true)
}

func pick(all []explained, id string) (explained, bool) {
	for _, e := range all {
		if e.ID == id {
			return e, true
		}
	}
	return explained{}, false
}

// explainable lists every rule of the engine and every kind of problem that
// reading a text can give.
func explainable() []explained {
	var out []explained
	for _, r := range rules.All() {
		out = append(out, explainRule(r))
	}
	for _, k := range lang.ProblemKinds {
		out = append(out, explained{
			ID: k.ID, Group: string(check.Language), Severity: k.Severity.String(), Status: string(check.InForce),
			Summary: k.Summary, Why: k.Why, Mend: k.Mend, Sources: []explainedSource{},
		})
	}
	return out
}

func explainRule(r *check.Rule) explained {
	e := explained{
		ID: r.ID, Group: string(r.Group), Severity: r.Severity.String(), Status: string(r.Status), Since: r.Since,
		Summary: r.Summary, Why: r.Why, Mend: r.Mend, Limits: r.Limits, Sources: []explainedSource{},
	}
	if e.Status == "" {
		e.Status = string(check.InForce)
	}
	for _, src := range r.Sources {
		e.Sources = append(e.Sources, explainedSource{src.String(), string(src.Read), src.Note})
	}
	return e
}

func printExplained(s std, format string, list []explained, whole bool) int {
	if format == "json" {
		enc := json.NewEncoder(s.out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		if err := enc.Encode(list); err != nil {
			return failed(s, err)
		}
		return exitClean
	}
	for i, e := range list {
		if !whole {
			fmt.Fprintf(s.out, "%-34s %-8s %s\n", e.ID, e.Severity, e.Summary)
			continue
		}
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		fmt.Fprintf(s.out, "%s (%s, %s, %s)\n\n%s\n", e.ID, e.Severity, e.Group, e.Status, report.Wrap(e.Summary, 78))
		para := func(head, text string) {
			if text != "" {
				fmt.Fprintf(s.out, "\n%s\n%s\n", head, indent(report.Wrap(text, 74)))
			}
		}
		para("Why", e.Why)
		para("What mends it", e.Mend)
		para("What it does not cover", e.Limits)
		for j, src := range e.Sources {
			if j == 0 {
				fmt.Fprint(s.out, "\nSource\n")
			}
			line := src.Source + " (" + src.Read + ")"
			if src.Note != "" {
				line += ": " + src.Note
			}
			fmt.Fprintln(s.out, indent(report.Wrap(line, 74)))
		}
	}
	return exitClean
}

func indent(text string) string {
	return "    " + strings.ReplaceAll(text, "\n", "\n    ")
}
