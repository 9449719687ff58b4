package report

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/tundish/check/parts"
	"example.org/tundish/lang"
)

// PartsCaution closes every printed list of parts.
const PartsCaution = "The list answers only for what the file states, with the counting conventions in its notes; the fitter checks it against the packages before a seal is broken. It is no permission to build, to lift or to open gas."

// quantity prints a number of parts or meters.
func quantity(v float64) string { return lang.Num(v, 6) }

// PartsText writes the list for a fitter: one package after the other, each part
// with its number and the statements that ask for it.
func PartsText(w io.Writer, l *parts.List) {
	pkg, file := "", ""
	for i := range l.Lines {
		n := &l.Lines[i]
		if file == "" && len(n.Why) > 0 {
			file = n.Why[0].File
			fmt.Fprintf(w, "What %s needs; line numbers are those of this file.\n\n", file)
		}
		if n.Package != pkg {
			if pkg != "" {
				fmt.Fprintln(w)
			}
			pkg = n.Package
			fmt.Fprintln(w, strings.ToUpper(pkg[:1])+pkg[1:])
		}
		fmt.Fprintf(w, "  %9s %-3s  %s\n", quantity(n.Quantity), n.Unit, strings.TrimSpace(n.Name+"  "+n.Size))
		why := whyText(n, file)
		fmt.Fprintf(w, "                 %s\n", strings.ReplaceAll(Wrap(why, 92), "\n", "\n                 "))
	}
	gapsText(w, l)
	fmt.Fprintf(w, "\n%s\n", PartsCaution)
}

func gapsText(w io.Writer, l *parts.List) {
	if len(l.Gaps) == 0 {
		return
	}
	fmt.Fprint(w, "\nNot counted for want of input; the list is not complete:\n")
	for _, g := range l.Gaps {
		fmt.Fprintf(w, "  %s needs %s  (%s:%d)\n", g.Address, g.Needs, g.File, g.Line)
	}
}

// whyText names the statements of a line with their shares; those of the file by
// their line alone.
func whyText(n *parts.Line, file string) string {
	var b strings.Builder
	for i, y := range n.Why {
		if i > 0 {
			b.WriteString("; ")
		}
		if len(n.Why) > 1 {
			b.WriteString(quantity(y.Quantity) + " ")
		}
		at := "line " + strconv.Itoa(y.Line)
		if y.File != file {
			at = y.File + ":" + strconv.Itoa(y.Line)
		}
		b.WriteString("for " + y.Address + " (" + at + ")")
		if y.Note != "" {
			b.WriteString(" " + y.Note)
		}
	}
	return b.String()
}

// PartsCSV writes the list as a table with a heading. A delivery list may be made
// of it by writing what arrived into the column quantity.
func PartsCSV(w io.Writer, l *parts.List) error {
	c := csv.NewWriter(w)
	rows := [][]string{{"package", "part", "size", "quantity", "unit", "why"}}
	for i := range l.Lines {
		n := &l.Lines[i]
		rows = append(rows, []string{n.Package, n.Name, n.Size, quantity(n.Quantity), n.Unit, whyText(n, "")})
	}
	return c.WriteAll(rows)
}

// partsDocument is the JSON form of a list and of its comparison.
type partsDocument struct {
	File        string           `json:"file"`
	Parts       []partsLine      `json:"parts"`
	NotCounted  []partsGap       `json:"notCounted"`
	Differences *[]partsDistance `json:"differences,omitempty"` // only with a delivery
	Caution     string           `json:"caution"`
}

type partsLine struct {
	Package  string     `json:"package"`
	Part     string     `json:"part"`
	Size     string     `json:"size"`
	Quantity float64    `json:"quantity"`
	Unit     string     `json:"unit"`
	Why      []partsWhy `json:"why"`
}

type partsWhy struct {
	Address  string  `json:"address"`
	File     string  `json:"file"`
	Line     int     `json:"line"`
	Quantity float64 `json:"quantity"`
	Note     string  `json:"note,omitempty"`
}

type partsGap struct {
	Address string `json:"address"`
	File    string `json:"file"`
	Line    int    `json:"line"`
	Needs   string `json:"needs"`
}

