package main

import (
	"bytes"
	"errors"
	"fmt"
	"html/template"
	"os"
	"path"
	"path/filepath"

	"example.org/tundish/check"
	"example.org/tundish/check/draw/plot"
	"example.org/tundish/check/report/compare"
	"example.org/tundish/check/report/sheet"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "sheet", args: "FILE",
	summary: "the calculation sheet of a specification: one page to print, file and sign",
	run:     runSheet,
})

func runSheet(args []string, s std) int {
	fs := flags("sheet", s)
	out := fs.StringP("output", "o", "-", "the file to write; - is standard output")
	against := fs.String("against", "", "an earlier revision: the sheet then tells what changed since")
	form := fs.String("format", "html", "html; for paper, print the page from a browser")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "sheet needs one file, or - for standard input")
	}
	if *form == "pdf" {
		return badUse(s, "sheet writes html; for a PDF open the page in a browser and print it, its pages are laid out for A4 and Letter")
	}
	if err := oneOf("format", *form, "html"); err != nil {
		return badUse(s, err.Error())
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	name, rep, err := judged(fs.Arg(0), day, s)
	if err != nil {
		return failed(s, err)
	}
	o := sheet.Options{Name: name, Version: version, Today: day, Figures: figures(rep)}
	if *against != "" {
		_, was, err := judged(*against, day, s)
		if err != nil {
			return failed(s, err)
		}
		o.Since = compare.Compare(was, rep)
	}
	var b bytes.Buffer
	if err := sheet.Build(rep, o).Write(&b); err != nil {
		return failed(s, err)
	}
	if *out == "-" {
		_, err = s.out.Write(b.Bytes())
	} else {
		err = writeNew(*out, b.String())
	}
	if err != nil {
		return failed(s, err)
	}
	return exitClean
}

// judged reads and judges one specification in its workspace.
func judged(file string, day lang.Date, s std) (string, *check.Report, error) {
	name, text, w, err := openSpec(file, s)
	if err != nil {
		return "", nil, err
	}
	defer w.close()
	return path.Clean(filepath.ToSlash(name)), w.checkText(name, text, day, w.loadSettings()), nil
}

// figureTitles are the drawings of a sheet, in their order.
var figureTitles = []struct {
	kind, title string
	wide        bool
}{
	{"schematic", "The plant: gas, flow, return, flue and condensate. Lines are styled by the share of their limit that is used.", true},
	{"elevation", "The frame with its units, to scale.", true},
	{"flue", "The flue with its falls.", true},
	{"gas-pressure", "Gas pressure along the run to each unit, with all units at full fire.", false},
	{"headers", "Pressure along the headers and the water flow of each unit.", false},
	{"flue-pressure", "Pressure along the flue in the firing cases.", false},
	{"pumps", "A unit's pump against its circuit.", false},
	{"load-duration", "Load over the year, and how many units carry it.", false},
}

// figures draws what can be drawn of a plant; of a record or catalogue nothing.
func figures(rep *check.Report) []sheet.Figure {
	if rep.Plant.Kind != "plant" {
		return nil
	}
	var out []sheet.Figure
	for _, f := range figureTitles {
		svg, err := drawings[f.kind](rep.Plant, rep.Results, rep)
		fig := sheet.Figure{ID: "figure-" + f.kind, Title: f.title, Wide: f.wide, SVG: template.HTML(svg)} //nolint:gosec // made by our own drawing, which escapes names
		var lack *plot.Missing
		switch {
		case errors.As(err, &lack):
			fig.Missing = lack.Needs
		case err != nil:
			fig.Missing = err.Error()
		}
		out = append(out, fig)
	}
	return out
}

// writeNew writes a file that the tool makes, whole or not at all.
func writeNew(name, text string) error {
	if st, err := os.Stat(name); err == nil && st.IsDir() {
		return fmt.Errorf("writing %s: it is a folder", name)
	}
	return replaceFile(name, text)
}
