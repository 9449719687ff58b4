package plant

import (
	"bytes"
	"strconv"
	"strings"

	"example.org/tundish/lang"
)

// Ref is a reference to a part, with the port where one was named
// ("Exch.primary").
type Ref struct {
	Part *Part
	Port string
}

// ports are the openings a part may have besides its own statements.
var ports = map[string]bool{
	"primary": true, "secondary": true, "inlet": true, "outlet": true,
	"flow": true, "return": true, "gas": true, "flue": true, "condensate": true,
}

// SpanNames lists the names of U1..U8. A span that cannot be counted gives its
// two ends.
func SpanNames(e *lang.Expr) []string {
	head, low, high, ok := spanEnds(e)
	if !ok {
		return []string{e.Text, e.Last()}
	}
	out := make([]string, 0, high-low+1)
	for n := low; n <= high; n++ {
		out = append(out, head+strconv.Itoa(n))
	}
	return out
}

// spanEnds are the counted ends of a span; ok is false for one that cannot be
// counted.
func spanEnds(e *lang.Expr) (head string, low, high int, ok bool) {
	head, low, ok1 := splitNumber(e.Text)
	head2, high, ok2 := splitNumber(e.Last())
	return head, low, high, ok1 && ok2 && head == head2 && high >= low && high-low <= 255
}

func splitNumber(name string) (head string, n int, ok bool) {
	i := len(name)
	for i > 0 && name[i-1] >= '0' && name[i-1] <= '9' {
		i--
	}
	n, err := strconv.Atoi(name[i:])
	return name[:i], n, err == nil
}

// lookup finds "U3", "U3.damper", "Exch.primary" or "basis".
func (p *Plant) lookup(name string) (Ref, bool) {
	if part := p.Find(name); part != nil {
		return Ref{Part: part}, true
	}
	dot := strings.LastIndexByte(name, '.')
	if dot < 0 {
		// A part without a name of its own is known by its keyword.
		part := p.One(name)
		return Ref{Part: part}, part != nil
	}
	owner, ok := p.lookup(name[:dot])
	if !ok {
		return Ref{}, false
	}
	tail := name[dot+1:]
	if c := owner.Part.Child(tail); c != nil {
		return Ref{Part: c}, true
	}
	for _, c := range p.ByKind(tail) { // "purge-point ... of Man-A" is Man-A.purge-point
		for _, slot := range [...]string{"of", "on"} {
			if r, ok := c.Ref(slot); ok && r.Part == owner.Part {
				return Ref{Part: c}, true
			}
		}
	}
	if ports[tail] {
		return Ref{Part: owner.Part, Port: tail}, true
	}
	return Ref{}, false
}

// find is lookup that also looks into the plant that a record belongs to.
func (p *Plant) find(name string) (Ref, bool) {
	ref, ok := p.lookup(name)
	if !ok && p.Of != nil {
		ref, ok = p.Of.lookup(name)
	}
	return ref, ok
}

func (p *Plant) expand(e *lang.Expr, out []Ref) []Ref {
	switch e.Kind {
	case lang.NameExpr, lang.WordExpr:
		if ref, ok := p.find(e.Text); ok {
			out = append(out, ref)
		}
	case lang.SpanExpr:
		eachName(e, func(name []byte) {
			if part := p.findBytes(name); part != nil { // the usual case, without a copy
				out = append(out, Ref{Part: part})
			} else if ref, ok := p.find(string(name)); ok {
				out = append(out, ref)
			}
		})
	}
	return out
}

func (p *Plant) findBytes(name []byte) *Part {
	if part := p.byName[string(name)]; part != nil {
		return part
	}
	if dot := bytes.LastIndexByte(name, '.'); dot > 0 {
		if owner := p.byName[string(name[:dot])]; owner != nil {
			for _, c := range owner.Parts {
				if c.Row.Keyword == string(name[dot+1:]) && c.Name == "" && !c.ownAddress() {
					return c
				}
			}
		}
	}
	return nil
}

