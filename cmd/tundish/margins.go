package main

import (
	"fmt"
	"math"
	"path"
	"path/filepath"
	"sort"

	"example.org/tundish/check"
	"example.org/tundish/check/margin"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/rules"
	"example.org/tundish/lang"
)

var _ = register(command{
	name: "margins", args: "FILE",
	summary: "how much of each limit is used, and what change of load, length or altitude breaks it",
	run:     runMargins,
})

// marginJSON is the JSON form of one margin; numbers are SI.
type marginJSON struct {
	Rule    string      `json:"rule"`
	Path    string      `json:"path"`
	Line    int         `json:"line"`
	Value   float64     `json:"value"`
	Limit   float64     `json:"limit"`
	AtLeast bool        `json:"atLeast"`
	Holds   bool        `json:"holds"`
	Used    *float64    `json:"used"` // share of the limit; null where the limit is zero
	Source  string      `json:"source"`
	Read    string      `json:"read"`
	Breaks  []breakJSON `json:"breaks"`
}

type breakJSON struct {
	Change   string   `json:"change"`
	Factor   *float64 `json:"factor,omitempty"`
	Altitude *float64 `json:"altitude,omitempty"`
}

func runMargins(args []string, s std) int {
	fs := flags("margins", s)
	form := fs.String("format", "text", "text or json")
	least := fs.Float64("over", 0, "only limits of which more than this share is used, 0 to 1; limits of zero are always told")
	today := todayFlag(fs)
	if code, done := parse(fs, args, s); done {
		return code
	}
	if fs.NArg() != 1 {
		return badUse(s, "margins needs one file, or - for standard input")
	}
	if err := oneOf("format", *form, "text", "json"); err != nil {
		return badUse(s, err.Error())
	}
	day, err := parseToday(*today)
	if err != nil {
		return badUse(s, err.Error())
	}
	name, text, w, err := openSpec(fs.Arg(0), s)
	if err != nil {
		return failed(s, err)
	}
	defer w.close()
	set := w.loadSettings()
	list := margin.Margins(margin.Input{
		Name: path.Clean(filepath.ToSlash(name)), Text: text, Load: w.load, Cache: w.cache,
		Check: func(p *plant.Plant) *check.Report {
			return check.Run(check.Input{Plant: p, Rules: rules.All(), Today: day, Overrides: set.Overrides})
		},
	})
	kept := list[:0]
	for _, m := range list {
		if math.IsNaN(m.Used) || m.Used >= *least {
			kept = append(kept, m)
		}
	}
	sort.SliceStable(kept, func(i, j int) bool { return rank(&kept[i]) > rank(&kept[j]) })
	if *form == "json" {
		return printJSON(s, marginsJSON(kept))
	}
	printMargins(s, kept)
	return exitClean
}

// likewise counts the margins behind one that are the same value of another
// member of its group: a group is written in one line and read in one.
func likewise(list []margin.Margin, i int, told map[int]bool) (others int) {
	m := &list[i]
	for k := i + 1; k < len(list); k++ {
		o := &list[k]
		a, b := m.Quantity, o.Quantity
		if o.Rule == m.Rule && a.Part.Stmt != nil && a.Part.Stmt == b.Part.Stmt && a.Part != b.Part && a.Name == b.Name && a.Stat == b.Stat && a.Case == b.Case && o.AtLeast == m.AtLeast {
			told[k] = true
			others++
		}
	}
	return others
}

// rank puts broken limits first, then those that are used most.
func rank(m *margin.Margin) float64 {
	switch {
	case !m.Holds:
		return 1e9
	case math.IsNaN(m.Used):
		return 0
	}
	return m.Used
}

func marginsJSON(list []margin.Margin) []marginJSON {
	out := []marginJSON{}
	for i := range list {
		m := &list[i]
		line := 0
		if st := m.Quantity.Part.Stmt; st != nil {
			line = m.Quantity.Part.File.Source.LineOf(st.Base) + 1
		}
		j := marginJSON{
			Rule: m.Rule, Path: m.Path, Line: line, Value: m.Quantity.Num, Limit: m.Limit.Num, AtLeast: m.AtLeast, Holds: m.Holds,
			Source: m.Limit.Source.String(), Read: string(m.Limit.Source.Read), Breaks: []breakJSON{},
		}
		if !math.IsNaN(m.Used) {
			j.Used = &m.Used
		}
		for k := range m.Breaks {
			b := &m.Breaks[k]
			bj := breakJSON{Change: b.Change}
			if b.Change == "altitude" {
				bj.Altitude = &b.Altitude
			} else {
				bj.Factor = &b.Factor
			}
			j.Breaks = append(j.Breaks, bj)
		}
		out = append(out, j)
	}
	return out
}

func printMargins(s std, list []margin.Margin) {
	told := map[int]bool{}
	for i := range list {
		if told[i] {
			continue
		}
		m := &list[i]
		others := likewise(list, i, told)
		word := "at most"
		if m.AtLeast {
			word = "at least"
		}
		fmt.Fprintf(s.out, "%s  %s, limit %s %s", m.Path, m.Show(m.Quantity.Num), word, m.Show(m.Limit.Num))
		switch {
		case !m.Holds:
			fmt.Fprint(s.out, ", broken")
		case !math.IsNaN(m.Used):
			fmt.Fprintf(s.out, ", %s %% used", lang.Num(100*m.Used, 3))
		}
		if others > 0 {
			fmt.Fprintf(s.out, "; %d more of its group use no more", others)
		}
		fmt.Fprintf(s.out, "\n    rule %s, %s\n", m.Rule, report.SourceText(m.Limit.Source))
		for _, b := range m.Breaks {
			if b.Change == "altitude" {
				in := "m"
				if m.Quantity.Part.Plant().US() {
					in = "ft"
				}
				fmt.Fprintf(s.out, "    breaks at an altitude of %s\n", lang.In(b.Altitude, in))
				continue
			}
			fmt.Fprintf(s.out, "    breaks with %s times the %s\n", lang.Num(b.Factor, 3), b.Change)
		}
	}
	fmt.Fprintf(s.out, "%d limits held against a value. A margin is no permission to build or to fire: that rests with the registered engineer and the local code.\n", len(list))
}
