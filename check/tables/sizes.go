package tables

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

//go:embed sizes.csv
var sizesCSV string

// Sizes is one row of standard sizes, rising.
type Sizes struct {
	ID     string
	Unit   string    // in which the sizes are written
	Values []float64 // in that unit
	SI     []float64 // the same in SI
	Source cite.Source
}

var loadSizes = sync.OnceValue(func() map[string]*Sizes {
	out, err := parseSizes(sizesCSV)
	if err != nil {
		panic("tables: sizes.csv: " + err.Error()) // embedded and tested: cannot happen in a built tool
	}
	return out
})

// StandardSizes gives a row of standard sizes by its id; nil if there is none.
// The row is shared and must not change.
func StandardSizes(id string) *Sizes { return loadSizes()[id] }

// Above is the first size over a value in SI; ok is false when none is.
func (s *Sizes) Above(si float64) (value float64, ok bool) {
	for i, v := range s.SI {
		if v > si*(1+1e-9) {
			return s.Values[i], true
		}
	}
	return 0, false
}

func parseSizes(text string) (map[string]*Sizes, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := make(map[string]*Sizes, len(rows))
	for i, row := range rows[1:] {
		u, ok := lang.LookupUnit(row[1])
		if !ok {
			return nil, fmt.Errorf("row %d: unit %q is not known", i+2, row[1])
		}
		s := &Sizes{ID: row[0], Unit: row[1], Source: cite.Source{Work: row[3], Edition: row[4], Clause: row[5], Read: cite.Read(row[6]), Note: row[7]}}
		for _, w := range strings.Fields(row[2]) {
			v, err := strconv.ParseFloat(w, 64)
			if err != nil {
				return nil, fmt.Errorf("row %d: %w", i+2, err)
			}
			s.Values = append(s.Values, v)
			s.SI = append(s.SI, lang.ToSI(v, u))
		}
		if !slices.IsSorted(s.Values) || len(s.Values) == 0 {
			return nil, fmt.Errorf("row %d: the sizes of %s do not rise", i+2, row[0])
		}
		out[row[0]] = s
	}
	return out, nil
}