type partsDistance struct {
	Kind      string     `json:"kind"`
	Part      string     `json:"part"`
	Size      string     `json:"size"`
	Delivered string     `json:"deliveredSize,omitempty"`
	Quantity  float64    `json:"quantity"`
	Needed    float64    `json:"needed"`
	Got       float64    `json:"got"`
	Unit      string     `json:"unit"`
	Lines     []int      `json:"lines"`
	Why       []partsWhy `json:"why"`
}

// PartsJSON writes the list; diffs is nil when nothing was compared.
func PartsJSON(w io.Writer, file string, l *parts.List, diffs *[]parts.Difference) error {
	d := partsDocument{File: file, Parts: []partsLine{}, NotCounted: []partsGap{}, Caution: PartsCaution}
	for i := range l.Lines {
		n := &l.Lines[i]
		d.Parts = append(d.Parts, partsLine{n.Package, n.Name, n.Size, n.Quantity, n.Unit, whyJSON(n.Why)})
	}
	for _, g := range l.Gaps {
		d.NotCounted = append(d.NotCounted, partsGap(g))
	}
	if diffs != nil {
		list := []partsDistance{}
		for _, x := range *diffs {
			lines := x.Lines
			if lines == nil {
				lines = []int{}
			}
			list = append(list, partsDistance{x.Kind, x.Name, x.Size, x.GotSize, x.Quantity, x.Needed, x.Got, x.Unit, lines, whyJSON(x.Why)})
		}
		d.Differences = &list
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(&d)
}

func whyJSON(list []parts.Why) []partsWhy {
	out := []partsWhy{}
	for _, y := range list {
		out = append(out, partsWhy{y.Address, y.File, y.Line, y.Quantity, y.Note})
	}
	return out
}

// DeliveredText writes where a delivery differs from the list.
func DeliveredText(w io.Writer, file string, l *parts.List, diffs []parts.Difference) {
	for i := range diffs {
		fmt.Fprintln(w, differenceText(file, &diffs[i]))
	}
	gapsText(w, l)
	if len(diffs) == 0 {
		fmt.Fprintf(w, "All %s of the list arrived, none too many and none of a wrong size.\n", count(len(l.Lines), "line", "lines"))
	} else {
		fmt.Fprintf(w, "\n%s between %s and the list of parts.\n", count(len(diffs), "difference", "differences"), file)
	}
	fmt.Fprintf(w, "\n%s\n", PartsCaution)
}

func differenceText(file string, d *parts.Difference) string {
	what := strings.TrimSpace(d.Name + " " + d.Size)
	n := quantity(d.Quantity) + " " + d.Unit
	at := file
	for i, line := range d.Lines {
		sep := ", "
		if i == 0 {
			sep = ":"
		}
		at += sep + strconv.Itoa(line)
	}
	counts := "needed " + quantity(d.Needed) + ", arrived " + quantity(d.Got)
	var b strings.Builder
	switch d.Kind {
	case parts.WrongSize:
		fmt.Fprintf(&b, "Wrong size: %s of %s came as %s  (%s)", n, what, d.GotSize, at)
	case parts.Short:
		fmt.Fprintf(&b, "Short: %s lacks %s; %s", what, n, counts)
		if len(d.Lines) > 0 {
			fmt.Fprintf(&b, "  (%s)", at)
		}
	case parts.Surplus:
		fmt.Fprintf(&b, "Surplus: %s too many of %s; %s  (%s)", n, what, counts, at)
	case parts.WrongUnit:
		fmt.Fprintf(&b, "Wrong unit: %s is counted in %s, not in %s  (%s)", what, d.Unit, d.Meant, at)
	default:
		fmt.Fprintf(&b, "Not in this plant: %s of %s  (%s)", n, what, at)
		if d.Meant != "" {
			fmt.Fprintf(&b, "; the list knows %s", d.Meant)
		}
	}
	for _, y := range d.Why {
		fmt.Fprintf(&b, "\n    %s for %s (%s:%d)", quantity(y.Quantity), y.Address, y.File, y.Line)
		if y.Note != "" {
			b.WriteString(" " + y.Note)
		}
	}
	return b.String()
}
