// Package solve turns a resolved plant into numbers: it builds the gas tree,
// the water network, the flue and the rest from the parts, calls check/calc,
// and keeps every outcome as a Quantity with its formula, the numbers put in
// and its source. It judges nothing; the rules do.
package solve

import (
	"strings"
	"sync"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/plant"
	"example.org/tundish/lang"
)

// Case is a set of running units.
type Case uint8

// The firing cases. Always is for values that do not depend on the case.
const (
	Always     Case = iota
	AllFull         // every unit at full fire
	AllLow          // every unit at minimum fire
	OneLow          // this unit at minimum, all others at full fire
	OneAlone        // this unit alone, at minimum fire
	OneOff          // the largest unit off, the others at full fire
	ColdStart       // this unit alone at full fire, flue and products as cold as outside
	FanFailed       // the fan of this unit failed and its damper shut, the others at full fire; of the room: the largest fan failed
	DamperOpen      // this unit off with its damper stuck open, the others at full fire
	ValvesShut      // every valve of the circuits shut that may close, pumps going on
)

var caseWords = [...]string{"", "all-full", "all-low", "one-low", "one-alone", "one-off", "cold-start", "fan-failed", "damper-open", "valves-shut"}

// String is the word used in paths.
func (c Case) String() string { return caseWords[c] }

// Stat is a statistic over a group.
type Stat uint8

// The statistics over a group.
const (
	Plain Stat = iota
	Least
	Most
	Mean
	Total
	Spread // most less least
)

var statWords = [...]string{"", "least", "most", "mean", "total", "spread"}

// String is the word used in paths.
func (s Stat) String() string { return statWords[s] }

// Formula is a calculation that quantities share: one line of text and where
// it comes from. Formulas are package variables; their texts use the trade's
// letters and the Inputs say what each stands for.
type Formula struct {
	Text   string
	Source cite.Source
}

// Input is one number put into a formula.
type Input struct {
	Name string // the letter or word of the formula's text
	Num  float64
	Dim  lang.Dimension
	Unit string // unit to print in; empty: the usual one of the dimension
	Text string // instead of a number: "steel DN50"
}

// Quantity is one computed value.
type Quantity struct {
	Part    *plant.Part // the part or block it belongs to
	Name    string      // "gas-pressure"
	Stat    Stat
	Case    Case
	Num     float64 // in the SI unit of Dim, temperatures in degC
	Dim     lang.Dimension
	Unit    string // unit to print in; empty: the usual one of the dimension
	Formula *Formula
	Inputs  []Input
	// Missing is empty for a value that is there; otherwise it says what the
	// calculation needs, "the length of G1", and Num has no meaning.
	Missing string
	// At is the place an editor shows the value; empty: the part's statement.
	At   lang.Span
	next int32
	key  uint32
}

// keyOf tells values of one part apart before their names are compared.
func keyOf(name string, stat Stat, c Case) uint32 {
	n := len(name)
	if n == 0 {
		return 0
	}
	return uint32(name[0]) | uint32(name[n-1])<<8 | uint32(n)<<16 | uint32(stat)<<24 | uint32(c)<<28
}

// bit is one of 64 that stands for the key in a set.
func bit(key uint32) uint64 { return 1 << (key * 0x9e3779b1 >> 26) }

// Known reports whether the quantity holds a number.
func (q *Quantity) Known() bool { return q != nil && q.Missing == "" }

// Path is the stable name: part.value[.statistic][.case].
func (q *Quantity) Path() string {
	var b strings.Builder
	b.WriteString(q.Part.Address())
	b.WriteByte('.')
	b.WriteString(q.Name)
	if q.Stat != Plain {
		b.WriteByte('.')
		b.WriteString(q.Stat.String())
	}
	if q.Case != Always {
		b.WriteByte('.')
		b.WriteString(q.Case.String())
	}
	return b.String()
}

// Results holds the quantities of one plant in the order they were computed.
type Results struct {
	Plant *plant.Plant
	list  []Quantity
	of    []values // by part ID
	arena []Input
}

