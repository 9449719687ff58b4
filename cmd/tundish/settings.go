package main

import "example.org/tundish/check"

// settings are the project's own: the gate and the limits it replaced.
type settings struct {
	gate      string
	overrides map[string]check.Limit
}