// eachName calls f for every name of a span, with its tail. The bytes are only
// lent.
func eachName(e *lang.Expr, f func(name []byte)) {
	var room [48]byte
	tailed := func(name []byte) {
		if e.Tail() != "" {
			name = append(append(name, '.'), e.Tail()...)
		}
		f(name)
	}
	head, low, high, ok := spanEnds(e)
	if !ok {
		tailed(append(room[:0], e.Text...))
		tailed(append(room[:0], e.Last()...))
		return
	}
	for n := low; n <= high; n++ {
		tailed(strconv.AppendInt(append(room[:0], head...), int64(n), 10))
	}
}

// Refs gives the parts that a slot refers to, spans expanded, in order. For a
// part that was written as one of a group the slot is read for that member: a
// list as long as the group gives only the member of the same position.
func (p *Part) Refs(slot string) []Ref {
	if p == nil || p.Bound == nil || p.says.Lacks(slot) {
		return nil
	}
	f := p.Bound.Field(slot)
	if f == nil {
		if p.Type != nil {
			return p.Type.Refs(slot)
		}
		return nil
	}
	for i := range p.refs {
		if p.refs[i].field == f {
			return p.paired(p.refs[i].to)
		}
	}
	return p.paired(p.plant.fieldRefs(f, nil))
}

// boundRefs are the parts that a field refers to, kept so that solvers and rules
// need not look the names up again.
type boundRefs struct {
	field *lang.Field // nil: the subjects of the statement
	to    []Ref
}

func (p *Plant) fieldRefs(f *lang.Field, out []Ref) []Ref {
	for i := range f.Values {
		if f.Values[i].State == lang.Known && f.Values[i].Expr != nil {
			out = p.expand(f.Values[i].Expr, out)
		}
	}
	return out
}

// bindRefs looks up what each part of the plant refers to. The members of a
// group share one list.
func (r *resolver) bindRefs() {
	var (
		stmt   *lang.Statement
		shared []boundRefs
		room   [32]Ref
	)
	keep := func(f *lang.Field, list []Ref) {
		to := r.refs.Take(len(list))
		copy(to, list)
		r.kept = append(r.kept, boundRefs{f, to})
	}
	for _, part := range r.plant.All {
		if part.Stmt == nil || part.Bound == nil {
			continue
		}
		if part.Stmt != stmt {
			stmt = part.Stmt
			from := len(r.kept)
			if speaksOfOthers(part.Row) {
				keep(nil, r.plant.subjects(part.Bound, room[:0]))
			}
			for i := range part.Bound.Fields {
				f := &part.Bound.Fields[i]
				if f.Slot.Type == lang.PartType || f.Slot.Type == lang.PartsType {
					keep(f, r.plant.fieldRefs(f, room[:0]))
				}
			}
			shared = r.kept[from:len(r.kept):len(r.kept)]
		}
		part.refs = shared
	}
}

func (p *Part) paired(refs []Ref) []Ref {
	if p.Of > 1 && len(refs) == p.Of {
		return refs[p.Index : p.Index+1]
	}
	return refs
}

// Ref gives the first part a slot refers to.
func (p *Part) Ref(slot string) (Ref, bool) {
	if refs := p.Refs(slot); len(refs) > 0 {
		return refs[0], true
	}
	return Ref{}, false
}

// Subjects are the parts named first in a statement that speaks of others:
// "cover Flow-H, PF", "wire U1..U8.damper". The slice is shared.
func (p *Part) Subjects() []Ref {
	if p == nil || p.Bound == nil {
		return nil
	}
	for i := range p.refs {
		if p.refs[i].field == nil {
			return p.refs[i].to
		}
	}
	if !speaksOfOthers(p.Row) {
		return nil
	}
	return p.plant.subjects(p.Bound, nil)
}

func speaksOfOthers(row *lang.Row) bool {
	return row.Name == lang.Refers || row.Name == lang.RefersMany
}

func (p *Plant) subjects(b *lang.Bound, out []Ref) []Ref {
	if len(b.Names) > 0 {
		for i := range b.Names {
			out = p.expand(&b.Names[i], out)
		}
	} else if b.Name != nil {
		out = p.expand(b.Name, out)
	}
	return out
}

