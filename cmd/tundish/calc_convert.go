package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/tundish/lang"
)

const convertTopic = "convert"

// calcConvert answers value=37.5 from=kW to=Btu/h, or a table with the columns
// value, from and to.
func calcConvert(s std, args []string, table, format string) int {
	if table != "" {
		return convertTable(s, table, format)
	}
	in := map[string]string{}
	for _, a := range args {
		k, v, ok := strings.Cut(a, "=")
		if !ok {
			return badUse(s, fmt.Sprintf("%q is not name=value", a))
		}
		in[k] = v
	}
	for _, k := range []string{"value", "from", "to"} {
		if in[k] == "" {
			return badUse(s, "convert needs value=, from= and to=")
		}
	}
	v, err := strconv.ParseFloat(in["value"], 64)
	if err != nil {
		return badUse(s, fmt.Sprintf("value: %q is not a number", in["value"]))
	}
	got, err := lang.Convert(v, in["from"], in["to"])
	if err != nil {
		return badUse(s, err.Error())
	}
	if format == "json" {
		return printJSON(s, map[string]any{"topic": convertTopic, "value": v, "from": in["from"], "to": in["to"], "result": got})
	}
	fmt.Fprintf(s.out, "%s %s = %s %s\n", lang.Num(v, 10), in["from"], lang.Num(got, 10), in["to"])
	return exitClean
}

func convertTable(s std, table, format string) int {
	t, err := readTable(table, s)
	if err != nil {
		return failed(s, err)
	}
	value, from, to := t.column("value"), t.column("from"), t.column("to")
	if value < 0 || from < 0 || to < 0 {
		return badUse(s, "the table needs the columns value, from and to")
	}
	t.header = append(t.header, "result")
	for i := range t.rows {
		row := t.rows[i]
		v, err := strconv.ParseFloat(strings.TrimSpace(row[value]), 64)
		if err != nil {
			return badUse(s, fmt.Sprintf("row %d: value %q is not a number", i+2, row[value]))
		}
		got, err := lang.Convert(v, strings.TrimSpace(row[from]), strings.TrimSpace(row[to]))
		if err != nil {
			return badUse(s, fmt.Sprintf("row %d: %v", i+2, err))
		}
		t.rows[i] = append(row, full(got))
	}
	return t.write(s, format)
}
