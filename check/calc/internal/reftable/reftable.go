// Package reftable reads the reference tables of testdata for tests.
package reftable

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// Row is one row of a table, by column name.
type Row struct {
	t     testing.TB
	line  int
	cells map[string]string
}

// Read reads a table; lines that start with "#" are its head.
func Read(t testing.TB, path string) []Row {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatalf("%s: %d rows, %v", path, len(rows), err)
	}
	out := make([]Row, 0, len(rows)-1)
	for i, cells := range rows[1:] {
		m := make(map[string]string, len(cells))
		for j, c := range cells {
			if j < len(rows[0]) {
				m[rows[0][j]] = c
			}
		}
		out = append(out, Row{t, i + 2, m})
	}
	return out
}

// Text gives a cell.
func (r Row) Text(column string) string {
	s, ok := r.cells[column]
	if !ok {
		r.t.Fatalf("there is no column %q", column)
	}
	return s
}

// Num gives a cell as a number.
func (r Row) Num(column string) float64 {
	r.t.Helper()
	v, err := strconv.ParseFloat(r.Text(column), 64)
	if err != nil {
		r.t.Fatalf("row %d, %s: %v", r.line, column, err)
	}
	return v
}

// Near fails the test when got is not within a relative tolerance of want.
func (r Row) Near(what string, got, want, tolerance float64) {
	r.t.Helper()
	d := got - want
	if d < 0 {
		d = -d
	}
	scale := want
	if scale < 0 {
		scale = -scale
	}
	if !(d <= tolerance*scale) {
		r.t.Errorf("row %d: %s = %.12g, the reference has %.12g", r.line, what, got, want)
	}
}
