package check

import (
	"sync"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Finding is one fault with its place, its numbers and its mend.
type Finding struct {
	Rule     string
	Severity lang.Severity
	File     *lang.File // nil: the file that was checked
	Span     lang.Span
	Part     string // name or address of the part
	Message  string // one sentence: object, found, limit
	Found    string // the value found, with unit
	Limit    string // the limit, with unit
	Source   cite.Source
	Mend     string
	Fixes    []lang.Fix
	Related  []lang.Related
	// Quantity is the computed value that was judged, nil for a finding without one.
	Quantity *solve.Quantity
	Trial    bool
}

// Unknown is a rule that could not decide for want of input.
type Unknown struct {
	Rule  string
	File  *lang.File
	Span  lang.Span
	Part  string
	Needs string
}

// Comparison is one value held against one limit, kept whether it passed or
// not: margins, sheet and sensitivity read it.
type Comparison struct {
	Rule     string
	Quantity *solve.Quantity
	Limit    *Limit
	AtLeast  bool // the value must not be less; otherwise it must not be more
	Holds    bool
}

// Show prints the value or the limit in the unit in which the plant is told of
// them.
func (c *Comparison) Show(v float64) string {
	return show(v, c.Quantity, c.Limit, c.Quantity.Part.Plant().US())
}

// show prints a value of a quantity that is held against a limit: in the unit of
// the limit, else of the quantity, else in the usual one.
func show(v float64, q *solve.Quantity, l *Limit, us bool) string {
	unit, system := l.Unit, lang.Metric
	if unit == "" {
		unit = q.Unit
	}
	if us {
		unit, system = lang.Counterpart(unit), lang.US
	}
	if unit == "" {
		return lang.Quantity(v, l.Dim, system)
	}
	return lang.In(v, unit)
}

// Used is the share of the limit that is used: 1 at the limit, over 1 when it
// is broken. For a limit of zero there is no share and ok is false.
func (c *Comparison) Used() (share float64, ok bool) {
	v, l := c.Quantity.Num, c.Limit.Num
	if l == 0 {
		return 0, false
	}
	if c.AtLeast {
		v, l = l, v
	}
	if l == 0 || v != v || l != l {
		return 0, false
	}
	return v / l, true
}

// Excused is a finding that a deviation accepted.
type Excused struct {
	Finding   Finding
	Deviation *plant.Part
}

// Report is everything one check found.
type Report struct {
	Plant       *plant.Plant
	Results     *solve.Results
	Findings    []Finding
	Unknowns    []Unknown
	Comparisons []Comparison
	Excused     []Excused
	limits      []Limit        // those of Comparisons that are not of the tables
	design      *solve.Results // of the plant that a record belongs to
}

// reports holds reports that were given back, for their memory.
var reports = sync.Pool{New: func() any { return &Report{} }}

// Release gives the memory of the report, its plant with its file and its results
// back for the next check, as a run over an archive does with each file. Nothing of
// them may be used from then on; texts that were taken from them stay good. Who does
// not call it loses nothing but time.
func (r *Report) Release() {
	if r == nil || r.Plant == nil {
		return
	}
	r.Results.Release()
	r.design.Release()
	f := r.Plant.File
	r.Plant.Release()
	f.Release()
	clear(r.Findings[:cap(r.Findings)]) // what was left out of it, too
	*r = Report{Findings: r.Findings[:0], Unknowns: r.Unknowns[:0], Comparisons: r.Comparisons[:0], limits: r.limits[:0]}
	reports.Put(r)
}

// Worst is the gravest severity among the findings that count; ok is false
// without any.
func (r *Report) Worst() (worst lang.Severity, ok bool) {
	for i := range r.Findings {
		f := &r.Findings[i]
		if f.Trial {
			continue
		}
		if !ok || f.Severity > worst {
			worst, ok = f.Severity, true
		}
	}
	return worst, ok
}
