package lang

import (
	"sync"

	"example.org/tundish/lang/slab"
)

// memory is what a file lies in: its statements with their blocks, and the heads
// and bindings of those that no cache holds. A run over an archive gives it back
// with File.Release, and the next file is read into it.
type memory struct {
	file       File
	statements slab.Of[Statement]
	blocks     slab.Of[*Statement]
	heads      slab.Of[Head]
	items      slab.Of[Item]
	exprs      slab.Of[Expr]
	bounds     slab.Of[Bound]
	fields     slab.Of[Field]
	values     slab.Of[Value]
}

var memories = sync.Pool{New: func() any { return &memory{} }}

// expect sizes the first pieces of fresh memory: for a file of so many lines, of
// which so many are read anew.
func (m *memory) expect(lines, anew int) {
	m.statements.Expect(lines)
	m.blocks.Expect(lines)
	m.heads.Expect(anew)
	m.items.Expect(4 * anew)
	m.exprs.Expect(4 * anew)
	m.bounds.Expect(anew)
	m.fields.Expect(3 * anew)
	m.values.Expect(3 * anew)
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
	if cap(f.Comments) > slab.Kept {
		f.Comments = nil
	}
	m.statements.Reset()
	m.blocks.Reset()
	m.heads.Reset()
	m.items.Reset()
	m.exprs.Reset()
	m.bounds.Reset()
	m.fields.Reset()
	m.values.Reset()
	memories.Put(m)
}
