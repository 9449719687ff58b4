package main

import (
	"fmt"

	"example.org/tundish/check/report/compare"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "compare", args: "OLD NEW",
	summary: "what changed between two revisions: statements, values, margins, findings",
	run:     runCompare,
})

func runCompare(args []string, s std) int {
	fs := flags("compare", s)
	form := fs.String("format", "text", "text or json")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 2 {
		return badUse(s, "compare needs two files, the older one first")
	}
	if err := oneOf("format", *form, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	_, was, err := judged(fs.Arg(0), day, s)
	if err != nil {
		return failed(s, err)
	}
	_, is, err := judged(fs.Arg(1), day, s)
	if err != nil {
		return failed(s, err)
	}
	c := compare.Compare(was, is)
	if *form == "json" {
		return printJSON(s, c)
	}
	printChanges(s, c)
	return exitClean
}

func printChanges(s std, c *compare.Changes) {
	if c.Empty() {
		fmt.Fprintln(s.out, "Nothing changed.")
		return
	}
	if len(c.Inputs) > 0 {
		fmt.Fprintln(s.out, "Stated")
	}
	for _, i := range c.Inputs {
		where := ""
		if i.Where != "" {
			where = " in " + i.Where
		}
		fmt.Fprintf(s.out, "  %s%s (line %d)\n", i.What, where, i.Line)
		if i.Was != "" {
			fmt.Fprintf(s.out, "    was  %s\n", i.Was)
		}
		if i.Is != "" {
			fmt.Fprintf(s.out, "    is   %s\n", i.Is)
		}
	}
	told := func(title string, list []compare.Finding) {
		if len(list) > 0 {
			fmt.Fprintln(s.out, title)
		}
		for _, f := range list {
			sev := f.Severity
			if sev != "" {
				sev += " "
			}
			part := f.Part
			if part != "" {
				part += ": "
			}
			fmt.Fprintf(s.out, "  %s: %s%s%s (%s)\n", f.What, sev, part, f.Message, f.Rule)
		}
	}
	told("Findings", c.Findings)
	told("Not evaluated", c.Open)
	if len(c.Margins) > 0 {
		fmt.Fprintln(s.out, "Share of limits used")
	}
	for _, m := range c.Margins {
		tail := ""
		if m.Broke {
			tail = ", broken now"
		} else if m.Mends {
			tail = ", holds again"
		}
		fmt.Fprintf(s.out, "  %s  %s %% -> %s %%%s (%s)\n", m.Path, lang.Num(100*m.Was, 3), lang.Num(100*m.Is, 3), tail, m.Rule)
	}
	if len(c.Values) > 0 {
		fmt.Fprintln(s.out, "Computed")
	}
	for _, v := range c.Values {
		was, is := v.Was, v.Is
		if was == "" {
			was = "nothing"
		}
		if is == "" {
			is = "nothing"
		}
		fmt.Fprintf(s.out, "  %s  %s -> %s\n", v.Path, was, is)
	}
}