// references reports every name that does not bind and every part of the wrong
// kind. Each statement is looked at once, however many parts it made.
func (r *resolver) references() {
	var last *lang.Statement
	for _, part := range r.plant.All {
		if part.Stmt == nil || part.Stmt == last {
			continue
		}
		last = part.Stmt
		if part.Index > 0 && part.Of > 1 {
			continue
		}
		b := part.Bound
		if part.Row.Name == lang.Refers || part.Row.Name == lang.RefersMany {
			found := part.boundTo(nil)
			if len(b.Names) == 0 && b.Name != nil {
				r.refersTo(part, b.Name, part.Row.Refers, found)
			}
			for i := range b.Names {
				_, found = r.refersTo(part, &b.Names[i], part.Row.Refers, found)
			}
		}
		for i := range b.Fields {
			f := &b.Fields[i]
			if f.Slot.Type != lang.PartType && f.Slot.Type != lang.PartsType {
				continue
			}
			n, found := 0, part.boundTo(f)
			for j := range f.Values {
				v := &f.Values[j]
				if v.State != lang.Known || v.Expr == nil {
					continue
				}
				var k int
				k, found = r.refersTo(part, v.Expr, f.Slot.Refers, found)
				n += k
			}
			if part.Of > 1 && n > 1 && n != part.Of && part.Bound.Name != nil && part.Bound.Name.Kind == lang.SpanExpr {
				r.problem(part.File, lang.Problem{
					Span: part.Stmt.Abs(f.Span), Rule: "group-length", Severity: lang.Error,
					Message: "The group has " + strconv.Itoa(part.Of) + " members but is paired with " + strconv.Itoa(n) + ".",
					Mend:    "give both the same number of members, or a single part",
				})
			}
		}
	}
}

// refersTo checks one reference, of which found begins with what bindRefs found
// for it, and gives how many parts it names and what was found for the next one.
func (r *resolver) refersTo(part *Part, e *lang.Expr, kinds []string, found []Ref) (n int, rest []Ref) {
	if n = countNames(e); n <= len(found) && allFit(found[:n], kinds) && namesAll(found[:n], e) {
		return n, found[n:]
	}
	return r.reference(part, e, kinds), nil
}

// boundTo are the parts that bindRefs found for a field.
func (p *Part) boundTo(f *lang.Field) []Ref {
	for i := range p.refs {
		if p.refs[i].field == f {
			return p.refs[i].to
		}
	}
	return nil
}

// countNames counts the names of a reference.
func countNames(e *lang.Expr) int {
	if e.Kind != lang.SpanExpr {
		return 1
	}
	if _, low, high, ok := spanEnds(e); ok {
		return high - low + 1
	}
	return 2
}

// allFit reports whether parts that were found are of the kinds wanted.
func allFit(refs []Ref, kinds []string) bool {
	if isTypeSlot(kinds) {
		return false // types are not among the parts
	}
	for i := range refs {
		if len(kinds) > 0 && refs[i].Port == "" && !allows(kinds, refs[i].Part) {
			return false
		}
	}
	return true
}

// namesAll reports whether parts that were found are surely those that an
// expression names: their own names are the ones written.
func namesAll(refs []Ref, e *lang.Expr) bool {
	switch e.Kind {
	case lang.NameExpr:
		name, tail, _ := strings.Cut(e.Text, ".")
		return refs[0].Part.called(name, tail)
	case lang.SpanExpr:
		return refs[0].Part.called(e.Text, e.Tail()) && refs[len(refs)-1].Part.called(e.Last(), e.Tail())
	}
	return false
}

// called reports whether the part goes by that name, or stands under that keyword
// in the block of the part that does.
func (p *Part) called(name, keyword string) bool {
	if keyword == "" {
		return p.Name == name
	}
	return p.Name == "" && p.Owner != nil && p.Owner.Name == name && p.Row.Keyword == keyword
}

