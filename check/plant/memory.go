package plant

import (
	"strings"
	"sync"

	"example.org/tundish/lang/slab"
)

// memory is what the parts of a plant lie in. A run over an archive gives it back
// with Release, and the next plant is built in it.
type memory struct {
	parts    slab.Of[Part]
	pointers slab.Of[*Part]
	refs     slab.Of[Ref]
	kept     []boundRefs
	all      []*Part
	byName   map[string]*Part
	byKind   [][]*Part
	types    map[string]*Part
}

var memories = sync.Pool{New: func() any {
	m := &memory{byName: map[string]*Part{}, types: map[string]*Part{}}
	m.parts.Expect(256)
	m.pointers.Expect(256)
	m.refs.Expect(256)
	return m
}}

// Release gives the memory of the plant back for the next one. Nothing of the
// plant may be used from then on: no part, no value, no name looked up. Texts stay
// good, and so does the file. Who does not call it loses nothing but time.
func (p *Plant) Release() {
	if p == nil || p.memory == nil {
		return
	}
	p.Of.Release()
	p.Built.Release()
	m := p.memory
	m.parts.Reset()
	m.pointers.Reset()
	m.refs.Reset()
	m.kept, m.all = p.memory.kept[:0], p.All[:0]
	clear(m.byName)
	clear(m.types)
	*p = Plant{File: p.File, Kind: p.Kind}
	memories.Put(m)
}

// joined puts texts together in one piece of memory. It grows by new pieces, so a
// text that was given out stays.
type joined struct{ b strings.Builder }

func (w *joined) join(a, b, c string) string {
	n := len(a) + len(b) + len(c)
	if w.b.Cap()-w.b.Len() < n {
		w.b = strings.Builder{}
		w.b.Grow(max(n, 512))
	}
	from := w.b.Len()
	w.b.WriteString(a)
	w.b.WriteString(b)
	w.b.WriteString(c)
	return w.b.String()[from:]
}
