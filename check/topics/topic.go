// Package topics holds the quick sums of "tundish calc": one file per topic,
// each a thin shell around a function of check/calc. A topic declares its
// inputs and results with the unit in which the desk user gives and gets them.
package topics

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"example.org/tundish/check/cite"
)

// Input is one named input of a topic.
type Input struct {
	Name    string
	Unit    string   // unit in which Run takes the value, "-" for a pure number
	Help    string   // a few words, shown by "tundish calc"
	Default *float64 // nil: the input must be given
}

// Output is one named result of a topic.
type Output struct {
	Name string
	Unit string
	Help string
}

// Values holds inputs or results by name, each in the unit its declaration says.
type Values map[string]float64

// Topic is one quick sum.
type Topic struct {
	Name    string
	Summary string
	Formula string // one line, plain text, letters explained by the inputs
	Source  cite.Source
	Inputs  []Input
	Outputs []Output
	// Run answers one case. An input outside the valid range is an error that
	// names the input, its value and the range; there is no extrapolation.
	Run func(in Values) (Values, error)
	// Table, where a topic has it, answers a whole table at once: rows are the
	// cells of a CSV file, header first, and the answer is the same rows with
	// the results. Run of such a topic is only an error that says so.
	Table func(rows [][]string, in Values) ([][]string, error)
	// Form explains the columns and rows of Table.
	Form string
}

var registered []func() Topic

// register adds a topic; a file of this package calls it once through a package
// variable. The topic is made when topics are asked for.
func register(topic func() Topic) bool {
	registered = append(registered, topic)
	return true
}

var topics = sync.OnceValue(func() []*Topic {
	out := make([]*Topic, 0, len(registered))
	for _, topic := range registered {
		t := topic()
		out = append(out, &t)
	}
	slices.SortFunc(out, func(a, b *Topic) int { return strings.Compare(a.Name, b.Name) })
	return out
})

// Find returns the topic of that name.
func Find(name string) (*Topic, bool) {
	i, found := slices.BinarySearchFunc(topics(), name, func(t *Topic, name string) int { return strings.Compare(t.Name, name) })
	if !found {
		return nil, false
	}
	return topics()[i], true
}

// All returns every topic in order of name.
func All() []*Topic { return slices.Clone(topics()) }

// within is the range check every topic uses.
func within(name string, v, low, high float64, unit string) error {
	if v != v || v < low || v > high { // v != v: not a number
		return fmt.Errorf("%s is %g %s; the method holds from %g to %g %s", name, v, unit, low, high, unit)
	}
	return nil
}
