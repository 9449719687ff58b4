package lsp

import (
	"encoding/json"

	"go.lsp.dev/protocol"
)

// object is a JSON object whose shape the protocol makes a union of; writing it
// out is clearer than the library's union types.
type object = map[string]any

// encode gives the JSON of a result. The library's types know how to write
// themselves; objects that hold them go through it too.
func encode(v any) (json.RawMessage, error) {
	if v == nil {
		return json.RawMessage("null"), nil
	}
	b, err := protocol.Marshal(v)
	return json.RawMessage(b), err
}
