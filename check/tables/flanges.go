package tables

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"

	"example.org/tundish/check/cite"
)

//go:embed flanges.csv
var flangesCSV string

// Flange is the bolting of one flange of a size.
type Flange struct {
	Nominal float64 // m
	Inches  bool    // a size in inches
	Bolts   int     // bolts with nuts of one joint
	Thread  string  // "M16", "5/8 in"
	Source  cite.Source
}

var loadFlanges = sync.OnceValue(func() []Flange {
	out, err := parseFlanges(flangesCSV)
	if err != nil {
		panic("tables: flanges.csv: " + err.Error()) // embedded and tested: cannot happen in a built tool
	}
	return out
})

// Bolting finds the flange of a nominal size in m, in inches or DN; nil for a
// size that the table lacks.
func Bolting(nominal float64, inches bool) *Flange {
	list := loadFlanges()
	for i := range list {
		if list[i].Inches == inches && math.Abs(list[i].Nominal-nominal) < 1e-4 {
			return &list[i]
		}
	}
	return nil
}

func parseFlanges(text string) ([]Flange, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	out := make([]Flange, 0, len(rows))
	for i, row := range rows[1:] {
		size, err1 := strconv.ParseFloat(row[1], 64)
		bolts, err2 := strconv.Atoi(row[2])
		if err1 != nil || err2 != nil || bolts < 1 || row[0] != "DN" && row[0] != "in" {
			return nil, fmt.Errorf("row %d cannot be read", i+2)
		}
		f := Flange{Nominal: size / 1000, Inches: row[0] == "in", Bolts: bolts, Thread: row[3]}
		if f.Inches {
			f.Nominal = size * 0.0254
		}
		f.Source = cite.Source{Work: row[4], Edition: row[5], Clause: row[6], Read: cite.Read(row[7]), Note: row[8]}
		out = append(out, f)
	}
	return out, nil
}
