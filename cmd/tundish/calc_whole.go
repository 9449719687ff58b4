package main

import (
	"fmt"

	"example.org/tundish/check/topics"
)

// calcWhole answers a topic that takes a whole table at once, such as a pipe
// network.
func calcWhole(s std, t *topics.Topic, name string, args []string, format string) int {
	if name == "" {
		return badUse(s, fmt.Sprintf("%s reads its parts from a table: --csv FILE or --csv -", t.Name))
	}
	in, err := topicInputs(t, args)
	if err != nil {
		return badUse(s, err.Error())
	}
	tab, err := readTable(name, s)
	if err != nil {
		return failed(s, err)
	}
	rows, err := t.Table(append([][]string{tab.header}, tab.rows...), in)
	if err != nil {
		return badUse(s, err.Error())
	}
	tab.header, tab.rows = rows[0], rows[1:]
	return tab.write(s, format)
}
