// Package rules holds the rules: one file each, which registers itself. To add
// a rule, write its file here and its test file in testdata/rules; nothing else
// changes.
package rules

import (
	"slices"
	"sort"
	"sync"

	"example.org/tundish/check"
)

var registered = make([]*check.Rule, 0, 256)

// register adds a rule; a file calls it once through a package variable. The rule
// itself is a variable of its own, so that it is made when the tool is built and not
// at every start; two hundred inlined copies of this would be read at every start too.
//
//go:noinline
func register(r *check.Rule) *check.Rule {
	registered = append(registered, r)
	return r
}

var sorted = sync.OnceValue(func() []*check.Rule {
	out := slices.Clone(registered)
	sort.Slice(out, func(i, j int) bool { return out[i].ID < out[j].ID })
	return out
})

// All gives every rule in order of id. The slice is shared and must not change.
func All() []*check.Rule { return sorted() }

// Find gives the rule with that id; nil if there is none.
func Find(id string) *check.Rule {
	all := All()
	i := sort.Search(len(all), func(i int) bool { return all[i].ID >= id })
	if i < len(all) && all[i].ID == id {
		return all[i]
	}
	return nil
}
