package slab

import "testing"

// What was handed out stays where it is and is not handed out twice; after Reset
// the same memory serves again, unless there was too much of it.
func TestSlab(t *testing.T) {
	var s Of[int]
	var all []*int
	for i := range 1500 {
		if i%7 == 0 {
			list := append(s.Reserve(5), i, i)
			s.Keep(2)
			all = append(all, &list[0], &list[1])
			continue
		}
		v := s.One()
		*v = i
		all = append(all, v)
	}
	seen := map[*int]bool{}
	for _, v := range all {
		if seen[v] {
			t.Fatal("a value was handed out twice")
		}
		seen[v] = true
	}
	if list := s.Take(600); len(list) != 600 || cap(list) != 600 {
		t.Errorf("%d values with room for %d, want 600", len(list), cap(list))
	}
	s.Reset()
	if v := s.One(); !seen[v] {
		t.Error("the memory did not serve again")
	}
	s.Take(2 * Kept)
	s.Reset()
	if v := s.One(); seen[v] {
		t.Error("too much memory was kept")
	}
}
