// Package tables holds the sourced data of the rules: one CSV for each table,
// every row with its source, edition, clause and how it was read.
package tables

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"sync"

	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

//go:embed limits.csv
var limitsCSV string

// Limit is one limit value that rules compare with. A project may override it
// with a reason.
type Limit struct {
	ID     string
	Num    float64 // SI
	Dim    lang.Dimension
	Unit   string // unit in which the table and the messages print it
	Source cite.Source
	// Because is the reason of a project that put its own value in; empty for
	// the value of the table.
	Because string
	// Origin is where a text states the limit; it has no message for a limit of
	// the tables.
	Origin lang.Related
}

// Text prints the limit in its unit.
func (l Limit) Text() string { return lang.In(l.Num, l.Unit) }

var loadLimits = sync.OnceValue(func() map[string]Limit {
	out, err := parseLimits(limitsCSV)
	if err != nil {
		panic("tables: limits.csv: " + err.Error()) // embedded and tested: cannot happen in a built tool
	}
	return out
})

// LimitOf gives a limit by its id; nil if there is none. It is shared and must not
// change.
func LimitOf(id string) *Limit { return loadLimitTable().Get(id) }

var loadLimitTable = sync.OnceValue(func() *lang.NameTable[*Limit] {
	t := &lang.NameTable[*Limit]{}
	for id, l := range loadLimits() {
		t.Put(id, &l)
	}
	return t
})

// Limits gives every limit by its id. The map is shared and must not change.
func Limits() map[string]Limit { return loadLimits() }

func parseLimits(text string) (map[string]Limit, error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment, r.FieldsPerRecord, r.ReuseRecord = '#', 8, true
	out := make(map[string]Limit, strings.Count(text, "\n"))
	for i := -1; ; i++ {
		row, err := r.Read()
		switch {
		case errors.Is(err, io.EOF):
			return out, nil
		case err != nil:
			return nil, err
		case i < 0: // the head
			continue
		}
		v, err := strconv.ParseFloat(row[1], 64)
		if err != nil {
			return nil, fmt.Errorf("row %d: %w", i+2, err)
		}
		u, ok := lang.LookupUnit(row[2])
		if !ok {
			return nil, fmt.Errorf("row %d: unit %q is not known", i+2, row[2])
		}
		read := cite.Read(row[6])
		switch read {
		case cite.Published, cite.Memory, cite.Practice:
		default:
			return nil, fmt.Errorf("row %d: how read %q is not known", i+2, row[6])
		}
		if _, twice := out[row[0]]; twice {
			return nil, fmt.Errorf("row %d: %s stands twice", i+2, row[0])
		}
		out[row[0]] = Limit{
			ID: row[0], Num: lang.ToSI(v, u), Dim: u.Dim, Unit: row[2],
			Source: cite.Source{Work: row[3], Edition: row[4], Clause: row[5], Read: read, Note: row[7]},
		}
	}
}