// values is the chain of the quantities of one part.
type values struct {
	first, last int32  // 1 + index in the list
	has         uint64 // the bits of their keys: a quick no
}

// used holds results that were given back, for their memory.
var used = sync.Pool{New: func() any { return &Results{} }}

// NewResults makes an empty set for a plant.
func NewResults(p *plant.Plant) *Results {
	r, n := used.Get().(*Results), len(p.All)
	r.Plant = p
	if cap(r.list) < n/2 {
		r.list = make([]Quantity, 0, 64+5*n/4)
	}
	if cap(r.arena) < n {
		r.arena = make([]Input, 0, 64+7*n/2)
	}
	if cap(r.of) < n {
		r.of = make([]values, n)
	}
	r.of = r.of[:n]
	clear(r.of)
	return r
}

// Release gives the memory of the results back for the next plant. Nothing of
// them may be used from then on.
func (r *Results) Release() {
	if r == nil || r.Plant == nil {
		return
	}
	*r = Results{list: r.list[:0], arena: r.arena[:0], of: r.of[:0]}
	used.Put(r)
}

// Inputs copies the numbers put in to storage of the results.
func (r *Results) Inputs(in ...Input) []Input {
	if len(r.arena)+len(in) > cap(r.arena) {
		// The last piece is what the next plant starts with: it is to hold all of one.
		r.arena = make([]Input, 0, 256+2*cap(r.arena)+len(in))
	}
	n := len(r.arena)
	r.arena = append(r.arena, in...)
	return r.arena[n:len(r.arena):len(r.arena)]
}

// Add stores a quantity. A second value of the same name replaces nothing: the
// first one stands, so a solver must not compute a value twice. A quantity
// without a part is dropped.
func (r *Results) Add(q Quantity) {
	if q.Part == nil || q.Part.ID >= len(r.of) {
		return
	}
	q.key = keyOf(q.Name, q.Stat, q.Case)
	of := &r.of[q.Part.ID]
	if of.has&bit(q.key) != 0 && r.find(q.Part, q.Name, q.Stat, q.Case) != nil {
		return
	}
	if q.Num != q.Num && q.Missing == "" { // not a number never leaves a solver as a value
		q.Missing = "a value that can be computed"
	}
	r.list = append(r.list, q)
	i := int32(len(r.list))
	if of.last == 0 {
		of.first = i
	} else {
		r.list[of.last-1].next = i
	}
	of.last = i
	of.has |= bit(q.key)
}

// Missing stores that a quantity could not be computed and what it needs.
func (r *Results) Missing(part *plant.Part, name string, stat Stat, c Case, needs string) {
	r.Add(Quantity{Part: part, Name: name, Stat: stat, Case: c, Missing: needs})
}

func (r *Results) find(part *plant.Part, name string, stat Stat, c Case) *Quantity {
	if part == nil || part.ID >= len(r.of) {
		return nil
	}
	key := keyOf(name, stat, c)
	of := &r.of[part.ID]
	if of.has&bit(key) == 0 {
		return nil
	}
	for i := of.first; i != 0; {
		q := &r.list[i-1]
		if q.key == key && q.Name == name {
			return q
		}
		i = q.next
	}
	return nil
}

// Get finds a value; nil if it was never asked for or could not even be named.
// The pointer holds until the next Add.
func (r *Results) Get(part *plant.Part, name string, c Case) *Quantity {
	return r.find(part, name, Plain, c)
}

// Group finds a statistic over a group.
func (r *Results) Group(part *plant.Part, name string, stat Stat, c Case) *Quantity {
	return r.find(part, name, stat, c)
}

// All gives the quantities in order of computation. The slice is shared.
func (r *Results) All() []Quantity { return r.list }

// Of calls f for every quantity of a part.
func (r *Results) Of(part *plant.Part, f func(*Quantity)) {
	if part == nil || part.ID >= len(r.of) {
		return
	}
	for i := r.of[part.ID].first; i != 0; i = r.list[i-1].next {
		f(&r.list[i-1])
	}
}