// reference checks one reference and returns how many parts it names.
func (r *resolver) reference(part *Part, e *lang.Expr, kinds []string) int {
	names := []string{e.Text}
	if e.Kind == lang.SpanExpr {
		names = SpanNames(e)
	}
	var missing []string
	for _, n := range names {
		full := n
		if e.Tail() != "" {
			full += "." + e.Tail()
		}
		if isTypeSlot(kinds) {
			switch t := r.plant.Types[n]; {
			case t == nil && !r.plant.Damaged("use"):
				missing = append(missing, n)
			case t != nil && !allows(kinds, t):
				r.wrongPart(part, e, n, t, kinds)
				return len(names)
			}
			continue
		}
		ref, ok := r.plant.find(full)
		if !ok {
			if r.plant.damage.names[n] || r.plant.damage.blocks[everywhere] {
				continue // it may stand in a statement that cannot be read
			}
			missing = append(missing, full)
			continue
		}
		if len(kinds) > 0 && ref.Port == "" && !allows(kinds, ref.Part) {
			r.wrongPart(part, e, full, ref.Part, kinds)
			return len(names)
		}
	}
	if len(missing) > 0 {
		r.missing(part, e, missing, kinds)
	}
	return len(names)
}

func (r *resolver) wrongPart(part *Part, e *lang.Expr, name string, is *Part, kinds []string) {
	r.problem(part.File, lang.Problem{
		Span: part.Stmt.Abs(e.Span), Rule: "wrong-part", Severity: lang.Error,
		Message: name + " is " + lang.Article(is.Kind) + "; here " + words(kinds) + " is wanted.",
		Mend:    "name " + words(kinds),
	})
}

// isTypeSlot tells a slot that names catalogue types: its kinds end in "-type".
func isTypeSlot(kinds []string) bool {
	for _, k := range kinds {
		if strings.HasSuffix(k, "-type") {
			return true
		}
	}
	return false
}

func allows(kinds []string, p *Part) bool {
	for _, k := range kinds {
		if p.Kind == k || (p.Row != nil && p.Row.Keyword == k) {
			return true
		}
	}
	return false
}

func words(kinds []string) string {
	var b strings.Builder
	for i, k := range kinds {
		switch {
		case i > 0 && i == len(kinds)-1:
			b.WriteString(" or ")
		case i > 0:
			b.WriteString(", ")
		}
		b.WriteString(lang.Article(k))
	}
	return b.String()
}

func (r *resolver) missing(part *Part, e *lang.Expr, missing, kinds []string) {
	if r.unread {
		return
	}
	var fixes []lang.Fix
	mend := "name a part that the file describes"
	if len(missing) == 1 && e.Kind != lang.SpanExpr {
		if s := r.suggest(missing[0], kinds); s != "" {
			mend = "did you mean " + s + "?"
			fixes = []lang.Fix{{
				Title: "Write " + s,
				Edits: []lang.Edit{{Span: part.Stmt.Abs(e.Span), NewText: s}},
				Best:  true,
			}}
		}
	}
	what := "part"
	if isTypeSlot(kinds) {
		what = "type"
		if len(fixes) == 0 {
			mend = "describe the type in a catalogue and use that catalogue"
		}
	}
	msg := "There is no " + what + " named " + missing[0] + "."
	if len(missing) > 1 {
		msg = "There are no " + what + "s named " + strings.Join(missing, ", ") + "."
	}
	r.problem(part.File, lang.Problem{
		Span: part.Stmt.Abs(e.Span), Rule: "unknown-name", Severity: lang.Error,
		Message: msg, Mend: mend, Fixes: fixes,
	})
}

func (r *resolver) suggest(name string, kinds []string) string {
	var names []string
	if isTypeSlot(kinds) {
		for n := range r.plant.Types {
			names = append(names, n)
		}
	} else {
		dotted := strings.Contains(name, ".")
		for _, p := range r.plant.All {
			if len(kinds) > 0 && !allows(kinds, p) || p.Name == "" && !dotted && p.Owner != r.plant.Root {
				continue
			}
			if n := p.Address(); r.plant.Find(n) == p {
				names = append(names, n)
			}
		}
	}
	return lang.Suggest(name, names)
}
