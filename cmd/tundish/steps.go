package main

import (
	"fmt"
	"path/filepath"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/steps"
)

var _ = register(command{
	name: "steps", args: "FILE",
	summary: "the order of building with lifts, cautions, checks and hold points, and how far a record is",
	run:     runSteps,
})

func runSteps(args []string, s std) int {
	fs := flags("steps", s)
	format := fs.String("format", "text", "text, csv or json")
	record := fs.String("record", "", "a record of the plant with progress marks; exit code 1 when a mark is out of order")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "steps needs one file, a plant or a record, or - for standard input")
	}
	if err := oneOf("format", *format, "text", "csv", "json"); err != nil {
		return badUse(s, err.Error())
	}
	p, code := resolveKind(fs.Arg(0), s, *record == "")
	if p == nil {
		return code
	}
	d := report.StepsPage{Plant: p}
	switch {
	case p.Kind == "record":
		d.Record = p
	case *record != "":
		if d.Record, code = resolveKind(*record, s, true); d.Record == nil {
			return code
		}
		if d.Record.Kind != "record" {
			return failed(s, fmt.Errorf("%s: this is a %s, not a record", *record, d.Record.Kind))
		}
	}
	if d.Record != nil {
		of := d.Record.Of
		switch {
		case of == nil || of.Kind != "plant":
			return failed(s, fmt.Errorf("%s: the plant that it belongs to is not to be had; see what tundish lint shows", d.Record.File.Source.Name))
		case of.Damaged():
			return failed(s, fmt.Errorf("%s: some statements cannot be read; mend what tundish lint shows first", of.File.Source.Name))
		case p.Kind == "plant" && !samePath(of.File.Source.Name, p.File.Source.Name):
			return failed(s, fmt.Errorf("%s: the record belongs to %s, not to %s", d.Record.File.Source.Name, of.File.Source.Name, p.File.Source.Name))
		}
		d.Plant = of
	}
	d.List = steps.Of(d.Plant, solve.Run(d.Plant))
	if d.Record != nil {
		d.Progress, d.Faults = steps.Read(d.List, d.Record)
	}
	code = exitClean
	if len(d.Faults) > 0 {
		code = exitFindings
	}
	var err error
	switch *format {
	case "json":
		err = report.StepsJSON(s.out, &d)
	case "csv":
		err = report.StepsCSV(s.out, &d)
	default:
		report.StepsText(s.out, &d)
	}
	if err != nil {
		return failed(s, err)
	}
	return code
}

func samePath(a, b string) bool {
	return filepath.Clean(filepath.FromSlash(a)) == filepath.Clean(filepath.FromSlash(b))
}

// resolveKind is resolveFile that, where a record will do, takes one too.
func resolveKind(file string, s std, recordToo bool) (*plant.Plant, int) {
	kinds := []string{"plant"}
	if recordToo {
		kinds = append(kinds, "record")
	}
	return resolveAs(file, s, kinds...)
}
