package lsp

import (
	"sort"

	"go.lsp.dev/protocol"
)

// sortByLine orders objects with a "position", so that an answer does not
// depend on the order of a map.
func sortByLine(list []object) {
	at := func(o object) protocol.Position { p, _ := o["position"].(protocol.Position); return p }
	sort.SliceStable(list, func(i, j int) bool {
		a, b := at(list[i]), at(list[j])
		return a.Line < b.Line || a.Line == b.Line && a.Character < b.Character
	})
}
