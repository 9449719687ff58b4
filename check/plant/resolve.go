package plant

import (
	"path"
	"strconv"

	"example.org/tundish/lang"
)

// Loader fetches another file of the workspace by its path relative to the
// root, already bound to the schema. It refuses paths outside the workspace.
type Loader func(path string) (*lang.File, error)

// maxUseDepth bounds chains of catalogues that use catalogues.
const maxUseDepth = 8

// Resolve builds the plant of a bound file. load may be nil where there is
// nothing to load from; a "use" is then a problem. The result is never nil.
func Resolve(f *lang.File, load Loader) *Plant {
	m := memories.Get().(*memory)
	p := &Plant{File: f, Kind: fileKind(f), Types: m.types, All: m.all, memory: m}
	r := &resolver{plant: p, load: load, memory: m}
	r.uses(f, []string{path.Clean(f.Source.Name)})
	p.Root = r.new()
	*p.Root = Part{Kind: p.Kind, File: f, plant: p, Of: 1}
	r.keep = true
	r.children(p.Root, f.Statements, f)
	p.Root.knows()
	p.findDamage()
	r.index()
	r.bindRefs()
	r.references()
	r.asBuilt()
	return p
}

func fileKind(f *lang.File) string {
	for _, st := range f.Statements {
		switch k := st.Head.Keyword; k {
		case "plant", "catalogue", "record", "project":
			return k
		}
	}
	return "plant"
}

type resolver struct {
	plant *Plant
	load  Loader
	*memory
	texts joined // names and addresses
	keep  bool   // parts belong to the plant itself, not to a catalogue
	// unread is set in a record whose plant is not to be had: its names may stand
	// there.
	unread bool
	// shallow leaves blocks for later: types are many, and few are used.
	shallow bool
}

func (r *resolver) new() *Part { return r.parts.One() }

func (r *resolver) problem(f *lang.File, p lang.Problem) {
	r.plant.Problems = append(r.plant.Problems, FileProblem{f, p})
}

// uses loads the catalogues of a file, depth first, each once.
func (r *resolver) uses(f *lang.File, chain []string) {
	for _, st := range f.Statements {
		if st.Bound == nil {
			continue
		}
		switch st.Head.Keyword {
		case "use":
			r.use(f, st, chain)
		case "of-plant":
			r.ofPlant(f, st)
		}
	}
	if len(chain) > 1 || r.plant.Kind == "catalogue" {
		r.types(f)
	}
}

func textOf(st *lang.Statement) (string, lang.Span, bool) {
	for i := range st.Bound.Fields {
		fl := &st.Bound.Fields[i]
		if fl.Slot.Type == lang.TextType && len(fl.Values) > 0 && fl.Values[0].State == lang.Known {
			return fl.Values[0].Word, st.Abs(fl.Span), true
		}
	}
	return "", lang.Span{}, false
}

func (r *resolver) use(f *lang.File, st *lang.Statement, chain []string) {
	name, span, ok := textOf(st)
	if !ok {
		return
	}
	target, ok := r.target(f, name, span)
	if !ok {
		return
	}
	for _, c := range chain {
		if c == target {
			r.problem(f, lang.Problem{
				Span: span, Rule: "circular-use", Severity: lang.Error,
				Message: "The catalogue " + strconv.Quote(name) + " leads back to a file that uses it.",
				Mend:    "take out one of the use statements",
			})
			return
		}
	}
	for _, c := range r.plant.Catalogues {
		if path.Clean(c.Source.Name) == target {
			return
		}
	}
	if len(chain) > maxUseDepth {
		r.problem(f, lang.Problem{
			Span: span, Rule: "use-too-deep", Severity: lang.Error,
			Message: "Catalogues use each other more than " + strconv.Itoa(maxUseDepth) + " deep.",
			Mend:    "use the last catalogue directly",
		})
		return
	}
	cat, ok := r.fetch(f, target, name, span, "catalogue")
	if !ok {
		return
	}
	r.plant.Catalogues = append(r.plant.Catalogues, cat)
	r.uses(cat, append(chain[:len(chain):len(chain)], target))
}

// target is the workspace path a use statement means, relative to the file it
// stands in.
func (r *resolver) target(f *lang.File, name string, span lang.Span) (string, bool) {
	if name == "" || path.IsAbs(name) || len(name) > 1 && name[1] == ':' {
		r.problem(f, lang.Problem{
			Span: span, Rule: "use-outside", Severity: lang.Error,
			Message: "The path " + strconv.Quote(name) + " is not relative to this file.",
			Mend:    "give a path inside the workspace, relative to this file",
		})
		return "", false
	}
	return path.Join(path.Dir(path.Clean(f.Source.Name)), name), true
}

