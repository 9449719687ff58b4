package plant

// PartSet is a set of parts of one plant. The zero set is empty.
type PartSet struct {
	few  [4]uint64 // by ID: most plants have fewer parts than this has bits
	many []uint64
}

// word is where the bit of an ID stands; nil beyond the end.
func (s *PartSet) word(id int) *uint64 {
	i := id / 64
	if i < len(s.few) {
		return &s.few[i]
	}
	if i -= len(s.few); i < len(s.many) {
		return &s.many[i]
	}
	return nil
}

// Add puts a part into the set.
func (s *PartSet) Add(p *Part) {
	w := s.word(p.ID)
	if w == nil {
		s.many = append(s.many, make([]uint64, len(p.plant.All)/64+1-len(s.many))...)
		w = s.word(p.ID)
	}
	*w |= 1 << (p.ID % 64)
}

// Has reports whether the part is in the set.
func (s *PartSet) Has(p *Part) bool {
	w := s.word(p.ID)
	return w != nil && *w&(1<<(p.ID%64)) != 0
}
