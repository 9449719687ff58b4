package check

import (
	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/solve"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// Pass is what a rule works with. Its verbs are Report (a fault), Unknown (no
// input to decide) and the comparisons AtMost and AtLeast.
type Pass struct {
	Rule    *Rule
	Plant   *plant.Plant
	Results *solve.Results
	// Design is what was computed for the plant that a record belongs to; nil for
	// other files, and for a record whose plant is not to be had.
	Design *solve.Results
	Today  lang.Date // zero: no date was given
	in     *Input
	rep    *Report
	used   map[*plant.Part]int
	us     bool // the plant speaks US units
}

// Limit gives a limit of the tables, with the project's override in force. It is
// shared: a rule that needs another makes its own.
func (p *Pass) Limit(id string) *Limit {
	l := tables.LimitOf(id)
	if l == nil {
		panic("check: rule " + p.Rule.ID + " asks for an unknown limit " + id) // caught by the rule test
	}
	if len(p.in.Overrides) > 0 {
		if o, ok := p.in.Overrides[id]; ok {
			l = &o
		}
	}
	if p.us {
		if u, ok := lang.LookupUnit(l.Unit); ok && !u.US {
			if s := lang.UsualUnit(l.Num, l.Dim, lang.US); s != "" && !universal(l.Dim) {
				us := *l
				us.Unit = s
				return &us
			}
		}
	}
	return l
}

// spoken is the unit in which the plant is told of a value.
func (p *Pass) spoken(symbol string) string {
	if p.us {
		return lang.Counterpart(symbol)
	}
	return symbol
}

// In prints an SI value in a unit of the language, or in its US counterpart where
// the plant speaks US units.
func (p *Pass) In(v float64, symbol string) string {
	return lang.In(v, p.spoken(symbol))
}

// Up prints like In, rounded up to what reaches v; for a lower limit that the
// reader or a fix may take over as it is.
func (p *Pass) Up(v float64, symbol string) string {
	return lang.InUp(v, p.spoken(symbol))
}

// Down is Up for an upper limit.
func (p *Pass) Down(v float64, symbol string) string {
	return lang.InDown(v, p.spoken(symbol))
}

// universal dimensions are written alike in both systems of units.
func universal(d lang.Dimension) bool {
	switch d {
	case lang.Count, lang.Ratio, lang.Time, lang.Angle, lang.Acidity, lang.ExplosiveLimit, lang.Frequency, lang.Voltage, lang.Current:
		return true
	}
	return false
}

// Judge runs all rules on another plant by the same settings; for the plant as
// it was built.
func (p *Pass) Judge(pl *plant.Plant) *Report {
	return Run(Input{Plant: pl, Rules: p.in.Rules, Today: p.Today, Overrides: p.in.Overrides})
}

// Report adds a finding. Empty fields are filled from the rule and the part.
func (p *Pass) Report(part *plant.Part, f Finding) {
	f.Rule = p.Rule.ID
	if part != nil && part.Stmt != nil && part.Stmt.Head.Problem != nil {
		p.Unknown(part, "a statement that can be read") // half typed: what it lacks may still come
		return
	}
	if f.Severity == lang.Note && p.Rule.Severity != lang.Note {
		f.Severity = p.Rule.Severity
	}
	if f.Source.Work == "" {
		f.Source = p.Rule.Source()
	}
	if !p.Rule.Device && f.Severity == lang.Error && !f.Source.Firm() {
		f.Severity = lang.Warning // a number nobody read in print does not stop a plant
	}
	if f.Mend == "" {
		f.Mend = p.Rule.Mend
	}
	if part != nil {
		if f.Part == "" {
			f.Part = part.Label()
		}
		if f.Span.Empty() {
			f.Span, f.File = part.Span(), part.File
		} else if f.File == nil {
			f.File = part.File
		}
	}
	f.Trial = p.Rule.Status == Trial
	p.rep.Findings = append(p.rep.Findings, f)
}

// Unknown says aloud that the rule could not decide: needs is what the text
// would have to state, "the length of G1".
func (p *Pass) Unknown(part *plant.Part, needs string) {
	u := Unknown{Rule: p.Rule.ID, Needs: needs, File: p.Plant.File}
	if part != nil {
		u.Part, u.Span, u.File = part.Label(), part.Span(), part.File
	}
	p.rep.Unknowns = append(p.rep.Unknowns, u)
}

// AtMost holds a computed value against an upper limit. It gives nil when the
// limit holds, and when the value is not known, which it reports as Unknown.
// Otherwise it gives a finding with found, limit, source and place filled in,
// for the rule to complete and hand to Report.
func (p *Pass) AtMost(q *solve.Quantity, l *Limit) *Finding { return p.compare(q, l, false) }

// AtLeast is AtMost for a lower limit.
func (p *Pass) AtLeast(q *solve.Quantity, l *Limit) *Finding { return p.compare(q, l, true) }

func (p *Pass) compare(q *solve.Quantity, l *Limit, least bool) *Finding {
	if q == nil {
		return nil // never asked for: the part does not exist in this plant
	}
	if !q.Known() {
		p.Unknown(q.Part, q.Missing)
		return nil
	}
	holds := atMost(q.Num, l.Num)
	if least {
		holds = atLeast(q.Num, l.Num)
	}
	p.rep.Comparisons = append(p.rep.Comparisons, Comparison{Rule: p.Rule.ID, Quantity: q, Limit: l, AtLeast: least, Holds: holds})
	if holds {
		return nil
	}
	word := "at most "
	if least {
		word = "at least "
	}
	f := &Finding{
		Found: show(q.Num, q, l, p.us), Limit: word + show(l.Num, q, l, p.us), Source: l.Source,
		Severity: p.Rule.Severity, Span: q.At, File: q.Part.File, Part: q.Part.Label(), Quantity: q,
	}
	if f.Span.Empty() {
		f.Span = q.Part.Span()
	}
	if o := l.Origin; o.Message != "" && !sameLine(f, o) {
		f.Related = append(f.Related, o)
	}
	if l.Source.Read == cite.Memory || l.Source.Read == cite.Practice {
		if !p.Rule.Device && f.Severity == lang.Error {
			f.Severity = lang.Warning
		}
	}
	return f
}

// sameLine tells a place that stands on the line of the finding itself: nobody
// needs to be led there.
func sameLine(f *Finding, at lang.Related) bool {
	if f.File == nil {
		return false
	}
	src := f.File.Source
	return src.Name == at.File && src.LineOf(f.Span.Start) == src.LineOf(at.Span.Start)
}
