// Package tables holds the sourced data of the rules: one CSV for each table,
// every row with its source, edition, clause and how it was read.
package tables

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"iter"
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

var loadLimits = sync.OnceValue(func() *lang.NameTable[*Limit] {
	out, err := parseLimits(limitsCSV)
	if err != nil {
		panic("tables: limits.csv: " + err.Error()) // embedded and tested: cannot happen in a built tool
	}
	return out
})

// LimitOf gives a limit by its id; nil if there is none. It is shared and must not
// change.
func LimitOf(id string) *Limit { return loadLimits().Get(id) }

// LimitIDs gives the id of every limit, in no order.
func LimitIDs() iter.Seq[string] { return loadLimits().Names() }

func parseLimits(text string) (*lang.NameTable[*Limit], error) {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment, r.FieldsPerRecord, r.ReuseRecord = '#', 8, true
	n := strings.Count(text, "\n") // room for every row: the table points into the list
	out, list := &lang.NameTable[*Limit]{}, make([]Limit, 0, n)
	out.Grow(n)
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
		if out.Get(row[0]) != nil {
			return nil, fmt.Errorf("row %d: %s stands twice", i+2, row[0])
		}
		list = append(list, Limit{
			ID: row[0], Num: lang.ToSI(v, u), Dim: u.Dim, Unit: row[2],
			Source: cite.Source{Work: row[3], Edition: row[4], Clause: row[5], Read: read, Note: row[7]},
		})
		out.Put(row[0], &list[len(list)-1])
	}
}
