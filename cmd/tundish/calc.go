package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.org/tundish/check/report"
	"example.org/tundish/check/topics"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "calc", args: "[TOPIC [name=quantity ...]]",
	summary: "a quick sum at the desk, with formula, numbers put in, result and source",
	run:     runCalc,
})

func runCalc(args []string, s std) int {
	fs := flags("calc", s)
	format := fs.String("format", "text", "text or json; with --csv: csv or json")
	table := fs.String("csv", "", "a table with header cells \"name [unit]\", one case a row; - reads standard input")
	temperature := fs.String("temperature", "", "the input of that name, degC: for topics that take a table")
	if code, done := parse(fs, args, s); done {
		return code
	}
	if err := oneOf("format", *format, "text", "json", "csv"); err != nil {
		return badUse(s, err.Error())
	}
	if fs.NArg() == 0 {
		return listTopics(s, *format)
	}
	name := fs.Arg(0)
	if name == convertTopic {
		return calcConvert(s, fs.Args()[1:], *table, *format)
	}
	t, ok := topics.Find(name)
	if !ok {
		msg := fmt.Sprintf("there is no topic %q", name)
		if near := lang.Suggest(name, topicNames()); near != "" {
			msg += fmt.Sprintf("; did you mean %s?", near)
		}
		return badUse(s, msg)
	}
	words := fs.Args()[1:]
	if *temperature != "" {
		words = append(words, "temperature="+*temperature)
	}
	if t.Table != nil {
		return calcWhole(s, t, *table, words, *format)
	}
	if *table != "" {
		return calcTable(s, t, *table, *format)
	}
	in, err := topicInputs(t, words)
	if err != nil {
		return badUse(s, err.Error())
	}
	out, err := t.Run(in)
	if err != nil {
		return badUse(s, err.Error())
	}
	return printTopic(s, t, in, out, *format)
}

func topicNames() []string {
	names := []string{convertTopic}
	for _, t := range topics.All() {
		names = append(names, t.Name)
	}
	return names
}

// topicInputs reads name=quantity words and turns each into the topic's unit.
func topicInputs(t *topics.Topic, args []string) (topics.Values, error) {
	in := topics.Values{}
	for _, a := range args {
		name, text, ok := strings.Cut(a, "=")
		if !ok {
			return nil, fmt.Errorf("%q is not name=quantity", a)
		}
		decl := findInput(t, name)
		if decl == nil {
			return nil, fmt.Errorf("%s takes no %q; it takes %s", t.Name, name, inputNames(t))
		}
		v, err := inUnit(text, decl.Unit)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		in[name] = v
	}
	return fillDefaults(t, in)
}

func fillDefaults(t *topics.Topic, in topics.Values) (topics.Values, error) {
	for _, d := range t.Inputs {
		if _, given := in[d.Name]; given {
			continue
		}
		if d.Default == nil {
			return nil, fmt.Errorf("%s needs %s [%s]", t.Name, d.Name, d.Unit)
		}
		in[d.Name] = *d.Default
	}
	return in, nil
}

func findInput(t *topics.Topic, name string) *topics.Input {
	for i := range t.Inputs {
		if t.Inputs[i].Name == name {
			return &t.Inputs[i]
		}
	}
	return nil
}

func inputNames(t *topics.Topic) string {
	names := make([]string, len(t.Inputs))
	for i, d := range t.Inputs {
		names[i] = d.Name
	}
	return strings.Join(names, ", ")
}

// inUnit reads a quantity and gives its number in the unit wanted. A number
// without a unit is taken in that unit.
func inUnit(text, want string) (float64, error) {
	num, _, form, unit, err := lang.ParseQuantity(text)
	if err != nil {
		return 0, err
	}
	if form != lang.Single {
		return 0, fmt.Errorf("%q is not a single number", text)
	}
	if unit == nil {
		return num, nil
	}
	if want == "-" {
		if unit.Dim != lang.Ratio && unit.Dim != lang.Count {
			return 0, fmt.Errorf("%q has a unit; a pure number is wanted", text)
		}
		return lang.ToSI(num, unit), nil
	}
	return lang.Convert(num, unit.Symbol, want)
}