func (r *resolver) fetch(f *lang.File, target, name string, span lang.Span, what string) (*lang.File, bool) {
	if r.load == nil {
		r.problem(f, lang.Problem{
			Span: span, Rule: "file-missing", Severity: lang.Error,
			Message: "The " + what + " " + strconv.Quote(name) + " cannot be read here: only this text was given.",
			Mend:    "give the file by its path",
		})
		return nil, false
	}
	got, err := r.load(target)
	if err != nil {
		r.problem(f, lang.Problem{
			Span: span, Rule: "file-missing", Severity: lang.Error,
			Message: "The " + what + " " + strconv.Quote(name) + " cannot be read: " + err.Error() + ".",
			Mend:    "check the path; it counts from the folder of this file",
		})
		return nil, false
	}
	return got, true
}

func (r *resolver) ofPlant(f *lang.File, st *lang.Statement) {
	if r.plant.Of != nil || f != r.plant.File {
		return
	}
	r.unread = true
	name, span, ok := textOf(st)
	if !ok {
		return
	}
	target, ok := r.target(f, name, span)
	if !ok {
		return
	}
	of, ok := r.fetch(f, target, name, span, "plant")
	if !ok {
		return
	}
	// A record of a record could lead back to itself.
	if kind := fileKind(of); kind != "plant" {
		r.problem(f, lang.Problem{
			Span: span, Rule: "not-a-plant", Severity: lang.Error,
			Message: "The file " + strconv.Quote(name) + " is a " + kind + ", not a plant.",
			Mend:    "give the path of the plant that the record belongs to",
		})
		return
	}
	r.plant.Of, r.unread = Resolve(of, r.load), false
}

// types takes the catalogue's types; the first of a name stands. Their blocks
// stay closed until a part follows the type.
func (r *resolver) types(f *lang.File) {
	holder := r.new()
	*holder = Part{Kind: "catalogue", File: f, plant: r.plant, Of: 1}
	keep := r.keep
	r.keep, r.shallow = false, true
	r.children(holder, f.Statements, f)
	r.keep, r.shallow = keep, false
	for _, t := range holder.Parts {
		if t.Name == "" {
			continue
		}
		if first, twice := r.plant.Types[t.Name]; twice {
			r.problem(f, lang.Problem{
				Span: t.Span(), Rule: "name-twice", Severity: lang.Error,
				Message: "The type " + t.Name + " is described twice; the first description counts.",
				Mend:    "give one of them another name",
				Related: []lang.Related{{File: first.File.Source.Name, Span: first.Span(), Message: "first described here"}},
			})
			continue
		}
		r.plant.Types[t.Name] = t
	}
}

// typeOf gives a type of the catalogues; its block is resolved when it is first
// asked for, because a plant uses few of the types that its catalogues describe.
func (r *resolver) typeOf(name string) *Part {
	t := r.plant.Types[name]
	if t != nil && t.Parts == nil && len(t.Stmt.Block) > 0 {
		keep := r.keep
		r.keep = false
		r.inside(t)
		t.knows()
		r.keep = keep
	}
	return t
}

func (r *resolver) children(owner *Part, list []*lang.Statement, f *lang.File) {
	if len(list) == 0 {
		return
	}
	n := 0
	for _, st := range list {
		if st.Bound != nil {
			n += parts(st)
		}
	}
	owner.Parts = r.pointers.Take(n)[:0]
	for _, st := range list {
		if st.Bound == nil {
			continue // the statement is not known; it has its own problem
		}
		r.statement(owner, st, f)
	}
}

// parts counts the parts that a statement makes.
func parts(st *lang.Statement) int {
	name := st.Bound.Name
	if name == nil || name.Kind != lang.SpanExpr || !defines(st.Bound.Row) {
		return 1
	}
	return countNames(name)
}

func defines(row *lang.Row) bool {
	return row.Name == lang.DefinesMany || row.Name == lang.Defines || row.Name == lang.MayDefine
}

func (r *resolver) statement(owner *Part, st *lang.Statement, f *lang.File) {
	name := st.Bound.Name
	switch {
	case name == nil || !defines(st.Bound.Row):
		r.part(owner, st, f, "", 0, 1)
	case name.Kind == lang.SpanExpr:
		n := parts(st)
		i := 0
		eachName(&lang.Expr{Kind: lang.SpanExpr, Text: name.Text, R: name.R}, func(member []byte) {
			r.part(owner, st, f, r.texts.join(string(member), "", ""), i, n)
			i++
		})
	default:
		r.part(owner, st, f, name.Text, 0, 1)
	}
}

