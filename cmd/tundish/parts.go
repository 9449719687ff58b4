package main

import (
	"fmt"
	"os"
	"slices"
	"strings"

	"example.org/tundish/check/parts"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
)

var _ = register(command{
	name: "parts", args: "FILE",
	summary: "the parts that this arrangement needs, and what a delivery lacks",
	run:     runParts,
})

func runParts(args []string, s std) int {
	fs := flags("parts", s)
	format := fs.String("format", "text", "text, csv or json")
	delivered := fs.String("delivered", "", "a CSV file of what arrived, with the columns part, size and quantity; exit code 1 when it differs")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "parts needs one file, or - for standard input")
	}
	if err := oneOf("format", *format, "text", "csv", "json"); err != nil {
		return badUse(s, err.Error())
	}
	if *delivered != "" && *format == "csv" {
		return badUse(s, "--delivered prints text or json, not csv")
	}
	p, code := resolveFile(fs.Arg(0), s)
	if p == nil {
		return code
	}
	list := parts.Of(p)
	var diffs *[]parts.Difference
	code = exitClean
	if *delivered != "" {
		data, err := os.ReadFile(*delivered)
		if err != nil {
			return failed(s, fmt.Errorf("reading %s: %w", *delivered, cause(err)))
		}
		items, problems := parts.ReadDelivered(data)
		for i := range problems {
			fmt.Fprintf(s.err, "tundish: %s: %v\n", *delivered, &problems[i])
		}
		if len(problems) > 0 {
			return exitFailed
		}
		d := parts.Compare(list, items)
		diffs = &d
		if len(d) > 0 || len(list.Gaps) > 0 {
			code = exitFindings
		}
	}
	var err error
	switch {
	case *format == "json":
		err = report.PartsJSON(s.out, p.File.Source.Name, list, diffs)
	case *format == "csv":
		err = report.PartsCSV(s.out, list)
	case diffs != nil:
		report.DeliveredText(s.out, *delivered, list, *diffs)
	default:
		report.PartsText(s.out, list)
	}
	if err != nil {
		return failed(s, err)
	}
	return code
}

// resolveFile reads a specification and resolves it. A file that is no plant, or
// that cannot be read whole, gives no plant: a list or an order made of half a
// file would mislead.
func resolveFile(file string, s std) (*plant.Plant, int) { return resolveAs(file, s, "plant") }

// resolveAs is resolveFile for the kinds of file given.
func resolveAs(file string, s std, kinds ...string) (*plant.Plant, int) {
	name, text, w, err := openSpec(file, s)
	if err != nil {
		return nil, failed(s, err)
	}
	defer w.close()
	p := plant.Resolve(w.parse(name, text), w.load)
	if !slices.Contains(kinds, p.Kind) || p.Damaged() {
		fmt.Fprintf(s.err, "tundish: %s: ", name)
		if !slices.Contains(kinds, p.Kind) {
			fmt.Fprintf(s.err, "this is a %s, not a %s\n", p.Kind, strings.Join(kinds, " or a "))
		} else {
			fmt.Fprintln(s.err, "some statements cannot be read; mend what tundish lint shows first")
		}
		return nil, exitFailed
	}
	return p, exitClean
}
