package lang

import (
	"iter"
	"slices"
	"sync"
)

// Schema is the table of rows with its indexes.
type Schema struct {
	Rows   []Row
	blocks NameTable[[]*Row] // rows of a block in table order
	kinds  NameTable[int]    // numbers of kinds and keywords
}

// NewSchema indexes the groups of a table.
func NewSchema(groups ...[]Entry) *Schema {
	n := 0
	for _, g := range groups {
		n += len(g)
	}
	s := &Schema{Rows: make([]Row, 0, n)}
	s.blocks.Grow(n / 6)
	s.kinds.Grow(n)
	for _, g := range groups {
		for i := range g {
			s.Rows = append(s.Rows, Row{Entry: &g[i]})
			r := &s.Rows[len(s.Rows)-1]
			r.kind = s.number(r.PartKind())
			if r.keyword = r.kind; r.Kind != "" {
				r.keyword = s.number(r.Keyword)
			}
			r.index()
			for _, in := range r.In {
				s.blocks.Put(in, append(s.blocks.Get(in), r))
			}
		}
	}
	return s
}

// index makes the sets and lists of the row that answer the usual questions.
func (r *Row) index() {
	r.names = NameBit(r.Keyword) | NameBit(r.PartKind())
	for _, s := range r.Slots {
		if s.Default != "" {
			r.defaults |= NameBit(s.Name)
		}
		switch {
		case s.Label != "":
			r.labels |= NameBit(s.Label)
		case s.Type == FlagType:
			r.labels |= NameBit(s.Name)
		}
		if s.Suffix != "" {
			r.suffixes |= NameBit(s.Suffix)
		}
	}
}

func (s *Schema) number(name string) int {
	n, ok := s.kinds.Find(name)
	if !ok {
		n = s.kinds.Len()
		s.kinds.Put(name, n)
	}
	return n
}

// Kind is the number of a kind of part or a keyword, from 0 up to and without
// Kinds; ok is false for a word that is neither.
func (s *Schema) Kind(name string) (n int, ok bool) {
	return s.kinds.Find(name)
}

// Kinds counts the kinds and keywords.
func (s *Schema) Kinds() int { return s.kinds.Len() }

// language joins the entries of every file in the order of a specification.
var language = sync.OnceValue(func() *Schema {
	return NewSchema(
		fileRows, basisRows, unitRows, frameRows, gasRows, headerRows, separationRows, safetyRows, flueRows, condensateRows, airRows,
		electricalRows, insulationRows, testRows, catalogueRows, recordRows, projectRows,
	)
})

// Language is the schema of the plant language.
func Language() *Schema { return language() }

// Row finds the row of a keyword in a block; nil if the block has none.
func (s *Schema) Row(block, keyword string) *Row {
	for _, r := range s.blocks.Get(block) {
		if r.Keyword == keyword {
			return r
		}
	}
	return nil
}

// RowsOf lists the rows of a block in table order. The slice is shared.
func (s *Schema) RowsOf(block string) []*Row { return s.blocks.Get(block) }

// Blocks lists every block that holds statements, in order of the alphabet.
func (s *Schema) Blocks() []string { return slices.Sorted(s.blocks.Names()) }

// onceIn gives the rows that a block must hold.
func (s *Schema) onceIn(block string) iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		for _, r := range s.blocks.Get(block) {
			if r.Times == Once && !yield(r) {
				return
			}
		}
	}
}

// keywords lists the keywords of a block.
func (s *Schema) keywords(block string) []string {
	out := make([]string, 0, len(s.blocks.Get(block)))
	for _, r := range s.blocks.Get(block) {
		out = append(out, r.Keyword)
	}
	return out
}

// homes lists the blocks where a keyword may stand.
func (s *Schema) homes(keyword string) []string {
	var out []string
	for b := range s.blocks.Names() {
		if s.Row(b, keyword) != nil {
			out = append(out, b)
		}
	}
	slices.Sort(out)
	return out
}