func (r *resolver) part(owner *Part, st *lang.Statement, f *lang.File, name string, index, of int) {
	row := st.Bound.Row
	p := r.new()
	*p = Part{
		Name: name, Kind: row.PartKind(), Row: row, Bound: st.Bound, Stmt: st, File: f,
		Index: index, Of: of, Owner: owner, plant: r.plant, names: row.Names(),
	}
	// Inside a group every member inherits the position of its owner, so that
	// "from Man-A to U1..U8" in a block of U1..U8 pairs too.
	if of == 1 && owner.Of > 1 {
		p.Index, p.Of = owner.Index, owner.Of
	}
	owner.Parts = append(owner.Parts, p)
	owner.holds |= p.names
	if r.keep {
		p.ID = len(r.plant.All)
		r.plant.All = append(r.plant.All, p)
	}
	if t := p.Bound.Field("type"); t != nil && len(t.Values) > 0 && t.Slot.Type == lang.PartType {
		p.Type = r.typeOf(t.Values[0].Word)
	}
	if !r.shallow {
		r.inside(p)
	}
	p.knows()
}

// inside resolves the block of a part.
func (r *resolver) inside(p *Part) {
	r.children(p, p.Stmt.Block, p.File)
	// A type named by a statement in the block is the part's, not the statement's.
	for _, c := range p.Parts {
		if c.Row.Keyword == "type" {
			p.Type, c.Type = c.Type, nil
		}
	}
}

// index makes the tables of names and kinds and finds names given twice.
func (r *resolver) index() {
	p := r.plant
	p.byName = r.byName
	r.kinds()
	for _, part := range p.All {
		if part.Name == "" && part.Owner.Owner != nil && !part.ownAddress() {
			continue // its address follows from its owner's
		}
		address := part.Address()
		first, twice := p.byName[address]
		if !twice {
			p.byName[address] = part
			continue
		}
		if part.Name == "" || first.Name == "" {
			continue // facts without a name may repeat; the schema counts them
		}
		p.repeats = true
		r.problem(part.File, lang.Problem{
			Span: nameSpan(part), Rule: "name-twice", Severity: lang.Error,
			Message: "The name " + part.Name + " stands for two parts.",
			Mend:    "give one of them another name",
			Related: []lang.Related{{Span: nameSpan(first), Message: "first used here"}},
		})
	}
	if units := p.Units(); len(units) > 0 {
		g := r.new()
		*g = Part{
			ID: len(p.All), Kind: "units", Row: units[0].Row, Bound: units[0].Bound,
			Stmt: units[0].Stmt, File: p.File, Of: 1, Owner: p.Root, Parts: units, plant: p, names: lang.NameBit("units") | units[0].names, holds: units[0].names,
		}
		g.knows()
		p.All = append(p.All, g)
		p.unitGroup = g
		p.byName["units"] = g
	}
}

// kinds sorts the parts by kind and by keyword.
func (r *resolver) kinds() {
	schema := lang.Language()
	var room [512]int32
	count := append(room[:0], make([]int32, schema.Kinds())...)
	for _, part := range r.plant.All {
		kind, keyword := part.Row.Kinds()
		count[kind]++
		if keyword != kind {
			count[keyword]++
		}
	}
	if len(r.byKind) != len(count) {
		r.byKind = make([][]*Part, len(count))
	}
	for i, n := range count {
		r.byKind[i] = nil
		if n > 0 {
			r.byKind[i] = r.pointers.Take(int(n))[:0]
		}
	}
	for _, part := range r.plant.All {
		kind, keyword := part.Row.Kinds()
		r.byKind[kind] = append(r.byKind[kind], part)
		if keyword != kind {
			r.byKind[keyword] = append(r.byKind[keyword], part)
		}
	}
	p := r.plant
	p.byKind = r.byKind
	p.units = p.ByKind("unit")
	for _, part := range p.ByKind("basis") {
		if part.Owner == p.Root {
			p.basis = part
			break
		}
	}
	p.us = p.basis.Get("jurisdiction").Is("US")
}

func nameSpan(p *Part) lang.Span {
	if p.Bound != nil && p.Bound.Name != nil {
		return p.Stmt.Abs(p.Bound.Name.Span)
	}
	return p.Span()
}
