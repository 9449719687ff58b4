package main

import (
	"fmt"
	"os"
	"sort"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/draw/plot"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
)

// drawing makes one kind of picture.
type drawing func(*plant.Plant, *solve.Results, *check.Report) ([]byte, error)

// drawings are the kinds that draw knows.
var drawings = map[string]drawing{
	"schematic": plain(draw.Schematic),
	"elevation": plain(draw.Elevation),
	"flue":      plain(draw.Flue),

	"gas-pressure":  plot.GasPressure,
	"headers":       plot.Headers,
	"flue-pressure": plot.FluePressure,
	"pumps":         plot.Pumps,
	"load-duration": plot.LoadDuration,
}

func plain(f func(*plant.Plant, *solve.Results, *check.Report) []byte) drawing {
	return func(p *plant.Plant, r *solve.Results, rep *check.Report) ([]byte, error) { return f(p, r, rep), nil }
}

func drawingKinds() []string {
	out := make([]string, 0, len(drawings))
	for k := range drawings {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}

var _ = register(command{
	name: "draw", args: "FILE",
	summary: "draw the plant as SVG: schematic, elevation, flue, and plots of what was computed",
	run:     runDraw,
})

func runDraw(args []string, s std) int {
	fs := flags("draw", s)
	kind := fs.String("kind", "schematic", strings.Join(drawingKinds(), ", "))
	out := fs.StringP("output", "o", "-", "the file to write; - is standard output")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "draw needs one file, or - for standard input")
	}
	if err := oneOf("kind", *kind, drawingKinds()...); err != nil {
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
	p := rep.Plant
	if p.Kind != "plant" {
		return failed(s, fmt.Errorf("%s is a %s; only a plant can be drawn", name, p.Kind))
	}
	svg, err := drawings[*kind](p, rep.Results, rep)
	if err != nil {
		return failed(s, fmt.Errorf("drawing the %s of %s: %w", *kind, name, err))
	}
	if *out == "-" {
		if _, err := s.out.Write(svg); err != nil {
			return failed(s, fmt.Errorf("writing the drawing: %w", err))
		}
		return exitClean
	}
	if err := os.WriteFile(*out, svg, 0o644); err != nil {
		return failed(s, fmt.Errorf("writing %s: %w", *out, cause(err)))
	}
	return exitClean
}
