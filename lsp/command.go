package lsp

import (
	"context"
	"encoding/json"
	"slices"

	"go.lsp.dev/jsonrpc2"
)

// commandSheet opens the live calculation sheet; its argument is the URI of an
// open document.
const commandSheet = "tundish.sheet"

// commandEdit makes the edit of a code action for clients to which an action can
// only be a command; its argument is the edit.
const commandEdit = "tundish.edit"

// commands are what a client may ask the server to do.
var commands = map[string]func(s *Server, at *snapshot, args []json.RawMessage) (any, error){
	commandSheet: openSheet,
	commandEdit:  sendEdit,
}

func commandNames() []string {
	out := make([]string, 0, len(commands))
	for name := range commands {
		out = append(out, name)
	}
	slices.Sort(out)
	return out
}

var _ = on("workspace/executeCommand", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[struct {
		Command   string            `json:"command"`
		Arguments []json.RawMessage `json:"arguments"`
	}](params)
	if err != nil {
		return nil, err
	}
	do := commands[p.Command]
	if do == nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, "the server has no command "+p.Command)
	}
	return do(s, at, p.Arguments)
})

// openSheet shows the sheet in a browser, or tells its address to a client that
// opens nothing. The result is the address.
func openSheet(s *Server, at *snapshot, args []json.RawMessage) (any, error) {
	var uri string
	if len(args) > 0 && json.Unmarshal(args[0], &uri) != nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, commandSheet+" takes the URI of an open document")
	}
	d := at.find(uri)
	if d == nil && len(args) == 0 && len(at.docs) == 1 {
		for _, d = range at.docs { // the only one there is
		}
	}
	if d == nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, commandSheet+" takes the URI of an open document")
	}
	address, err := s.live.open(d)
	if err != nil {
		return nil, err
	}
	say := func() {
		s.tell("window/showMessage", object{"type": 3, "message": "The calculation sheet, renewed as you type: " + address})
	}
	if !s.client.showDocument {
		say()
		return address, nil
	}
	s.call("window/showDocument", object{"uri": address, "external": true}, func(result json.RawMessage, e *jsonrpc2.Error) {
		var r struct {
			Success bool `json:"success"`
		}
		if e != nil || json.Unmarshal(result, &r) != nil || !r.Success {
			say()
		}
	})
	return address, nil
}

func sendEdit(s *Server, _ *snapshot, args []json.RawMessage) (any, error) {
	edit := map[string]json.RawMessage{}
	if len(args) != 1 || json.Unmarshal(args[0], &edit) != nil || edit["changes"] == nil && edit["documentChanges"] == nil {
		return nil, jsonrpc2.NewError(jsonrpc2.InvalidParams, commandEdit+" takes an edit")
	}
	s.call("workspace/applyEdit", object{"edit": args[0]}, nil)
	return nil, nil
}
