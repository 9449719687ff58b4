package sheet

import (
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// front fills the job and its basis.
func (b *builder) front() {
	p, s := b.rep.Plant, b.s
	if head := p.One(p.Kind); head != nil && head.Bound != nil {
		for i := range head.Bound.Fields {
			f := &head.Bound.Fields[i]
			if f.Slot.Type == lang.TextType && len(f.Values) > 0 && f.Values[0].State == lang.Known {
				s.Title = f.Values[0].Word
				break
			}
		}
		s.Revision = head.Get("revision").Word
		s.Dated = head.Get("date").Word
	}
	for _, x := range p.ByKind("person") {
		s.People = append(s.People, Person{Code: x.Label(), Role: x.Get("role").Word, Register: x.Get("register").Word})
	}
	for _, x := range p.ByKind("caution") {
		s.Cautions = append(s.Cautions, Caution{Topic: words(x.Get("topic").Word), Text: x.Get("text").Word})
	}
	if basis := p.Block("basis"); basis != nil && basis.Stmt != nil {
		for _, st := range basis.Stmt.Block {
			s.Basis = append(s.Basis, statementLine(p.File, st))
		}
	}
	for i := range p.File.Source.Lines() {
		s.Text = append(s.Text, TextLine{Number: i + 1, Text: strings.TrimRight(lineText(p.File.Source, i), "\r\n")})
	}
}

func lineText(src *lang.Source, i int) string {
	end := len(src.Text)
	if i+1 < src.Lines() {
		end = src.LineStart(i + 1)
	}
	return src.Text[src.LineStart(i):end]
}

// statementLine is a statement as written, cut into its word and its values,
// with runs of spaces drawn together.
func statementLine(f *lang.File, st *lang.Statement) Line {
	n, _ := f.Source.Position(st.Base)
	text := squeeze(st.Head.Text)
	key := st.Head.Keyword
	return Line{Key: words(key), Text: strings.TrimSpace(strings.TrimPrefix(text, key)), Number: n}
}

// squeeze draws runs of spaces outside of texts together.
func squeeze(s string) string {
	var b strings.Builder
	quoted, space := false, false
	for _, r := range s {
		switch {
		case r == '"':
			quoted = !quoted
		case !quoted && (r == ' ' || r == '\t'):
			space = true
			continue
		}
		if space {
			b.WriteByte(' ')
			space = false
		}
		b.WriteRune(r)
	}
	return b.String()
}

// words turns a word of the language into words of prose.
func words(id string) string { return strings.ReplaceAll(id, "-", " ") }

// heading is words with a capital.
func heading(id string) string {
	w := words(id)
	if w == "" {
		return ""
	}
	return strings.ToUpper(w[:1]) + w[1:]
}

// Want is a requirement of the designer's own with what came of it.
type Want struct {
	Condition, Because string
	Found              string
	State              string // holds, does not hold, not evaluated
	Number             int
}

func (b *builder) wants() {
	p := b.rep.Plant
	pass := &check.Pass{Plant: p, Results: b.rep.Results}
	for _, r := range p.ByKind("require") {
		f := r.Bound.Field("condition")
		if f == nil || len(f.Values) == 0 || f.Values[0].Expr == nil {
			continue
		}
		e := f.Values[0].Expr
		w := Want{Condition: r.Stmt.Head.Text[e.Span.Start:e.Span.End], Because: r.Get("because").Word}
		w.Number, _ = p.File.Source.Position(r.Stmt.Base)
		l, right, holds, err := pass.Compare(e)
		switch {
		case err != nil:
			w.State = "not evaluated"
		case holds:
			w.State = "holds"
		default:
			w.State = "does not hold"
		}
		if err == nil {
			unit := right.Unit
			if unit == "" {
				unit = l.Unit
			}
			w.Found = term(l, unit, b.system()) + " against " + term(right, unit, b.system())
		}
		b.s.Wants = append(b.s.Wants, w)
	}
}

func term(t check.Term, unit string, sys lang.System) string {
	if t.Pure {
		return lang.Num(t.Num, 4)
	}
	if u, ok := lang.LookupUnit(unit); ok && u.Dim == t.Dim {
		return lang.In(t.Num, unit)
	}
	return lang.Quantity(t.Num, t.Dim, sys)
}

// blockOf is the block at the top of the file in which a part stands; the part
// itself where it has no owner.
func blockOf(p *plant.Plant, x *plant.Part) *plant.Part {
	for x.Owner != nil && x.Owner != p.Root {
		x = x.Owner
	}
	return x
}
