package lang

import (
	"hash/maphash"
	"math/bits"
	"strings"
	"sync"
	"sync/atomic"
)

// Cache keeps parsed lines by their text. An archive repeats itself, and an
// edit leaves most lines as they were; a hit costs a fraction of a parse. It is
// safe for concurrent use, its readers wait for nobody, and it is bounded: when
// it is full, lines go that were not asked for since they were last passed over.
type Cache struct {
	seed  maphash.Seed
	limit int    // bytes of all lines
	table []slot // in sets of cacheWays; a line stands in the set of its hash
	// once remembers which texts were seen once, by a part of their hash. nil: every
	// line is kept at first sight.
	once []atomic.Uint32

	mu   sync.Mutex // of who writes
	size int        // bytes of the lines in the table
	hand int        // the slot that is passed over next
}

const (
	cacheSize    = 8 << 20 // bytes of NewCache
	cacheWays    = 4
	cacheOnce    = 1 << 15 // texts remembered of those seen once
	maxCacheText = 1024    // longer lines repeat too rarely to keep
)

// slot holds one line. The hash stands beside it, so that a line is not looked at
// in vain; who reads compares texts, so the two need not change together.
type slot struct {
	hash atomic.Uint64
	line atomic.Pointer[line]
}

// line is what the cache keeps of one line, in memory of its own: a statement, and
// the brace and the comment that may stand behind it.
type line struct {
	text    string // from the first byte to the last that is no blank
	hash    uint64
	head    Head
	brace   int // offset of "{" in the text, -1 without
	comment int // offset of "#" in the text, -1 without
	used    atomic.Bool
}

// NewCache makes an empty cache of a size that fits a few plants.
func NewCache() *Cache { return NewCacheSize(cacheSize) }

// NewCacheSize makes an empty cache that holds about so many bytes at most. It
// keeps each line at first sight, for texts that are read again after an edit.
func NewCacheSize(bytes int) *Cache {
	const mean = 1024 // bytes of a line and its binding
	sets := 1 << bits.Len(uint(max(bytes/mean/cacheWays, 1)))
	return &Cache{seed: maphash.MakeSeed(), limit: bytes, table: make([]slot, sets*cacheWays)}
}

// NewRepeatCache makes an empty cache that keeps a line when it is seen for the
// second time, for many texts that are read once each: of the lines of an archive
// most kinds never come again, and what is not kept is read into memory that the
// next file uses again.
func NewRepeatCache(bytes int) *Cache {
	c := NewCacheSize(bytes)
	c.once = make([]atomic.Uint32, cacheOnce)
	return c
}

func (c *Cache) set(hash uint64) []slot {
	sets := uint64(len(c.table) / cacheWays)
	return c.table[hash%sets*cacheWays:][:cacheWays]
}

// get finds a line, and gives the hash of the text for keep.
func (c *Cache) get(text string) (*line, uint64) {
	if c == nil || len(text) > maxCacheText {
		return nil, 0
	}
	hash := maphash.String(c.seed, text)
	set := c.set(hash)
	for i := range set {
		if set[i].hash.Load() != hash {
			continue
		}
		if l := set[i].line.Load(); l != nil && l.text == text {
			if !l.used.Load() {
				l.used.Store(true)
			}
			return l, hash
		}
	}
	return nil, hash
}

// keep gives a line to be filled and put, for a text that is worth keeping; else
// nil. The text is copied: a line does not keep the file it came from alive.
func (c *Cache) keep(text string, hash uint64) *line {
	if c == nil || len(text) > maxCacheText {
		return nil
	}
	if c.once != nil {
		mark := uint32(hash>>32) | 1 // never what an empty place holds
		if c.once[hash%cacheOnce].Swap(mark) != mark {
			return nil
		}
	}
	if open := strings.Count(text, "("); open > 0 && (open > strings.Count(text, ")") || strings.ContainsAny(text, "\"#")) {
		return nil // with a bracket open, whether it ends with its line depends on the next one
	}
	l := &line{text: strings.Clone(text), hash: hash, brace: -1, comment: -1}
	l.head.kept = true
	return l
}

// put takes a line in. Of a full set one that was not asked for lately goes.
func (c *Cache) put(l *line) {
	c.mu.Lock()
	defer c.mu.Unlock()
	set := c.set(l.hash)
	at := &set[l.hash>>32%cacheWays]
	for i := range set {
		old := set[i].line.Load()
		if old == nil || old.hash == l.hash {
			at = &set[i]
			break
		}
		if !old.used.Load() {
			at = &set[i]
		}
	}
	c.drop(at)
	l.used.Store(true)
	at.line.Store(l)
	at.hash.Store(l.hash)
	c.size += l.cost()
	for passed := 0; c.size > c.limit && passed < 2*len(c.table); passed++ {
		s := &c.table[c.hand]
		c.hand = (c.hand + 1) % len(c.table)
		if old := s.line.Load(); old != nil && !old.used.Swap(false) {
			c.drop(s)
		}
	}
}

func (c *Cache) drop(s *slot) {
	if l := s.line.Load(); l != nil {
		c.size -= l.cost()
		s.line.Store(nil)
	}
}

// Bytes that a line keeps alive, its binding included; a test compares them with
// the sizes of the types.
const (
	lineBytes = 256 // with its head and a binding
	itemBytes = 96  // with a field of the binding
	exprBytes = 144 // with a value of the binding
)

func (l *line) cost() int {
	n := lineBytes + len(l.text) + itemBytes*len(l.head.Items)
	for i := range l.head.Items {
		n += exprBytes * len(l.head.Items[i].Exprs)
	}
	return n
}

// boundCache remembers the last binding of a head: the same text in the same
// kind of block binds alike.
type boundCache struct{ last atomic.Pointer[Bound] }

func (h *Head) bound(row *Row) *Bound {
	if b := h.bounds.last.Load(); b != nil && b.Row == row {
		return b
	}
	return nil
}

func (h *Head) setBound(b *Bound) { h.bounds.last.Store(b) }
