package lang

// NameSet tells quickly that a name is not in a set. It is one word with a bit
// for each name, which several names may share: so it can say no for sure, but
// not yes. Most questions to a part are for values that it does not state.
type NameSet uint64

// NameBit is the set of one name.
func NameBit(name string) NameSet {
	n := len(name)
	if n == 0 {
		return 0
	}
	return 1 << ((uint(name[0])*7 + uint(name[n-1])*5 + uint(name[n/2])*3 + uint(n)) & 63)
}

// Lacks reports that the name is surely not in the set.
func (s NameSet) Lacks(name string) bool { return s&NameBit(name) == 0 }