func printTopic(s std, t *topics.Topic, in, out topics.Values, format string) int {
	if format == "json" {
		return printJSON(s, map[string]any{
			"topic": t.Name, "formula": t.Formula, "source": t.Source.String(), "read": string(t.Source.Read),
			"inputs": jsonInputs(t, in), "results": jsonOutputs(t, out),
		})
	}
	fmt.Fprintf(s.out, "%s: %s\n    %s\n    with ", t.Name, t.Summary, t.Formula)
	for i, d := range t.Inputs {
		if i > 0 {
			fmt.Fprint(s.out, ", ")
		}
		fmt.Fprintf(s.out, "%s = %s", d.Name, withUnit(in[d.Name], d.Unit))
	}
	fmt.Fprintln(s.out)
	for _, o := range t.Outputs {
		v, ok := out[o.Name]
		if !ok {
			continue
		}
		fmt.Fprintf(s.out, "%s = %s\n", o.Name, withUnit(v, o.Unit))
	}
	fmt.Fprintf(s.out, "    %s\n", report.SourceText(t.Source))
	return exitClean
}

func withUnit(v float64, unit string) string {
	n := lang.Num(v, 6)
	if unit == "-" {
		return n
	}
	return n + " " + unit
}

type namedValue struct {
	Name  string  `json:"name"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

func jsonInputs(t *topics.Topic, in topics.Values) []namedValue {
	out := make([]namedValue, len(t.Inputs))
	for i, d := range t.Inputs {
		out[i] = namedValue{d.Name, in[d.Name], d.Unit}
	}
	return out
}

func jsonOutputs(t *topics.Topic, res topics.Values) []namedValue {
	out := []namedValue{}
	for _, o := range t.Outputs {
		if v, ok := res[o.Name]; ok {
			out = append(out, namedValue{o.Name, v, o.Unit})
		}
	}
	return out
}

func printJSON(s std, v any) int {
	enc := json.NewEncoder(s.out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(v); err != nil {
		return failed(s, err)
	}
	return exitClean
}

// listTopics shows every topic with its inputs and results.
func listTopics(s std, format string) int {
	type doc struct {
		Name    string         `json:"name"`
		Summary string         `json:"summary"`
		Formula string         `json:"formula"`
		Source  string         `json:"source"`
		Inputs  []topics.Input `json:"inputs"`
		Outputs []string       `json:"results"`
	}
	if format == "json" {
		var list []doc
		for _, t := range topics.All() {
			d := doc{t.Name, t.Summary, t.Formula, t.Source.String(), t.Inputs, nil}
			for _, o := range t.Outputs {
				d.Outputs = append(d.Outputs, o.Name+" ["+o.Unit+"]")
			}
			list = append(list, d)
		}
		return printJSON(s, list)
	}
	for _, t := range topics.All() {
		fmt.Fprintf(s.out, "%s: %s\n", t.Name, t.Summary)
		for _, d := range t.Inputs {
			tail := ""
			if d.Default != nil {
				tail = ", " + withUnit(*d.Default, d.Unit) + " if not given"
			}
			fmt.Fprintf(s.out, "    %s [%s]  %s%s\n", d.Name, d.Unit, d.Help, tail)
		}
		for _, o := range t.Outputs {
			fmt.Fprintf(s.out, "    gives %s [%s]  %s\n", o.Name, o.Unit, o.Help)
		}
		if t.Form != "" {
			fmt.Fprintln(s.out, indent(strings.TrimSpace(t.Form)))
		}
	}
	fmt.Fprintf(s.out, "%s: a quantity in another unit\n    value, from, to\n    gives result\n", convertTopic)
	return exitClean
}
