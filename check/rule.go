// Package check judges a resolved plant: it runs the solvers, lets each rule
// compare results with sourced limits, applies the stated deviations, and gives
// one Report. It knows no protocol, no disk and no clock; dates come in as an
// argument.
package check

import (
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

// Status is where a rule stands in its life.
type Status string

// The statuses of a rule.
const (
	InForce   Status = "in force"
	Trial     Status = "on trial" // shown, never gates
	Withdrawn Status = "withdrawn"
)

// Group is what is at risk.
type Group string

// The groups of rules.
const (
	Language   Group = "language"
	Basis      Group = "basis"
	Capacity   Group = "capacity"
	Gas        Group = "gas"
	Water      Group = "water"
	Pressure   Group = "pressure"
	Flue       Group = "flue"
	Condensate Group = "condensate"
	Air        Group = "air"
	Frame      Group = "frame"
	Electrical Group = "electrical"
	Insulation Group = "insulation"
	Treatment  Group = "water quality"
	Testing    Group = "testing"
	Record     Group = "record"
	Handover   Group = "handover"
	Cautions   Group = "cautions"
	Intent     Group = "requirements and deviations"
)

// Rule is one rule: one file in package rules, one file in testdata/rules. It
// holds no state.
type Rule struct {
	ID       string // kebab-case words that name the fault
	Group    Group
	Severity lang.Severity
	// Device marks a missing or defeated safety device that physics or law
	// demands: an error however its source was read.
	Device  bool
	Last    bool   // runs after the deviations were applied; for rules about them
	Status  Status // empty: in force
	Since   string // version of the tool that brought it
	Summary string // one line: what is wrong
	Why     string // what happens on site
	Mend    string // what mends it
	Limits  string // what the rule does not cover; may be empty
	Sources []cite.Source
	Run     func(*Pass)
}

// Source is the first source, as findings print it.
func (r *Rule) Source() cite.Source {
	if len(r.Sources) == 0 {
		return cite.Source{}
	}
	return r.Sources[0]
}
