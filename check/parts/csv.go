package parts

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// Item is one line of a delivery list.
type Item struct {
	Package, Part, Size string
	Quantity            float64
	Unit                string // as written, empty without one
	Line                int    // 1-based, in the delivery list
}

// Problem is something in a delivery list that cannot be read.
type Problem struct {
	Line    int // 0 for the whole file
	Message string
}

// Error gives the message with its line.
func (p *Problem) Error() string {
	if p.Line == 0 {
		return p.Message
	}
	return fmt.Sprintf("line %d: %s", p.Line, p.Message)
}

// columns that a delivery list may have, with the words that head them.
var columns = [...]struct {
	words    []string
	required bool
}{
	colPart:     {[]string{"part", "name", "item"}, true},
	colSize:     {[]string{"size"}, true},
	colQuantity: {[]string{"quantity", "count", "qty"}, true},
	colUnit:     {[]string{"unit"}, false},
	colPackage:  {[]string{"package", "pallet"}, false},
}

const (
	colPart = iota
	colSize
	colQuantity
	colUnit
	colPackage
)

// ReadDelivered reads a delivery list: a table of text with a heading that has
// the columns part, size and quantity and may have unit and package. Cells are
// divided by comma, semicolon, tab or bar, whichever the heading uses; cells
// that hold the divider stand in quotation marks. With any problem the items
// must not be compared.
func ReadDelivered(data []byte) ([]Item, []Problem) {
	switch {
	case bytes.HasPrefix(data, []byte{0xFF, 0xFE}), bytes.HasPrefix(data, []byte{0xFE, 0xFF}):
		return nil, []Problem{{0, "the file is written in UTF-16; save it as CSV in UTF-8"}}
	case !utf8.Valid(data):
		return nil, []Problem{{0, "the file is not in UTF-8; save it as CSV in UTF-8"}}
	}
	data = bytes.TrimPrefix(data, []byte{0xEF, 0xBB, 0xBF})
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, []Problem{{0, "the file is empty; it needs a heading with the columns part, size and quantity"}}
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = divider(data)
	r.FieldsPerRecord = -1
	r.TrimLeadingSpace = r.Comma != '\t' // a tab is space too
	head, err := r.Read()
	if err != nil {
		return nil, []Problem{csvProblem(err)}
	}
	line, _ := r.FieldPos(0)
	at, problems := heading(head, line, r.Comma)
	if len(problems) > 0 {
		return nil, problems
	}
	var items []Item
	seen := map[string]int{}
	for {
		row, err := r.Read()
		if err == io.EOF {
			return items, problems
		}
		if err != nil {
			return nil, append(problems, csvProblem(err)) // what follows a broken quotation cannot be told
		}
		line, _ := r.FieldPos(0)
		if blank(row) {
			continue
		}
		if len(row) != len(head) {
			problems = append(problems, Problem{line, fmt.Sprintf("%s, but the heading has %d; a cell that holds %s must stand in quotation marks", plural(len(row), "cell"), len(head), dividerName(r.Comma))})
			continue
		}
		it, p := item(row, at, line, r.Comma)
		if p != nil {
			problems = append(problems, *p)
			continue
		}
		k := normal(it.Package) + "\x00" + normal(it.Part) + "\x00" + normal(it.Size)
		if first, twice := seen[k]; twice {
			problems = append(problems, Problem{line, fmt.Sprintf("%s stands in line %d already; add the two up, or name the package of each", strings.TrimSpace(it.Part+" "+it.Size), first)})
			continue
		}
		seen[k] = line
		items = append(items, it)
	}
}

// divider is the sign that divides the cells of the first line, outside
// quotation marks; a comma when none does.
func divider(data []byte) rune {
	data = bytes.TrimLeft(data, " \r\n")
	line, _, _ := bytes.Cut(data, []byte{'\n'})
	best, most := ',', 0
	for _, sep := range []rune{',', ';', '\t', '|'} {
		n, quoted := 0, false
		for _, r := range string(line) {
			if r == '"' {
				quoted = !quoted
			}
			if r == sep && !quoted {
				n++
			}
		}
		if n > most {
			best, most = sep, n
		}
	}
	return best
}

func dividerName(r rune) string {
	switch r {
	case ';':
		return "a semicolon"
	case '\t':
		return "a tab"
	case '|':
		return "a bar"
	}
	return "a comma"
}

func csvProblem(err error) Problem {
	var pe *csv.ParseError
	if errors.As(err, &pe) {
		return Problem{pe.StartLine, "the quotation marks of this line do not match; a mark inside a cell is written twice"}
	}
	return Problem{0, err.Error()}
}

func heading(head []string, line int, sep rune) (at [len(columns)]int, problems []Problem) {
	for i := range at {
		at[i] = -1
	}
	for i, h := range head {
		h = normal(h)
		for c := range columns {
			for _, w := range columns[c].words {
				if h != w {
					continue
				}
				if at[c] >= 0 {
					problems = append(problems, Problem{line, "the heading names the column " + columns[c].words[0] + " twice"})
				}
				at[c] = i
			}
		}
	}
	for c := range columns {
		if columns[c].required && at[c] < 0 {
			problems = append(problems, Problem{line, fmt.Sprintf("the heading has no column %s; it reads %q, divided by %s", columns[c].words[0], strings.Join(head, " "), strings.TrimPrefix(dividerName(sep), "a "))})
		}
	}
	return at, problems
}

func blank(row []string) bool {
	for _, c := range row {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return true
}

func item(row []string, at [len(columns)]int, line int, sep rune) (Item, *Problem) {
	cell := func(c int) string {
		if at[c] < 0 {
			return ""
		}
		return strings.TrimSpace(row[at[c]])
	}
	it := Item{Package: cell(colPackage), Part: cell(colPart), Size: cell(colSize), Unit: cell(colUnit), Line: line}
	if it.Part == "" {
		return it, &Problem{line, "the cell part is empty"}
	}
	text := cell(colQuantity)
	num, unit, _ := strings.Cut(text, " ")
	if it.Unit == "" {
		it.Unit = strings.TrimSpace(unit)
	}
	if sep != ',' {
		num = strings.Replace(num, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(num, 64)
	switch {
	case err != nil || math.IsNaN(v) || math.IsInf(v, 0):
		return it, &Problem{line, fmt.Sprintf("the quantity %q of %s is not a number", text, it.Part)}
	case v < 0:
		return it, &Problem{line, fmt.Sprintf("the quantity %q of %s is below zero", text, it.Part)}
	}
	switch it.Unit {
	case "", "off", "m", "ft":
	default:
		return it, &Problem{line, fmt.Sprintf("the unit %q of %s is not known here; write off, m or ft", it.Unit, it.Part)}
	}
	it.Quantity = v
	return it, nil
}

// normal makes names and sizes comparable: small letters, single blanks, no
// hyphens, and DN 50 as DN50.
func normal(s string) string {
	s = strings.ToLower(strings.NewReplacer("-", " ", "_", " ", "\u00a0", " ").Replace(s))
	s = strings.Join(strings.Fields(s), " ")
	return strings.ReplaceAll(s, "dn ", "dn")
}
