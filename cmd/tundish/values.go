package main

import (
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "values", args: "FILE",
	summary: "print every computed quantity with its formula, the numbers put in and the source",
	run:     runValues,
})

func runValues(args []string, s std) int {
	fs := flags("values", s)
	format := fs.String("format", "text", "text or json")
	units := fs.String("units", "", "metric or us; the default follows the jurisdiction of the plant")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "values needs one file, or - for standard input")
	}
	if err := oneOf("format", *format, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	if err := oneOf("units", *units, "", "metric", "us"); err != nil {
		return badUse(s, err.Error())
	}
	name, text, w, err := openSpec(fs.Arg(0), s)
	if err != nil {
		return failed(s, err)
	}
	defer w.close()
	p := plant.Resolve(w.parse(name, text), w.load)
	res := solve.Run(p)
	if *format == "json" {
		if err := report.ValuesJSON(s.out, res); err != nil {
			return failed(s, err)
		}
		return exitClean
	}
	sys := systemOf(p)
	switch *units {
	case "metric":
		sys = lang.Metric
	case "us":
		sys = lang.US
	}
	report.ValuesText(s.out, res, sys)
	return exitClean
}

// systemOf is the language of units of a plant: that of its jurisdiction.
func systemOf(p *plant.Plant) lang.System {
	if p.US() {
		return lang.US
	}
	return lang.Metric
}
