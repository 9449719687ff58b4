package report

import (
	"encoding/json"
	"fmt"
	"io"
	"strings"

	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// JSONValue is one computed quantity; numbers are in the SI unit given.
type JSONValue struct {
	Path    string      `json:"path"`
	Value   *float64    `json:"value"` // null when it could not be computed
	Unit    string      `json:"unit"`
	Formula string      `json:"formula"`
	Inputs  []JSONInput `json:"inputs"`
	Source  string      `json:"source"`
	Read    string      `json:"read"`
	Line    int         `json:"line"`
	Needs   string      `json:"needs,omitempty"`
}

// JSONInput is one number put into a formula.
type JSONInput struct {
	Name  string   `json:"name"`
	Value *float64 `json:"value,omitempty"`
	Unit  string   `json:"unit,omitempty"`
	Text  string   `json:"text,omitempty"`
}

// Value gives the JSON form of a quantity.
func Value(q *solve.Quantity) JSONValue {
	out := JSONValue{Path: q.Path(), Unit: lang.SIUnit(q.Dim), Inputs: []JSONInput{}, Needs: q.Missing}
	if q.Known() {
		v := q.Num
		out.Value = &v
	}
	if q.Formula != nil {
		out.Formula, out.Source, out.Read = q.Formula.Text, q.Formula.Source.String(), string(q.Formula.Source.Read)
	}
	if q.Part.File != nil {
		span := q.At
		if span.Empty() {
			span = q.Part.Span()
		}
		out.Line, _ = q.Part.File.Source.Position(span.Start)
	}
	for _, in := range q.Inputs {
		ji := JSONInput{Name: in.Name, Text: in.Text}
		if in.Text == "" {
			v := in.Num
			ji.Value, ji.Unit = &v, lang.SIUnit(in.Dim)
		}
		out.Inputs = append(out.Inputs, ji)
	}
	return out
}

// ValuesJSON writes every quantity as a JSON list.
func ValuesJSON(w io.Writer, r *solve.Results) error {
	out := make([]JSONValue, 0, len(r.All()))
	for i := range r.All() {
		out = append(out, Value(&r.All()[i]))
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(out)
}

// ValuesText writes every quantity with its formula, the numbers put in and the
// source.
func ValuesText(w io.Writer, r *solve.Results, sys lang.System) {
	for i := range r.All() {
		q := &r.All()[i]
		if !q.Known() {
			fmt.Fprintf(w, "%s  not evaluated, needs %s\n", q.Path(), q.Missing)
			continue
		}
		fmt.Fprintf(w, "%s  %s\n", q.Path(), Show(q, sys))
		if q.Formula == nil {
			continue
		}
		fmt.Fprintf(w, "    %s\n", q.Formula.Text)
		if len(q.Inputs) > 0 {
			fmt.Fprintf(w, "    with %s\n", InputsText(q, sys))
		}
		fmt.Fprintf(w, "    %s\n", SourceText(q.Formula.Source))
	}
}

// Show prints the number of a quantity with the unit a designer expects.
func Show(q *solve.Quantity, sys lang.System) string { return number(q.Num, q.Dim, q.Unit, sys) }

func number(v float64, dim lang.Dimension, unit string, sys lang.System) string {
	if u, ok := lang.LookupUnit(unit); ok && (sys == lang.Metric || u.US || !lang.HasUS(dim)) {
		return lang.In(v, unit)
	}
	return lang.Quantity(v, dim, sys)
}

// InputsText prints the numbers put in, "L = 22 m, D = 105.3 mm".
func InputsText(q *solve.Quantity, sys lang.System) string {
	return strings.Join(Inputs(q, sys), ", ")
}

// Inputs prints each number put in, "L = 22 m".
func Inputs(q *solve.Quantity, sys lang.System) []string {
	out := make([]string, 0, len(q.Inputs))
	for _, in := range q.Inputs {
		text := in.Text
		if text == "" {
			text = number(in.Num, in.Dim, in.Unit, sys)
		}
		out = append(out, in.Name+" = "+text)
	}
	return out
}
