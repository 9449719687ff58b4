package lang

import "iter"

// NameTable finds values by the names of a fixed table of ours: kinds, keywords,
// limits. They differ in length, ends or middle, so three letters and the length
// spread them well, and a look takes a third of the time of a map. It is not for
// names that users choose: thousands of them may differ in other letters only. The
// zero table is empty.
type NameTable[T any] struct {
	slots []nameSlot[T] // a power of two, at most half of them full
	count int
}

type nameSlot[T any] struct {
	name  string
	full  bool
	value T
}

// home is where the search for a name begins.
func home(name string) uint32 {
	n := len(name)
	if n == 0 {
		return 0
	}
	return (uint32(name[0]) | uint32(name[n-1])<<8 | uint32(name[n/2])<<16 | uint32(n)<<24) * 0x9e3779b1 >> 8
}

// Get gives the value of a name; the zero value if the table lacks it.
func (t *NameTable[T]) Get(name string) T {
	if s := t.find(name); s != nil {
		return s.value
	}
	var none T
	return none
}

// Find is Get that tells whether the table holds the name.
func (t *NameTable[T]) Find(name string) (value T, ok bool) {
	if s := t.find(name); s != nil {
		return s.value, true
	}
	return value, false
}

func (t *NameTable[T]) find(name string) *nameSlot[T] {
	mask := uint32(len(t.slots) - 1)
	if t.count == 0 {
		return nil
	}
	for i := home(name); ; i++ {
		s := &t.slots[i&mask]
		if !s.full {
			return nil
		}
		if s.name == name {
			return s
		}
	}
}

// Put sets the value of a name. The table keeps the text of the name.
func (t *NameTable[T]) Put(name string, value T) {
	if s := t.find(name); s != nil {
		s.value = value
		return
	}
	t.Grow(t.count + 1)
	t.count++
	t.insert(name, value)
}

func (t *NameTable[T]) insert(name string, value T) {
	mask := uint32(len(t.slots) - 1)
	i := home(name)
	for t.slots[i&mask].full {
		i++
	}
	t.slots[i&mask] = nameSlot[T]{name, true, value}
}

// Grow makes room for n names in all.
func (t *NameTable[T]) Grow(n int) {
	size := 32
	for size < 2*n {
		size *= 2
	}
	if size <= len(t.slots) {
		return
	}
	old := t.slots
	t.slots = make([]nameSlot[T], size)
	for i := range old {
		if old[i].full {
			t.insert(old[i].name, old[i].value)
		}
	}
}

// Len counts the names.
func (t *NameTable[T]) Len() int { return t.count }

// Names gives every name, in no order.
func (t *NameTable[T]) Names() iter.Seq[string] {
	return func(yield func(string) bool) {
		for i := range t.slots {
			if s := &t.slots[i]; s.full && !yield(s.name) {
				return
			}
		}
	}
}
