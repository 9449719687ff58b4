package rules

import "example.org/tundish/check/cite"

// sources is short for the list of a rule's sources.
func sources(list ...cite.Source) []cite.Source { return list }
