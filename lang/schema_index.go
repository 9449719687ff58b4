package lang

import (
	"iter"
	"maps"
	"slices"
	"sync"
)

// Schema is the table of rows with its indexes.
type Schema struct {
	Rows   []Row
	blocks map[string][]*Row // rows of a block in table order
	kinds  map[string]int    // numbers of kinds and keywords
}

// NewSchema indexes the groups of a table.
func NewSchema(groups ...[]Entry) *Schema {
	n := 0
	for _, g := range groups {
		n += len(g)
	}
	s := &Schema{Rows: make([]Row, 0, n), blocks: make(map[string][]*Row, n/4), kinds: make(map[string]int, n)}
	for _, g := range groups {
		for i := range g {
			s.Rows = append(s.Rows, Row{Entry: &g[i]})
			r := &s.Rows[len(s.Rows)-1]
			r.kind, r.keyword = s.number(r.PartKind()), s.number(r.Keyword)
			r.index()
			for _, in := range r.In {
				s.blocks[in] = append(s.blocks[in], r)
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
		if s.Required {
			r.required = append(r.required, s)
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
	n, ok := s.kinds[name]
	if !ok {
		n = len(s.kinds)
		s.kinds[name] = n
	}
	return n
}

// Kind is the number of a kind of part or a keyword, from 0 up to and without
// Kinds; ok is false for a word that is neither.
func (s *Schema) Kind(name string) (n int, ok bool) {
	n, ok = s.kinds[name]
	return n, ok
}

// Kinds counts the kinds and keywords.
func (s *Schema) Kinds() int { return len(s.kinds) }

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
	for _, r := range s.blocks[block] {
		if r.Keyword == keyword {
			return r
		}
	}
	return nil
}

// RowsOf lists the rows of a block in table order. The slice is shared.
func (s *Schema) RowsOf(block string) []*Row { return s.blocks[block] }

// Blocks lists every block that holds statements, in order of the alphabet.
func (s *Schema) Blocks() []string { return slices.Sorted(maps.Keys(s.blocks)) }

// onceIn gives the rows that a block must hold.
func (s *Schema) onceIn(block string) iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		for _, r := range s.blocks[block] {
			if r.Times == Once && !yield(r) {
				return
			}
		}
	}
}

// keywords lists the keywords of a block.
func (s *Schema) keywords(block string) []string {
	out := make([]string, 0, len(s.blocks[block]))
	for _, r := range s.blocks[block] {
		out = append(out, r.Keyword)
	}
	return out
}

// homes lists the blocks where a keyword may stand.
func (s *Schema) homes(keyword string) []string {
	var out []string
	for b := range s.blocks {
		if s.Row(b, keyword) != nil {
			out = append(out, b)
		}
	}
	slices.Sort(out)
	return out
}
