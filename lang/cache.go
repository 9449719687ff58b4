package lang

import (
	"hash/maphash"
	"strings"
	"sync"
	"sync/atomic"
)

// Cache keeps parsed statements by their text. An archive repeats itself, and
// an edit leaves most lines as they were; a hit costs a fraction of a parse. It
// is safe for concurrent use and bounded: when a shard is full it starts again.
type Cache struct {
	seed   maphash.Seed
	shards [cacheShards]cacheShard
}

const (
	cacheShards   = 16
	cachePerShard = 4096
)

type cacheShard struct {
	mu    sync.RWMutex
	heads map[string]*Head
}

// NewCache makes an empty cache.
func NewCache() *Cache { return &Cache{seed: maphash.MakeSeed()} }

func (c *Cache) shard(text string) *cacheShard {
	return &c.shards[maphash.String(c.seed, text)%cacheShards]
}

func (c *Cache) get(text string) *Head {
	if c == nil {
		return nil
	}
	s := c.shard(text)
	s.mu.RLock()
	h := s.heads[text]
	s.mu.RUnlock()
	return h
}

// put keeps a head; its text is cloned so that the cache does not hold on to
// whole files.
func (c *Cache) put(h *Head) {
	s := c.shard(h.Text)
	s.mu.Lock()
	if s.heads == nil || len(s.heads) >= cachePerShard {
		s.heads = make(map[string]*Head, 64)
	}
	s.heads[h.Text] = h
	s.mu.Unlock()
}

// own gives text that does not keep the file it came from alive.
func own(c *Cache, text string) string {
	if c == nil {
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
