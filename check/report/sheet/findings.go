package sheet

import (
	"fmt"
	"sort"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
)

// Finding is one finding as printed.
type Finding struct {
	Number                                            int
	Severity, Rule, Part, Message, Found, Limit, Mend string
	Place                                             string
	Line                                              int // in the specification; 0 for another file
	Source                                            Source
	Trial                                             bool
	Calc                                              string // anchor of the calculation that it judged
	See                                               []string
}

// Deviation is an accepted exception with the findings that it accepts.
type Deviation struct {
	Rule, On, Because, By, Until string
	Line                         int
	Accepts                      []string
}

// Open is a question that a rule could not decide.
type Open struct {
	Rule, Part, Needs, Place string
	Line                     int
}

func (b *builder) findings() {
	rep, s := b.rep, b.s
	for i := range rep.Findings {
		f := b.finding(&rep.Findings[i])
		f.Number = i + 1
		s.Findings = append(s.Findings, f)
		if f.Trial {
			continue
		}
		switch rep.Findings[i].Severity {
		case lang.Error:
			s.Verdict.Errors++
		case lang.Warning:
			s.Verdict.Warnings++
		default:
			s.Verdict.Notes++
		}
	}
	for _, d := range rep.Plant.ByKind("deviation") {
		x := Deviation{Rule: d.Get("rule").Word, Because: d.Get("because").Word, Until: d.Get("until").Word}
		x.Line, _ = rep.Plant.File.Source.Position(d.Stmt.Base)
		var on []string
		for _, ref := range d.Refs("on") {
			if ref.Part != nil {
				on = append(on, ref.Part.Label())
			}
		}
		x.On = strings.Join(on, ", ")
		if by := d.Refs("by"); len(by) > 0 && by[0].Part != nil {
			x.By = by[0].Part.Label()
		}
		for i := range rep.Excused {
			if e := &rep.Excused[i]; e.Deviation == d {
				x.Accepts = append(x.Accepts, e.Finding.Message)
			}
		}
		s.Excused = append(s.Excused, x)
	}
	s.Verdict.Excused = len(rep.Excused)
	for i := range rep.Unknowns {
		u := &rep.Unknowns[i]
		x := Open{Rule: u.Rule, Part: u.Part, Needs: u.Needs}
		x.Place, x.Line = b.place(u.File, u.Span)
		s.Open = append(s.Open, x)
	}
	s.Verdict.Open = len(s.Open)
}

func (b *builder) finding(f *check.Finding) Finding {
	out := Finding{
		Severity: f.Severity.String(), Rule: f.Rule, Part: f.Part, Message: f.Message, Found: f.Found, Limit: f.Limit,
		Mend: f.Mend, Trial: f.Trial,
	}
	out.Place, out.Line = b.place(f.File, f.Span)
	if f.Source != report.LanguageSource {
		out.Source = b.cite(f.Source)
	}
	if f.Quantity != nil {
		if b.rep.Results.Group(f.Quantity.Part, f.Quantity.Name, f.Quantity.Stat, f.Quantity.Case) != nil {
			out.Calc = Anchor("value " + f.Quantity.Path())
		}
	}
	for _, r := range f.Related {
		out.See = append(out.See, r.Message)
	}
	return out
}

// place names a place; line is 0 for a place in another file.
func (b *builder) place(f *lang.File, s lang.Span) (text string, line int) {
	own := b.rep.Plant.File
	if f == nil {
		f = own
	}
	n, _ := f.Source.Position(s.Start)
	if f == own {
		return fmt.Sprintf("line %d", n), n
	}
	return fmt.Sprintf("%s, line %d", f.Source.Name, n), 0
}

// sources lists every work that was cited, once.
func (b *builder) sources() {
	for s := range b.cited {
		b.s.Sources = append(b.s.Sources, s)
	}
	sort.Slice(b.s.Sources, func(i, j int) bool {
		x, y := b.s.Sources[i], b.s.Sources[j]
		if x.Read != y.Read {
			return rank(x) < rank(y)
		}
		if x.Work != y.Work {
			return x.Work < y.Work
		}
		return x.Edition < y.Edition
	})
}

func rank(s Source) int {
	switch s.Tag() {
	case "published":
		return 0
	case "memory":
		return 1
	}
	return 2
}
