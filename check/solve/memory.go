package solve

import (
	"math"
	"slices"
	"sync"
)

// memory keeps answers by the numbers that they were computed from. It is
// bounded, safe for concurrent use, and changes no result: the same numbers
// always give the same answer.
type memory[T any] struct {
	mu   sync.Mutex
	at   map[uint64]*remembered[T]
	ring []uint64 // oldest first
	next int
}

type remembered[T any] struct {
	key   []float64
	value *T
}

// maxRemembered bounds a memory; an answer for eight units takes a few kB.
const maxRemembered = 64

// networks remembers solved water networks.
var networks memory[unitFlows]

func fingerprint(key []float64) uint64 {
	h := uint64(14695981039346656037)
	for _, v := range key {
		h = (h ^ math.Float64bits(v)) * 1099511628211
		h ^= h >> 29
	}
	return h
}

func (m *memory[T]) get(key []float64) *T {
	m.mu.Lock()
	defer m.mu.Unlock()
	if r := m.at[fingerprint(key)]; r != nil && slices.Equal(r.key, key) {
		return r.value
	}
	return nil
}

func (m *memory[T]) put(key []float64, v *T) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.at == nil {
		m.at, m.ring = map[uint64]*remembered[T]{}, make([]uint64, maxRemembered)
	}
	f := fingerprint(key)
	if m.at[f] == nil {
		delete(m.at, m.ring[m.next])
		m.ring[m.next] = f
		m.next = (m.next + 1) % maxRemembered
	}
	m.at[f] = &remembered[T]{key, v}
}

// Forget drops every remembered answer. Results do not change by it, only the
// time to the next: benchmarks of a cold start ask for it.
func Forget() {
	networks.mu.Lock()
	defer networks.mu.Unlock()
	networks.at = nil
}
