package lang

import (
	"sort"
	"sync"
)

// Schema is the table of rows with its indexes.
type Schema struct {
	Rows    []Row
	byBlock map[string]map[string]*Row
	order   map[string][]*Row // rows of a block in table order
	once    map[string][]*Row // rows that a block must hold
	kinds   map[string]int    // numbers of kinds and keywords
}

// NewSchema indexes a table of rows.
func NewSchema(rows []Row) *Schema {
	s := &Schema{Rows: rows, byBlock: map[string]map[string]*Row{}, order: map[string][]*Row{}, once: map[string][]*Row{}, kinds: map[string]int{}}
	for i := range rows {
		r := &rows[i]
		r.kind, r.keyword = s.number(r.PartKind()), s.number(r.Keyword)
		r.names = NameBit(r.Keyword) | NameBit(r.PartKind())
		r.index()
		for _, in := range r.In {
			m := s.byBlock[in]
			if m == nil {
				m = map[string]*Row{}
				s.byBlock[in] = m
			}
			m[r.Keyword] = r
			s.order[in] = append(s.order[in], r)
			if r.Times == Once {
				s.once[in] = append(s.once[in], r)
			}
		}
	}
	return s
}

// index makes the sets and lists of the row that answer the usual questions.
func (r *Row) index() {
	r.required = nil
	for k := range r.Slots {
		s := &r.Slots[k]
		s.bit = NameBit(s.Name)
		if s.Default != "" {
			r.defaults |= s.bit
		}
		if s.Required {
			r.required = append(r.required, s)
		}
		if s.Label != "" {
			s.opens = NameBit(s.Label)
		} else if s.Type == FlagType {
			s.opens = s.bit
		}
		r.labels |= s.opens
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

var language = sync.OnceValue(func() *Schema { return NewSchema(allRows()) })

// Language is the schema of the plant language.
func Language() *Schema { return language() }

// Row finds the row of a keyword in a block; nil if the block has none.
func (s *Schema) Row(block, keyword string) *Row { return s.byBlock[block][keyword] }

// RowsOf lists the rows of a block in table order. The slice is shared.
func (s *Schema) RowsOf(block string) []*Row { return s.order[block] }

// Blocks lists every block that holds statements, in order of the alphabet.
func (s *Schema) Blocks() []string {
	out := make([]string, 0, len(s.order))
	for b := range s.order {
		out = append(out, b)
	}
	sort.Strings(out)
	return out
}

// keywords lists the keywords of a block.
func (s *Schema) keywords(block string) []string {
	out := make([]string, 0, len(s.order[block]))
	for _, r := range s.order[block] {
		out = append(out, r.Keyword)
	}
	return out
}

// homes lists the blocks where a keyword may stand.
func (s *Schema) homes(keyword string) []string {
	var out []string
	for b, m := range s.byBlock {
		if m[keyword] != nil {
			out = append(out, b)
		}
	}
	sort.Strings(out)
	return out
}
