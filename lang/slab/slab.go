// Package slab hands out pieces of larger blocks of memory, which serve again for
// what comes next: a file and its plant hold thousands of small things that come
// and go together.
package slab

const (
	most = 256 // size of a block of which no more is known than that the last was used up
	// Kept is how many values a slab keeps for the next use, so that one large file
	// is not paid for ever after.
	Kept = 4096
)

// Of hands out values of one type. What it hands out may hold what stood there
// before. The zero value is ready; it is not for several goroutines.
type Of[T any] struct {
	blocks [][]T
	block  int // the one in use
	used   int // of it
	next   int // size of the next new block
}

// Expect says for how many values the next new block is to have room.
func (s *Of[T]) Expect(n int) { s.next = n }

// Reserve gives an empty slice with room for n values. What is put in it stays
// when Keep is told how many there are.
func (s *Of[T]) Reserve(n int) []T {
	for ; s.block < len(s.blocks); s.block, s.used = s.block+1, 0 {
		if b := s.blocks[s.block]; len(b)-s.used >= n {
			return b[s.used : s.used : s.used+n]
		}
	}
	size := min(s.next, most)
	s.next = 2 * max(size, n)
	s.blocks = append(s.blocks, make([]T, max(n, size)))
	s.used = 0
	return s.blocks[s.block][:0:n]
}

// Keep takes the first n values of what was reserved last.
func (s *Of[T]) Keep(n int) { s.used += n }

// Take gives n values next to each other, which the caller sets.
func (s *Of[T]) Take(n int) []T {
	list := s.Reserve(n)[:n]
	s.Keep(n)
	return list
}

// One gives the next value, which the caller sets.
func (s *Of[T]) One() *T { return &s.Take(1)[0] }

// Reset takes all values back.
func (s *Of[T]) Reset() {
	n := 0
	for _, b := range s.blocks {
		n += len(b)
	}
	if n > Kept {
		s.blocks = nil
	}
	s.block, s.used = 0, 0
}
