package lang

import (
	"hash/maphash"
	"strings"
	"sync"
	"sync/atomic"
)

// Cache keeps parsed lines by their text. An archive repeats itself, and an
// edit leaves most lines as they were; a hit costs a fraction of a parse. It is
// safe for concurrent use and bounded: it holds two generations, and when the
// young one is full it becomes the old one, whose lines stay only when they are
// asked for again.
type Cache struct {
	seed   maphash.Seed
	limit  int // estimated bytes of one generation of one shard
	shards [cacheShards]cacheShard
}

const (
	cacheShards  = 16
	cacheSize    = 32 << 20 // estimated bytes of NewCache
	maxCacheText = 1024     // longer lines repeat too rarely to keep
)

type cacheShard struct {
	mu         sync.RWMutex
	young, old map[uint64]*line
	size       int // estimated bytes of the young generation
}

// line is what the cache keeps of one line: a statement, and the brace and the
// comment that may stand behind it.
type line struct {
	text    string // from the first byte to the last that is no blank
	head    *Head
	brace   int // offset of "{" in the text, -1 without
	comment int // offset of "#" in the text, -1 without
}

// NewCache makes an empty cache of a size that fits an archive of plants.
func NewCache() *Cache { return NewCacheSize(cacheSize) }

// NewCacheSize makes an empty cache that holds about so many bytes at most.
func NewCacheSize(bytes int) *Cache {
	return &Cache{seed: maphash.MakeSeed(), limit: bytes / (2 * cacheShards)}
}

// get finds a line. Two texts with one hash push each other out, which costs a
// parse and nothing else.
func (c *Cache) get(text string) *line {
	if c == nil || len(text) > maxCacheText {
		return nil
	}
	key := maphash.String(c.seed, text)
	s := &c.shards[key%cacheShards]
	s.mu.RLock()
	l := s.young[key]
	old := false
	if l == nil {
		l = s.old[key]
		old = l != nil
	}
	s.mu.RUnlock()
	if l == nil || l.text != text {
		return nil
	}
	if old {
		s.put(key, l, c.limit)
	}
	return l
}

func (c *Cache) put(l *line) {
	if c == nil || len(l.text) > maxCacheText {
		return
	}
	if open := strings.Count(l.text, "("); open > 0 && (open > strings.Count(l.text, ")") || strings.ContainsAny(l.text, "\"#")) {
		return // with a bracket open, whether it ends with its line depends on the next one
	}
	key := maphash.String(c.seed, l.text)
	c.shards[key%cacheShards].put(key, l, c.limit)
}

func (s *cacheShard) put(key uint64, l *line, limit int) {
	s.mu.Lock()
	if s.young == nil || s.size > limit {
		s.old, s.young, s.size = s.young, make(map[uint64]*line, 64), 0
	}
	s.young[key] = l
	s.size += l.cost()
	s.mu.Unlock()
}

// cost estimates the bytes that a line keeps alive, its binding included.
func (l *line) cost() int {
	const fixed, perItem = 512, 480
	return fixed + 2*len(l.text) + perItem*len(l.head.Items)
}

// own gives text that does not keep the file it came from alive.
func own(c *Cache, text string) string {
	if c == nil || len(text) > maxCacheText {
		return text
	}
	return strings.Clone(text)
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
