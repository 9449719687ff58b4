package lang

import "sync"

// memory is what a file lies in: its statements with their blocks, and the heads
// and bindings of those that no cache holds. A run over an archive gives it back
// with File.Release, and the next file is read into it.
type memory struct {
	file       File
	statements slab[Statement]
	blocks     slab[*Statement]
	heads      slab[Head]
	items      slab[Item]
	exprs      slab[Expr]
	bounds     slab[Bound]
	fields     slab[Field]
	values     slab[Value]
}

var memories = sync.Pool{New: func() any { return &memory{} }}

// expect sizes the first pieces of fresh memory: for a file of so many lines, of
// which so many are read anew.
func (m *memory) expect(lines, anew int) {
	m.statements.next, m.blocks.next = lines, lines
	m.heads.next, m.items.next, m.exprs.next = anew, 4*anew, 4*anew
	m.bounds.next, m.fields.next, m.values.next = anew, 3*anew, 3*anew
}

// Release gives the memory of the file and of its Source back for the next file.
// Nothing of the two may be used from then on, no statement, no binding and no
// value; texts that were taken from them stay good. Who does not call it loses
// nothing but time. It is not for files that several users share.
func (f *File) Release() {
	if f == nil || f.memory == nil {
		return
	}
	m := f.memory
	f.Source.release()
	*f = File{Comments: f.Comments[:0]}
	if cap(f.Comments) > slabKept {
		f.Comments = nil
	}
	m.statements.reset()
	m.blocks.reset()
	m.heads.reset()
	m.items.reset()
	m.exprs.reset()
	m.bounds.reset()
	m.fields.reset()
	m.values.reset()
	memories.Put(m)
}

// slab hands out pieces of larger blocks of memory. What it hands out may hold
// what stood there before.
type slab[T any] struct {
	blocks [][]T
	block  int // the one in use
	used   int // of it
	next   int // size of the next new block
}

const (
	slabMost = 256  // size of a block of which no more is known than that the last was used up
	slabKept = 4096 // what a slab keeps for the next file, so that one large file is not paid for ever after
)

// reserve gives an empty slice with room for n values. What is put in it stays
// when take is told how many there are.
func (s *slab[T]) reserve(n int) []T {
	for ; s.block < len(s.blocks); s.block, s.used = s.block+1, 0 {
		if b := s.blocks[s.block]; len(b)-s.used >= n {
			return b[s.used : s.used : s.used+n]
		}
	}
	size := min(s.next, slabMost)
	s.next = 2 * max(size, n)
	s.blocks = append(s.blocks, make([]T, max(n, size)))
	s.used = 0
	return s.blocks[s.block][:0:n]
}

func (s *slab[T]) take(n int) { s.used += n }

// one gives the next value, which the caller sets.
func (s *slab[T]) one() *T {
	v := &s.reserve(1)[:1][0]
	s.take(1)
	return v
}

func (s *slab[T]) reset() {
	n := 0
	for _, b := range s.blocks {
		n += len(b)
	}
	if n > slabKept {
		s.blocks = nil
	}
	s.block, s.used = 0, 0
}
