package lang

import (
	"strconv"
	"strings"
)

// Bind walks every statement of a file against its row of the schema, fills
// Statement.Bound and adds the problems it finds to the file. A statement that
// no row knows keeps a nil Bound; what stands in its block is left alone.
func Bind(f *File, s *Schema) {
	b := binder{file: f, schema: s, kind: "plant", memory: f.memory}
	if b.memory == nil {
		b.memory = &memory{}
	}
	found := false
	for _, st := range f.Statements {
		switch k := st.Head.Keyword; k {
		case "plant", "catalogue", "record", "project":
			b.kind, found = k, true
		}
		if found {
			break
		}
	}
	if !found && len(f.Statements) > 0 && !f.Damaged() {
		b.problem(Problem{
			Span: f.Statements[0].Abs(f.Statements[0].Head.KeySpan), Rule: "file-kind-missing", Severity: Error,
			Message: "The file does not say what it is; it was read as a plant.", Mend: `start it with plant "name", catalogue "name", record "name" or project "name"`,
		})
	}
	b.block(b.kind, f.Statements, nil)
	if len(b.problems) > 0 {
		f.Problems = append(f.Problems, b.problems...)
		sortProblems(f.Problems)
	}
}

// Damaged reports whether some statement of the file could not be read or is
// not known, so that what is absent may only be unreadable.
func (f *File) Damaged() bool {
	for i := range f.Problems {
		switch f.Problems[i].Rule {
		case "cannot-read", "brace-missing", "brace-astray", "unknown-statement", "not-text", "file-too-large", "too-many-statements":
			return true
		}
	}
	return false
}

type binder struct {
	file     *File
	schema   *Schema
	kind     string
	problems []Problem
	memory   *memory
}

func (b *binder) problem(p Problem) { b.problems = append(b.problems, p) }

// block binds the statements of one block.
func (b *binder) block(name string, list []*Statement, owner *Statement) {
	whole := true // every statement of the block is understood
	for _, st := range list {
		b.statement(name, st)
		if st.Bound == nil || st.Head.Problem != nil {
			whole = false
		}
	}
	b.count(name, list, owner, whole)
}

func (b *binder) statement(block string, st *Statement) {
	h := st.Head
	if h.Keyword == "" {
		return // the parser said what is wrong
	}
	row := b.schema.Row(block, h.Keyword)
	if row == nil {
		if h.Problem == nil {
			b.unknownStatement(block, st)
		}
		return
	}
	st.Bound = h.bound(row)
	if st.Bound == nil {
		st.Bound = bindIn(b.memory, h, row)
		if h.kept {
			h.setBound(st.Bound)
		}
	}
	if h.Problem == nil {
		for i := range st.Bound.Problems {
			p := st.Bound.Problems[i]
			p.Span = st.Abs(p.Span)
			for j := range p.Fixes { // shared with the cache: copy before moving
				fix := p.Fixes[j]
				fix.Edits = append([]Edit(nil), fix.Edits...)
				for k := range fix.Edits {
					fix.Edits[k].Span = st.Abs(fix.Edits[k].Span)
				}
				if j == 0 {
					p.Fixes = append([]Fix(nil), p.Fixes...)
				}
				p.Fixes[j] = fix
			}
			b.problem(p)
		}
	}
	hasBlock := !st.Braces.Empty() || len(st.Block) > 0
	switch {
	case hasBlock && row.Block == NoBlock:
		b.problem(Problem{
			Span: st.Abs(h.KeySpan), Rule: "block-not-wanted", Severity: Error,
			Message: "The statement " + h.Keyword + " has no block; what stands in its braces is not read.", Mend: "take the braces out",
		})
		return
	case !hasBlock && row.Block == MustBlock && h.Problem == nil:
		b.problem(Problem{
			Span: st.Abs(h.KeySpan), Rule: "block-missing", Severity: Error,
			Message: "The statement " + h.Keyword + " lacks its block.", Mend: "open a block with { behind it and write in it what it holds",
		})
		return
	}
	if hasBlock {
		b.block(row.BlockName(), st.Block, st)
	}
}

func (b *binder) unknownStatement(block string, st *Statement) {
	h := st.Head
	p := Problem{
		Span: st.Abs(h.KeySpan), Rule: "unknown-statement", Severity: Error,
		Message: "There is no statement " + strconv.Quote(h.Keyword) + " in " + blockWords(block) + ".",
	}
	if near := Suggest(h.Keyword, b.schema.keywords(block)); near != "" {
		p.Mend = "did you mean " + near + "?"
		p.Fixes = []Fix{{Title: "Write " + near, Edits: []Edit{{Span: p.Span, NewText: near}}, Best: true}}
	} else if homes := b.schema.homes(h.Keyword); len(homes) > 0 {
		p.Mend = "it belongs in " + blockWords(homes[0])
	} else {
		p.Mend = "use one of " + strings.Join(b.schema.keywords(block), ", ")
	}
	b.problem(p)
}

func blockWords(block string) string {
	switch block {
	case "plant", "catalogue", "record", "project":
		return Article(block) + " outside its blocks"
	}
	return Article(block) + " block"
}

// count finds statements that stand too often or not at all.
func (b *binder) count(name string, list []*Statement, owner *Statement, whole bool) {
	for i, st := range list {
		if st.Bound == nil || st.Bound.Row.Times == Many {
			continue
		}
		for _, before := range list[:i] {
			if before.Bound != nil && before.Bound.Row == st.Bound.Row {
				b.problem(Problem{
					Span: st.Abs(st.Head.KeySpan), Rule: "statement-twice", Severity: Error,
					Message: "The statement " + st.Head.Keyword + " may stand once in " + blockWords(name) + ".", Mend: "take one of the two out",
					Related: []Related{{Span: before.Abs(before.Head.KeySpan), Message: "it stands here already"}},
				})
				break
			}
		}
	}
	if !whole || b.file.Damaged() {
		return
	}
	for row := range b.schema.onceIn(name) {
		found := false
		for _, st := range list {
			if st.Bound != nil && st.Bound.Row == row {
				found = true
				break
			}
		}
		if found || row.Keyword == b.kind {
			continue
		}
		at := Span{0, 0}
		if owner != nil {
			at = owner.Abs(owner.Head.KeySpan)
		} else if len(list) > 0 {
			at = list[0].Abs(list[0].Head.KeySpan)
		}
		b.problem(Problem{
			Span: at, Rule: "statement-missing", Severity: Error,
			Message: "There is no statement " + row.Keyword + " in " + blockWords(name) + ".", Mend: "add it, for example: " + firstLine(row.Example),
		})
	}
}

func firstLine(s string) string {
	line, _, _ := strings.Cut(s, "\n")
	return line
}
