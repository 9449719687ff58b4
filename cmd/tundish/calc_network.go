package main

import (
	"example.org/tundish/check/topics"
)

const networkTopic = "water-network"

// calcNetwork solves the network that a table describes.
func calcNetwork(s std, name string, temperature float64, format string) int {
	if name == "" {
		return badUse(s, "water-network reads its pipes and nodes from a table: --csv FILE or --csv -")
	}
	tab, err := readTable(name, s)
	if err != nil {
		return failed(s, err)
	}
	header, rows, err := topics.Network(tab.header, tab.rows, temperature)
	if err != nil {
		return badUse(s, err.Error())
	}
	tab.header, tab.rows = header, rows
	return tab.write(s, format)
}
