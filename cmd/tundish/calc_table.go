package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"example.org/tundish/check/topics"
	"example.org/tundish/lang"
)

// table is a CSV with a header row; lines that start with "#" are comments.
type table struct {
	header []string
	rows   [][]string
}

func readTable(name string, s std) (*table, error) {
	var in io.Reader = s.in
	if name != "-" {
		f, err := os.Open(name)
		if err != nil {
			return nil, fmt.Errorf("opening %s: %w", name, cause(err))
		}
		defer f.Close()
		in = f
	}
	b, err := io.ReadAll(in)
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))))
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", name, err)
	}
	if len(rows) == 0 {
		return nil, errors.New("the table is empty")
	}
	return &table{header: rows[0], rows: rows[1:]}, nil
}

// column finds a header cell by its name, with or without a unit behind it.
func (t *table) column(name string) int {
	for i, h := range t.header {
		if n, _ := splitHeader(h); n == name {
			return i
		}
	}
	return -1
}

// splitHeader cuts "flow [m3/h]" into name and unit.
func splitHeader(cell string) (name, unit string) {
	cell = strings.TrimSpace(cell)
	name, rest, ok := strings.Cut(cell, "[")
	if !ok {
		return cell, ""
	}
	return strings.TrimSpace(name), strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), "]"))
}

func (t *table) write(s std, format string) int {
	if format == "json" {
		out := make([]map[string]any, len(t.rows))
		for i, row := range t.rows {
			m := map[string]any{}
			for j, h := range t.header {
				if v, err := strconv.ParseFloat(row[j], 64); err == nil {
					m[h] = v
				} else {
					m[h] = row[j]
				}
			}
			out[i] = m
		}
		return printJSON(s, out)
	}
	w := csv.NewWriter(s.out)
	if err := w.Write(t.header); err != nil {
		return failed(s, err)
	}
	if err := w.WriteAll(t.rows); err != nil {
		return failed(s, err)
	}
	return exitClean
}

// full prints a number so that nothing of it is lost.
func full(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }

// tableInput is a column that feeds an input of the topic.
type tableInput struct {
	col  int
	decl topics.Input
	unit string
}

// calcTable answers a table: the same rows, with the results as new columns. A
// row that cannot be computed says why in a last column, and the exit code
// tells that not every row has a result.
func calcTable(s std, t *topics.Topic, name, format string) int {
	tab, err := readTable(name, s)
	if err != nil {
		return failed(s, err)
	}
	var ins []tableInput
	for i, h := range tab.header {
		n, unit := splitHeader(h)
		d := findInput(t, n)
		if d == nil {
			continue // a column of the user's own: carried along
		}
		if unit != "" && unit != d.Unit {
			if _, err := lang.Convert(1, unit, d.Unit); err != nil {
				return badUse(s, fmt.Sprintf("column %d %q: %v", i+1, h, err))
			}
		}
		ins = append(ins, tableInput{i, *d, unit})
	}
	for _, o := range t.Outputs {
		tab.header = append(tab.header, fmt.Sprintf("%s [%s]", o.Name, o.Unit))
	}
	trouble := make([]string, len(tab.rows))
	anyTrouble := false
	for i := range tab.rows {
		out, err := tableCase(t, ins, tab.rows[i])
		if err != nil {
			trouble[i], anyTrouble = err.Error(), true
		}
		for _, o := range t.Outputs {
			cell := ""
			if v, ok := out[o.Name]; ok && err == nil {
				cell = full(v)
			}
			tab.rows[i] = append(tab.rows[i], cell)
		}
	}
	if anyTrouble {
		tab.header = append(tab.header, "not computed")
		for i := range tab.rows {
			tab.rows[i] = append(tab.rows[i], trouble[i])
		}
	}
	code := tab.write(s, format)
	if code == exitClean && anyTrouble {
		return exitFindings
	}
	return code
}

func tableCase(t *topics.Topic, ins []tableInput, row []string) (topics.Values, error) {
	in := topics.Values{}
	for _, c := range ins {
		cell := strings.TrimSpace(row[c.col])
		if cell == "" {
			continue
		}
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil {
			return nil, fmt.Errorf("%s: %q is not a number", c.decl.Name, cell)
		}
		if c.unit != "" && c.unit != c.decl.Unit {
			if v, err = lang.Convert(v, c.unit, c.decl.Unit); err != nil {
				return nil, err
			}
		}
		in[c.decl.Name] = v
	}
	in, err := fillDefaults(t, in)
	if err != nil {
		return nil, err
	}
	return t.Run(in)
}
