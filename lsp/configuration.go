package lsp

import (
	"encoding/json"
	"sync"

	"go.lsp.dev/jsonrpc2"
)

// configuration is what a user sets in the editor, under "tundish".
type configuration struct {
	mu    sync.Mutex
	hints map[string]bool // kinds of inlay hints that are on
}

// hintKinds are the kinds of inlay hints; each can be turned off.
var hintKinds = []string{"velocity", "loss", "pressure", "margin", "flow", "capacity"}

func newConfiguration() *configuration {
	c := &configuration{hints: map[string]bool{}}
	for _, k := range hintKinds {
		c.hints[k] = true
	}
	return c
}

// read takes settings such as {"hints": {"velocity": false}}. What is not there
// stays as it is: an empty object resets nothing.
func (c *configuration) read(v any) {
	if inner := tree(v, "tundish"); inner != nil {
		v = inner
	}
	hints := tree(v, "hints")
	c.mu.Lock()
	defer c.mu.Unlock()
	if b, ok := hints.(bool); ok {
		for _, k := range hintKinds {
			c.hints[k] = b
		}
		return
	}
	m, _ := hints.(map[string]any)
	for k, on := range m {
		if b, ok := on.(bool); ok {
			c.hints[k] = b
		}
	}
}

func (c *configuration) hint(kind string) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.hints[kind]
}

func (s *Server) configurationChanged(params json.RawMessage) {
	var p map[string]any
	if json.Unmarshal(params, &p) == nil {
		s.config.read(p["settings"])
	}
	s.askConfiguration()
	s.refresh()
}

// askConfiguration asks clients that keep their settings to themselves.
func (s *Server) askConfiguration() {
	if !s.client.configuration {
		return
	}
	s.call("workspace/configuration", object{"items": []object{{"section": "tundish"}}}, func(result json.RawMessage, err *jsonrpc2.Error) {
		var list []any
		if err == nil && json.Unmarshal(result, &list) == nil && len(list) > 0 {
			s.config.read(list[0])
			s.refresh()
		}
	})
}

// refresh asks the client to ask again, as far as it can.
func (s *Server) refresh() {
	for method, can := range map[string]bool{
		"workspace/inlayHint/refresh": s.client.hintRefresh, "workspace/codeLens/refresh": s.client.lensRefresh,
		"workspace/semanticTokens/refresh": s.client.tokensRefresh, "workspace/diagnostic/refresh": s.client.diagnosticRefresh && s.anyPulled(),
	} {
		if can {
			s.call(method, nil, nil)
		}
	}
}

func (s *Server) anyPulled() bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return len(s.pulled) > 0
}
